//! What a worked-out way out proposes, whether it does, and what it costs; and what is built beyond the
//! loads.

use crate::plant::minutes;
use crate::shop::price_label;
use crate::{room_name, surface_name, value};
use finrun_engine::job::Draft;
use finrun_engine::oversize::{Burner, Oversize};
use finrun_engine::plant::boiler::Running;
use finrun_engine::quantity::{Money, Resistance, System, Unit, Value};
use finrun_engine::remedy::{Circulator, Does, Way, Worked};
use finrun_engine::takeoff::item::Class;

/// A way out in full: what to do, what it does, what it costs.
pub fn worked(worked: &Worked, draft: &Draft, system: System) -> String {
    let mut said = way_out(worked, draft, system);
    said += ": ";
    said += &does(worked.does, system);
    // What does not do is not bought.
    if matches!(worked.does, Does::NotEnough { .. }) {
        said.push('.');
        return said;
    }
    let cost = cost(worked, system);
    if !cost.is_empty() {
        said += "; ";
        said += &cost;
    }
    said.push('.');
    said += note(&worked.way);
    said
}

fn way_out(worked: &Worked, draft: &Draft, system: System) -> String {
    match worked.way {
        Way::HotterWater { supply } => {
            format!("Set the boiler to a supply of {}", value(supply, system))
        }
        Way::BetterElement { factor, element } => format!(
            "Element with {} more output a foot, in all rooms ({})",
            value(Value::share(factor - 1.0), system),
            value(element, system)
        ),
        Way::RuledOutWall { wall, pieces } => format!(
            "{} of pieces at a wall that is ruled out now, {}",
            value(pieces, system),
            surface_name(draft, worked.room, wall)
        ),
        Way::NewWall { length } => {
            format!("{} more of free wall, at an inside wall if need be", value(length, system))
        }
        Way::MoreFlow { flow, circulator } => {
            let circulator = match circulator {
                Circulator::GivesIt => "which the circulator gives",
                Circulator::TooSmall => "for which the circulator is too small",
            };
            format!("Flow of {}, {circulator}", value(flow, system))
        }
        Way::SecondCircuit { from, pipe } => format!(
            "A second circuit from {} on, with a balancing valve in each and about {} more pipe",
            room_name(draft, from),
            value(pipe, system)
        ),
        Way::LessLoss { by } => {
            format!("{} less loss: insulate, seal, better glass", value(by, system))
        }
        Way::Insulate { surface, resistance, area } => format!(
            "Insulate {} ({}) to {} or better",
            surface_name(draft, worked.room, surface),
            value(area, system),
            r_value(resistance, system)
        ),
        Way::MoveFirst => "Make it the first room of its loop".to_string(),
    }
}

/// Of the whole assembly, rounded up.
fn r_value(resistance: Resistance, system: System) -> String {
    match system {
        System::Us => format!("R-{:.0}", resistance.to(Unit::UsR).ceil()),
        System::Si => value(resistance, system),
    }
}

fn does(does: Does, system: System) -> String {
    match does {
        Does::HeatsAll => "all rooms are heated".to_string(),
        Does::HeatsRoom => "this room is heated, others stay short".to_string(),
        Does::NotEnough { remains } => {
            format!("not enough, {} are missing", value(remains, system))
        }
    }
}

fn cost(worked: &Worked, system: System) -> String {
    let mut parts: Vec<String> = Vec::new();
    for unpriced in &worked.unpriced {
        parts.push(match unpriced {
            Class::Piece(length) | Class::Kept(length) => {
                format!("pieces of {}", value(*length, system))
            }
            Class::Part(field) => price_label(*field).to_lowercase(),
        });
    }
    let parts = parts.join("; ");
    match (worked.cost, parts.is_empty()) {
        (Some(Money::ZERO), true) => "nothing to buy".to_string(),
        (Some(cost), true) => format!("cost {}", value(cost, system)),
        (Some(cost), false) => format!("cost {} without {parts}", value(cost, system)),
        (None, false) => format!("no price is typed for {parts}"),
        (None, true) => String::new(),
    }
}

/// What to heed.
fn note(way: &Way) -> &'static str {
    match way {
        Way::HotterWater { .. } => " Pipes and fins that hot scald: keep enclosures closed.",
        Way::MoveFirst => " Its pipe is counted as it is now.",
        _ => "",
    }
}

/// Lower supply that the pieces allow, in a sentence.
pub fn supply_enough(oversize: &Oversize, system: System) -> String {
    match oversize.supply_enough {
        Some(enough) if enough < oversize.supply => format!(
            "With these pieces the loads are met at a supply of {} already: an outdoor reset may be \
             set by that.",
            value(enough, system)
        ),
        _ => "The loads just take this supply.".to_string(),
    }
}

/// How long the thermostats call, in a sentence.
pub fn calls_at_half(oversize: &Oversize, system: System) -> String {
    format!(
        "At half of the load and this supply thermostats call for {} of the time; with elements that \
         just meet the loads for 50 %.",
        value(Value::share(oversize.calls_at_half), system)
    )
}

/// What that does to the burner, in a sentence.
pub fn burner_runs(burner: &Burner) -> String {
    format!(
        "While all call, the burner at its least runs {}; with elements that just meet the loads, {}.",
        runs(burner.built),
        runs(burner.exact)
    )
}

fn runs(running: Running) -> String {
    match running {
        Running::Throughout => "throughout".to_string(),
        Running::Cycling(cycle) => format!("for {} at a time", minutes(cycle.on_s)),
    }
}
