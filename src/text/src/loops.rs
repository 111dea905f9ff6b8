//! Words of suggested loops, and of what moving a room changes.

use crate::{loop_name, room_name, value};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{Kind, Length, System, Temperature, Value};
use finrun_engine::suggest::{
    Change, Direction, End, Figures, Gain, LoopFigures, NewLoop, Trouble, Unknown,
};

pub const fn suggest_loops() -> &'static str {
    "Suggest loops"
}

pub const fn suggest_note() -> &'static str {
    "Every split of this zone's rooms, in the order in which they hang now, into one to four loops, \
     each walked either way round."
}

pub const fn trying_loops() -> &'static str {
    "Trying other loops …"
}

pub const fn use_loops() -> &'static str {
    "Use these loops"
}

pub const fn loops_used() -> &'static str {
    "The rooms hang on the suggested loops. Undo brings the old ones back."
}

pub const fn loops_stay() -> &'static str {
    "Today's loops are as good as any split of this route."
}

pub const fn no_loops() -> &'static str {
    "There is nothing to suggest here: rooms with a heat loss, on a series or split loop whose flow \
     is found, are needed."
}

pub const fn today() -> &'static str {
    "Today"
}

pub const fn this_zone() -> &'static str {
    "This zone"
}

pub const fn suggested() -> &'static str {
    "Suggested"
}

pub const fn what_is_wrong() -> &'static str {
    "What is wrong today"
}

pub const fn what_stays() -> &'static str {
    "What loops do not cure"
}

pub const fn before_piping() -> &'static str {
    "Before you pipe it"
}

pub const fn rooms_short_word() -> &'static str {
    "Rooms short"
}

pub const fn joints_word() -> &'static str {
    "Joints at the elements"
}

pub const fn cost_word() -> &'static str {
    "Cost of elements, pipe and valves"
}

/// What the figures of the suggested loops are reckoned with.
pub const fn figures_note() -> &'static str {
    "Figures as this page will show them, with the pipe that stands at the rooms now; cost with the \
     pipe as it would lie."
}

/// Why the loops are better, in a sentence.
pub fn gain(change: &Change) -> &'static str {
    let Figures { short_rooms, problems, .. } = &change.after;
    let still = |test: fn(&Trouble) -> bool| problems.iter().any(test);
    let limit = |t: &Trouble| {
        use Trouble::{Carries, Fast, PumpShort};
        matches!(t, Carries { .. } | Fast { .. } | PumpShort { .. })
    };
    match change.gain {
        Gain::RoomsHeated if *short_rooms == 0 => "These loops heat every room.",
        Gain::RoomsHeated => "These loops heat more rooms.",
        Gain::LessShort => "No loops heat every room, but these leave less missing.",
        Gain::WithinLimits if still(limit) => {
            "These loops ask less of tube and circulator, though still too much."
        }
        Gain::WithinLimits => "These loops ask no more of tube and circulator than they carry.",
        Gain::WithinPractice => "These loops are nearer to the length that is common practice.",
        Gain::Cheaper => "These loops cost less.",
        Gain::FewerLoops => "Fewer loops do as well.",
        Gain::LessElement => "These loops need less element.",
    }
}

/// A loop among several, counted from zero: "Loop 2", or the only one.
fn name(at: usize, of: usize) -> String {
    match of {
        1 => "The loop".to_string(),
        _ => loop_name(at as u32),
    }
}

/// A loop as it runs: "Loop 1: Kitchen, Hall, Bath: 42 ft of element, 1.9 gpm, comes back at 158 °F".
fn loop_line(draft: &Draft, at: usize, of: usize, one: &LoopFigures, system: System) -> String {
    let rooms: Vec<String> = one.rooms.iter().map(|&room| room_name(draft, room)).collect();
    let mut line = name(at, of);
    line.push_str(": ");
    line.push_str(&rooms.join(", "));
    line.push_str(": ");
    line.push_str(&value(one.element, system));
    line.push_str(" of element, ");
    line.push_str(&value(one.flow, system));
    line.push_str(", comes back at ");
    line.push_str(&value(one.back, system));
    line
}

/// All that is wrong with a zone's loops, the worst first.
pub fn troubles(draft: &Draft, figures: &Figures) -> Vec<String> {
    let of = figures.loops.len();
    figures.problems.iter().map(|one| trouble(draft, one, of, draft.units)).collect()
}

/// What is wrong with one of so many loops.
pub fn trouble(draft: &Draft, trouble: &Trouble, of: usize, system: System) -> String {
    match *trouble {
        Trouble::Short { room, short } => {
            format!("{} is short by {}.", room_name(draft, room), value(short, system))
        }
        Trouble::Carries { at, element, carries } => format!(
            "{} has {} of element; its tube carries {} before it is heard.",
            name(at, of),
            value(element, system),
            value(carries, system)
        ),
        Trouble::Fast { at, velocity, most } => format!(
            "{} runs at {}; above {} it is heard.",
            name(at, of),
            value(velocity, system),
            value(most, system)
        ),
        Trouble::PumpShort { meant, flow } => format!(
            "The circulator moves {} where {} are meant.",
            value(flow, system),
            value(meant, system)
        ),
        Trouble::Long { at, element, usual } => format!(
            "{} has {} of element; common practice stops at {} on this tube.",
            name(at, of),
            value(element, system),
            value(usual, system)
        ),
        Trouble::Slow { at, velocity, least } => format!(
            "{} runs at {}; below {} air may stay in it, so flush it at full flow.",
            name(at, of),
            value(velocity, system),
            value(least, system)
        ),
    }
}

/// Pipe that has to be measured before it is laid.
fn unknown_pipe(draft: &Draft, unknown: &Unknown, system: System) -> String {
    let room = room_name(draft, unknown.room);
    let length = value(unknown.length, system);
    match unknown.end {
        End::Supply => format!(
            "A loop would begin at {room}, where none does today. {length} of pipe there were reckoned \
             with to choose it, the shorter way along the route. Measure it and type it at the room."
        ),
        End::Return => format!(
            "A loop would end at {room}, where none does today. {length} of pipe back from there were \
             reckoned with to choose it, the shorter way along the route. Measure it and type it at \
             the room."
        ),
    }
}

/// That a loop is walked the other way round.
fn turned(draft: &Draft, at: usize, loops: &[NewLoop]) -> Option<String> {
    let one = loops.get(at).filter(|one| one.direction == Direction::Reversed)?;
    let (first, last) = (one.rooms.first()?, one.rooms.last()?);
    let (first, last) = (room_name(draft, *first), room_name(draft, *last));
    Some(format!(
        "{} goes the other way round, from {first} to {last}. What stands at a room is the pipe from the \
         room before it, so look at each of its rooms.",
        name(at, loops.len())
    ))
}

/// What the last move of a room changed in its zone: element, head, return, rooms short.
pub fn moved(before: &Zoned, after: &Zoned, system: System) -> String {
    let figure = |name: &str, was: Value, is: Value| {
        let (was, is) = (value(was, system), value(is, system));
        match was == is {
            true => None,
            false => Some(format!("{name} {was} → {is}")),
        }
    };
    let head = |head: Length| Value::new(Kind::Head, head.si());
    let changes = [
        figure("element", before.element.into(), after.element.into()),
        figure("head", head(before.head), head(after.head)),
        figure("return", before.back.into(), after.back.into()),
        figure("rooms short", Value::count(before.short), Value::count(after.short)),
    ];
    let changes: Vec<String> = changes.into_iter().flatten().collect();
    match changes.is_empty() {
        true => "The last move changes nothing here.".to_string(),
        false => format!("By the last move: {}.", changes.join(", ")),
    }
}

/// What a zone comes to, as far as a move is told.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Zoned {
    pub element: Length,
    pub head: Length,
    pub back: Temperature,
    pub short: usize,
}

/// The rows of figures before and after, each with the end of its name.
pub fn loop_figures(
    change: &Change,
    system: System,
) -> Vec<(&'static str, &'static str, [String; 2])> {
    let both = |look: &dyn Fn(&Figures) -> Value| {
        [&change.before, &change.after].map(|figures| value(look(figures), system))
    };
    let mut rows = vec![
        ("loops", "Loops", both(&|f| Value::count(f.loops.len()))),
        ("short", rooms_short_word(), both(&|f| Value::count(f.short_rooms))),
        ("element", "Element", both(&|f| f.element.into())),
        ("joints", joints_word(), both(&|f| Value::count(f.joints))),
        ("head", super::head_short(), both(&|f| Value::new(Kind::Head, f.head.si()))),
        ("fastest", super::fastest(), both(&|f| f.velocity.into())),
        ("back", super::return_word(), both(&|f| f.back.into())),
    ];
    if change.before.cost.is_some() && change.after.cost.is_some() {
        let cost = |f: &Figures| f.cost.map_or(Value::number(0.0), Value::from);
        rows.push(("cost", cost_word(), both(&cost)));
    }
    rows
}

/// Each loop as it runs.
pub fn loop_lines(draft: &Draft, figures: &Figures, system: System) -> Vec<String> {
    let of = figures.loops.len();
    let loops = figures.loops.iter().enumerate();
    loops.map(|(at, one)| loop_line(draft, at, of, one, system)).collect()
}

/// What has to be measured, or looked at, before the loops are piped.
pub fn to_measure(draft: &Draft, change: &Change) -> Vec<String> {
    let mut lines: Vec<String> =
        (0..change.loops.len()).filter_map(|at| turned(draft, at, &change.loops)).collect();
    let unknown = change.unknown.iter();
    lines.extend(unknown.map(|unknown| unknown_pipe(draft, unknown, draft.units)));
    lines
}
