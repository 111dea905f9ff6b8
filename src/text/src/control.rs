//! Words of how the house is run through night and year.

use crate::language::{Both, either, say};
use crate::room_name;
use finrun_engine::job::{ControlField, Draft, Holds, Mass, RoomMass, SupplyBy};

pub(crate) fn control_label(field: ControlField) -> Both {
    match field {
        ControlField::Setback => ("Turned down for the night by", "De noche se baja"),
        ControlField::SetbackHours => ("For so many hours", "Durante tantas horas"),
        ControlField::Recover => ("To be warm again within", "Caliente otra vez en"),
    }
}

pub(crate) fn control_note(field: ControlField) -> Both {
    match field {
        ControlField::Setback => (
            "0 for a house that stays as warm all night.",
            "0 para una casa que sigue igual de caliente toda la noche.",
        ),
        ControlField::SetbackHours | ControlField::Recover => ("", ""),
    }
}

pub(crate) const SETBACK: Both = ("Night setback", "Reducción nocturna");
pub(crate) const HOLDS: Both =
    ("What holds the rooms of this zone", "Qué regula las habitaciones de esta zona");
pub(crate) const SUPPLY_BY: Both =
    ("How warm the boiler\u{2019}s water is", "Qué tan caliente sale el agua de la caldera");
pub(crate) const MASS: Both = ("How heavy the house is built", "Qué tan pesada es la construcción");
pub(crate) const ROOM_MASS: Both =
    ("How heavy this room is built", "Qué tan pesada es la construcción de esta habitación");

pub(crate) const FUEL_PRICE: Both =
    ("Price of one unit of the fuel", "Precio de una unidad del combustible");
pub(crate) const FUEL_PRICE_NOTE: Both = (
    "Of a therm, a gallon, a kWh: as the bill counts it. Blank: nothing is said of money.",
    "De un therm, un galón, un kWh: como lo cuenta la factura. En blanco: no se habla de dinero.",
);
pub(crate) const DAMPER: Both = ("Its damper leaves", "Su compuerta deja");
pub(crate) const DAMPER_NOTE: Both = (
    "Of the element\u{2019}s output, as it is set for the year: your judgement. The element is sized \
     with the damper open.",
    "De la potencia del elemento, como queda puesta para el año: a su criterio. El elemento se \
     calcula con la compuerta abierta.",
);

pub(crate) fn holds(draft: &Draft, holds: Holds) -> String {
    match holds {
        Holds::FirstRoom => either((
            "A thermostat in the first room that has an element",
            "Un termostato en la primera habitación que tiene elemento",
        ))
        .to_string(),
        Holds::Thermostat(room) => {
            let name = room_name(draft, room);
            say!("A thermostat in {name}", "Un termostato en {name}")
        }
        Holds::RoomValves => either((
            "A valve in each room that closes as it warms",
            "Una válvula en cada habitación que se cierra al calentarse",
        ))
        .to_string(),
    }
}

pub(crate) fn supply_by(by: SupplyBy) -> &'static str {
    either(match by {
        SupplyBy::Fixed => ("The same in every weather", "Igual con cualquier tiempo"),
        SupplyBy::Reset => (
            "By the outdoor reset line of Boiler and fill",
            "Según la línea de reajuste exterior de Caldera y llenado",
        ),
    })
}

pub(crate) fn mass(mass: Mass) -> &'static str {
    either(match mass {
        Mass::Light => {
            ("Light: wood frame with gypsum board", "Ligera: armazón de madera con tablero de yeso")
        }
        Mass::Medium => (
            "Medium: some masonry, a slab, or plaster on lath",
            "Media: algo de mampostería, una losa o yeso sobre listones",
        ),
        Mass::Heavy => (
            "Heavy: masonry or concrete inside the insulation",
            "Pesada: mampostería o concreto por dentro del aislamiento",
        ),
    })
}

pub(crate) fn room_mass(of: RoomMass) -> &'static str {
    match of {
        RoomMass::AsHouse => either(("As the house", "Como la casa")),
        RoomMass::Own(own) => mass(own),
    }
}
