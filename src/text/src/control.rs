//! Words of how the house is run through night and year.

use crate::language::{Both, either, say};
use crate::room_name;
use finrun_engine::job::{ControlField, Draft, Holds, Mass, RoomMass, SupplyBy};

pub(crate) fn control_label(field: ControlField) -> &'static str {
    either(match field {
        ControlField::Setback => ("Turned down for the night by", "De noche se baja"),
        ControlField::SetbackHours => ("For so many hours", "Durante tantas horas"),
        ControlField::Recover => ("To be warm again within", "Debe volver a calentarse en"),
    })
}

pub(crate) fn control_note(field: ControlField) -> &'static str {
    match field {
        ControlField::Setback => either((
            "0 for a house that stays as warm all night.",
            "0 para una casa que queda igual de cálida toda la noche.",
        )),
        ControlField::SetbackHours | ControlField::Recover => "",
    }
}

const HOLDS: Both = ("What holds the rooms of this zone", "Qué mantiene los cuartos de esta zona");
const SUPPLY_BY: Both =
    ("How warm the boiler\u{2019}s water is", "A qué temperatura sale el agua de la caldera");
const MASS: Both = ("How heavy the house is built", "Qué tan pesada es la construcción");
const ROOM_MASS: Both = ("How heavy this room is built", "Qué tan pesado es este cuarto");

pub(crate) fn holds_label() -> &'static str {
    either(HOLDS)
}

pub(crate) fn supply_label() -> &'static str {
    either(SUPPLY_BY)
}

pub(crate) fn mass_label() -> &'static str {
    either(MASS)
}

pub(crate) fn room_mass_label() -> &'static str {
    either(ROOM_MASS)
}

pub(crate) fn owner() -> &'static str {
    either(("Night setback", "Reducción nocturna"))
}

pub(crate) fn fuel_price() -> &'static str {
    either(("Price of one unit of the fuel", "Precio de una unidad de combustible"))
}

pub(crate) fn fuel_price_note() -> &'static str {
    either((
        "Of a therm, a gallon, a kWh: as the bill counts it. Blank: nothing is said of money.",
        "De un therm, un galón, un kWh: como lo cuenta la factura. En blanco: no se habla de dinero.",
    ))
}

pub(crate) fn damper() -> &'static str {
    either(("Its damper leaves", "Su compuerta deja pasar"))
}

pub(crate) fn damper_note() -> &'static str {
    either((
        "Of the element\u{2019}s output, as it is set for the year: your judgement. The element is \
         sized with the damper open.",
        "Del calor del elemento, tal como queda puesta para el año: a su juicio. El elemento se \
         dimensiona con la compuerta abierta.",
    ))
}

pub(crate) fn holds(draft: &Draft, holds: Holds) -> String {
    match holds {
        Holds::FirstRoom => either((
            "A thermostat in the first room that has an element",
            "Un termostato en el primer cuarto con elemento",
        ))
        .to_string(),
        Holds::Thermostat(room) => {
            say!("A thermostat in {0}", "Un termostato en {0}"; room_name(draft, room))
        }
        Holds::RoomValves => either((
            "A valve in each room that closes as it warms",
            "Una válvula en cada cuarto que cierra al calentarse",
        ))
        .to_string(),
    }
}

pub(crate) fn supply_by(by: SupplyBy) -> &'static str {
    either(match by {
        SupplyBy::Fixed => ("The same in every weather", "La misma en todo clima"),
        SupplyBy::Reset => (
            "By the outdoor reset line of Boiler and fill",
            "Según la línea de compensación de Caldera y llenado",
        ),
    })
}

pub(crate) fn mass(mass: Mass) -> &'static str {
    either(match mass {
        Mass::Light => {
            ("Light: wood frame with gypsum board", "Ligera: entramado de madera con tablarroca")
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
