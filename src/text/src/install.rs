//! Words of the installation: its phases, and each step in one line with its numbers. How a step is
//! done is in `how`.

mod how;

pub use how::step_how;

use crate::language::{either, say};
use crate::{circuit_name, in_units, room_name, surface_name, tube, value, zone_name};
use finrun_engine::building::RoomId;
use finrun_engine::install::{Of, Phase, Step, Task};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{FeetInches, Kind, Length, System, Value};
use finrun_engine::sizing::RunPieces;

pub fn phase(phase: Phase) -> &'static str {
    either(match phase {
        Phase::Prepare => ("Prepare and protect", "Preparar y proteger"),
        Phase::Enclosures => ("Enclosures and brackets", "Carcasas y soportes"),
        Phase::DryFit => ("Dry fit", "Presentar en seco"),
        Phase::Movement => ("Room to move", "Espacio para moverse"),
        Phase::Soldering => ("Soldering", "Soldar"),
        Phase::Doorways => ("Under doorways", "Bajo las puertas"),
        Phase::Plastic => ("Plastic tube", "Tubo de plástico"),
        Phase::Test => ("Pressure test", "Prueba de presión"),
        Phase::Fill => ("Flush, fill and purge", "Lavar, llenar y purgar"),
        Phase::Electrical => {
            ("Electrical, by licensed hands", "Electricidad, por personal con licencia")
        }
        Phase::Boiler => ("Boiler, by licensed hands", "Caldera, por personal con licencia"),
        Phase::HandOver => ("First heat and hand-over", "Primer calor y entrega"),
    })
}

/// How far the work is.
pub fn steps_done(done: usize, all: usize) -> String {
    say!("{done} of {all} done", "{done} de {all} hechos")
}

/// What the number of a photograph is said by.
pub fn photo_number(number: &str) -> String {
    say!("photo {number}", "foto {number}")
}

/// What a step is done to; empty for the house.
fn subject(draft: &Draft, of: Of) -> String {
    match of {
        Of::House => String::new(),
        Of::Zone(zone) => zone_name(draft, zone),
        Of::Circuit(room) => circuit_at(draft, room),
        Of::Room(room) => room_name(draft, room),
        Of::Run(room, wall, run) => {
            let name = format!("{}, {}", room_name(draft, room), surface_name(draft, room, wall));
            match run {
                0 => name,
                run => say!("{name}, stretch {}", "{name}, tramo {}"; run + 1),
            }
        }
    }
}

/// The name of a circuit by its first room.
pub fn circuit_at(draft: &Draft, first: RoomId) -> String {
    match draft.room(first) {
        Some(room) => circuit_name(draft, room.zone, &[first]),
        None => room_name(draft, first),
    }
}

/// A step in one line.
pub fn step_title(draft: &Draft, step: &Step) -> String {
    let of = subject(draft, step.of);
    let title = either(match &step.task {
        Task::CheckOldHouse => {
            ("Have old materials tested", "Hacer analizar los materiales viejos")
        }
        Task::ShutDown => {
            ("Old heating off, cold and drained", "Calefacción vieja apagada, fría y vaciada")
        }
        Task::Protect => ("Clear and cover", "Despejar y cubrir"),
        Task::Bore { .. } => ("Holes for the pipe", "Agujeros para el tubo"),
        Task::Brackets { .. } => ("Back plates and brackets", "Placas traseras y soportes"),
        Task::DryFit(_) => ("Pieces laid out dry", "Piezas presentadas en seco"),
        Task::LeaveRoom { .. } => ("Gap at each end", "Holgura en cada extremo"),
        Task::PipeMoves { .. } => ("Copper pipe free to move", "Tubo de cobre libre para moverse"),
        Task::ReadyForFire => ("Ready for fire", "Listos para el fuego"),
        Task::Solder { .. } => ("Joints soldered", "Uniones soldadas"),
        Task::WatchFire => ("Fire watch kept", "Vigilancia contra incendio hecha"),
        Task::Doorways { .. } => ("Drops under doors", "Bajadas bajo las puertas"),
        Task::OxygenBarrier => ("Tube has an oxygen barrier", "El tubo tiene barrera de oxígeno"),
        Task::Transitions { .. } => ("Transitions to copper", "Transiciones a cobre"),
        Task::PlasticMoves { .. } => {
            ("Plastic tube free to move", "Tubo de plástico libre para moverse")
        }
        Task::PressureTest { .. } => ("Pressure test passed", "Prueba de presión superada"),
        Task::Insulate => ("Pipes insulated", "Tubos aislados"),
        Task::Flush => ("Flushed clean", "Lavado hasta quedar limpio"),
        Task::TankAir { .. } => {
            ("Expansion tank's air set", "Aire del tanque de expansión ajustado")
        }
        Task::Glycol { .. } => ("Glycol mixed", "Glicol mezclado"),
        Task::Fill { .. } => ("Filled", "Sistema lleno"),
        Task::Purge { .. } => ("Purged of air", "Aire purgado"),
        Task::Wire { .. } => ("Wired", "Cableado hecho"),
        Task::Thermostat => ("Thermostat placed", "Termostato colocado"),
        Task::Alarms => {
            ("Carbon monoxide alarms work", "Las alarmas de monóxido de carbono funcionan")
        }
        Task::ReliefPipe { .. } => ("Relief valve piped", "Tubo de la válvula de alivio puesto"),
        Task::Start { .. } => ("Boiler started", "Caldera encendida"),
        Task::ResetControl(_) => ("Outdoor reset set", "Compensación exterior ajustada"),
        Task::FirstHeat { .. } => ("First heat", "Primer calor"),
        Task::Balance { .. } => ("Balancing valve set", "Válvula de balanceo ajustada"),
        Task::Measure => ("Readings taken", "Lecturas tomadas"),
        Task::HandOver => ("Handed over", "Entregado"),
    });
    match of.is_empty() {
        true => title.to_string(),
        false => format!("{of}: {}", lower_first(title)),
    }
}

/// As it stands within a sentence: "PEX" stays.
pub(crate) fn lower_first(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next();
    match letters.as_str().starts_with(char::is_lowercase) {
        true => first.into_iter().flat_map(char::to_lowercase).chain(letters).collect(),
        false => words.to_string(),
    }
}

/// The numbers of a step that there are several of, one for each room or zone; empty for others.
pub fn step_numbers(draft: &Draft, step: &Step, system: System) -> String {
    match &step.task {
        Task::Bore { holes, tube: of, wide } => {
            let what = match holes {
                Some(1) => either(("1 hole", "1 agujero")).to_string(),
                Some(count) => say!("{count} holes", "{count} agujeros"),
                None => either((
                    "A hole wherever the way leaves the enclosure",
                    "Un agujero donde el tubo sale de la carcasa",
                ))
                .to_string(),
            };
            say!(
                "{what}, {} across for {}.",
                "{what}, de {} de diámetro, para {}.";
                tape(*wide, system), lower_first(tube(*of))
            )
        }
        Task::Brackets { long, brackets } => {
            say!(
                "{} of back plate, {brackets} brackets.",
                "{} de placa trasera, {brackets} soportes.";
                value(*long, system)
            )
        }
        Task::DryFit(runs) => walls(draft, step.of, runs, system),
        Task::LeaveRoom { long, growth, gap } => say!(
            "{} of element grows by {}: leave {} at each end.",
            "{} de elemento crecen {}: deje {} en cada extremo.";
            value(*long, system),
            small(growth.whole, system),
            tape(*gap, system)
        ),
        Task::Solder { joints } => {
            say!(
                "{joints} joints at the pieces, and those of elbows and tees.",
                "Uniones en las piezas: {joints}, y las de codos y tes."
            )
        }
        Task::Doorways { count: 1 } => either(("1 drop.", "1 bajada.")).to_string(),
        Task::Doorways { count } => say!("{count} drops.", "{count} bajadas."),
        Task::Transitions { count, supply } => say!(
            "{count} at the elements. The tube's print must allow {} at the relief valve's \
             pressure.",
            "{count} en los elementos. Lo impreso en el tubo debe permitir {} a la presión de la \
             válvula de alivio.";
            value(*supply, system)
        ),
        Task::Purge { tube: of, flow } => {
            say!("{} or more, for {}.", "{} o más, para {}."; value(*flow, system), lower_first(tube(*of)))
        }
        Task::Balance { order, cv: Some(cv) } => {
            say!(
                "In turn {order}, to a Cv of {}.",
                "Turno {order}, a un Cv de {}.";
                value(Value::number(*cv), system)
            )
        }
        Task::Balance { order, cv: None } => {
            say!("In turn {order}: left fully open.", "Turno {order}: queda abierta del todo.")
        }
        _ => String::new(),
    }
}

/// "North wall: 6 ft + 4 ft."
fn walls(draft: &Draft, of: Of, runs: &[RunPieces], system: System) -> String {
    let Of::Room(room) = of else { return String::new() };
    let one = |run: &RunPieces| {
        let pieces: Vec<String> = run.pieces.iter().map(|&piece| value(piece, system)).collect();
        format!("{}: {}.", surface_name(draft, room, run.surface), pieces.join(" + "))
    };
    runs.iter().map(one).collect::<Vec<_>>().join(" ")
}

/// A small length as it comes out.
fn small(length: Length, system: System) -> String {
    value(Value::new(Kind::SmallLength, length.si()), system)
}

/// A small length as a tape shows it.
fn tape(length: Length, system: System) -> String {
    match system {
        System::Us => {
            let shown = in_units(&FeetInches::nearest(length.si(), 16).to_string());
            shown.replace(' ', "\u{a0}")
        }
        System::Si => small(length, system),
    }
}
