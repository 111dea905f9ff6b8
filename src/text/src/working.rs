//! Words around a working: where it comes from, and its formula. What the symbols in it stand for is
//! in `symbols`, how both are printed in `set`.

mod set;
mod symbols;

pub use set::{Piece, set_formula, set_symbol};
pub use symbols::{symbol_meaning, symbols};

use crate::language::either;
use finrun_engine::trace::{Formula, Source, Step};

pub fn source(source: Source) -> &'static str {
    either(match source {
        Source::Arithmetic => ("Arithmetic.", "Aritmética."),
        Source::Transmission => (
            "Steady transmission: EN 12831-1; ASHRAE Handbook of Fundamentals, residential load.",
            "Transmisión constante: EN 12831-1; ASHRAE Handbook, Fundamentals, carga residencial.",
        ),
        Source::Layers => ("ISO 6946, combined method.", "ISO 6946, método combinado."),
        Source::Ground => (
            "ISO 13370:2017, as two public implementations have it.",
            "ISO 13370:2017, como la tienen dos implementaciones públicas.",
        ),
        Source::GroundSwing => (
            "ISO 13370:2017, annex H, as two public implementations have it.",
            "ISO 13370:2017, anexo H, como la tienen dos implementaciones públicas.",
        ),
        Source::FFactor => (
            "F-factor of US energy codes, along the slab's edge.",
            "Factor F de los códigos de energía de EE. UU., a lo largo del borde de la losa.",
        ),
        Source::CrawlSpaceVents => (
            "ISO 13370, suspended floors, from memory.",
            "ISO 13370, pisos suspendidos, de memoria.",
        ),
        Source::StandardAtmosphere => (
            "U.S. Standard Atmosphere 1976 and the ideal gas law; metres and kelvins.",
            "U.S. Standard Atmosphere 1976 y la ley de los gases ideales; metros y kelvins.",
        ),
        Source::Ventilation => (
            "ASHRAE Handbook of Fundamentals, ventilation and infiltration.",
            "ASHRAE Handbook, Fundamentals, ventilación e infiltración.",
        ),
        Source::Infiltration => (
            "Sherman and Grimsrud's basic model, LBL-10163, with the coefficients of the ASHRAE \
             Handbook of Fundamentals.",
            "Modelo básico de Sherman y Grimsrud, LBL-10163, con los coeficientes del ASHRAE \
             Handbook, Fundamentals.",
        ),
        Source::BlowerDoor => (
            "The tested flow brought from 50 Pa to 4 Pa, and Bernoulli's equation there; air at \
             20 °C and sea level, as testers reduce it (from memory).",
            "El caudal de la prueba llevado de 50 Pa a 4 Pa, y allí la ecuación de Bernoulli; \
             aire a 20 °C y al nivel del mar, como lo reducen quienes prueban (de memoria).",
        ),
        Source::Shares => (
            "Shared by the area where the gaps are, or by volume: judgement.",
            "Repartido según el área donde están las rendijas, o según el volumen: criterio \
             propio.",
        ),
        Source::SpaceBalance => (
            "Balance of the space, counted from the outdoor temperature: what comes in goes out \
             again.",
            "Balance del espacio, contado desde la temperatura exterior: lo que entra vuelve a \
             salir.",
        ),
        Source::Errors => (
            "Independent errors, to first order: their squares add up.",
            "Errores independientes, a primer orden: se suman sus cuadrados.",
        ),
        Source::EnergyBalance => (
            "Energy balance; water properties fitted to IAPWS-95.",
            "Balance de energía; propiedades del agua ajustadas a IAPWS-95.",
        ),
        Source::RatingPractice => (
            "Hot-water rating practice of the hydronics trade; power law in the form of EN 442.",
            "Práctica del oficio hidrónico para potencias nominales con agua caliente; ley de \
             potencia en la forma de EN 442.",
        ),
        Source::Integrated => (
            "The rating's power law in the energy balance along the tube, integrated exactly.",
            "La ley de potencia nominal en el balance de energía a lo largo del tubo, integrada \
             exactamente.",
        ),
        Source::BarePipe => (
            "Energy balance along a bare pipe; the surface coefficient as entered.",
            "Balance de energía a lo largo de un tubo desnudo; el coeficiente de superficie como \
             se escribió.",
        ),
        Source::Continuity => (
            "Continuity; water properties fitted to IAPWS.",
            "Continuidad; propiedades del agua ajustadas a IAPWS.",
        ),
        Source::Colebrook => (
            "Colebrook 1939; 64/Re below Reynolds 2000; a straight bridge up to 4000.",
            "Colebrook 1939; 64/Re por debajo de Reynolds 2000; un puente recto hasta 4000.",
        ),
        Source::DarcyWeisbach => ("Darcy and Weisbach.", "Darcy y Weisbach."),
        Source::Crane => (
            "Loss coefficients in the form of Crane TP-410, from memory.",
            "Coeficientes de pérdida en la forma de Crane TP-410, de memoria.",
        ),
        Source::Hydrostatics => (
            "Weight and height of a column of the water.",
            "Peso y altura de una columna del agua.",
        ),
        Source::ExpansionTank => (
            "ASHRAE Handbook, HVAC Systems and Equipment: diaphragm tank, absolute pressures, all \
             water at the supply temperature.",
            "ASHRAE Handbook, HVAC Systems & Equipment: tanque de diafragma, presiones absolutas, \
             toda el agua a la temperatura de suministro.",
        ),
        Source::ReliefPractice => (
            "Common practice, no source: a tenth below the relief valve's setting.",
            "Práctica común, sin fuente: una décima parte por debajo del ajuste de la válvula de \
             alivio.",
        ),
        Source::CommonPractice => (
            "Common practice, no source. It forgets that the water cools.",
            "Práctica común, sin fuente. Olvida que el agua se enfría.",
        ),
    })
}

/// The right-hand side as people write it; some are written from their terms.
pub fn formula_text(step: &Step) -> String {
    let symbols = step.terms.iter().map(|term| term.symbol.to_string()).collect::<Vec<_>>();
    spread_text(step.formula, &symbols)
}

/// The same with `items` in the place of the terms, where it is written from those.
pub fn spread_text(formula: Formula, items: &[String]) -> String {
    match formula {
        Formula::Sum => items.join(" + "),
        Formula::RootOfSquares => format!("({} ^ 2) ^ 0.5", items.join(" ^ 2 + ")),
        formula => formula.text().to_string(),
    }
}
