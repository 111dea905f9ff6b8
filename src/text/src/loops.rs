//! Words of suggested loops, and of what moving a room changes.

use crate::language::{either, say, sentences};
use crate::{loop_name, room_name, value};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{Kind, Length, System, Temperature, Value};
use finrun_engine::suggest::{
    Change, Direction, End, Figures, Gain, LoopFigures, NewLoop, Trouble, Unknown,
};

// Fixed sentences of the loops, each by its name.
sentences! { LOOP_WORDS;
    suggest_loops: "Suggest loops", "Proponer circuitos";
    suggest_note: "Every split of this zone's rooms, in the order in which they hang now, into \
                   one to four loops, each walked either way round.",
                  "Todas las divisiones de las habitaciones de esta zona, en el orden en que \
                   están ahora, en uno a cuatro circuitos, cada uno recorrido en los dos sentidos.";
    trying_loops: "Trying other loops …", "Probando otros circuitos …";
    use_loops: "Use these loops", "Usar estos circuitos";
    loops_used: "The rooms hang on the suggested loops. Undo brings the old ones back.",
                "Las habitaciones están en los circuitos propuestos. Deshacer devuelve los \
                 anteriores.";
    loops_stay: "Today's loops are as good as any split of this route.",
                "Los circuitos de hoy son tan buenos como cualquier división de este recorrido.";
    no_loops: "There is nothing to suggest here: rooms with a heat loss, on a series or split \
               loop whose flow is found, are needed.",
              "Aquí no hay nada que proponer: hacen falta habitaciones con pérdida de calor, en \
               un circuito en serie o dividido cuyo caudal se conozca.";
    today: "Today", "Hoy";
    this_zone: "This zone", "Esta zona";
    suggested: "Suggested", "Propuesto";
    what_is_wrong: "What is wrong today", "Qué está mal hoy";
    what_stays: "What loops do not cure", "Lo que los circuitos no arreglan";
    before_piping: "Before you pipe it", "Antes de poner la tubería";
    rooms_short_word: "Rooms short", "Habitaciones con calor insuficiente";
    joints_word: "Joints at the elements", "Uniones en los elementos";
    cost_word: "Cost of elements, pipe and valves", "Costo de elementos, tubo y válvulas";
    // What the figures of the suggested loops are reckoned with.
    figures_note: "Figures as this page will show them, with the pipe that stands at the rooms \
                   now; cost with the pipe as it would lie.",
                  "Cifras como las mostrará esta página, con el tubo que está ahora en las \
                   habitaciones; costo con el tubo como quedaría.";
}

/// Why the loops are better, in a sentence.
pub fn gain(change: &Change) -> &'static str {
    let Figures { short_rooms, problems, .. } = &change.after;
    let still = |test: fn(&Trouble) -> bool| problems.iter().any(test);
    let limit = |t: &Trouble| {
        use Trouble::{Carries, Fast, PumpShort};
        matches!(t, Carries { .. } | Fast { .. } | PumpShort { .. })
    };
    either(match change.gain {
        Gain::RoomsHeated if *short_rooms == 0 => {
            ("These loops heat every room.", "Estos circuitos calientan todas las habitaciones.")
        }
        Gain::RoomsHeated => {
            ("These loops heat more rooms.", "Estos circuitos calientan más habitaciones.")
        }
        Gain::LessShort => (
            "No loops heat every room, but these leave less missing.",
            "Ningún circuito calienta todas las habitaciones, pero con estos falta menos.",
        ),
        Gain::WithinLimits if still(limit) => (
            "These loops ask less of tube and circulator, though still too much.",
            "Estos circuitos piden menos al tubo y al circulador, aunque todavía demasiado.",
        ),
        Gain::WithinLimits => (
            "These loops ask no more of tube and circulator than they carry.",
            "Estos circuitos no piden al tubo y al circulador más de lo que pueden.",
        ),
        Gain::WithinPractice => (
            "These loops are nearer to the length that is common practice.",
            "Estos circuitos están más cerca del largo que es práctica común.",
        ),
        Gain::Cheaper => ("These loops cost less.", "Estos circuitos cuestan menos."),
        Gain::FewerLoops => ("Fewer loops do as well.", "Menos circuitos sirven igual."),
        Gain::LessElement => {
            ("These loops need less element.", "Estos circuitos necesitan menos elemento.")
        }
    })
}

/// A loop among several, counted from zero: "Loop 2", or the only one.
fn name(at: usize, of: usize) -> String {
    match of {
        1 => either(("The loop", "El circuito")).to_string(),
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
    line.push_str(either((" of element, ", " de elemento, ")));
    line.push_str(&value(one.flow, system));
    line.push_str(either((", comes back at ", ", vuelve a ")));
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
            say!(
                "{} is short by {}.",
                "A {} le faltan {}.";
                room_name(draft, room), value(short, system)
            )
        }
        Trouble::Carries { at, element, carries } => say!(
            "{} has {} of element; its tube carries {} before it is heard.",
            "{} tiene {} de elemento; su tubo lleva {} antes de hacer ruido.";
            name(at, of),
            value(element, system),
            value(carries, system)
        ),
        Trouble::Fast { at, velocity, most } => say!(
            "{} runs at {}; above {} it is heard.",
            "{} corre a {}; por encima de {} hace ruido.";
            name(at, of),
            value(velocity, system),
            value(most, system)
        ),
        Trouble::PumpShort { meant, flow } => say!(
            "The circulator moves {} where {} are meant.",
            "El circulador mueve {} donde se prevén {}.";
            value(flow, system),
            value(meant, system)
        ),
        Trouble::Long { at, element, usual } => say!(
            "{} has {} of element; common practice stops at {} on this tube.",
            "{} tiene {} de elemento; en este tubo la práctica común llega a {}.";
            name(at, of),
            value(element, system),
            value(usual, system)
        ),
        Trouble::Slow { at, velocity, least } => say!(
            "{} runs at {}; below {} air may stay in it, so flush it at full flow.",
            "{} corre a {}; por debajo de {} le puede quedar aire: lávelo a todo caudal.";
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
        End::Supply => say!(
            "A loop would begin at {room}, where none does today. {length} of pipe there were \
             reckoned with to choose it, the shorter way along the route. Measure it and type it \
             at the room.",
            "Un circuito empezaría en {room}, donde hoy no empieza ninguno. Para elegirlo se \
             contó con {length} de tubo hasta allí, por el camino más corto del recorrido. Mídalo \
             y escríbalo en la habitación."
        ),
        End::Return => say!(
            "A loop would end at {room}, where none does today. {length} of pipe back from there \
             were reckoned with to choose it, the shorter way along the route. Measure it and \
             type it at the room.",
            "Un circuito terminaría en {room}, donde hoy no termina ninguno. Para elegirlo se \
             contó con {length} de tubo de vuelta desde allí, por el camino más corto del \
             recorrido. Mídalo y escríbalo en la habitación."
        ),
    }
}

/// That a loop is walked the other way round.
fn turned(draft: &Draft, at: usize, loops: &[NewLoop]) -> Option<String> {
    let one = loops.get(at).filter(|one| one.direction == Direction::Reversed)?;
    let (first, last) = (one.rooms.first()?, one.rooms.last()?);
    let (first, last) = (room_name(draft, *first), room_name(draft, *last));
    Some(say!(
        "{} goes the other way round, from {first} to {last}. What stands at a room is the pipe \
         from the room before it, so look at each of its rooms.",
        "{} va en el otro sentido, de {first} a {last}. Lo que está en una habitación es el tubo \
         desde la habitación anterior, así que revise cada una de sus habitaciones.";
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
        figure(either(("element", "elemento")), before.element.into(), after.element.into()),
        figure(either(("head", "altura de bombeo")), head(before.head), head(after.head)),
        figure(either(("return", "retorno")), before.back.into(), after.back.into()),
        figure(
            either(("rooms short", "habitaciones con falta")),
            Value::count(before.short),
            Value::count(after.short),
        ),
    ];
    let changes: Vec<String> = changes.into_iter().flatten().collect();
    match changes.is_empty() {
        true => {
            either(("The last move changes nothing here.", "El último cambio no altera nada aquí."))
                .to_string()
        }
        false => say!("By the last move: {}.", "Por el último cambio: {}."; changes.join(", ")),
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
        ("loops", either(("Loops", "Circuitos")), both(&|f| Value::count(f.loops.len()))),
        ("short", rooms_short_word(), both(&|f| Value::count(f.short_rooms))),
        ("element", either(("Element", "Elemento")), both(&|f| f.element.into())),
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
