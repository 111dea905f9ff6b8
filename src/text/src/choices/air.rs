//! Names of what the air that leaks in is worked out from.

use crate::language::either;
use finrun_engine::building::{AirClass, OpenFlue, Shelter, Storeys};

pub fn air_class(class: AirClass) -> &'static str {
    either(match class {
        AirClass::Tight => (
            "Tight: new or carefully sealed, no draught felt in wind",
            "Hermética: nueva o sellada con cuidado, sin corrientes cuando hay viento",
        ),
        AirClass::Average => {
            ("Average: fitted windows, some gaps", "Media: ventanas ajustadas, algunas rendijas")
        }
        AirClass::Leaky => (
            "Leaky: draughts near windows and baseboards in wind",
            "Con fugas: corrientes junto a ventanas y zócalos cuando hay viento",
        ),
        AirClass::VeryLeaky => (
            "Very leaky: curtains move when it blows",
            "Con muchas fugas: las cortinas se mueven cuando sopla",
        ),
    })
}

pub fn storeys(storeys: Storeys) -> &'static str {
    either(match storeys {
        Storeys::One => ("One storey", "Un piso"),
        Storeys::Two => ("Two storeys", "Dos pisos"),
        Storeys::Three => ("Three storeys", "Tres pisos"),
    })
}

/// What stands between the house and the wind.
pub fn shelter(shelter: Shelter) -> &'static str {
    either(match shelter {
        Shelter::Open => (
            "Open: nothing around, such as a hilltop, a shore or plain fields",
            "Abierto: nada alrededor, como una loma, una orilla o campo llano",
        ),
        Shelter::Light => (
            "Light: a house alone in the country, a few trees or sheds",
            "Ligero: casa sola en el campo, algunos árboles o cobertizos",
        ),
        Shelter::Moderate => (
            "Moderate: other houses across the street",
            "Moderado: otras casas al otro lado de la calle",
        ),
        Shelter::Heavy => (
            "Heavy: houses on every side, large lots in town",
            "Fuerte: casas por todos lados, lotes grandes en la ciudad",
        ),
        Shelter::VeryHeavy => (
            "Very heavy: buildings right beside it, a row house or a dense block",
            "Muy fuerte: edificios pegados, casas en hilera o una manzana densa",
        ),
    })
}

pub fn open_flue(flue: OpenFlue) -> &'static str {
    either(match flue {
        OpenFlue::None => {
            ("No open chimney, or sealed combustion", "Sin chimenea abierta, o combustión sellada")
        }
        OpenFlue::FireplaceDamperClosed => {
            ("Fireplace, damper kept closed", "Chimenea con la compuerta siempre cerrada")
        }
        OpenFlue::FireplaceOpen => (
            "Fireplace without a damper, or left open",
            "Chimenea sin compuerta, o que queda abierta",
        ),
        OpenFlue::Flue => (
            "Boiler or water heater with a draft hood in the heated space",
            "Caldera o calentador de agua con campana de tiro en el espacio con calefacción",
        ),
    })
}
