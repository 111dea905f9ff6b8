//! What makes a load unsure, in words.

use crate::language::{either, say};
use crate::{assembly, assembly_name, room_name, value};
use finrun_engine::building::{Band, Effect, Source, Subject};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{Power, System, TemperatureDifference, Transmittance, Value};

/// The thing that is not known exactly.
pub fn subject(draft: &Draft, subject: Subject, system: System) -> String {
    match subject {
        Subject::Outdoors => {
            either(("Design temperature outdoors", "Temperatura exterior de diseño")).to_string()
        }
        Subject::Leakage => {
            either(("Air leakage of the house", "Fugas de aire de la casa")).to_string()
        }
        Subject::Ventilation => {
            either(("Fans and heat recovery", "Ventiladores y recuperación de calor")).to_string()
        }
        Subject::Soil => either(("The soil", "El suelo")).to_string(),
        Subject::SpaceAir => either((
            "Air changes of unheated spaces",
            "Cambios de aire de espacios sin calefacción",
        ))
        .to_string(),
        Subject::Listed(listed) => say!("U of “{}”", "U de «{}»"; assembly(listed)),
        Subject::Own(id) => say!("U of “{}”", "U de «{}»"; assembly_name(draft, id)),
        Subject::TypedU(bits) => {
            say!("U of {}", "U de {}"; value(Transmittance::from_si(f64::from_bits(bits)), system))
        }
        Subject::Size(room) => say!("Measures of {}", "Medidas de {}"; room_name(draft, room)),
        Subject::Sizes => {
            either(("Measures of the rooms", "Medidas de las habitaciones")).to_string()
        }
        Subject::GuessedOpenings => either((
            "Windows and doors that were not measured",
            "Ventanas y puertas que no se midieron",
        ))
        .to_string(),
        Subject::GuessedTemperature => {
            either(("Temperatures taken as halfway", "Temperaturas tomadas a la mitad")).to_string()
        }
    }
}

/// How it is known, how far off it may be, what that does, and what measuring would save.
pub fn effect(effect: &Effect, system: System) -> String {
    let source = either(match effect.source {
        Source::Measured => ("measured", "medido"),
        Source::Label => ("from a label", "de una etiqueta"),
        Source::Listed => ("from a list", "de una lista"),
        Source::Assumed => ("assumed", "supuesto"),
    });
    let range = match effect.subject {
        Subject::Outdoors => value(TemperatureDifference::from_si(effect.range), system),
        _ => value(Value::share(effect.range), system),
    };
    let alone = value(effect.alone, system);
    let facts = say!(
        "{source}, ± {range}: moves the load by ± {alone}.",
        "{source}, ± {range}: mueve la carga en ± {alone}."
    );
    // Less than a thousandth of a band is nothing to walk into the cold for.
    match effect.narrows > effect.alone * 0.01 && effect.narrows > Power::from_si(1.0) {
        true => say!(
            "{facts} {} would narrow the band by {} on each side.",
            "{facts} {} reduciría el intervalo en {} por cada lado.";
            how_to_measure(effect.subject), value(effect.narrows, system)
        ),
        false => facts,
    }
}

fn how_to_measure(subject: Subject) -> &'static str {
    either(match subject {
        Subject::Leakage => ("A blower door test", "Una prueba de puerta sopladora"),
        Subject::Listed(_) => (
            "Looking into it, and entering its layers or its label,",
            "Mirar adentro y anotar sus capas o su etiqueta",
        ),
        Subject::GuessedOpenings => ("A tape measure", "Una cinta de medir"),
        Subject::GuessedTemperature => {
            ("A thermometer on a cold day", "Un termómetro en un día frío")
        }
        _ => ("Measuring it", "Medirlo"),
    })
}

pub fn load_and_band(load: Power, band: Band, system: System) -> String {
    let (low, high) = (value(band.low, system), value(band.high, system));
    say!(
        "The house loses {}; eight times in ten between {low} and {high}.",
        "La casa pierde {}; ocho de cada diez veces entre {low} y {high}.";
        value(load, system)
    )
}
