//! Words of how the house is run through night and year.

use crate::room_name;
use finrun_engine::job::{ControlField, Draft, Holds, Mass, RoomMass, SupplyBy};

pub(crate) fn control_label(field: ControlField) -> &'static str {
    match field {
        ControlField::Setback => "Turned down for the night by",
        ControlField::SetbackHours => "For so many hours",
        ControlField::Recover => "To be warm again within",
    }
}

pub(crate) fn control_note(field: ControlField) -> &'static str {
    match field {
        ControlField::Setback => "0 for a house that stays as warm all night.",
        ControlField::SetbackHours | ControlField::Recover => "",
    }
}

pub(crate) const SETBACK: &str = "Night setback";
pub(crate) const HOLDS: &str = "What holds the rooms of this zone";
pub(crate) const SUPPLY_BY: &str = "How warm the boiler\u{2019}s water is";
pub(crate) const MASS: &str = "How heavy the house is built";
pub(crate) const ROOM_MASS: &str = "How heavy this room is built";

pub(crate) const FUEL_PRICE: &str = "Price of one unit of the fuel";
pub(crate) const FUEL_PRICE_NOTE: &str =
    "Of a therm, a gallon, a kWh: as the bill counts it. Blank: nothing is said of money.";
pub(crate) const DAMPER: &str = "Its damper leaves";
pub(crate) const DAMPER_NOTE: &str = "Of the element\u{2019}s output, as it is set for the year: your judgement. The element is sized \
     with the damper open.";

pub(crate) fn holds(draft: &Draft, holds: Holds) -> String {
    match holds {
        Holds::FirstRoom => "A thermostat in the first room that has an element".to_string(),
        Holds::Thermostat(room) => format!("A thermostat in {}", room_name(draft, room)),
        Holds::RoomValves => "A valve in each room that closes as it warms".to_string(),
    }
}

pub(crate) fn supply_by(by: SupplyBy) -> &'static str {
    match by {
        SupplyBy::Fixed => "The same in every weather",
        SupplyBy::Reset => "By the outdoor reset line of Boiler and fill",
    }
}

pub(crate) fn mass(mass: Mass) -> &'static str {
    match mass {
        Mass::Light => "Light: wood frame with gypsum board",
        Mass::Medium => "Medium: some masonry, a slab, or plaster on lath",
        Mass::Heavy => "Heavy: masonry or concrete inside the insulation",
    }
}

pub(crate) fn room_mass(of: RoomMass) -> &'static str {
    match of {
        RoomMass::AsHouse => "As the house",
        RoomMass::Own(own) => mass(own),
    }
}
