//! Words for stock, prices, and what the pieces are chosen for.

use finrun_engine::arrangement::{Counted, Proof, Together};
use finrun_engine::building::WallUse;
use finrun_engine::job::{Draft, Group, Objective, PriceField, Sticks, StockField};
use finrun_engine::quantity::{Money, Power, System, Value};

pub fn objective(objective: Objective) -> &'static str {
    match objective {
        Objective::Closest => "As little element as does it",
        Objective::LeastCost => "Least cost",
        Objective::FewestJoints => "Fewest joints",
        Objective::MostEven => "Rooms evenly warm in mild weather",
    }
}

/// What choosing for it comes to.
pub fn objective_note(objective: Objective) -> &'static str {
    match objective {
        Objective::Closest => {
            "The least heat beyond what the rooms lose on the design day, room by room."
        }
        Objective::LeastCost => {
            "By your prices of pieces, enclosure, end caps and joints, for all rooms together; where \
             the price of a length is missing, the fewest pieces."
        }
        Objective::FewestJoints => {
            "Long pieces rather than short ones, and few stretches of wall: less to solder."
        }
        Objective::MostEven => {
            "In mild weather, when the water is cooler, each room gets nearly the same share of its \
             heat. It may take more element."
        }
    }
}

pub fn wall_use(wall_use: WallUse) -> &'static str {
    match wall_use {
        WallUse::AsNeeded => "As needed, outside walls first",
        WallUse::Only => "Here, and not at the room's other walls",
        WallUse::Never => "Not at this wall",
    }
}

pub(crate) fn stock_label(field: StockField) -> &'static str {
    match field {
        StockField::Price => "Price of one",
        StockField::Available => "In the shop",
        StockField::Have => "Bought already",
    }
}

pub(crate) fn price_label(field: PriceField) -> &'static str {
    match field {
        PriceField::Joint => "Soldered joint, with coupling and time",
        PriceField::Enclosure => "Enclosure, if not in the price of a piece",
        PriceField::EndCap => "End cap",
        PriceField::Corner => "Corner of the enclosure",
        PriceField::Pipe => "Pipe",
        PriceField::Elbow => "Elbow, soldered in",
        PriceField::Tee => "Tee, soldered in",
        PriceField::DiverterTee => "Diverter tee",
        PriceField::BalancingValve => "Balancing valve",
        PriceField::ZoneValve => "Zone valve",
        PriceField::Circulator => "Circulator, with flanges and relay",
        PriceField::Thermostat => "Thermostat, with its wire",
        PriceField::ManifoldPorts => "Pair of manifold ports",
        PriceField::LoopValves => "Shut-off, purge and drain valves of a loop",
        PriceField::SpliceCover => "Splice cover",
        PriceField::Cradle => "Bracket with cradle",
        PriceField::ExpansionPad => "Expansion pad",
        PriceField::Coupling => "Coupling",
        PriceField::Reducer => "Reducer",
        PriceField::Adapter => "Adapter, solder to thread",
        PriceField::Transition => "Transition, copper to PEX",
        PriceField::Hanger => "Hanger or clip",
        PriceField::PipeCover => "Pipe insulation",
        PriceField::ShutOffValve => "Shut-off valve",
        PriceField::PurgeValve => "Purge valve",
        PriceField::DrainValve => "Drain valve",
        PriceField::FlowCheck => "Flow-check valve",
        PriceField::MixingValve => "Mixing valve",
        PriceField::Flanges => "Pair of flanges",
        PriceField::Relay => "Relay",
        PriceField::Transformer => "Transformer",
        PriceField::Wire => "Thermostat wire",
        PriceField::AirEliminator => "Air eliminator",
        PriceField::AirVent => "Air vent",
        PriceField::ExpansionTank => "Expansion tank",
        PriceField::FillValve => "Fill valve",
        PriceField::BackflowPreventer => "Backflow preventer",
        PriceField::ReliefValve => "Relief valve",
        PriceField::Gauge => "Pressure and temperature gauge",
        PriceField::Solder => "Lead-free solder, a spool",
        PriceField::Flux => "Flux, a jar",
        PriceField::Sealant => "Thread sealant, a jar",
        PriceField::Gas => "Gas for the torch, a bottle",
        PriceField::Glycol => "Propylene glycol, a can",
        PriceField::Insulation => "Insulating a wall, ceiling or floor",
        PriceField::BetterElement => "Higher-output element, above this one",
    }
}

/// A kind of material.
pub fn group(group: Group) -> &'static str {
    match group {
        Group::Element => "Element",
        Group::Enclosure => "Enclosure",
        Group::Pipe => "Pipe",
        Group::Fittings => "Fittings",
        Group::Supports => "Hangers, pads, insulation",
        Group::Valves => "Valves",
        Group::BoilerRoom => "Boiler room",
        Group::Controls => "Controls",
        Group::Supplies => "Solder and other supplies",
        Group::Labor => "Work",
    }
}

pub(crate) fn sticks(sticks: Sticks) -> &'static str {
    match sticks {
        Sticks::TenAndTwenty => "10 and 20 ft",
        Sticks::Twenty => "20 ft only",
        Sticks::Ten => "10 ft only",
    }
}

/// How many prices are typed.
pub fn prices_fact(draft: &Draft) -> String {
    let fields = draft.price_fields().into_iter();
    match fields.filter(|field| draft.entry(*field).is_some()).count() {
        0 => "none typed".to_string(),
        count => format!("{count} typed"),
    }
}

/// One of several stretches of a wall, counted from zero.
pub fn wall_stretch(nth: usize) -> String {
    format!("stretch {}", nth + 1)
}

pub fn stretch_holds(nth: usize, pieces: &str) -> String {
    format!("Stretch {}: {pieces}", nth + 1)
}

/// Pieces that stay.
pub fn kept_pieces(pieces: &str) -> String {
    format!("Kept: {pieces}")
}

/// What is known of the choice of pieces: that it is best, or how far off it may be.
pub fn together(together: &Together, system: System) -> String {
    let value = |si: f64| counted(together.counted, si, system);
    let held = value(together.value);
    let mut said = match (together.proof, together.counted) {
        (Proof::Unsettled, _) => {
            return "These pieces are not known to be the best: the flow depends on the pieces and \
                    the pieces on the flow, and the two came to no rest. Fix the flow by its \
                    temperature drop, or fit balancing valves."
                .to_string();
        }
        (Proof::Best, Counted::Surplus) => {
            return "Proven: no other choice heats the rooms with less element.".to_string();
        }
        (Proof::Best, Counted::Spread) => format!(
            "Proven: no other choice keeps the rooms closer together in mild weather. The warmest \
             gets {held} times the share of its heat that the coolest gets."
        ),
        (Proof::Best, Counted::Cost) => format!(
            "Proven: no other choice costs less than {held} for pieces, enclosure, end caps and \
             joints."
        ),
        (Proof::Best, _) => format!("Proven: no other choice has fewer than {held}."),
        (Proof::Within { bound }, Counted::Spread) => format!(
            "The search was stopped. The warmest room gets {held} times the share of its heat that \
             the coolest gets in mild weather; no choice is below {}.",
            value(bound)
        ),
        (Proof::Within { bound }, of) => {
            let (verb, more) = match of {
                Counted::Surplus => ("gives", " more than the rooms lose"),
                Counted::Cost => ("costs", ""),
                _ => ("has", ""),
            };
            let (bound, off) = (value(bound), value(together.value - bound));
            format!(
                "The search was stopped: this choice {verb} {held}{more}, and none {verb} less than \
                 {bound}. It is at most {off} off."
            )
        }
    };
    if together.counted == Counted::Pieces {
        said += " Prices are missing, so the fewest pieces were chosen.";
    }
    said
}

fn counted(counted: Counted, si: f64, system: System) -> String {
    let value = |value: Value| crate::value(value, system);
    let many = |one: &str, many: &str| {
        let number = value(Value::count(si.max(0.0) as usize));
        format!("{number} {}", if si == 1.0 { one } else { many })
    };
    match counted {
        Counted::Surplus => value(Power::from_si(si).into()),
        Counted::Cost => value(Money::from_si(si).into()),
        Counted::Pieces => many("piece", "pieces"),
        Counted::Joints => many("joint", "joints"),
        Counted::Spread => value(Value::number(si)),
    }
}
