//! What the readings tell, in words: what was found, how it was judged, what to do.

use crate::{circuit_at, room_name, value};
use finrun_engine::commission::{AtTop, Beside, By, CircuitFinding, FillingFinding, RoomFinding};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{System, TemperatureDifference, Value};

fn percent(share: f64, system: System) -> String {
    value(Value::share(share), system)
}

pub fn filling_finding(finding: FillingFinding, system: System) -> String {
    let at = |pressure| value(pressure, system);
    match finding {
        FillingFinding::FillFits { .. } => "The fill pressure is as planned.".to_string(),
        FillingFinding::FillLow { measured, planned, at_top, air_comes_in } => {
            let then = match air_comes_in {
                AtTop::TooLittle => "too little to keep air out. Top it up, and look for a leak.",
                AtTop::Enough => "which will do; top it up all the same.",
            };
            format!(
                "The fill pressure of {} is below the planned {}: {} is left at the top, {then}",
                at(measured),
                at(planned),
                at(at_top)
            )
        }
        FillingFinding::FillHigh { measured, planned, relief } => format!(
            "The fill pressure of {} is above the planned {}: warm, it may come to the relief valve's \
             {}. Let some water off, and see whether the fill valve leaks.",
            at(measured),
            at(planned),
            at(relief)
        ),
        FillingFinding::ChargeFits { .. } => "The tank's air is as planned.".to_string(),
        FillingFinding::ChargeLow { measured, planned } => format!(
            "The tank's air of {} is below the planned {}: it fills with water cold, and the relief \
             valve may drip when it is hot. Pump it up with no water pressing on it.",
            at(measured),
            at(planned)
        ),
        FillingFinding::ChargeHigh { measured, planned } => format!(
            "The tank's air of {} is above the planned {}: it holds no water to give back, and the \
             pressure falls when the system cools. Let some air off.",
            at(measured),
            at(planned)
        ),
        FillingFinding::ColderThanPlanned { measured, planned } => format!(
            "It is {} outside, colder than the design day's {}: rooms may be cool, and nothing is wrong.",
            value(measured, system),
            value(planned, system)
        ),
    }
}

/// The finding in short, for its heading.
pub fn circuit_verdict(finding: &CircuitFinding) -> &'static str {
    match finding {
        CircuitFinding::HalfRead => "Half read",
        CircuitFinding::TooCool { .. } => "Too cool to judge",
        CircuitFinding::Fits { .. } | CircuitFinding::FlowFits { .. } => "As it should be",
        CircuitFinding::FlowLow { .. } => "Low flow",
        CircuitFinding::FlowHigh { .. } => "More flow than meant",
        CircuitFinding::Still { .. } => "Air, or shut",
        CircuitFinding::HardlyCools { .. } => "Gives hardly any heat",
        CircuitFinding::Backward { .. } => "Return hotter than supply",
        CircuitFinding::LessHeat { .. } => "Less heat than calculated",
        CircuitFinding::MoreHeat { .. } => "Readings disagree",
        CircuitFinding::Reversed { .. } => "Reversed flow",
        CircuitFinding::ValveFits { .. } => "Valve as it should be",
        CircuitFinding::ValveOff { .. } => "Wrong setting",
    }
}

pub fn circuit_finding(draft: &Draft, finding: &CircuitFinding, system: System) -> String {
    let degrees = |drop: TemperatureDifference| value(drop, system);
    match *finding {
        CircuitFinding::HalfRead => {
            "Read supply and return both, at the same time: one alone tells nothing.".to_string()
        }
        CircuitFinding::TooCool { supply } => format!(
            "Water of {} is too little warmer than the rooms. Read again once it is hot and no reading \
             changes.",
            value(supply, system)
        ),
        CircuitFinding::Fits { drop, expected } => format!(
            "The water loses {}; at this supply {} was calculated.",
            degrees(drop),
            degrees(expected)
        ),
        CircuitFinding::FlowFits { measured, meant } => format!(
            "{} flow, where {} is meant. Read supply and return too: they tell of the heat.",
            value(measured, system),
            value(meant, system)
        ),
        CircuitFinding::FlowLow { share, by } => format!(
            "About {} of the flow that is meant, {}. Bleed it, open what is throttled or half shut, \
             clean the strainer, see the circulator's speed.",
            percent(share, system),
            judged_by(by, system)
        ),
        CircuitFinding::FlowHigh { share, by } => format!(
            "About {} of the flow that is meant, {}. Throttle its valve or slow the circulator; other \
             circuits may be short of it.",
            percent(share, system),
            judged_by(by, system)
        ),
        CircuitFinding::Still { share, by } => format!(
            "About {} of the flow that is meant, {}. Most often air stands at a high point, or a valve \
             is shut, or its zone valve does not open. Purge it again.",
            percent(share, system),
            judged_by(by, system)
        ),
        CircuitFinding::HardlyCools { drop, expected } => format!(
            "The water loses only {} where {} was calculated. It goes another way (a bypass, a valve \
             that leaks past), or the elements give no heat: dampers shut, inlets or fins blocked.",
            degrees(drop),
            degrees(expected)
        ),
        CircuitFinding::Backward { supply, back } => format!(
            "The return of {} is hotter than the supply of {}. Either the two were read the wrong way \
             round, or the water runs backward: circulator the wrong way round, no flow check.",
            value(back, system),
            value(supply, system)
        ),
        CircuitFinding::LessHeat { share } => format!(
            "The measured flow is right, and flow times drop comes to {} of the heat calculated. Look \
             at dampers, at carpet and furniture before the inlets, at bent and dusty fins.",
            percent(share, system)
        ),
        CircuitFinding::MoreHeat { share } => format!(
            "Flow times drop comes to {} of the heat calculated, more than the elements can give. Read \
             flow and temperatures again.",
            percent(share, system)
        ),
        CircuitFinding::Reversed { first, last } => format!(
            "{} is cooler and {} warmer than the plan has them beside each other, and it fits water \
             that enters from the other end. Feel which end is hotter; if it is the last room's, supply \
             and return are crossed.",
            room_name(draft, first),
            room_name(draft, last)
        ),
        CircuitFinding::ValveFits { set } => {
            format!(
                "The valve stands at a Cv of {}, as planned.",
                value(Value::number(set), system)
            )
        }
        CircuitFinding::ValveOff { set, planned } => format!(
            "The valve stands at a Cv of {}; the plan has {}. {} it, then read again.",
            value(Value::number(set), system),
            value(Value::number(planned), system),
            if set > planned { "Throttle" } else { "Open" }
        ),
    }
}

fn judged_by(by: By, system: System) -> String {
    match by {
        By::Meter { measured, meant } => {
            format!(
                "by {} measured, where {} is meant",
                value(measured, system),
                value(meant, system)
            )
        }
        By::Drop { drop, expected } => format!(
            "by its drop of {}, where {} was calculated at this supply",
            value(drop, system),
            value(expected, system)
        ),
    }
}

/// The finding in short, for its heading.
pub fn room_verdict(finding: &RoomFinding) -> &'static str {
    match finding {
        RoomFinding::Fits { .. } => "Warm enough",
        RoomFinding::Warm { .. } => "Too warm",
        RoomFinding::NotJudged { .. } => "Cool",
        RoomFinding::BehindCircuit { .. } => "Cool, as its circuit",
        RoomFinding::Undersized { .. } => "Undersized here",
        RoomFinding::LosesMore { .. } => "Loses more, or gives less",
        RoomFinding::WithZone { .. } => "Cool with its zone",
    }
}

pub fn room_finding(draft: &Draft, finding: &RoomFinding, system: System) -> String {
    let degrees = |temperature| value(temperature, system);
    match *finding {
        RoomFinding::Fits { air, wanted } => {
            format!("{}, where {} is wanted.", degrees(air), degrees(wanted))
        }
        RoomFinding::Warm { air, wanted } => format!(
            "{} where {} is wanted. Close its damper a little, or see where the thermostat hangs.",
            degrees(air),
            degrees(wanted)
        ),
        RoomFinding::NotJudged { air, wanted } => format!(
            "{} where {} is wanted. Type the outdoor temperature and the supply, and it can be judged.",
            degrees(air),
            degrees(wanted)
        ),
        RoomFinding::BehindCircuit { air, wanted, first } => format!(
            "{} where {} is wanted. Mend {} first, then read again.",
            degrees(air),
            degrees(wanted),
            circuit_at(draft, first)
        ),
        RoomFinding::Undersized { gives, loses, .. } => format!(
            "At this supply the element gives {}, and at this weather the room loses {}. Hotter water, \
             more element, or less loss.",
            value(gives, system),
            value(loses, system)
        ),
        RoomFinding::LosesMore { times, beside, .. } => {
            let how = match beside {
                Beside::Others => "Beside the other rooms of its zone",
                Beside::AllTheTime => "If the heat ran all the time",
            };
            format!(
                "{how}, it loses {} times what was calculated, or its element gives so much less. Look \
                 for a draught or missing insulation; for a shut damper, blocked inlet or dusty fins.",
                value(Value::number((times * 10.0).round() / 10.0), system)
            )
        }
        RoomFinding::WithZone { air, wanted } => format!(
            "{} where {} is wanted, as its whole zone: the thermostat is set lower, or the house is not \
             warm yet.",
            degrees(air),
            degrees(wanted)
        ),
    }
}

/// What should come back at the supply that was measured.
pub fn expected_back(back: &str) -> String {
    format!("At this supply {back} should come back.")
}

/// How many readings were taken, for the list of pages.
pub fn readings(count: usize) -> String {
    match count {
        0 => "nothing measured yet".to_string(),
        1 => "1 reading".to_string(),
        count => format!("{count} readings"),
    }
}

/// What the owner should know, each with a heading.
pub const CARE: &[(&str, &str)] = &[
    (
        "Bleeding",
        "Gurgling, or an element that is cool along its top, is air. With the water cool, open its vent \
         a little over a cup until water comes, close it, and look at the gauge.",
    ),
    (
        "The gauge",
        "Cold, it should stand near the fill pressure on this sheet. If it falls again and again, \
         there is a leak: call. Water that is topped up again and again rusts the system.",
    ),
    (
        "Fins",
        "Once a year, cold, take the front off and vacuum the fins with a soft brush; straighten bent \
         ones. Never paint fins.",
    ),
    (
        "Enclosures",
        "They may be painted, with paint for warm metal. Keep the slot below and the damper above \
         free: no carpet, no furniture or curtain against them.",
    ),
    (
        "Water",
        "No fresh water without need. Inhibitor, or glycol and its protection, is tested once a year \
         as its maker says.",
    ),
    (
        "Cold weather",
        "Leave the heating on, at 55 °F (13 °C) or more, when nobody is at home. A loop that stood \
         frozen is not heated before it was looked at.",
    ),
    (
        "If a room is cold",
        "Thermostat up? Damper open, inlet free? Gauge as it should be? Pipe to the room hot? If only \
         the pipe is hot, bleed. If nothing is hot, or more rooms are cold, call.",
    ),
    (
        "Every year",
        "Burner, flue and combustion by someone licensed; relief valve, tank and carbon monoxide alarms \
         tested.",
    ),
    (
        "At once",
        "Water from the relief valve, a gauge in the red, a smell of gas or an alarm: off at the switch \
         if it is safe, out of the house for gas and alarms, and call.",
    ),
];
