//! Rules of thumb of the trade beside what a system really has. All are common practice, no source.

use super::{CircuitDesign, PipingDesign};
use crate::building::{RoomId, ZoneId};
use crate::check::practice_length;
use crate::design::Design;
use crate::job::Job;
use crate::quantity::{Kind, Length, Pressure, TemperatureDifference, Unit, Value, VolumeFlow};

/// One rule, and this system.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Practice {
    pub rule: Rule,
    pub usual: Value,
    pub here: Value,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rule {
    /// So much element on a loop of this tube; the loop by its zone and the first room that it heats.
    Element(ZoneId, RoomId),
    /// 20 F from supply to return.
    Drop,
    /// A gallon a minute for 10,000 Btu/h.
    Flow,
    /// 4 ft of head for 100 ft of pipe, the way with the most counting half as long again for its
    /// fittings.
    Head,
}

/// The rules that apply; none without an element.
pub fn practice(job: &Job, design: &Design) -> Vec<Practice> {
    let piping = &design.piping;
    if piping.not_solved.is_some() || design.element_length() == Length::ZERO {
        return Vec::new();
    }
    let one = |circuit: &CircuitDesign| {
        let zone = job.zones.iter().find(|zone| zone.id == circuit.zone)?;
        let first = *circuit.rooms.first()?;
        (!zone.arrangement.has_branches()).then(|| Practice {
            rule: Rule::Element(zone.id, first),
            usual: practice_length(job.circuit.tube).into(),
            here: design.element_in(&circuit.rooms).into(),
        })
    };
    let mut rules: Vec<Practice> = piping.circuits.iter().filter_map(one).collect();
    rules.push(Practice {
        rule: Rule::Drop,
        usual: TemperatureDifference::of(20.0, Unit::FahrenheitDegree).into(),
        here: piping.drop().into(),
    });
    let tens_of_thousands = Unit::BtuPerHour.from_si(piping.heat.si()) / 10_000.0;
    rules.push(Practice {
        rule: Rule::Flow,
        usual: VolumeFlow::of(tens_of_thousands, Unit::GallonPerMinute).into(),
        here: piping.flow.into(),
    });
    let longest = piping.critical().map_or(Length::ZERO, |circuit| length(piping, circuit));
    rules.push(Practice {
        rule: Rule::Head,
        usual: Value::new(Kind::Head, longest.si() * 1.5 * 0.04),
        here: Value::new(Kind::Head, piping.head.si()),
    });
    rules
}

/// All pipe and element on a circuit's way.
fn length(piping: &PipingDesign, circuit: &CircuitDesign) -> Length {
    circuit.path.iter().filter_map(|&at| piping.passages.get(at)).map(|p| p.length).sum()
}

/// The most that a circuit of a zone takes on its whole way, as height of the water at supply
/// temperature.
pub fn zone_head(job: &Job, design: &Design, zone: ZoneId) -> Length {
    zone_head_of(job, &design.piping, zone)
}

pub(crate) fn zone_head_of(job: &Job, piping: &PipingDesign, zone: ZoneId) -> Length {
    let taken = |circuit: &CircuitDesign| -> Pressure {
        let way = circuit.path.iter().filter_map(|&at| piping.passages.get(at));
        way.map(|passage| passage.pressure_drop()).sum()
    };
    let own = piping.circuits.iter().filter(|circuit| circuit.zone == zone);
    let most = own.map(taken).fold(Pressure::ZERO, Pressure::max);
    crate::pipe::head(most, job.circuit.fluid.density(job.circuit.supply))
}
