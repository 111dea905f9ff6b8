//! Words of the piping: zones, arrangements, routes, circulators.

use crate::language::{Both, either, say};
use crate::{in_units, room_name, value};
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
        Some((index, _)) => say!("Zone {}", "Zona {}"; index + 1),
        None => either(("Zone", "Zona")).to_string(),
    }
}

pub fn arrangement(arrangement: Arrangement) -> &'static str {
    either(match arrangement {
        Arrangement::Series => ("Series loop", "Circuito en serie"),
        Arrangement::Split => ("Split loop", "Circuito dividido"),
        Arrangement::DiverterTees => {
            ("One-pipe main with diverter tees", "Un tubo con tes desviadoras")
        }
        Arrangement::DirectReturn => ("Two-pipe, direct return", "Dos tubos, retorno directo"),
        Arrangement::ReverseReturn => ("Two-pipe, reverse return", "Dos tubos, retorno inverso"),
        Arrangement::HomeRun => ("Home run to a manifold", "Línea directa al colector"),
    })
}

/// What an arrangement is, for who chooses.
pub fn arrangement_note(arrangement: Arrangement) -> &'static str {
    either(match arrangement {
        Arrangement::Series => (
            "The water passes each room in turn and cools on the way. Least pipe; one thermostat.",
            "El agua pasa por cada habitación, una tras otra, y se enfría en el camino. El menor \
             tubo; un termostato.",
        ),
        Arrangement::Split => (
            "Two or more loops from one trunk, each with the same supply water. A balancing valve \
             in each return shares the flow.",
            "Dos o más circuitos desde una troncal, todos con la misma agua de suministro. Una \
             válvula de balanceo en cada retorno reparte el caudal.",
        ),
        Arrangement::DiverterTees => (
            "One main all the way round. Each room hangs on two tees, one of them a diverter, and \
             can be shut off by itself.",
            "Una tubería principal que da toda la vuelta. Cada habitación está conectada con dos \
             tes, una de ellas desviadora, y se puede cerrar por separado.",
        ),
        Arrangement::DirectReturn => (
            "A supply and a return main. The first room is nearest both ways and takes too much \
             unless its valve is throttled.",
            "Una tubería principal de suministro y otra de retorno. La primera habitación es la \
             más cercana por los dos lados y toma demasiado si su válvula no se estrangula.",
        ),
        Arrangement::ReverseReturn => (
            "A supply and a return main, the return going on in the same direction: every room \
             has about the same way, and the valves have less to do.",
            "Una tubería principal de suministro y otra de retorno, que sigue en la misma \
             dirección: cada habitación tiene casi el mismo camino, y las válvulas tienen menos \
             que hacer.",
        ),
        Arrangement::HomeRun => (
            "Each room by two tubes of its own to a manifold in the boiler room.",
            "Cada habitación con dos tubos propios hasta un colector en el cuarto de caldera.",
        ),
    })
}

pub(crate) fn zoning(zoning: Zoning) -> &'static str {
    either(match zoning {
        Zoning::Valves => ("Zone valves, one circulator", "Válvulas de zona, un circulador"),
        Zoning::Circulators => ("A circulator for each zone", "Un circulador para cada zona"),
    })
}

pub(crate) fn balancing(balancing: Balancing) -> &'static str {
    either(match balancing {
        Balancing::None => ("None", "Ninguno"),
        Balancing::Valves => {
            ("In each return, set as calculated", "En cada retorno, según el cálculo")
        }
    })
}

pub(crate) fn back_path(path: BackPath) -> &'static str {
    either(match path {
        BackPath::OwnWay => ("By pipe of its own", "Por tubo propio"),
        BackPath::InEnclosure => {
            ("Above the elements, in the enclosure", "Sobre los elementos, en la carcasa")
        }
    })
}

pub(crate) fn pump_kind(kind: PumpKind) -> &'static str {
    match kind {
        PumpKind::Typical(pump) => typical_pump(pump),
        PumpKind::Points => either(("I have its curve", "Tengo su curva")),
    }
}

pub fn typical_pump(pump: TypicalPump) -> &'static str {
    either(match pump {
        TypicalPump::Small => ("Small, a typical curve", "Pequeño, curva típica"),
        TypicalPump::Medium => ("Medium, a typical curve", "Mediano, curva típica"),
        TypicalPump::HighHead => ("High head, a typical curve", "Gran altura, curva típica"),
    })
}

pub(crate) fn pump_set(set: PumpSet) -> &'static str {
    either(match set {
        PumpSet::One => ("One", "Uno"),
        PumpSet::TwoInSeries => ("Two in series", "Dos en serie"),
        PumpSet::TwoInParallel => ("Two in parallel", "Dos en paralelo"),
    })
}

pub(crate) fn diverters(diverters: Diverters) -> &'static str {
    either(match diverters {
        Diverters::One => ("One, on the return", "Una, en el retorno"),
        Diverters::Two => ("Two (element below the main)", "Dos (elemento debajo del principal)"),
    })
}

pub(crate) fn shut_off(valve: ShutOff) -> &'static str {
    either(match valve {
        ShutOff::Open => ("Open", "Abierta"),
        ShutOff::Shut => ("Shut", "Cerrada"),
    })
}

pub(crate) fn pipe_cover(cover: PipeCover) -> &'static str {
    either(match cover {
        PipeCover::Bare => ("Bare", "Desnudo"),
        PipeCover::Insulated => ("Insulated", "Con aislamiento"),
    })
}

pub fn leg_kind(kind: LegKind) -> &'static str {
    either(match kind {
        LegKind::Along => {
            ("Along the wall, in the enclosure", "A lo largo de la pared, en la carcasa")
        }
        LegKind::InsideCorner => ("Round an inside corner", "Por una esquina interior"),
        LegKind::OutsideCorner => ("Round an outside corner", "Por una esquina exterior"),
        LegKind::Doorway => {
            ("Under a doorway: down and up again", "Bajo una puerta: baja y vuelve a subir")
        }
        LegKind::ThroughFloor => ("Through the floor", "A través del piso"),
        LegKind::Below => ("Below the floor", "Por debajo del piso"),
    })
}

/// Where a room hangs: "Zone 2", or "Upstairs, loop 1".
pub(crate) fn hung(draft: &Draft, hung: Hung) -> String {
    let name = zone_name(draft, hung.zone);
    match draft.zone(hung.zone).map(|zone| zone.arrangement) {
        Some(Arrangement::Split) => say!("{name}, loop {}", "{name}, circuito {}"; hung.branch + 1),
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
        Place::ZoneValve(zone) => say!(
            "Zone valve, {}",
            "Válvula de zona, {}";
            zone_name(draft, zone)
        ),
        Place::FlowCheck(zone) => say!(
            "Flow check, {}",
            "Válvula de retención, {}";
            zone_name(draft, zone)
        ),
        Place::Trunk(zone) => say!("Trunk, {}", "Troncal, {}"; zone_name(draft, zone)),
        Place::TrunkBack(zone) => say!(
            "Trunk back, {}",
            "Troncal de vuelta, {}";
            zone_name(draft, zone)
        ),
        Place::To(id) => super::pipe_to(&room(id)),
        Place::Inside(id) => say!("In the enclosure to {}", "En la carcasa hasta {}"; room(id)),
        Place::Branch(id) => say!("Branch to {}", "Ramal a {}"; room(id)),
        Place::BranchBack(id) => say!("Branch back from {}", "Ramal de vuelta de {}"; room(id)),
        Place::Element(id) => room(id),
        Place::Between(id) => say!(
            "Main between the tees of {}",
            "Principal entre las tes de {}";
            room(id)
        ),
        Place::ReturnMain(id) => say!(
            "Return main from {}",
            "Principal de retorno desde {}";
            room(id)
        ),
        Place::Above(id) => say!(
            "Return above the element, {}",
            "Retorno sobre el elemento, {}";
            room(id)
        ),
        Place::Back(id) => say!("Pipe back from {}", "Tubo de vuelta de {}"; room(id)),
        Place::Balance(id) => say!("Balancing valve, {}", "Válvula de balanceo, {}"; room(id)),
    }
}

/// Why the flows were not found.
pub fn not_solved(reason: NotSolved) -> &'static str {
    either(match reason {
        NotSolved::PumpAgainstClosed(_) => (
            "The circulator has no open way round: a valve is shut.",
            "El circulador no tiene ningún camino abierto: hay una válvula cerrada.",
        ),
        NotSolved::NoFixedNode | NotSolved::BadEnds(_) => {
            ("The piping does not hang together.", "La tubería no está conectada entre sí.")
        }
        NotSolved::BadNumber(_) | NotSolved::NotFinite => (
            "A length, a valve or a curve has a number that means nothing.",
            "Un largo, una válvula o una curva tiene un número que no significa nada.",
        ),
        NotSolved::NoConvergence | NotSolved::ChecksFlap => (
            "No state was found in which all flows and pressures agree.",
            "No se encontró ningún estado en que concuerden todos los caudales y presiones.",
        ),
    })
}

/// Another circulator in the place of the job's.
pub fn other_pump(other: Other, system: System) -> String {
    match other {
        Other::Typical(pump) => typical_pump(pump).to_string(),
        Other::Slowed(speed) => {
            let share = finrun_engine::quantity::Value::share(speed);
            say!("Yours at {} of its speed", "El suyo a {} de su velocidad"; value(share, system))
        }
    }
}

/// A loop of a split zone, counted from zero.
pub fn loop_name(branch: u32) -> String {
    say!("Loop {}", "Circuito {}"; branch + 1)
}

/// A step of a route, counted from zero.
pub fn step_name(row: usize) -> String {
    say!("Step {}", "Paso {}"; row + 1)
}

/// What the way to a room comes to.
pub fn way(way: Way, system: System) -> String {
    let elbows = counted(way.elbows, ("elbow", "codo"), ("elbows", "codos"));
    let caps = counted(way.end_caps, ("end cap", "tapa final"), ("end caps", "tapas finales"));
    say!(
        "{} of pipe, {elbows}, {caps}",
        "{} de tubo, {elbows}, {caps}";
        value(way.length, system)
    )
}

fn counted(count: u32, one: Both, many: Both) -> String {
    format!("{count} {}", either(if count == 1 { one } else { many }))
}

/// Element on a loop, with the most that is usual on its tube.
pub fn element_of_usual(element: Length, most: Option<Length>, system: System) -> String {
    let element = value(element, system);
    match most {
        Some(most) => {
            say!(
                "{element} of element (common practice: at most {})",
                "{element} de elemento (práctica común: a lo más {})";
                value(most, system)
            )
        }
        None => say!("{element} of element", "{element} de elemento"),
    }
}

/// A rule of thumb.
pub fn rule(draft: &Draft, rule: Rule) -> String {
    match rule {
        Rule::Element(zone, room) if draft.zones.len() > 1 || is_split(draft, zone) => {
            let name = circuit_name(draft, zone, &[room]);
            say!(
                "Element on a loop of this tube, {name}: at most",
                "Elemento en un circuito de este tubo, {name}: a lo más"
            )
        }
        Rule::Element(..) => either((
            "Element on a loop of this tube: at most",
            "Elemento en un circuito de este tubo: a lo más",
        ))
        .to_string(),
        Rule::Drop => {
            either(("Temperature drop: 20 °F (11 K)", "Caída de temperatura: 20 °F (11 K)"))
                .to_string()
        }
        Rule::Flow => {
            let (load, metric) = (in_units("10,000 Btu/h"), in_units("1.3 L/min"));
            say!(
                "Flow: 1 gpm for {load} ({metric} for 1 kW)",
                "Caudal: 1 gpm por {load} ({metric} por 1 kW)"
            )
        }
        Rule::Head => either((
            "Head: 4 ft for 100 ft of pipe, the longest way half as long again for fittings",
            "Altura de bombeo: 4 pies por 100 pies de tubo, el camino más largo con la mitad más \
             por las conexiones",
        ))
        .to_string(),
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
        true => say!("{order}, open", "{order}, abierta"),
        false => order.to_string(),
    }
}

/// How the rooms are piped, in a few words.
pub fn piping_fact(draft: &Draft) -> String {
    match draft.zones.as_slice() {
        [zone] => arrangement(zone.arrangement).to_string(),
        zones => say!("{} zones", "{} zonas"; zones.len()),
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
