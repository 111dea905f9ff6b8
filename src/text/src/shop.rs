//! Words for stock, prices, and what the pieces are chosen for.

use finrun_engine::building::WallUse;
use finrun_engine::job::{Objective, PriceField, StockField};

pub fn objective(objective: Objective) -> &'static str {
    match objective {
        Objective::Closest => "As little element as does it",
        Objective::LeastCost => "Least cost",
        Objective::FewestJoints => "Fewest joints",
        Objective::MostEven => "Rooms evenly warm in mild weather",
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
        PriceField::Insulation => "Insulating a wall, ceiling or floor",
        PriceField::BetterElement => "Higher-output element, above this one",
    }
}

pub(crate) fn stock_hint(field: StockField) -> &'static str {
    match field {
        StockField::Price => "",
        StockField::Available => "Blank: as many as wanted.",
        StockField::Have => "These cost nothing and are used first.",
    }
}
