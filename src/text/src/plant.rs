//! Words of the boiler room: boiler, filling, tank, control.

use crate::value;
use finrun_engine::fluid::Charge;
use finrun_engine::job::{Antifreeze, BoilerKind, PlantField, TankHeating, ValveKind};
use finrun_engine::plant::boiler::{Judged, Running, Size};
use finrun_engine::plant::design::{Alone, Control, Fed, Filling, Reset, Volumes};
use finrun_engine::plant::expansion::{Metal, Tank, TankError};
use finrun_engine::plant::fill::Boiling;
use finrun_engine::plant::return_protection::{Advice, Verdict};
use finrun_engine::quantity::{System, Temperature, TemperatureDifference, Value, Volume};

pub(crate) fn label(field: PlantField) -> &'static str {
    match field {
        PlantField::Output => "Boiler's output",
        PlantField::LeastOutput => "Least that its burner gives",
        PlantField::BoilerVolume => "Water in the boiler",
        PlantField::Differential => "From burner start to stop",
        PlantField::LeastReturn => "Coolest return it takes",
        PlantField::TankOutput => "Heat for the indirect tank",
        PlantField::TopHeight => "Highest water above the gauge",
        PlantField::Fill => "Fill pressure, cold",
        PlantField::Relief => "Relief valve set to",
        PlantField::OtherVolume => "Buffer, tank coil and other water",
        PlantField::ColdFill => "Water when filled",
        PlantField::GlycolShare => "Propylene glycol, by mass",
        PlantField::Balance => "The house needs no heat from",
    }
}

pub(crate) fn note(field: PlantField) -> &'static str {
    match field {
        PlantField::Output => "What it gives to the water, not what it burns. Blank: not judged.",
        PlantField::LeastOutput => "Blank: as much, for a burner that is only on or off.",
        PlantField::LeastReturn => "130 °F for gas is practice; the maker's word stands above it.",
        PlantField::TopHeight => {
            "Gauge, expansion tank and relief valve stand beside each other. Blank: 9 ft a storey from \
             a basement up."
        }
        PlantField::Fill => "Blank: the water's weight and 5 psi at the top.",
        PlantField::GlycolShare => {
            "Of the filling. Less than a quarter protects poorly against corrosion too. What it takes \
             from the elements' output beyond its own heat capacity is yours to judge: lower the share \
             of the rating that counts."
        }
        PlantField::Balance => "Outdoors; sun and people do the rest.",
        _ => "",
    }
}

pub(crate) fn boiler_kind(kind: BoilerKind) -> &'static str {
    match kind {
        BoilerKind::NonCondensing => "Not condensing (cast iron and the like)",
        BoilerKind::Condensing => "Condensing",
    }
}

pub(crate) fn tank_heating(tank: TankHeating) -> &'static str {
    match tank {
        TankHeating::None => "None",
        TankHeating::AtOnce => "Heated while the house is",
        TankHeating::Priority => "Heated first, the house waits",
    }
}

pub(crate) fn metal(metal: Metal) -> &'static str {
    match metal {
        Metal::Copper => "Copper",
        Metal::Steel => "Steel or plastic",
    }
}

pub(crate) fn valve_kind(valve: ValveKind) -> &'static str {
    match valve {
        ValveKind::Motor => "With a motor, 0.32 A each",
        ValveKind::HeatedElement => "With a heated element, 0.9 A each",
    }
}

pub(crate) fn antifreeze(antifreeze: Antifreeze) -> &'static str {
    match antifreeze {
        Antifreeze::None => "None, water",
        Antifreeze::PropyleneGlycol => "Propylene glycol for heating",
    }
}

/// A time as people say it.
pub(crate) fn minutes(seconds: f64) -> String {
    match seconds {
        s if s < 90.0 => format!("{s:.0} s"),
        s => format!("{:.0} min", s / 60.0),
    }
}

fn liquid(volume: Volume, system: System) -> String {
    value(Value::liquid(volume), system)
}

/// A known boiler against what is needed.
pub fn boiler_judged(judged: Judged, system: System) -> String {
    let share = value(Value::share(judged.ratio), system);
    let verdict = match judged.verdict {
        Size::Short => "too small",
        Size::Fits => "it fits",
        Size::Oversized => "more than it should be",
    };
    format!("The boiler's output is {share} of what is needed: {verdict}.")
}

/// How the burner runs while one zone calls; `zone` is its name, none where there is but one.
pub fn burner_alone(alone: &Alone, zone: Option<&str>, system: System) -> String {
    let who = match zone {
        Some(zone) => format!("{zone} alone takes"),
        None => "The loop takes".to_string(),
    };
    let load = value(alone.load, system);
    match alone.running {
        Running::Throughout => format!("{who} {load}: the burner runs throughout."),
        Running::Cycling(cycle) => {
            let buffer = match alone.buffer > Volume::ZERO {
                true => format!(
                    " With {} more water it would run for ten minutes.",
                    liquid(alone.buffer, system)
                ),
                false => String::new(),
            };
            format!(
                "{who} {load} at the design supply, and {} circulate: burner on for {}, off for {}.{buffer}",
                liquid(alone.volume, system),
                minutes(cycle.on_s),
                minutes(cycle.off_s)
            )
        }
    }
}

pub fn back_verdict(verdict: Verdict, system: System) -> String {
    let degrees = |difference: TemperatureDifference| value(difference, system);
    match verdict {
        Verdict::Protected { margin } => {
            format!("The return is {} warmer than the boiler asks for.", degrees(margin))
        }
        Verdict::Cold { below, advice } => {
            let cure = match advice {
                Advice::Bypass(mixing) => format!(
                    "A bypass for {} of the boiler's flow warms it; a mixing valve also while the \
                     house warms up.",
                    value(Value::share(mixing.supply_share), system)
                ),
                Advice::MixingValve(_) => {
                    "A mixing valve at the boiler's inlet warms it.".to_string()
                }
                Advice::HotterBoiler => {
                    "Run the boiler hotter, and mix its water down for the loop.".to_string()
                }
            };
            format!("The return is {} too cool: flue gas may condense. {cure}", degrees(below))
        }
        Verdict::Condenses { below } => format!(
            "The return is {} below the dew point of gas flue gas: the boiler condenses.",
            degrees(below)
        ),
        Verdict::DoesNotCondense { above } => format!(
            "On the design day the return is {} above the dew point of gas flue gas: it condenses only \
             on milder days, with outdoor reset.",
            degrees(above)
        ),
    }
}

/// How a control is set to the line.
pub fn reset_line(reset: &Reset, supply: Temperature, system: System) -> String {
    let slope = value(Value::number(reset.setting.slope), system);
    let shift = value(reset.setting.shift, system);
    let line = format!(
        "Slope {slope}, shift {shift}; high limit at {}. The line is above what is needed by up to {}.",
        value(supply, system),
        value(reset.setting.excess, system)
    );
    match reset.least_supply {
        Some(least) => format!(
            "{line} A boiler that must not condense needs {} or more, or a mixing valve.",
            value(least, system)
        ),
        None => line,
    }
}

pub fn volume_parts(volumes: &Volumes, system: System) -> String {
    let [tubes, elements, boiler, other] =
        [volumes.tubes, volumes.elements, volumes.boiler, volumes.other]
            .map(|volume| liquid(volume, system));
    format!("Pipes {tubes}, elements {elements}, boiler {boiler}, other {other}.")
}

pub fn tank_said(tank: &Tank, system: System) -> String {
    let takes = liquid(tank.acceptance, system);
    let usual = match tank.usual {
        Some(usual) => format!("the next usual size is {}", liquid(usual, system)),
        None => "usual sizes end before: use two".to_string(),
    };
    format!(
        "The expansion tank takes up {takes}; {usual}. Charge its air to {} before it is filled.",
        value(tank.pre_charge, system)
    )
}

/// Why there is no tank.
pub fn no_tank(error: TankError) -> &'static str {
    match error {
        TankError::Volume => "The system holds nothing.",
        TankError::Cold => "The water is filled in colder than it freezes.",
        TankError::Hot => "The supply is hotter than the liquid's data.",
        TankError::NotWarmer => "The supply is no warmer than the water that is filled in.",
        TankError::Fill => "The fill pressure is below that of the air.",
        TankError::NotAboveFill => {
            "The fill pressure is too near to the relief valve's setting: no tank is large enough."
        }
    }
}

pub fn pressures_said(filling: &Filling, system: System) -> String {
    let top = format!("The fill pressure leaves {} at the top.", value(filling.at_top, system));
    let Some(hot) = filling.hot else { return top };
    format!(
        "{top} Hot, the gauge comes to {}, {} below the relief valve's setting.",
        value(hot, system),
        value(filling.relief.margin, system)
    )
}

pub fn boiling_margin(boiling: &Boiling, system: System) -> String {
    let (at, margin) = (value(boiling.boils_at, system), value(boiling.margin.abs(), system));
    let side = if boiling.margin < TemperatureDifference::ZERO { "below" } else { "above" };
    format!("At the highest place water boils at {at}, {margin} {side} the supply.")
}

pub fn glycol_charge(charge: &Charge, freezes_at: Temperature, system: System) -> String {
    format!(
        "{} of pure propylene glycol and {} of water, both at room temperature; crystals from {} on. A \
         product that is diluted takes more of it.",
        liquid(charge.glycol, system),
        liquid(charge.water, system),
        value(freezes_at, system)
    )
}

pub fn control_power(control: &Control) -> String {
    let what = match (control.feeds, control.coils) {
        (Fed::ZoneValves, count) => format!("{count} zone valves draw"),
        (Fed::Relays, 1) => "1 relay draws".to_string(),
        (Fed::Relays, count) => format!("{count} relays draw"),
    };
    let transformers = &control.transformers;
    let of = match transformers.count {
        1 => format!("a transformer of {:.0} VA", transformers.each_va),
        count => format!("{count} transformers of {:.0} VA", transformers.each_va),
    };
    format!("{what} {:.0} VA at 24 V: {of} (usual draws; the label wins).", transformers.load_va)
}

/// What to heed at the boiler; the safety page has the rest.
pub const PLANT_CAUTIONS: &[&str] = &[
    "The relief valve's outlet goes by full-size pipe, without a valve or plug, to a place where hot \
     water hurts nobody.",
    "Gas, flue and combustion air are licensed work; carbon monoxide alarms on every level.",
    "Boiler, circulators, transformer and relays are wired by someone licensed.",
    "The fill line needs a backflow preventer: heating water must not reach the drinking water.",
    "Glycol made for heating only, never automotive antifreeze, and only where the boiler's maker \
     and the code allow it.",
];
