//! Words of the changes that are weighed, and of the job before and after them.

use crate::{room_name, value};
use finrun_engine::building::ChangeId;
use finrun_engine::job::{ChangeDraft, ChangeField, ChangeKind, Draft, OutsideWalls, Whose};
use finrun_engine::quantity::System;
use finrun_engine::what_if::{Payback, Reach, Weighed};

pub fn section_what_if() -> &'static str {
    "What if"
}

pub fn change_label(field: ChangeField) -> &'static str {
    match field {
        ChangeField::Cost => "What it costs you",
        ChangeField::U => "U-value",
        ChangeField::R => "R-value",
        ChangeField::AirChanges => "Air changes",
        ChangeField::BlowerFlow => "Blower door, flow at 50 Pa",
        ChangeField::LeakageArea => "Effective leakage area at 4 Pa",
        ChangeField::FloorLength => "Floor, length",
        ChangeField::FloorWidth => "Floor, width",
        ChangeField::Height => "Ceiling height",
        ChangeField::Windows => "Windows of 3 by 4 ft (91 by 122 cm)",
        ChangeField::Whose => "Room",
    }
}

pub fn change_note(field: ChangeField) -> &'static str {
    match field {
        ChangeField::Cost => "All of it, in your currency: material, work, what a contractor asks.",
        ChangeField::U | ChangeField::R => "Of the whole assembly, air films included.",
        ChangeField::AirChanges => "Follows from the choice above; type to overrule.",
        ChangeField::BlowerFlow => "CFM50 that you expect, or that a tester found afterwards.",
        ChangeField::Windows => "Built like the last window of the job.",
        ChangeField::LeakageArea
        | ChangeField::FloorLength
        | ChangeField::FloorWidth
        | ChangeField::Height
        | ChangeField::Whose => "",
    }
}

pub fn change_kind(kind: ChangeKind) -> &'static str {
    match kind {
        ChangeKind::Windows => "Windows",
        ChangeKind::OutsideWalls => "Outside walls",
        ChangeKind::WallsToUnheated => "Walls to unheated spaces",
        ChangeKind::Ceilings => "Ceilings",
        ChangeKind::Roofs => "Roof over an attic",
        ChangeKind::Floors => "Floors over unheated spaces or the open",
        ChangeKind::Slabs => "Floors on the ground",
        ChangeKind::GroundWalls => "Basement and crawl-space walls",
        ChangeKind::Skylights => "Skylights",
        ChangeKind::Doors => "Outside doors",
        ChangeKind::Air => "Air leaks of the house",
        ChangeKind::RoomLike => "One more room like another",
        ChangeKind::NewRoom => "One more room, measured",
    }
}

pub fn whose(draft: &Draft, whose: Whose) -> String {
    match whose {
        Whose::House => "The whole house".to_string(),
        Whose::Room(id) => room_name(draft, id),
    }
}

pub fn outside_walls(walls: OutsideWalls) -> &'static str {
    match walls {
        OutsideWalls::One => "One, as long as the floor",
        OutsideWalls::Two => "Two, in a corner of the house",
        OutsideWalls::Three => "Three",
        OutsideWalls::Four => "All four",
    }
}

/// A change by its place and what it is for: "Change 1, Windows".
pub fn change_name(draft: &Draft, id: ChangeId) -> String {
    match draft.what_if.iter().enumerate().find(|(_, change)| change.id == id) {
        Some((index, change)) => format!("Change {}, {}", index + 1, what(draft, change)),
        None => "A change that was removed".to_string(),
    }
}

fn what(draft: &Draft, change: &ChangeDraft) -> String {
    let kind = change_kind(change.kind);
    match (change.kind, change.whose) {
        (ChangeKind::NewRoom | ChangeKind::RoomLike, _) if !change.name.trim().is_empty() => {
            format!("one more room, {}", change.name.trim())
        }
        (ChangeKind::RoomLike, Whose::Room(id)) => {
            format!("one more room like {}", room_name(draft, id))
        }
        (ChangeKind::Air | ChangeKind::NewRoom, _) | (_, Whose::House) => first_small(kind),
        (_, Whose::Room(id)) => format!("{} of {}", first_small(kind), room_name(draft, id)),
    }
}

fn first_small(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|letter| letter.to_ascii_lowercase()).into_iter();
    first.chain(letters).collect()
}

/// How much of the house a change of surfaces or openings is for.
pub fn reached(reach: &Reach, system: System) -> String {
    match (reach.count, reach.area) {
        (0, _) => "The job has none of these, so nothing changes.".to_string(),
        (1, Some(area)) => format!("1 in the job, {}.", value(area, system)),
        (count, Some(area)) => format!("{count} in the job, {} together.", value(area, system)),
        (count, None) => format!("{count} in the job."),
    }
}

/// Whether the changes pay, by simple division.
pub fn paid_back(weighed: &Weighed, system: System) -> String {
    let cost = value(weighed.cost, system);
    match weighed.payback {
        Payback::Years(years) if years < 0.1 => {
            "The fuel saved pays for it within weeks.".to_string()
        }
        Payback::Years(years) if years > 200.0 => {
            format!("The fuel saved does not pay the {cost} back within 200 years.")
        }
        Payback::Years(years) => {
            format!("The fuel saved pays the {cost} back in {years:.1} years (simple payback).")
        }
        Payback::NothingSaved => {
            format!("No fuel is saved, so the {cost} are not paid back by fuel.")
        }
        Payback::CostMissing => match weighed.uncosted {
            1 => "Type what each change costs to see when fuel pays it back: 1 has no cost.".into(),
            many => format!(
                "Type what each change costs to see when fuel pays it back: {many} have no cost."
            ),
        },
        Payback::PriceMissing => {
            "Type the price of a unit of fuel to see its cost and when it pays for the changes."
                .to_string()
        }
        Payback::NoYear => {
            "Without a weather station there is no year to count fuel in. Choose one under Place."
                .to_string()
        }
    }
}
