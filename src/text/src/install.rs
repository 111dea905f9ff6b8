//! Words of the installation: phases, and each step with its numbers.

use crate::{circuit_name, existing, room_name, surface_name, tube, value, zone_name};
use finrun_engine::building::RoomId;
use finrun_engine::install::{Of, Phase, Step, Task};
use finrun_engine::job::{Draft, MeasuredField, SpotField};
use finrun_engine::plant::reset::Setting;
use finrun_engine::quantity::{FeetInches, Kind, Length, Pressure, System, Value, Volume};
use finrun_engine::sizing::RunPieces;

pub fn phase(phase: Phase) -> &'static str {
    match phase {
        Phase::Prepare => "Prepare and protect",
        Phase::Enclosures => "Enclosures and brackets",
        Phase::DryFit => "Dry fit",
        Phase::Movement => "Room to move",
        Phase::Soldering => "Soldering",
        Phase::Doorways => "Under doorways",
        Phase::Plastic => "Plastic tube",
        Phase::Test => "Pressure test",
        Phase::Fill => "Flush, fill and purge",
        Phase::Electrical => "Electrical, by licensed hands",
        Phase::Boiler => "Boiler, by licensed hands",
        Phase::HandOver => "First heat and hand-over",
    }
}

/// How far the work is.
pub fn steps_done(done: usize, all: usize) -> String {
    format!("{done} of {all} done")
}

/// What the number of a photograph is said by.
pub fn photo_number(number: &str) -> String {
    format!("photo {number}")
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
                run => format!("{name}, stretch {}", run + 1),
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
    let title = match &step.task {
        Task::CheckOldHouse => "Have old materials tested",
        Task::ShutDown => "Old heating off, cold and drained",
        Task::Protect => "Clear and cover",
        Task::Bore { .. } => "Holes for the pipe",
        Task::Brackets { .. } => "Back plates and brackets",
        Task::DryFit(_) => "Pieces laid out dry",
        Task::LeaveRoom { .. } => "Gap at each end",
        Task::PipeMoves { .. } => "Copper pipe free to move",
        Task::ReadyForFire => "Ready for fire",
        Task::Solder { .. } => "Joints soldered",
        Task::WatchFire => "Fire watch kept",
        Task::Doorways { .. } => "Drops under doors",
        Task::OxygenBarrier => "Tube has an oxygen barrier",
        Task::Transitions { .. } => "Transitions to copper",
        Task::PlasticMoves { .. } => "Plastic tube free to move",
        Task::PressureTest { .. } => "Pressure test passed",
        Task::Insulate => "Pipes insulated",
        Task::Flush => "Flushed clean",
        Task::TankAir { .. } => "Expansion tank's air set",
        Task::Glycol { .. } => "Glycol mixed",
        Task::Fill { .. } => "Filled",
        Task::Purge { .. } => "Purged of air",
        Task::Wire { .. } => "Wired",
        Task::Thermostat => "Thermostat placed",
        Task::Alarms => "Carbon monoxide alarms work",
        Task::ReliefPipe { .. } => "Relief valve piped",
        Task::Start { .. } => "Boiler started",
        Task::ResetControl(_) => "Outdoor reset set",
        Task::FirstHeat { .. } => "First heat",
        Task::Balance { .. } => "Balancing valve set",
        Task::Measure => "Readings taken",
        Task::HandOver => "Handed over",
    };
    match of.is_empty() {
        true => title.to_string(),
        false => format!("{of}: {}", lower_first(title)),
    }
}

fn lower_first(title: &str) -> String {
    let mut letters = title.chars();
    let first = letters.next().map(|c| c.to_ascii_lowercase()).into_iter();
    first.chain(letters).collect()
}

/// The numbers of a step that there are several of, one for each room or zone; empty for others.
pub fn step_numbers(draft: &Draft, step: &Step, system: System) -> String {
    match &step.task {
        Task::Bore { holes, tube: of, wide } => {
            let what = match holes {
                Some(1) => "1 hole".to_string(),
                Some(count) => format!("{count} holes"),
                None => "A hole wherever the way leaves the enclosure".to_string(),
            };
            format!("{what}, {} across for {}.", tape(*wide, system), tube(*of))
        }
        Task::Brackets { long, brackets } => {
            format!("{} of back plate, {brackets} brackets.", value(*long, system))
        }
        Task::DryFit(runs) => walls(draft, step.of, runs, system),
        Task::LeaveRoom { long, growth, gap } => format!(
            "{} of element grows by {}: leave {} at each end.",
            value(*long, system),
            small(growth.whole, system),
            tape(*gap, system)
        ),
        Task::Solder { joints } => {
            format!("{joints} joints at the pieces, and those of elbows and tees.")
        }
        Task::Doorways { count: 1 } => "1 drop.".to_string(),
        Task::Doorways { count } => format!("{count} drops."),
        Task::Transitions { count, supply } => format!(
            "{count} at the elements. The tube's print must allow {} at the relief valve's pressure.",
            value(*supply, system)
        ),
        Task::Purge { tube: of, flow } => {
            format!("{} or more, for {}.", value(*flow, system), tube(*of))
        }
        Task::Balance { order, cv: Some(cv) } => {
            format!("In turn {order}, to a Cv of {}.", value(Value::number(*cv), system))
        }
        Task::Balance { order, cv: None } => format!("In turn {order}: left fully open."),
        _ => String::new(),
    }
}

/// How a step is done; for those that there are several of the same for each.
pub fn step_how(step: &Step, system: System) -> String {
    let pressure = |p: Pressure| value(p, system);
    let how = match &step.task {
        Task::CheckOldHouse => {
            "Before anything is cut, sanded or stripped: what may hold asbestos or lead is tested, and \
             removed only by those allowed to."
        }
        Task::ShutDown => {
            "Burner off, power off and locked, water cooled down, then drained by hose to where it may \
             go. Shut the fill valve."
        }
        Task::Protect => {
            "Furniture away from the walls, floors covered, curtains down, dust doors up. Look for pipes \
             and wires behind walls, under floors and in slabs."
        }
        Task::Bore { .. } => {
            "The pipe moves with its run and must not touch. Sleeve the hole, and close it with something \
             soft or as the fire code asks."
        }
        Task::Brackets { .. } => {
            "Level along its whole length, into studs. A bracket at each end and no more than 4 ft \
             (1.2 m) apart, or as the maker says. Keep the inlet below free of carpet."
        }
        Task::DryFit(_) => "Fins clear of the brackets, slide pads in place, damper swings.",
        Task::LeaveRoom { .. } => {
            "Hold a run at its middle; the gap is between elbow and end cap, and around the riser. A run \
             that is held at one end takes twice the gap at the other."
        }
        Task::ReadyForFire => {
            "Extinguisher and water at hand, heat shield behind each joint, alarms still working, what \
             burns cleared away. System drained and open to the air. Lead-free solder and its flux."
        }
        Task::Solder { .. } => {
            "Clean and flux. Wrap fins and valves in wet cloth, open valves, flame on the fitting and \
             away from the fins. Wipe the flux off."
        }
        Task::WatchFire => {
            "Someone stays for an hour after the last flame, looks and feels behind walls and below \
             floors, and comes back once more."
        }
        Task::Doorways { .. } => {
            "Down before the door, under the floor, up behind it. A drain at the low point, a vent where \
             it comes up; insulated where it can freeze."
        }
        Task::OxygenBarrier => {
            "The print on the tube names a barrier (DIN 4726 is common) and its rating for hot water. \
             Without one, oxygen rusts boiler, circulator and tank."
        }
        Task::Transitions { .. } => {
            "Of the tube maker's own system, each checked with its gauge. None near a flame, none buried. \
             The first 18 in (0.5 m) from the boiler are metal."
        }
        Task::Insulate => {
            "Only once the test is passed and the joints were seen. Pipe in cold spaces and outside walls \
             without gaps."
        }
        Task::Flush => {
            "Water through each loop into a hose until it runs clear: flux and filings kill valves and \
             circulators."
        }
        Task::Purge { .. } => {
            "One at a time, any other shut. Shut its valve between fill and drain, and send water through \
             until no bubble comes for two minutes. Then open, and bleed the vents from the lowest up."
        }
        Task::Thermostat => {
            "On an inside wall about 5 ft (1.5 m) up, out of sun and draught, not over an element. Low \
             voltage wire by the control's diagram."
        }
        Task::Alarms => "One on every level and outside bedrooms, tested with the button.",
        Task::Balance { .. } => "By the valve maker's scale; then compare its return.",
        Task::Measure => {
            "With every zone calling, once no reading changes: fill in the commissioning sheet and mend \
             what it finds."
        }
        Task::HandOver => {
            "Show the owner gauge, shut-offs, bleeding and what to do when a room is cold. Leave the \
             signed sheet."
        }
        Task::PipeMoves { each, growth } => {
            return format!(
                "Each straight {} of copper grows by {}. Hangers that slide, elbows free to swing, no \
                 pipe hard against a joist: that is what ticks.",
                value(*each, system),
                small(*growth, system)
            );
        }
        Task::PlasticMoves { each, growth } => {
            return format!(
                "Each straight {} of plastic tube grows by {}: wide bends, loose clips, plastic sleeves \
                 through wood and metal.",
                value(*each, system),
                small(*growth, system)
            );
        }
        Task::PressureTest { test: Some(test), fill, relief } => {
            return format!(
                "With cold water, never with air: to {}, between the fill pressure of {} and the relief \
                 valve's {}. It holds for half an hour with every joint dry. Code may ask for more, often \
                 100 psi (690 kPa): then boiler, tank and relief valve are shut off or taken off first.",
                pressure(*test),
                pressure(*fill),
                pressure(*relief)
            );
        }
        Task::PressureTest { test: None, fill, relief } => {
            return format!(
                "The relief valve's {} is too near the fill pressure of {} to test between them. Shut off \
                 or take off boiler, tank and relief valve, and test with cold water as the code asks.",
                pressure(*relief),
                pressure(*fill)
            );
        }
        Task::TankAir { pre_charge } => {
            return format!(
                "{} by a tyre gauge while no water presses on it. Pump up or let off, then connect.",
                pressure(*pre_charge)
            );
        }
        Task::Glycol { glycol, water } => {
            return format!(
                "{} of pure propylene glycol for heating and {} of clean water, mixed before it goes in. \
                 A product that is diluted takes more of it. Check with a refractometer.",
                liquid(*glycol, system),
                liquid(*water, system)
            );
        }
        Task::Fill { pressure: at, volume } => {
            let holds = match volume {
                Some(volume) => format!(" The system takes about {}.", liquid(*volume, system)),
                None => String::new(),
            };
            return format!(
                "Slowly, from the bottom, to {} cold at the gauge.{holds} Write the reading on the \
                 commissioning sheet.",
                pressure(*at)
            );
        }
        Task::Wire { circulators, zone_valves, control } => {
            let pumps = match circulators {
                1 => "1 circulator".to_string(),
                count => format!("{count} circulators"),
            };
            let valves = match zone_valves {
                0 => String::new(),
                count => format!(" and {count} zone valves"),
            };
            let wired = format!("{pumps}{valves}, with a switch in sight of the boiler.");
            return match control {
                Some(control) => format!("{wired} {}", crate::control_power(control)),
                None => wired,
            };
        }
        Task::ReliefPipe { setting } => {
            return format!(
                "Set to {} and rated for the boiler's output. Full-size pipe down to a safe visible \
                 place, open at its end, nothing shut or plugged on it.",
                pressure(*setting)
            );
        }
        Task::Start { limit, supply } => {
            return format!(
                "Gas or oil, flue, combustion air and safety controls by someone licensed, with the \
                 combustion measured. High limit no higher than {}; this plan runs at {}.",
                value(*limit, system),
                value(*supply, system)
            );
        }
        Task::ResetControl(Setting { slope, shift, .. }) => {
            return format!(
                "Slope {}, shift {}; the plan's page of boiler and fill has the whole line.",
                value(Value::number(*slope), system),
                value(*shift, system)
            );
        }
        Task::FirstHeat { supply } => {
            return format!(
                "Every thermostat up, water to {}. Listen for gurgling and ticking, bleed again, watch \
                 gauge and joints while it warms, and top up to the fill pressure once it is cold.",
                value(*supply, system)
            );
        }
    };
    how.to_string()
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

fn liquid(volume: Volume, system: System) -> String {
    value(Value::liquid(volume), system)
}

/// A small length as it comes out.
fn small(length: Length, system: System) -> String {
    value(Value::new(Kind::SmallLength, length.si()), system)
}

/// A small length as a tape shows it.
fn tape(length: Length, system: System) -> String {
    match system {
        System::Us => FeetInches::nearest(length.si(), 16).to_string().replace(' ', "\u{a0}"),
        System::Si => small(length, system),
    }
}

pub(crate) fn measured_label(field: MeasuredField) -> &'static str {
    match field {
        MeasuredField::Outdoors => "Outdoors meanwhile",
        MeasuredField::Fill => "Fill pressure, cold",
        MeasuredField::PreCharge => "Expansion tank's air",
        MeasuredField::BoilerSupply => existing::boiler_supply(),
        MeasuredField::BoilerBack => existing::boiler_back(),
    }
}

pub(crate) fn spot_label(field: SpotField) -> &'static str {
    match field {
        SpotField::Supply => "Supply",
        SpotField::Back => "Return",
        SpotField::Flow => "Flow",
        SpotField::Valve => "Valve, Cv",
        SpotField::Air => "Room",
        SpotField::WaterIn => existing::water_before(),
        SpotField::WaterOut => existing::water_behind(),
    }
}
