//! Rules on what the shop has: prices and counts, and whether its pieces find a place.

use super::{Check, Finding, Remedy, Severity, Subject};
use crate::arrangement::Counted;
use crate::building::{Room, Run, Surface, SurfaceId};
use crate::design::{Design, RoomDesign};
use crate::job::{Job, Stock};
use crate::quantity::Length;
use crate::sizing::{choose, sixteenths};

pub(super) fn checks(job: &Job, design: &Design) -> Vec<Check> {
    let mut out: Vec<Check> = prices_missing(job, design).into_iter().collect();
    out.extend(kept_beyond_stock(job));
    out
}

fn watch(finding: Finding, remedies: Vec<Remedy>) -> Check {
    Check { severity: Severity::Watch, subject: Subject::House, finding, remedies }
}

/// The least cost was asked for and could not be found.
fn prices_missing(job: &Job, design: &Design) -> Option<Check> {
    if design.together.counted != Counted::Pieces {
        return None;
    }
    let unpriced = |stock: &&Stock| stock.price.is_none() && stock.available != Some(0);
    let lengths = job.baseboard.stock.iter().filter(unpriced).count();
    Some(watch(Finding::PricesMissing { lengths }, vec![Remedy::TypePrices]))
}

/// More pieces stay than there are; of a length that is not on the list there are none.
fn kept_beyond_stock(job: &Job) -> Vec<Check> {
    let mut kept: Vec<(Length, u32)> = Vec::new();
    let walls = job.house.rooms.iter().flat_map(|room| &room.surfaces);
    for &length in walls.flat_map(|wall| &wall.fixed).flat_map(|fixed| &fixed.pieces) {
        let place = kept.partition_point(|(known, _)| sixteenths(*known) < sixteenths(length));
        match kept.get_mut(place) {
            Some((known, count)) if sixteenths(*known) == sixteenths(length) => *count += 1,
            _ => kept.insert(place, (length, 1)),
        }
    }
    let stock = |length| {
        let mut all = job.baseboard.stock.iter();
        all.find(|stock| sixteenths(stock.length) == sixteenths(length))
    };
    let exceeds = |(length, fixed): (Length, u32)| {
        let there = match stock(length) {
            Some(stock) => stock.available?.saturating_add(stock.have),
            None => 0,
        };
        let finding = Finding::FixedExceedsStock { length, fixed, there };
        (fixed > there).then(|| watch(finding, vec![Remedy::CorrectStock, Remedy::LetPiecesGo]))
    };
    kept.into_iter().filter_map(exceeds).collect()
}

/// Why a room is short, where it is for walls that are ruled out, for pieces too long or too few.
pub(super) fn why_short(
    job: &Job,
    room: &Room,
    solved: &RoomDesign,
) -> Option<(Finding, Vec<Remedy>)> {
    let runs = |wanted: &dyn Fn(&Surface) -> bool| -> Vec<(SurfaceId, Run)> {
        let walls = room.surfaces.iter().filter(|wall| wanted(wall));
        walls.flat_map(|wall| wall.runs.iter().map(|&run| (wall.id, run))).collect()
    };
    let (usable, all) = (runs(&|wall| room.allows(wall)), runs(&|_| true));
    let ruled_out = runs(&|wall| !room.allows(wall));
    let (short, element) = (solved.short(), &solved.element);
    let free = ruled_out.iter().map(|(_, run)| run.length).sum();
    let walls = (Finding::WallsRuledOut { free, short }, vec![Remedy::AllowWall]);
    if usable.is_empty() && !ruled_out.is_empty() {
        return Some(walls);
    }
    let needed = element.needed?;
    let would_do = |runs: &[(SurfaceId, Run)]| {
        choose(runs, &job.baseboard, needed).finned.si() >= needed.si() * (1.0 - 1e-9)
    };
    let wall_would_do = would_do(&usable);
    if !wall_would_do && !ruled_out.is_empty() && would_do(&all) {
        return Some(walls);
    }
    let there = |stock: &&Stock| stock.available != Some(0) || stock.have > 0;
    let lengths = job.baseboard.stock.iter().filter(there).map(|stock| stock.length);
    let shortest = lengths.reduce(Length::min)?;
    let ends = job.baseboard.end_allowance;
    let takes = usable.iter().map(|(_, run)| (run.length - ends).max(Length::ZERO));
    let takes = takes.reduce(Length::max)?;
    if element.choice.runs.is_empty() && sixteenths(shortest) > sixteenths(takes) {
        let remedies = [Remedy::ShorterPieces, Remedy::AddFreeWall];
        return Some((Finding::NoPieceFits { shortest, takes }, remedies.to_vec()));
    }
    let limited = job.baseboard.stock.iter().any(|stock| stock.available.is_some());
    (wall_would_do && limited).then(|| {
        let finding = Finding::StockUsedUp { needed, fitted: element.choice.finned, short };
        (finding, [Remedy::MorePieces].into_iter().chain(of_choices(room)).collect())
    })
}

/// Ways out that lie in what was chosen for the room's walls.
pub(super) fn of_choices(room: &Room) -> impl Iterator<Item = Remedy> {
    let ruled_out = room.surfaces.iter().any(|wall| !wall.runs.is_empty() && !room.allows(wall));
    let kept = room.surfaces.iter().any(|wall| !wall.fixed.is_empty());
    let allow = ruled_out.then_some(Remedy::AllowWall);
    allow.into_iter().chain(kept.then_some(Remedy::LetPiecesGo))
}
