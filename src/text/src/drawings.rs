//! Words of the drawings.

use crate::language::sentences;
use finrun_engine::job::Side;

/// A pressure of the running system, where the filling's own is left out.
pub fn above_tank(pressure: &str) -> String {
    format!("{pressure} above the tank")
}

/// A zone while no other calls.
pub fn alone(zone: &str) -> String {
    format!("{zone} alone")
}

/// Where a circulator stands against the system, or is meant to.
pub fn operating_point(system: &str, flow: &str, head: &str, planned: bool) -> String {
    match planned {
        true => format!("{flow} at {head}, planned · {system}"),
        false => format!("{flow} at {head} · {system}"),
    }
}

pub fn pump_picture(name: &str) -> String {
    format!("{name}: head against flow.")
}

/// A symbol or a line of a drawing, which the key beside it explains.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mark {
    Element,
    Enclosure,
    CapLeft,
    CapRight,
    Splice,
    InsideCorner,
    OutsideCorner,
    PipeDown,
    PipeUp,
    ReturnBend,
    Window,
    Door,
    Baseboard,
    Somewhere,
    Supply,
    Return,
    Flow,
    FlowBack,
    FromBoiler,
    ToBoiler,
    RiserUp,
    RiserDown,
    DiverterTee,
    Boiler,
    Relief,
    Gauge,
    ShutOff,
    AirEliminator,
    ExpansionTank,
    FillValve,
    Backflow,
    Circulator,
    FlowCheck,
    ZoneValve,
    BalancingValve,
    PurgeValve,
    MixingValve,
    Bypass,
    SupplyPipe,
    ReturnPipe,
}

impl Mark {
    pub const ALL: &[Mark] = &[
        Mark::Element,
        Mark::Enclosure,
        Mark::CapLeft,
        Mark::CapRight,
        Mark::Splice,
        Mark::InsideCorner,
        Mark::OutsideCorner,
        Mark::PipeDown,
        Mark::PipeUp,
        Mark::ReturnBend,
        Mark::Window,
        Mark::Door,
        Mark::Baseboard,
        Mark::Somewhere,
        Mark::Supply,
        Mark::Return,
        Mark::Flow,
        Mark::FlowBack,
        Mark::FromBoiler,
        Mark::ToBoiler,
        Mark::RiserUp,
        Mark::RiserDown,
        Mark::DiverterTee,
        Mark::Boiler,
        Mark::Relief,
        Mark::Gauge,
        Mark::ShutOff,
        Mark::AirEliminator,
        Mark::ExpansionTank,
        Mark::FillValve,
        Mark::Backflow,
        Mark::Circulator,
        Mark::FlowCheck,
        Mark::ZoneValve,
        Mark::BalancingValve,
        Mark::PurgeValve,
        Mark::MixingValve,
        Mark::Bypass,
        Mark::SupplyPipe,
        Mark::ReturnPipe,
    ];

    /// Parts of the boiler room, as the water passes them from the boiler back to it.
    pub const BOILER_ROOM: &[Mark] = &[
        Mark::Boiler,
        Mark::Relief,
        Mark::Gauge,
        Mark::ShutOff,
        Mark::AirEliminator,
        Mark::ExpansionTank,
        Mark::FillValve,
        Mark::Backflow,
        Mark::Circulator,
        Mark::FlowCheck,
        Mark::ZoneValve,
        Mark::BalancingValve,
        Mark::PurgeValve,
        Mark::MixingValve,
        Mark::Bypass,
    ];
}

pub fn mark(mark: Mark) -> &'static str {
    match mark {
        Mark::Element => "Element in its enclosure",
        Mark::Enclosure => "Enclosure, no element",
        Mark::CapLeft => "End cap, left",
        Mark::CapRight => "End cap, right",
        Mark::Splice => "Splice cover",
        Mark::InsideCorner => "Inside corner piece",
        Mark::OutsideCorner => "Outside corner piece",
        Mark::PipeDown => "Down through the floor",
        Mark::PipeUp => "Up through the floor",
        Mark::Window => "Window",
        Mark::Door => "Door",
        Mark::ReturnBend => "Pipe turns back above",
        Mark::Baseboard => "Baseboard at its wall",
        Mark::Somewhere => "Baseboard, wall not known",
        Mark::Supply => "Supply, thick",
        Mark::Return => "Return, thin",
        Mark::Flow => "Water's way",
        Mark::FlowBack => "Return's way",
        Mark::FromBoiler => "From the boiler",
        Mark::ToBoiler => "Back to the boiler",
        Mark::RiserUp => "Riser, storey above",
        Mark::RiserDown => "Riser, storey below",
        Mark::DiverterTee => "Diverter tee",
        Mark::Boiler => "Boiler",
        Mark::Relief => "Relief valve",
        Mark::Gauge => "Pressure and temperature gauge",
        Mark::ShutOff => "Shut-off valve",
        Mark::AirEliminator => "Air eliminator",
        Mark::ExpansionTank => "Expansion tank, on its tee",
        Mark::FillValve => "Fill valve",
        Mark::Backflow => "Backflow preventer",
        Mark::Circulator => "Circulator, pumping away from the tank",
        Mark::FlowCheck => "Flow check",
        Mark::ZoneValve => "Zone valve",
        Mark::BalancingValve => "Balancing valve",
        Mark::PurgeValve => "Purge and drain valve",
        Mark::MixingValve => "Mixing valve on the return",
        Mark::Bypass => "Bypass with its valve",
        Mark::SupplyPipe => "Supply pipe",
        Mark::ReturnPipe => "Return pipe",
    }
}

pub fn elevation_title(room: &str, wall: &str) -> String {
    format!("{room}, {wall}")
}

/// What an elevation shows, for who cannot see it.
pub fn elevation_picture(
    length: &str,
    height: &str,
    windows: usize,
    doors: usize,
    pieces: &str,
) -> String {
    let count = |count: usize, one: &str| match count {
        1 => format!("1 {one}"),
        count => format!("{count} {one}s"),
    };
    let (windows, doors) = (count(windows, "window"), count(doors, "door"));
    format!(
        "Elevation seen from the room: wall {length} long and {height} high, {windows}, {doors}; \
         baseboard pieces from left to right: {pieces}."
    )
}

pub fn route_title(level: &str) -> String {
    format!("{level}, plan with the way of the water")
}

pub fn route_picture(level: &str, rooms: &str) -> String {
    match rooms.is_empty() {
        true => format!("{level}: plan of the rooms; no baseboard stands here."),
        false => format!("{level}: plan of the rooms; the water passes {rooms}."),
    }
}

/// Two sides of a room.
pub fn by(length: &str, width: &str) -> String {
    format!("{length} × {width}")
}

/// The same on two lines.
pub fn by_lines(length: &str, width: &str) -> [String; 2] {
    [format!("{length} ×"), width.to_string()]
}

pub fn element_of(length: &str) -> String {
    format!("{length} element")
}

pub fn zone_line(letter: &str, name: &str, arrangement: &str) -> String {
    format!("{letter}: {name}, {arrangement}")
}

pub fn boiler_room_picture(parts: &[Mark]) -> String {
    let mut said = String::from("Boiler-room piping in the order of the water: ");
    let mut first = true;
    for part in Mark::BOILER_ROOM.iter().filter(|part| parts.contains(part)) {
        if !first {
            said.push_str("; ");
        }
        first = false;
        said.push_str(mark(*part));
    }
    said.push('.');
    said
}

pub fn must_give(power: &str) -> String {
    format!("must give {power}")
}

pub fn set_at(pressure: &str) -> String {
    format!("set to {pressure}")
}

pub fn tank_of(volume: &str, pre_charge: &str) -> String {
    format!("{volume}, pre-charge {pre_charge}")
}

pub fn back_at_least(temperature: &str) -> String {
    format!("holds the return at {temperature} or above")
}

/// Of one circulator, or of the hardest of several.
pub fn flow_at(flow: &str, head: &str, several: bool) -> String {
    match several {
        true => format!("the hardest gives {flow} at {head}"),
        false => format!("{flow} at {head}"),
    }
}

/// The side that a wall faces by its name, if it says one. The front lies at the foot of a plan, and
/// is taken for the south.
pub fn side_said(name: &str) -> Option<Side> {
    let mut found = None;
    for word in name.split(|c: char| !c.is_alphabetic()) {
        let side = match word {
            _ if is(word, &["north", "back", "rear"]) => Side::Back,
            _ if is(word, &["east", "right"]) => Side::Right,
            _ if is(word, &["south", "front", "street"]) => Side::Front,
            _ if is(word, &["west", "left"]) => Side::Left,
            _ => continue,
        };
        // A name of two sides says neither.
        if found.is_some_and(|other| other != side) {
            return None;
        }
        found = Some(side);
    }
    found
}

fn is(word: &str, any: &[&str]) -> bool {
    any.iter().any(|one| word.eq_ignore_ascii_case(one))
}

// Fixed sentences of the drawings, each by its name.
sentences! { DRAWING_WORDS;
    drawings_note: "To scale, from the job as it stands. Each sheet prints on a page of its own.";
    drawings_plans: "Plans";
    drawings_piping: "Piping";
    drawings_walls: "Walls, as seen from the room";
    schematic_title: "Piping schematic";
    schematic_note: "Not to scale but for the elements, which are as long as their feet. Supply is a \
                     whole line, return a broken one.";
    boiler_room_title: "Boiler-room piping";
    boiler_room_note: "In the order of the water, not to scale. Numbers stand in the list below it. \
                       The circulator pumps away from the tank, so that it raises the pressure of \
                       the whole loop.";
    boiler_room_cautions: "The relief valve's pipe is full size, without a valve, down to near the \
                           floor. Gas, flue and mains are licensed work; the local code and the \
                           boiler's maker stand above this sheet.";
    tank_not_drawn: "The indirect tank's own circuit is not drawn.";
    cold_water: "cold water in";
    door_short: "door";
    window_short: "window";
    elevation_note: "Wall, openings and pieces to scale; the baseboard is drawn higher than it is. \
                     Pieces stand in the middle of their stretch of wall. At which end the water \
                     enters is taken so that the way is short.";
    free_unplaced: "The free length of this wall was typed without its place: it is drawn from the \
                    left corner.";
    back_above_pieces: "The return runs back above the pieces, in the same enclosure.";
    ends_round_corner: "Round the corner the enclosure ends with a cap, where the pipe goes through the \
                        floor; that wall has no sheet.";
    route_note: "Rooms and pieces to scale. Walls stand where their names or the rooms behind them say, \
                 the front of the house at the foot, taken for the south. Pipe between baseboards is \
                 drawn from end to end: the job knows its length, not its place.";
    walls_unplaced: "Where a wall's place is not known, its pieces are drawn away from the walls. Name \
                     the wall by its side (north, back, left) to place it.";
}
