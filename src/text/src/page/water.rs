//! Sentences of the lengths and the loop.

pub fn pieces(count: usize) -> String {
    match count {
        1 => "1 piece".to_string(),
        count => format!("{count} pieces"),
    }
}

pub fn rooms_short(count: usize) -> String {
    match count {
        0 => "no room short".to_string(),
        1 => "1 room short".to_string(),
        count => format!("{count} rooms short"),
    }
}

pub fn short_by(power: &str) -> String {
    format!("{power} short")
}

pub fn table_row(number: usize) -> String {
    format!("Row {number}")
}

pub fn table_row_remove(number: usize) -> String {
    format!("Remove row {number}")
}

pub fn fitted(output: &str, water: &str, exponent: &str, worst: &str) -> String {
    format!(
        "Fitted by least squares: {output} at {water}, exponent {exponent}; no row strays more than \
         {worst} from it. Rows are taken at the rating flow."
    )
}

pub fn assumed_value(value: &str) -> String {
    format!("assumed {}", value.replace(' ', "\u{a0}"))
}

pub fn pipe_to(room: &str) -> String {
    format!("Pipe to {room}")
}

pub fn pressure_lost(stretch: &str) -> String {
    format!("Pressure lost, {stretch}")
}

pub fn water_after(stretch: &str) -> String {
    format!("Water after {stretch}")
}

pub fn loop_picture(supply: &str, back: &str) -> String {
    format!("The piping from boiler to boiler, water from {supply} to {back}")
}

pub fn checks_to_see(count: usize) -> String {
    match count {
        0 => "all hold".to_string(),
        count => format!("{count} to see"),
    }
}

pub fn checks_hold(count: usize) -> String {
    match count {
        1 => "1 check holds".to_string(),
        count => format!("{count} checks hold"),
    }
}
