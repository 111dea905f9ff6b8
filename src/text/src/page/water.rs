//! Sentences of the lengths and the loop.

use crate::language::{either, say};

pub fn pieces(count: usize) -> String {
    match count {
        1 => either(("1 piece", "1 pieza")).to_string(),
        count => say!("{count} pieces", "{count} piezas"),
    }
}

pub fn rooms_short(count: usize) -> String {
    match count {
        0 => either(("no room short", "ninguna habitación sin su calor")).to_string(),
        1 => either(("1 room short", "1 habitación sin su calor")).to_string(),
        count => say!("{count} rooms short", "{count} habitaciones sin su calor"),
    }
}

pub fn short_by(power: &str) -> String {
    say!("{power} short", "faltan {power}")
}

pub fn table_row(number: usize) -> String {
    say!("Row {number}", "Renglón {number}")
}

pub fn table_row_remove(number: usize) -> String {
    say!("Remove row {number}", "Quitar renglón {number}")
}

pub fn fitted(output: &str, water: &str, exponent: &str, worst: &str) -> String {
    say!(
        "Fitted by least squares: {output} at {water}, exponent {exponent}; no row strays more \
         than {worst} from it. Rows are taken at the rating flow.",
        "Ajustado por mínimos cuadrados: {output} a {water}, exponente {exponent}; ningún renglón \
         se aparta más de {worst}. Los renglones se toman con el caudal de la potencia nominal."
    )
}

pub fn assumed_value(value: &str) -> String {
    say!("assumed {}", "supuesto {}"; value.replace(' ', "\u{a0}"))
}

pub fn pipe_to(room: &str) -> String {
    say!("Pipe to {room}", "Tubería hasta {room}")
}

pub fn pressure_lost(stretch: &str) -> String {
    say!("Pressure lost, {stretch}", "Presión perdida, {stretch}")
}

pub fn water_after(stretch: &str) -> String {
    say!("Water after {stretch}", "Agua después de {stretch}")
}

pub fn loop_picture(supply: &str, back: &str) -> String {
    say!(
        "The piping from boiler to boiler, water from {supply} to {back}",
        "La tubería de caldera a caldera, agua de {supply} a {back}"
    )
}

pub fn checks_to_see(count: usize) -> String {
    match count {
        0 => either(("all hold", "todo cumple")).to_string(),
        count => say!("{count} to see", "{count} por ver"),
    }
}

pub fn checks_hold(count: usize) -> String {
    match count {
        1 => either(("1 check holds", "1 cumple")).to_string(),
        count => say!("{count} checks hold", "{count} cumplen"),
    }
}
