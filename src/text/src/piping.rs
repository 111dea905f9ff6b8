//! Words of the piping: zones, arrangements, routes, circulators.

use crate::{room_name, value};
use finrun_engine::arrangement::{Other, Rule};
use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::job::{
    Arrangement, BackPath, Balancing, Diverters, Draft, Hung, LegKind, PipeCover, PumpKind,
    PumpSet, ShutOff, Way, Zoning,
};
use finrun_engine::network::{NotSolved, Place, TypicalPump};
use finrun_engine::quantity::{Length, Power, System};

/// A zone's name, or its place among them.
pub fn zone_name(draft: &Draft, id: ZoneId) -> String {
    match draft.zones.iter().enumerate().find(|(_, zone)| zone.id == id) {
        Some((_, zone)) if !zone.name.trim().is_empty() => zone.name.trim().to_string(),
        Some((index, _)) => format!("Zone {}", index + 1),
        None => "Zone".to_string(),
    }
}

pub fn arrangement(arrangement: Arrangement) -> &'static str {
    match arrangement {
        Arrangement::Series => "Series loop",
        Arrangement::Split => "Split loop",
        Arrangement::DiverterTees => "One-pipe main with diverter tees",
        Arrangement::DirectReturn => "Two-pipe, direct return",
        Arrangement::ReverseReturn => "Two-pipe, reverse return",
        Arrangement::HomeRun => "Home run to a manifold",
    }
}

/// What an arrangement is, for who chooses.
pub fn arrangement_note(arrangement: Arrangement) -> &'static str {
    match arrangement {
        Arrangement::Series => {
            "The water passes each room in turn and cools on the way. Least pipe; one thermostat."
        }
        Arrangement::Split => {
            "Two or more loops from one trunk, each with the same supply water. A balancing valve in \
             each return shares the flow."
        }
        Arrangement::DiverterTees => {
            "One main all the way round. Each room hangs on two tees, one of them a diverter, and \
             can be shut off by itself."
        }
        Arrangement::DirectReturn => {
            "A supply and a return main. The first room is nearest both ways and takes too much \
             unless its valve is throttled."
        }
        Arrangement::ReverseReturn => {
            "A supply and a return main, the return going on in the same direction: every room has \
             about the same way, and the valves have less to do."
        }
        Arrangement::HomeRun => {
            "Each room by two tubes of its own to a manifold in the boiler room."
        }
    }
}

pub(crate) fn zoning(zoning: Zoning) -> &'static str {
    match zoning {
        Zoning::Valves => "Zone valves, one circulator",
        Zoning::Circulators => "A circulator for each zone",
    }
}

pub(crate) fn balancing(balancing: Balancing) -> &'static str {
    match balancing {
        Balancing::None => "None",
        Balancing::Valves => "In each return, set as calculated",
    }
}

pub(crate) fn back_path(path: BackPath) -> &'static str {
    match path {
        BackPath::OwnWay => "By pipe of its own",
        BackPath::InEnclosure => "Above the elements, in the enclosure",
    }
}

pub(crate) fn pump_kind(kind: PumpKind) -> &'static str {
    match kind {
        PumpKind::Typical(pump) => typical_pump(pump),
        PumpKind::Points => "I have its curve",
    }
}

pub fn typical_pump(pump: TypicalPump) -> &'static str {
    match pump {
        TypicalPump::Small => "Small, a typical curve",
        TypicalPump::Medium => "Medium, a typical curve",
        TypicalPump::HighHead => "High head, a typical curve",
    }
}

pub(crate) fn pump_set(set: PumpSet) -> &'static str {
    match set {
        PumpSet::One => "One",
        PumpSet::TwoInSeries => "Two in series",
        PumpSet::TwoInParallel => "Two in parallel",
    }
}

pub(crate) fn diverters(diverters: Diverters) -> &'static str {
    match diverters {
        Diverters::One => "One, on the return",
        Diverters::Two => "Two (element below the main)",
    }
}

pub(crate) fn shut_off(valve: ShutOff) -> &'static str {
    match valve {
        ShutOff::Open => "Open",
        ShutOff::Shut => "Shut",
    }
}

pub(crate) fn pipe_cover(cover: PipeCover) -> &'static str {
    match cover {
        PipeCover::Bare => "Bare",
        PipeCover::Insulated => "Insulated",
    }
}

pub fn leg_kind(kind: LegKind) -> &'static str {
    match kind {
        LegKind::Along => "Along the wall, in the enclosure",
        LegKind::InsideCorner => "Round an inside corner",
        LegKind::OutsideCorner => "Round an outside corner",
        LegKind::Doorway => "Under a doorway: down and up again",
        LegKind::ThroughFloor => "Through the floor",
        LegKind::Below => "Below the floor",
    }
}

/// Where a room hangs: "Zone 2", or "Upstairs, loop 1".
pub(crate) fn hung(draft: &Draft, hung: Hung) -> String {
    let name = zone_name(draft, hung.zone);
    match draft.zone(hung.zone).map(|zone| zone.arrangement) {
        Some(Arrangement::Split) => format!("{name}, loop {}", hung.branch + 1),
        _ => name,
    }
}

/// A circuit by what hangs on it.
pub fn circuit_name(draft: &Draft, zone: ZoneId, rooms: &[RoomId]) -> String {
    let Some(&first) = rooms.first() else { return zone_name(draft, zone) };
    let of = draft.zone(zone).map(|zone| zone.arrangement);
    match of {
        Some(Arrangement::Split) => match draft.room(first) {
            Some(room) => hung(draft, draft.hung(room)),
            None => zone_name(draft, zone),
        },
        Some(kind) if kind.has_branches() && kind != Arrangement::DiverterTees => {
            room_name(draft, first)
        }
        _ => zone_name(draft, zone),
    }
}

/// A stretch of the way.
pub fn place(draft: &Draft, place: Place) -> String {
    let room = |id| room_name(draft, id);
    match place {
        Place::BoilerRoom => super::boiler_room().to_string(),
        Place::ZoneValve(zone) => format!("Zone valve, {}", zone_name(draft, zone)),
        Place::FlowCheck(zone) => format!("Flow check, {}", zone_name(draft, zone)),
        Place::Trunk(zone) => format!("Trunk, {}", zone_name(draft, zone)),
        Place::TrunkBack(zone) => format!("Trunk back, {}", zone_name(draft, zone)),
        Place::To(id) => super::pipe_to(&room(id)),
        Place::Inside(id) => format!("In the enclosure to {}", room(id)),
        Place::Branch(id) => format!("Branch to {}", room(id)),
        Place::BranchBack(id) => format!("Branch back from {}", room(id)),
        Place::Element(id) => room(id),
        Place::Between(id) => format!("Main between the tees of {}", room(id)),
        Place::ReturnMain(id) => format!("Return main from {}", room(id)),
        Place::Above(id) => format!("Return above the element, {}", room(id)),
        Place::Back(id) => format!("Pipe back from {}", room(id)),
        Place::Balance(id) => format!("Balancing valve, {}", room(id)),
    }
}

/// Why the flows were not found.
pub fn not_solved(reason: NotSolved) -> &'static str {
    match reason {
        NotSolved::PumpAgainstClosed(_) => "The circulator has no open way round: a valve is shut.",
        NotSolved::NoFixedNode | NotSolved::BadEnds(_) => "The piping does not hang together.",
        NotSolved::BadNumber(_) | NotSolved::NotFinite => {
            "A length, a valve or a curve has a number that means nothing."
        }
        NotSolved::NoConvergence | NotSolved::ChecksFlap => {
            "No state was found in which all flows and pressures agree."
        }
    }
}

/// Another circulator in the place of the job's.
pub fn other_pump(other: Other, system: System) -> String {
    match other {
        Other::Typical(pump) => typical_pump(pump).to_string(),
        Other::Slowed(speed) => {
            let share = finrun_engine::quantity::Value::share(speed);
            format!("Yours at {} of its speed", value(share, system))
        }
    }
}

/// A loop of a split zone, counted from zero.
pub fn loop_name(branch: u32) -> String {
    format!("Loop {}", branch + 1)
}

/// A step of a route, counted from zero.
pub fn step_name(row: usize) -> String {
    format!("Step {}", row + 1)
}

/// What the way to a room comes to.
pub fn way(way: Way, system: System) -> String {
    let elbows = counted(way.elbows, "elbow", "elbows");
    let caps = counted(way.end_caps, "end cap", "end caps");
    format!("{} of pipe, {elbows}, {caps}", value(way.length, system))
}

fn counted(count: u32, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

/// Element on a loop, with the most that is usual on its tube.
pub fn element_of_usual(element: Length, most: Option<Length>, system: System) -> String {
    let element = value(element, system);
    match most {
        Some(most) => {
            format!("{element} of element (common practice: at most {})", value(most, system))
        }
        None => format!("{element} of element"),
    }
}

/// A rule of thumb.
pub fn rule(draft: &Draft, rule: Rule) -> String {
    match rule {
        Rule::Element(zone, room) if draft.zones.len() > 1 || is_split(draft, zone) => {
            let name = circuit_name(draft, zone, &[room]);
            format!("Element on a loop of this tube, {name}: at most")
        }
        Rule::Element(..) => "Element on a loop of this tube: at most".to_string(),
        Rule::Drop => "Temperature drop: 20 °F (11 K)".to_string(),
        Rule::Flow => "Flow: 1 gpm for 10,000 Btu/h (1.3 L/min for 1 kW)".to_string(),
        Rule::Head => {
            "Head: 4 ft for 100 ft of pipe, the longest way half as long again for fittings"
                .to_string()
        }
    }
}

fn is_split(draft: &Draft, zone: ZoneId) -> bool {
    draft.zone(zone).is_some_and(|zone| zone.arrangement == Arrangement::Split)
}

/// Electric power, everywhere in watts.
pub fn watts(power: Power) -> String {
    format!("{:.0} W", power.si())
}

/// In which place a balancing valve is set.
pub fn valve_order(order: u32, last: bool) -> String {
    match last {
        true => format!("{order}, open"),
        false => order.to_string(),
    }
}

/// How the rooms are piped, in a few words.
pub fn piping_fact(draft: &Draft) -> String {
    match draft.zones.as_slice() {
        [zone] => arrangement(zone.arrangement).to_string(),
        zones => format!("{} zones", zones.len()),
    }
}

/// A room's line in a list of several zones: where it hangs, then what it comes to.
pub fn hung_line(draft: &Draft, room: RoomId, line: &str) -> String {
    match draft.rooms.iter().find(|other| other.id == room) {
        Some(room) if draft.zones.len() > 1 => {
            format!("{} · {line}", hung(draft, draft.hung(room)))
        }
        _ => line.to_string(),
    }
}
