//! Words of the comparison of arrangements.

use crate::{arrangement, value, watts};
use finrun_engine::compare::{Arranged, Column, Control, Direction, Layout};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{Power, System};

/// A row's name.
pub fn layout(draft: &Draft, layout: Layout) -> String {
    match layout {
        Layout::AsDrawn => "Zones as drawn".to_string(),
        Layout::OneZone(of) if draft.zones.len() > 1 => format!("{}, one zone", arrangement(of)),
        Layout::OneZone(of) => arrangement(of).to_string(),
    }
}

pub fn column(column: Column) -> &'static str {
    match column {
        Column::Cost => "Cost",
        Column::Element => "Element",
        Column::Joints => "Joints to make",
        Column::Electric => "Circulators draw",
        Column::LowestSupply => "Lowest supply that heats all",
        Column::Evenness => "Most over least served room",
        Column::Control => "Each room by itself",
        Column::Short => "Rooms short",
        Column::Head => "Head",
        Column::Flow => "Flow",
        Column::Back => "Return",
        Column::Fastest => "Fastest water",
        Column::Valves => "Balancing valves",
        Column::Least => "Least of a load",
        Column::Most => "Most of a load",
    }
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
                1 => "1 kind of part".to_string(),
                many => format!("{many} kinds of parts"),
            };
            match cost.si > 0.0 {
                true => format!("{} and {kinds} without a price", value(cost, system)),
                false => format!("{kinds} without a price"),
            }
        }
        (Column::Electric, _) => watts(row.electric),
        (Column::Control, _) => control(row.control).to_string(),
        (Column::LowestSupply, None) => "more than the boiler may give".to_string(),
        (_, Some(found)) => value(found, system),
        (_, None) => "–".to_string(),
    }
}

fn control(control: Control) -> &'static str {
    match control {
        Control::None => "no: one thermostat",
        Control::ByZone => "by zone",
        Control::ByRoom => "yes, by valves",
    }
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
    "best"
}

/// How much more one kept row has than the other.
pub fn kept_difference(of: Column, row: &Arranged, than: &Arranged, system: System) -> String {
    let Some(more) = of.more(row, than) else {
        let alike = of.value(row) == of.value(than);
        return if alike { "–" } else { "differs" }.to_string();
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
        _ if size == none => "the same".to_string(),
        more if more > 0.0 => format!("{size} more"),
        _ => format!("{size} less"),
    }
}

/// While rows are being worked out.
pub fn working_on(done: usize, all: usize) -> String {
    format!("Working out arrangement {} of {all} …", (done + 1).min(all))
}

/// Spoken when a row was taken for the job.
pub fn laid_out(name: &str) -> String {
    format!("Piped anew: {name}. Undo brings the piping of before back.")
}

/// Spoken when the rows were sorted.
pub fn sorted_by(of: Column, direction: Direction) -> String {
    let way = match direction {
        Direction::Rising => "least first",
        Direction::Falling => "most first",
    };
    format!("Sorted by {}, {way}.", column(of))
}
