//! Pieces, and the enclosure with what closes and carries it.

use super::Counting;
use crate::building::RoomId;
use crate::design::RoomDesign;
use crate::job::{Approach, LegKind, PriceField, Zone};
use crate::quantity::Length;
use crate::sizing::RunPieces;
use crate::takeoff::item::{Amount, Class, Form, Item, Reason, Whose, alike};
use crate::takeoff::spacing::{BRACKETS, HOLES_TAKEN, brackets, holes};

impl Counting<'_> {
    /// A room's pieces with their joints and their enclosure. A run of `k` pieces has `k + 1` joints,
    /// `k - 1` of them couplings under a splice cover.
    pub(super) fn element(&mut self, room: &RoomDesign) {
        let whose = Whose::Room(room.room);
        let mut classes: Vec<(Class, u32)> = Vec::new();
        let mut add = |class: Class| match classes.iter_mut().find(|(known, _)| *known == class) {
            Some((_, count)) => *count += 1,
            None => classes.push((class, 1)),
        };
        let choice = &room.element.choice;
        for run in &choice.runs {
            let mut kept = self.kept(room.room, run);
            for &piece in &run.pieces {
                match kept.iter().position(|other| alike(*other, piece)) {
                    Some(at) => {
                        kept.swap_remove(at);
                        add(Class::Kept(piece));
                    }
                    None => add(Class::Piece(piece)),
                }
            }
        }
        for (class, count) in classes {
            let (amount, reason) = (Amount::Count(count), Reason::Heats);
            self.add(Item { class, tube: None, form: Form::Only, whose, amount, reason });
        }
        let (pieces, runs) = (choice.pieces().count(), choice.runs.len());
        let tube = self.job.circuit.tube;
        let between = pieces - runs.min(pieces);
        self.part(PriceField::Joint, None, whose, Reason::AtPieces, pieces + runs);
        self.part(PriceField::Coupling, tube, whose, Reason::BetweenPieces, between);
        self.part(PriceField::SpliceCover, None, whose, Reason::BetweenPieces, between);
        let long = choice.pieces().sum();
        self.length(PriceField::Enclosure, None, whose, Reason::OverPieces, long);
        let cradles = brackets(choice) as usize;
        self.part(PriceField::Cradle, None, whose, Reason::Every(BRACKETS), cradles);
    }

    /// The pieces that are kept on a run.
    fn kept(&self, room: RoomId, run: &RunPieces) -> Vec<Length> {
        let rooms = self.job.house.rooms.iter().filter(|of| of.id == room);
        let mut walls = rooms.flat_map(|of| &of.surfaces).filter(|wall| wall.id == run.surface);
        let kept = walls.find_map(|wall| {
            let on_run = |at: usize| wall.runs.get(at) == Some(&run.run);
            wall.fixed.iter().find(|kept| on_run(kept.run))
        });
        kept.map(|kept| kept.pieces.clone()).unwrap_or_default()
    }

    /// An expansion pad for each hole: common practice, no source.
    pub(super) fn holes(&mut self, room: RoomId, way: &Approach) {
        let (count, reason) = match holes(way) {
            Some(holes) => (holes, Reason::Holes),
            None if way.outside.length > Length::ZERO => (HOLES_TAKEN, Reason::HolesTaken),
            None => return,
        };
        self.part(PriceField::ExpansionPad, None, Whose::Room(room), reason, count as usize);
    }

    /// Caps, corners and splices of a zone's enclosures.
    ///
    /// Between two mains each run of a room stands by itself, with a cap at each end. On a loop one
    /// run of each room is on the way, and shares its caps with the room before where the enclosure
    /// runs on; a room without an element has none. Where the enclosure runs on to a room that has no
    /// element, it is capped as if there were one.
    pub(super) fn enclosures(&mut self, zone: &Zone) {
        let (job, design) = (self.job, self.design);
        for rooms in &zone.loops {
            // The room behind whose element the enclosure is not capped yet.
            let mut open = None;
            let mut caps = Caps::default();
            let mut before_is_straight = false;
            for (nth, &at) in rooms.iter().enumerate() {
                let Some((room, way)) = design.rooms.get(at).zip(job.approaches.get(at)) else {
                    continue;
                };
                let whose = Whose::Room(room.room);
                let runs = room.element.choice.runs.len();
                let runs_on = way.inside.length > Length::ZERO || way.inside.elbows > 0;
                let is_last = nth + 1 == rooms.len();
                let count = if zone.arrangement.has_branches() {
                    2 * runs
                } else {
                    let on_way = if runs_on {
                        // The last room's way has the cap behind it, too.
                        (way.end_caps as usize).saturating_sub(usize::from(is_last))
                    } else {
                        if let Some(before) = open {
                            self.caps(&mut caps, before, 1);
                        }
                        usize::from(runs > 0)
                    };
                    open = (runs_on || runs > 0).then_some(whose);
                    let behind = open.is_some() && is_last;
                    on_way + usize::from(behind) + 2 * runs.saturating_sub(1)
                };
                self.caps(&mut caps, whose, count);
                self.corners(whose, way);
                if !zone.arrangement.has_branches() {
                    let splices = splices(before_is_straight, way, runs > 0);
                    let reason = Reason::EnclosureRunsOn;
                    self.part(PriceField::SpliceCover, None, whose, reason, splices);
                    before_is_straight = runs > 0;
                }
            }
        }
    }

    /// The ends of enclosures in the order of the water: each has a left one and a right one, whichever
    /// way the water goes.
    fn caps(&mut self, caps: &mut Caps, whose: Whose, count: usize) {
        let second = (count + usize::from(caps.odd)) / 2;
        for (form, count) in [(Form::Left, count - second), (Form::Right, second)] {
            let reason = Reason::EnclosureEnds;
            self.form(PriceField::EndCap, None, form, whose, reason, count);
        }
        caps.odd ^= count % 2 == 1;
    }

    /// As the way's legs tell them.
    fn corners(&mut self, whose: Whose, way: &Approach) {
        for (kind, form) in
            [(LegKind::InsideCorner, Form::Inside), (LegKind::OutsideCorner, Form::Outside)]
        {
            let count = way.legs.iter().filter(|leg| leg.kind == kind).count();
            self.form(PriceField::Corner, None, form, whose, Reason::EnclosureTurns, count);
        }
    }
}

/// Whether an end is still to come of the enclosure that was begun.
#[derive(Default)]
struct Caps {
    odd: bool,
}

/// Where one straight of an enclosure goes on in another, on the way to a room and at its element: a
/// corner covers its own joints.
fn splices(before: bool, way: &Approach, has_element: bool) -> usize {
    let mut last = before;
    let mut splices = 0;
    let legs = way.legs.iter().map(|leg| leg.kind == LegKind::Along);
    // Without legs the way leaves the enclosure.
    let ends = if way.legs.is_empty() { None } else { Some(has_element) };
    for straight in legs.chain(ends) {
        splices += usize::from(last && straight);
        last = straight;
    }
    splices
}
