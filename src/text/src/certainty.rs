//! What makes a load unsure, in words.

use crate::{assembly, assembly_name, room_name, value};
use finrun_engine::building::{Band, Effect, Source, Subject};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{Power, System, TemperatureDifference, Transmittance, Value};

/// The thing that is not known exactly.
pub fn subject(draft: &Draft, subject: Subject, system: System) -> String {
    match subject {
        Subject::Outdoors => "Design temperature outdoors".to_string(),
        Subject::Leakage => "Air leakage of the house".to_string(),
        Subject::Ventilation => "Fans and heat recovery".to_string(),
        Subject::Soil => "The soil".to_string(),
        Subject::SpaceAir => "Air changes of unheated spaces".to_string(),
        Subject::Listed(listed) => format!("U of “{}”", assembly(listed)),
        Subject::Own(id) => format!("U of “{}”", assembly_name(draft, id)),
        Subject::TypedU(bits) => {
            format!("U of {}", value(Transmittance::from_si(f64::from_bits(bits)), system))
        }
        Subject::Size(room) => format!("Measures of {}", room_name(draft, room)),
        Subject::Sizes => "Measures of the rooms".to_string(),
        Subject::GuessedOpenings => "Windows and doors that were not measured".to_string(),
        Subject::GuessedTemperature => "Temperatures taken as halfway".to_string(),
    }
}

/// How it is known, how far off it may be, what that does, and what measuring would save.
pub fn effect(effect: &Effect, system: System) -> String {
    let source = match effect.source {
        Source::Measured => "measured",
        Source::Label => "from a label",
        Source::Listed => "from a list",
        Source::Assumed => "assumed",
    };
    let range = match effect.subject {
        Subject::Outdoors => value(TemperatureDifference::from_si(effect.range), system),
        _ => value(Value::share(effect.range), system),
    };
    let alone = value(effect.alone, system);
    let facts = format!("{source}, ± {range}: moves the load by ± {alone}.");
    // Less than a thousandth of a band is nothing to walk into the cold for.
    match effect.narrows > effect.alone * 0.01 && effect.narrows > Power::from_si(1.0) {
        true => format!(
            "{facts} {} would narrow the band by {} on each side.",
            how_to_measure(effect.subject),
            value(effect.narrows, system)
        ),
        false => facts,
    }
}

fn how_to_measure(subject: Subject) -> &'static str {
    match subject {
        Subject::Leakage => "A blower door test",
        Subject::Listed(_) => "Looking into it, and entering its layers or its label,",
        Subject::GuessedOpenings => "A tape measure",
        Subject::GuessedTemperature => "A thermometer on a cold day",
        _ => "Measuring it",
    }
}

pub fn load_and_band(load: Power, band: Band, system: System) -> String {
    let (low, high) = (value(band.low, system), value(band.high, system));
    format!("The house loses {}; eight times in ten between {low} and {high}.", value(load, system))
}
