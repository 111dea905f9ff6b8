//! What a check says, and what a remedy proposes.

use crate::piping::not_solved;
use crate::plant::minutes;
use crate::{circuit_name, room_name, tube, value, zone_name};
use finrun_engine::check::{Check, Finding, Remedy, Severity, Subject};
use finrun_engine::job::Draft;
use finrun_engine::quantity::{Kind, Length, System, Unit, Value};

pub fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Holds => "holds",
        Severity::Watch => "look at this",
        Severity::Stop => "must change",
    }
}

/// The finding in one line.
pub fn check_title(check: &Check, draft: &Draft, system: System) -> String {
    let subject = match check.subject {
        Subject::House => "House".to_string(),
        Subject::Loop => "Loop".to_string(),
        Subject::Zone(id) => zone_name(draft, id),
        Subject::Circuit(zone, room) => circuit_name(draft, zone, &[room]),
        Subject::Circulator => "Circulator".to_string(),
        Subject::Boiler => "Boiler".to_string(),
        Subject::Room(id) => room_name(draft, id),
    };
    match check.finding {
        Finding::RoomsHeated { rooms: 1 } => "The room gets its heat".to_string(),
        Finding::RoomsHeated { rooms } => format!("All {rooms} rooms get their heat"),
        Finding::DoesNotFit { short, .. } | Finding::WaterTooCool { short, .. } => {
            format!("{subject} is {} short", value(short, system))
        }
        Finding::NoWall { .. } => format!("{subject} has no wall for baseboard"),
        Finding::NoLoad { .. } => format!("{subject} loses no heat"),
        Finding::OtherHeatCovers { .. } => format!("{subject} has all its heat from elsewhere"),
        Finding::WallsRuledOut { short, .. } | Finding::StockUsedUp { short, .. } => {
            format!("{subject} is {} short", value(short, system))
        }
        Finding::NoPieceFits { .. } => format!("No piece fits in {subject}"),
        Finding::PricesMissing { lengths: 1 } => "A stock length has no price".to_string(),
        Finding::PricesMissing { lengths } => format!("{lengths} stock lengths have no price"),
        Finding::FixedExceedsStock { length, fixed: 1, .. } => {
            format!("1 piece of {} is kept", value(length, system))
        }
        Finding::FixedExceedsStock { length, fixed, .. } => {
            format!("{fixed} pieces of {} are kept", value(length, system))
        }
        Finding::PerArea { per_area, .. } => {
            format!("{subject} {} of floor", value(per_area, system))
        }
        Finding::EnteredTwice { other } => {
            format!("{subject} and {} share a surface entered twice", room_name(draft, other))
        }
        Finding::Drop { drop, .. } => {
            format!("{}: temperature drop {}", subject, value(drop, system))
        }
        Finding::Velocity { velocity, .. } => {
            format!("{}: velocity {}", subject, value(velocity, system))
        }
        Finding::TubeCarries { element, .. } => {
            format!("{}: {} of element", subject, value(element, system))
        }
        Finding::NotSolved { .. } => "The flows are not solved".to_string(),
        Finding::EmptyZone => format!("{subject} has no rooms"),
        Finding::MainSmaller { main, .. } => format!("{subject}: a main of {}", tube(main)),
        Finding::PumpShort { flow, .. } => {
            format!("{subject}: its circulator moves {}", value(flow, system))
        }
        Finding::Uneven { flow, .. } => format!("{subject} gets {}", value(flow, system)),
        Finding::NoFlow { .. } => format!("{subject} gets no flow"),
        Finding::FastAlone { velocity, .. } => {
            format!("{subject} alone: velocity {}", value(velocity, system))
        }
        Finding::BoilerSize { output, .. } => format!("Boiler of {}", value(output, system)),
        Finding::ShortCycle { on_s, .. } => {
            format!("The burner runs for {} at a time", minutes(on_s))
        }
        Finding::Boils { boils_at, .. } => {
            format!("At the top water boils at {}", value(boils_at, system))
        }
        Finding::FillLow { fill, .. } => format!("Fill pressure {}", value(fill, system)),
        Finding::ReliefNear { pressure, .. } => {
            format!("{} at the relief valve", value(pressure, system))
        }
        Finding::MayFreeze { air, .. } => {
            format!("{subject}: pipes in air of {}", value(air, system))
        }
        Finding::ShutOff { .. } => format!("{subject} is shut off"),
        Finding::Supply { supply, .. } => format!("Supply {}", value(supply, system)),
        Finding::ReturnCool { back, .. } => format!("Return {}", value(back, system)),
        Finding::OutsideData { water, .. } => format!("Water at {}", value(water, system)),
        Finding::NotFinite => format!("{subject}: a result is no number"),
    }
}

/// The value, the limit it is held against, and why it matters.
pub fn check_detail(check: &Check, system: System) -> String {
    let holds = check.severity == Severity::Holds;
    match check.finding {
        Finding::RoomsHeated { .. } => "Each at the water temperature that reaches it.".to_string(),
        Finding::DoesNotFit { needed, fitted, .. } => format!(
            "It needs {} of finned length; the pieces that fit its walls have {}.",
            value(needed, system),
            value(fitted, system)
        ),
        Finding::WaterTooCool { water, room, .. } => format!(
            "Water arrives at {} in a room of {}. Before the load is met it has cooled to the \
             room: no length would do.",
            value(water, system),
            value(room, system)
        ),
        Finding::NoWall { load } => {
            format!("It loses {} and has no free stretch of wall.", value(load, system))
        }
        Finding::NoLoad { load } => format!(
            "Its loss comes to {}. Is everything entered that lies between it and outdoors?",
            value(load, system)
        ),
        Finding::OtherHeatCovers { load, other } => format!(
            "It loses {}, and {} of other heat is counted on: no baseboard is chosen. When that heat \
             stops, the room goes cold.",
            value(load, system),
            value(other, system)
        ),
        Finding::WallsRuledOut { free, .. } => format!(
            "{} of its free wall is ruled out for baseboard; the rest does not take enough.",
            value(free, system)
        ),
        Finding::NoPieceFits { shortest, takes } => format!(
            "The shortest piece is {} long, and the longest free stretch here takes {} beside its \
             ends.",
            value(shortest, system),
            value(takes, system)
        ),
        Finding::StockUsedUp { needed, fitted, .. } => format!(
            "It needs {} of finned length and gets {}. Its walls would take more, but no more pieces \
             are in the shop or bought.",
            value(needed, system),
            value(fitted, system)
        ),
        Finding::PricesMissing { .. } => {
            "The least cost is not known without: the fewest pieces were chosen instead."
                .to_string()
        }
        Finding::FixedExceedsStock { there, .. } => {
            format!("In the shop and bought already there are {there}.")
        }
        Finding::PerArea { least, most, .. } if holds => format!(
            "A second opinion by floor area: such houses lie between {} and {} on such a day.",
            value(least, system),
            value(most, system)
        ),
        Finding::PerArea { least, most, .. } => format!(
            "A second opinion by floor area: such houses lie between {} and {} on such a day. Look \
             for a slip, or for something left out.",
            value(least, system),
            value(most, system)
        ),
        Finding::EnteredTwice { .. } => {
            "Heat between two rooms is counted from one entry; the other room then knows."
                .to_string()
        }
        Finding::Drop { planned, limit, .. } if holds => format!(
            "Planned: {}. Up to {} holds: whole feet and pipes add a little.",
            value(planned, system),
            value(limit, system)
        ),
        Finding::Drop { planned, limit, .. } => format!(
            "Planned: {}. Above {} the last rooms get cool water.",
            value(planned, system),
            value(limit, system)
        ),
        Finding::Velocity { velocity, least, .. } if velocity < least => format!(
            "Below {} water may not carry air to the eliminator (common practice).",
            value(least, system)
        ),
        Finding::Velocity { most, .. } if !holds => {
            format!("Above {} the loop is heard (common practice).", value(most, system))
        }
        Finding::Velocity { least, most, .. } => format!(
            "Between {} and {}: quiet, and air is carried along.",
            value(least, system),
            value(most, system)
        ),
        Finding::TubeCarries { carries, practice, .. } => format!(
            "By physics this tube carries {} at this drop before the loop is heard; practice stops \
             near {}.",
            rough(carries, system),
            rough(practice, system)
        ),
        Finding::Supply { limit, .. } if holds => {
            format!("The boiler's limit is {}.", value(limit, system))
        }
        Finding::Supply { limit, .. } => {
            format!("The boiler stops at {}: it cannot make this water.", value(limit, system))
        }
        Finding::ReturnCool { least, .. } => format!(
            "Below {} flue gas may condense in a boiler that is not made for it, and eat it \
             (common practice).",
            value(least, system)
        ),
        Finding::OutsideData { most, .. } => format!(
            "The water data end at {}. At the pressure of a house, water near there boils.",
            value(most, system)
        ),
        Finding::NotSolved { reason } => {
            format!("{} No flow, head or temperature is to be trusted.", not_solved(reason))
        }
        Finding::EmptyZone => {
            "A zone without rooms heats nothing. Hang rooms on it, or remove it.".to_string()
        }
        Finding::MainSmaller { branch, .. } => {
            format!("What hangs on it is {}, and all of that has to pass the main.", tube(branch))
        }
        Finding::PumpShort { meant, head, .. } => format!(
            "It gives {} of head there. Meant are {}: rooms get cooler water than planned.",
            value(Value::new(Kind::Head, head.si()), system),
            value(meant, system)
        ),
        Finding::Uneven { meant, .. } => format!(
            "Its fair share is {}. Water takes the easiest way; a balancing valve shares it.",
            value(meant, system)
        ),
        Finding::NoFlow { meant } => format!(
            "Its fair share is {}. Something is shut, or the others take all.",
            value(meant, system)
        ),
        Finding::FastAlone { most, .. } => format!(
            "With the others running it is quiet; alone the whole circulator pushes through it. \
             Above {} it is heard (common practice).",
            value(most, system)
        ),
        Finding::BoilerSize { output, needed, .. } if output < needed => format!(
            "{} is needed: on the coldest days the house stays cool.",
            value(needed, system)
        ),
        Finding::BoilerSize { needed, most, .. } if holds => format!(
            "{} is needed; up to {} is usual (from memory).",
            value(needed, system),
            value(most, system)
        ),
        Finding::BoilerSize { needed, most, .. } => format!(
            "{} is needed. Above {} it starts and stops more often than it must.",
            value(needed, system),
            value(most, system)
        ),
        Finding::ShortCycle { least_s, load, output, .. } => format!(
            "The smallest zone alone takes {}, the burner gives {} at least. Runs under {} wear it \
             and waste fuel (common practice).",
            value(load, system),
            value(output, system),
            minutes(least_s)
        ),
        Finding::Boils { supply, .. } => format!(
            "At the fill pressure the supply of {} is too near to that: it bangs, and steam locks \
             the flow.",
            value(supply, system)
        ),
        Finding::FillLow { at_top, least, .. } => format!(
            "That leaves {} at the highest place, where {} are wanted so that air goes out and none \
             comes in (common practice).",
            value(at_top, system),
            value(least, system)
        ),
        Finding::ReliefNear { setting, .. } => format!(
            "It is set to {}, and begins to weep a tenth below (common practice).",
            value(setting, system)
        ),
        Finding::MayFreeze { freezes_at, .. } => format!(
            "What is in them freezes from {} on, whenever the circulator rests.",
            value(freezes_at, system)
        ),
        Finding::ShutOff { load } => {
            format!("It loses {} and gets nothing.", value(load, system))
        }
        Finding::NotFinite => {
            "Nothing that follows from it is to be trusted. Look for a zero or a slip of a digit."
                .to_string()
        }
    }
}

/// A way out.
pub fn remedy(remedy: Remedy, system: System) -> String {
    match remedy {
        Remedy::MoreWall { length } => {
            format!("Free {} more of wall, or use another wall", value(length, system))
        }
        Remedy::HigherOutputElement => "A taller element with more output".to_string(),
        Remedy::ReduceLoss => "Less loss: insulate, seal, better glass".to_string(),
        Remedy::AddFreeWall => "Add a wall with a free stretch, inside walls too".to_string(),
        Remedy::AllowWall => "Allow baseboard at a wall that is ruled out".to_string(),
        Remedy::LetPiecesGo => "Let kept pieces go".to_string(),
        Remedy::ShorterPieces => "Add shorter pieces to the list".to_string(),
        Remedy::MorePieces => "Buy more pieces than are on the list now".to_string(),
        Remedy::CorrectStock => "Correct how many pieces there are".to_string(),
        Remedy::TypePrices => "Type the missing prices".to_string(),
        Remedy::LessOtherHeat => {
            "Count on less of it, if it does not run on every cold day".to_string()
        }
        Remedy::AddSurfaces => "Add its walls, ceiling and floor".to_string(),
        Remedy::RemoveOneEntry => "Remove it from one of the two rooms".to_string(),
        Remedy::MoreFlow { flow } => format!("Flow of {} or more", value(flow, system)),
        Remedy::LessFlow { flow } => format!("Flow of {} or less", value(flow, system)),
        Remedy::OtherTube { tube: other } => format!("{} instead", tube(other)),
        Remedy::SmallerDrop => "Plan a smaller temperature drop".to_string(),
        Remedy::LargerDrop => "Plan a larger temperature drop".to_string(),
        Remedy::SecondCircuit => "Split the rooms among more circuits".to_string(),
        Remedy::LowerSupply { supply } => format!("Supply at {} or less", value(supply, system)),
        Remedy::Bypass { share } => format!(
            "A bypass that leads {} of the boiler's flow from supply to return",
            value(Value::share(share), system)
        ),
        Remedy::MixingValve => {
            "A valve that mixes supply into the return by the boiler's inlet temperature"
                .to_string()
        }
        Remedy::HotterBoiler => {
            "A hotter boiler, with a valve that mixes its water down for the loop".to_string()
        }
        Remedy::CondensingBoiler => "A condensing boiler, which gains by a cool return".to_string(),
        Remedy::LargerBoiler => "A larger boiler".to_string(),
        Remedy::SmallerBoiler => "A smaller boiler".to_string(),
        Remedy::ModulatingBoiler => "A burner that turns down further".to_string(),
        Remedy::Buffer { volume } => {
            format!("A buffer tank of {} more", value(Value::liquid(volume), system))
        }
        Remedy::JoinZones => "Join small zones into one".to_string(),
        Remedy::Fill { pressure } => format!("Fill to {}", value(pressure, system)),
        Remedy::Glycol { share } => format!(
            "Heating glycol, {} by mass or more; never automotive antifreeze",
            value(Value::share(share), system)
        ),
        Remedy::WarmPipes => {
            "Lead the pipes through heated space, or insulate the space".to_string()
        }
        Remedy::OpenValve => "Open the valve".to_string(),
        Remedy::AddRooms => "Hang rooms on it".to_string(),
        Remedy::LargerPump => "A circulator with more head or flow".to_string(),
        Remedy::SmallerPump => "A smaller circulator".to_string(),
        Remedy::VariablePump => "A circulator that slows down when zones shut".to_string(),
        Remedy::BalancingValves => "A balancing valve in each return".to_string(),
        Remedy::PurgeAtHighFlow => "Purge hard when filling, and vent the high points".to_string(),
    }
}

/// A length that is an estimate: whole feet, or whole metres.
fn rough(length: Length, system: System) -> String {
    let (unit, name) = match system {
        System::Us => (Unit::Foot, "ft"),
        System::Si => (Unit::Metre, "m"),
    };
    format!("{:.0} {name}", length.to(unit))
}
