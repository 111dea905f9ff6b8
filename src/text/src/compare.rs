//! Words of the comparison of arrangements.

use crate::language::{either, say};
use crate::{arrangement, value, watts};
use finrun_engine::compare::{Arranged, Column, Control, Direction, Layout};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{Power, System};

/// A row's name.
pub fn layout(draft: &Draft, layout: Layout) -> String {
    match layout {
        Layout::AsDrawn => either(("Zones as drawn", "Zonas como están dibujadas")).to_string(),
        Layout::OneZone(of) if draft.zones.len() > 1 => say!(
            "{}, one zone",
            "{}, una zona";
            arrangement(of)
        ),
        Layout::OneZone(of) => arrangement(of).to_string(),
    }
}

pub fn column(column: Column) -> &'static str {
    either(match column {
        Column::Cost => ("Cost", "Costo"),
        Column::Element => ("Element", "Elemento"),
        Column::Joints => ("Joints to make", "Uniones por hacer"),
        Column::Electric => ("Circulators draw", "Consumo de circuladores"),
        Column::LowestSupply => {
            ("Lowest supply that heats all", "Menor suministro que calienta todo")
        }
        Column::Evenness => ("Most over least served room", "Más / menos servida"),
        Column::Control => ("Each room by itself", "Cada habitación por sí sola"),
        Column::Short => ("Rooms short", "Habitaciones sin su calor"),
        Column::Head => ("Head", "Altura"),
        Column::Flow => ("Flow", "Caudal"),
        Column::Back => ("Return", "Retorno"),
        Column::Fastest => ("Fastest water", "Agua más rápida"),
        Column::Valves => ("Balancing valves", "Válvulas de balanceo"),
        Column::Least => ("Least of a load", "Lo menos de una carga"),
        Column::Most => ("Most of a load", "Lo más de una carga"),
    })
}

/// What stands in a row's column.
pub fn cell(of: Column, row: &Arranged, system: System) -> String {
    if !row.solved {
        return match of {
            Column::Cost => crate::no_rest().to_string(),
            _ => "–".to_string(),
        };
    }
    match (of, of.value(row)) {
        (Column::Cost, Some(cost)) if row.unpriced > 0 => {
            let kinds = match row.unpriced {
                1 => either(("1 kind of part", "1 clase de parte")).to_string(),
                many => say!("{many} kinds of parts", "{many} clases de partes"),
            };
            match cost.si > 0.0 {
                true => say!(
                    "{} and {kinds} without a price",
                    "{} y {kinds} sin precio";
                    value(cost, system)
                ),
                false => say!("{kinds} without a price", "{kinds} sin precio"),
            }
        }
        (Column::Electric, _) => watts(row.electric),
        (Column::Control, _) => control(row.control).to_string(),
        (Column::LowestSupply, None) => {
            either(("more than the boiler may give", "más de lo que puede dar la caldera"))
                .to_string()
        }
        (_, Some(found)) => value(found, system),
        (_, None) => "–".to_string(),
    }
}

fn control(control: Control) -> &'static str {
    either(match control {
        Control::None => ("no: one thermostat", "no: un termostato"),
        Control::ByZone => ("by zone", "por zona"),
        Control::ByRoom => ("yes, by valves", "sí, con válvulas"),
    })
}

/// What stands in the best cells of a column, which differ from others as they are shown: whoever reads
/// on cannot see why one of two that look alike is better.
pub fn best_cell(of: Column, rows: &[Arranged], system: System) -> Option<String> {
    let best = of.best(rows)?;
    let row = rows.iter().find(|row| of.value(row) == Some(best))?;
    let shown = cell(of, row, system);
    rows.iter().any(|row| cell(of, row, system) != shown).then_some(shown)
}

/// Beside the best value of a column.
pub fn best() -> &'static str {
    either(("best", "mejor"))
}

/// How much more one kept row has than the other.
pub fn kept_difference(of: Column, row: &Arranged, than: &Arranged, system: System) -> String {
    let Some(more) = of.more(row, than) else {
        let alike = of.value(row) == of.value(than);
        return if alike { "–" } else { either(("differs", "difiere")) }.to_string();
    };
    let size = match of {
        Column::Electric => watts(Power::from_si(more.si.abs())),
        _ => value(finrun_engine::quantity::Value::new(more.kind, more.si.abs()), system),
    };
    let none = match of {
        Column::Electric => watts(Power::ZERO),
        _ => value(finrun_engine::quantity::Value::new(more.kind, 0.0), system),
    };
    match more.si {
        _ if size == none => either(("the same", "igual")).to_string(),
        more if more > 0.0 => say!("{size} more", "{size} más"),
        _ => say!("{size} less", "{size} menos"),
    }
}

/// While rows are being worked out.
pub fn working_on(done: usize, all: usize) -> String {
    say!(
        "Working out arrangement {} of {all} …",
        "Calculando el arreglo {} de {all} …";
        (done + 1).min(all)
    )
}

/// Spoken when a row was taken for the job.
pub fn laid_out(name: &str) -> String {
    say!(
        "Piped anew: {name}. Undo brings the piping of before back.",
        "Tubería nueva: {name}. Deshacer recupera la de antes."
    )
}

/// Spoken when the rows were sorted.
pub fn sorted_by(of: Column, direction: Direction) -> String {
    let way = either(match direction {
        Direction::Rising => ("least first", "de menos a más"),
        Direction::Falling => ("most first", "de más a menos"),
    });
    say!("Sorted by {}, {way}.", "Ordenado por «{}», {way}."; column(of))
}
