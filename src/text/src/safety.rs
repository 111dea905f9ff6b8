//! The cautions, short. They defer to local codes and licensed practice.

use finrun_engine::install::Danger;

/// What to heed at a step, in a line or two; [`CAUTIONS`] has the whole.
pub fn danger(danger: Danger) -> &'static str {
    match danger {
        Danger::Scald => {
            "Hot water under pressure scalds: cool down and drain before anything is opened."
        }
        Danger::Relief => {
            "What the relief valve lets out burns: its pipe ends where it hurts nobody and can be seen, \
             and is never shut, plugged or made narrower."
        }
        Danger::Fire => {
            "Soldering sets houses on fire, also an hour later: extinguisher, heat shield and someone \
             who watches. Some places ask for a permit."
        }
        Danger::Gas => {
            "Gas, oil, flue and combustion air are licensed work. Carbon monoxide kills without a smell."
        }
        Danger::Mains => "Mains kill: licensed hands, power off, tested to be off.",
        Danger::OldHouse => {
            "Asbestos and lead: do not cut, sand or strip what may hold them until it was tested."
        }
        Danger::Freezing => {
            "Pipe in cold spaces freezes and bursts: insulate, keep it warm, or glycol."
        }
        Danger::Structure => {
            "Holes and notches in joists and studs only where the code allows them; none in beams, posts \
             or trusses without an engineer."
        }
        Danger::DrinkingWater => {
            "Heating water must not reach the drinking water: a backflow preventer on the fill line, as \
             the code asks, and never a hose left connected."
        }
        Danger::Pressure => {
            "Compressed air in a test bursts like a bomb: water only, eyes protected, and off before \
             anything is mended."
        }
    }
}

/// A heading with what to heed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Caution {
    pub title: &'static str,
    pub text: &'static str,
}

pub const CAUTIONS: &[Caution] = &[
    Caution {
        title: "Codes and licences come first",
        text: "Local codes, permits, inspections and the makers' instructions stand above this \
               plan. Where the law or doubt says so, a licensed heating, gas, plumbing or \
               electrical tradesperson does the work or checks it.",
    },
    Caution {
        title: "Hot water under pressure",
        text: "Heating water scalds, and a closed loop without a working relief valve can burst. \
               Fit the pressure relief valve the boiler calls for, piped to a safe place, never \
               plugged, never with a shut-off before it. Cool down and drain before you open \
               anything. Baseboard gets hot enough to burn small children.",
    },
    Caution {
        title: "Gas, oil and carbon monoxide",
        text: "Fuel piping, burners, flues and combustion air are licensed work. Fit carbon \
               monoxide alarms on every level. Smell gas: touch no switch, leave, call from \
               outside.",
    },
    Caution {
        title: "Soldering is fire",
        text: "Clear away or shield what burns, keep an extinguisher and water at hand, and watch \
               the place for an hour afterwards. Solder for heating may still not contain lead \
               where drinking water is near. Wear eye protection; ventilate.",
    },
    Caution {
        title: "Mains electricity",
        text: "Boilers, circulators, zone valves and their relays are wired by someone licensed, \
               with the power off and tested to be off.",
    },
    Caution {
        title: "Old houses: asbestos and lead",
        text: "Pipe wrap, boiler jackets, floor tiles and plaster of before about 1990 may hold \
               asbestos, paint of before about 1980 lead. Do not cut, sand or strip them: have \
               them tested first.",
    },
    Caution {
        title: "Structure",
        text: "Do not notch or bore joists and studs beyond what the code allows, and no beam, \
               post or bearing plate without an engineer. Know what runs inside a wall or floor \
               before you drill.",
    },
    Caution {
        title: "Freezing, and the drinking water",
        text: "A heating loop in a cold space can freeze and burst. The fill line needs the \
               backflow preventer that the code asks for, and glycol only of the kind it allows.",
    },
    Caution {
        title: "What this tool is",
        text: "A calculation from what you typed. It measures nothing and inspects nothing. Check \
               the result against the house, and have it checked where lives or money hang on it.",
    },
];
