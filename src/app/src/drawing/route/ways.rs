//! The water's lines on a plan, by arrangement.

use super::{PAD, Plan, ZONES};
use crate::drawing::follow::{Loop, Step, Visit};
use crate::drawing::pen::{Align, path, way, words};
use finrun_engine::building::Level;
use finrun_engine::job::{Arrangement, BackPath};
use finrun_text::Mark;

/// From a wall to the middle of its baseboard, and to mains that pass it.
const STAND: f64 = 6.0;
const ABOVE: f64 = 13.0;
const SUPPLY_MAIN: f64 = 20.0;
const RETURN_MAIN: f64 = 28.0;
/// From the end of baseboard to a mark beside it.
const ASIDE: f64 = 17.0;

type Place = (f64, f64);

/// A point that water passes, on some storey.
#[derive(Debug, Clone, Copy)]
struct Node {
    level: Level,
    room: usize,
    at: Place,
    /// On along the wall, away from the baseboard; and into the room.
    away: Place,
    inward: Place,
}

fn moved(from: Place, by: Place, far: f64) -> Place {
    (from.0 + by.0 * far, from.1 + by.1 * far)
}

impl Plan<'_> {
    pub(super) fn one_loop(&mut self, one: &Loop) {
        let zone = &self.job.zones[one.zone];
        for visit in &one.visits {
            self.pieces(visit);
        }
        let (enter, leave) = (self.entered(one, STAND), self.left(one, STAND));
        let (Some(&first), Some(&last)) = (enter.first(), leave.last()) else { return };
        for visit in &one.visits {
            self.inside(visit);
        }
        match zone.arrangement {
            Arrangement::Series | Arrangement::Split => {
                self.boiler(Mark::Supply, first);
                for (from, to) in leave.iter().zip(enter.iter().skip(1)) {
                    self.link(Mark::Supply, *from, *to);
                }
                if zone.back == BackPath::InEnclosure {
                    let (over, begin) = (self.left(one, ABOVE), self.entered(one, ABOVE));
                    self.back_above(one, &over, &begin);
                } else {
                    self.boiler(Mark::Return, last);
                }
            }
            Arrangement::DiverterTees => {
                let (out, back) = (self.entered(one, SUPPLY_MAIN), self.left(one, SUPPLY_MAIN));
                self.boiler(Mark::Supply, out[0]);
                for at in 0..out.len() {
                    self.branch(Mark::Supply, out[at], enter[at]);
                    self.link(Mark::Supply, out[at], back[at]);
                    self.branch(Mark::Return, leave[at], back[at]);
                    if self.level == back[at].level {
                        self.marks.symbol(Mark::DiverterTee, back[at].at, 0);
                    }
                    match out.get(at + 1) {
                        Some(next) => self.link(Mark::Supply, back[at], *next),
                        None => self.boiler(Mark::Return, back[at]),
                    }
                }
            }
            Arrangement::DirectReturn | Arrangement::ReverseReturn => {
                let (out, back) = (self.entered(one, SUPPLY_MAIN), self.left(one, RETURN_MAIN));
                self.boiler(Mark::Supply, out[0]);
                for at in 0..out.len() {
                    self.branch(Mark::Supply, out[at], enter[at]);
                    self.branch(Mark::Return, leave[at], back[at]);
                }
                for pair in out.windows(2) {
                    self.link(Mark::Supply, pair[0], pair[1]);
                }
                let reverse = zone.arrangement == Arrangement::ReverseReturn;
                for pair in back.windows(2) {
                    let (from, to) = if reverse { (pair[0], pair[1]) } else { (pair[1], pair[0]) };
                    self.link(Mark::Return, from, to);
                }
                let end = if reverse { back.last() } else { back.first() };
                if let Some(&end) = end {
                    self.boiler(Mark::Return, end);
                }
            }
            Arrangement::HomeRun => {
                for (&enter, &leave) in enter.iter().zip(&leave) {
                    self.boiler(Mark::Supply, enter);
                    self.boiler(Mark::Return, leave);
                }
            }
        }
    }

    /// Where the water comes to each room, so far from the wall.
    fn entered(&self, one: &Loop, inset: f64) -> Vec<Node> {
        let visits = one.visits.iter();
        let firsts = visits.filter_map(|visit| Some((visit.room, visit.steps.first()?)));
        firsts.map(|(room, step)| self.node(room, step, false, inset)).collect()
    }

    /// Where it leaves each room.
    fn left(&self, one: &Loop, inset: f64) -> Vec<Node> {
        let visits = one.visits.iter();
        let lasts = visits.filter_map(|visit| Some((visit.room, visit.steps.last()?)));
        lasts.map(|(room, step)| self.node(room, step, true, inset)).collect()
    }

    fn node(&self, room: usize, step: &Step, leaving: bool, inset: f64) -> Node {
        let (this, other) = (self.place(step.end(leaving)), self.place(step.end(!leaving)));
        let long = (this.0 - other.0).abs() + (this.1 - other.1).abs();
        let away = match long > 0.0 {
            true => ((this.0 - other.0) / long, (this.1 - other.1) / long),
            false => (1.0, 0.0),
        };
        let level = self.job.house.rooms[room].level;
        let inward = step.inward;
        Node { level, room, at: moved(this, inward, inset), away, inward }
    }

    fn place(&self, (x, y): Place) -> Place {
        (PAD + x * self.scale, PAD + y * self.scale)
    }

    fn is_here(&self, node: &Node) -> bool {
        node.level == self.level
    }

    /// The baseboard of a room, each piece by itself.
    fn pieces(&mut self, visit: &Visit) {
        if self.job.house.rooms[visit.room].level != self.level {
            return;
        }
        for step in &visit.steps {
            let (left, right) = (self.place(step.left), self.place(step.right));
            let total = step.length().si();
            let mut done = 0.0;
            for piece in &step.pieces {
                // A hair between two pieces.
                let share = |m: f64| m / total.max(1e-9);
                let (a, b) = (share(done), share(done + piece.si()));
                done += piece.si();
                let at = |t: f64, hair: f64| {
                    let far = (right.0 - left.0, right.1 - left.1);
                    let long = far.0.abs().max(far.1.abs()).max(1e-9);
                    let t = t + hair / long;
                    moved((left.0 + far.0 * t, left.1 + far.1 * t), step.inward, STAND)
                };
                let (from, to) = (at(a, 0.7), at(b, -0.7));
                let d = way(&[("M", from.0), (" ", from.1), ("L", to.0), (" ", to.1)]);
                match step.known {
                    true => self.marks.line(Mark::Baseboard, "stood", &d),
                    false => self.marks.line(Mark::Somewhere, "stood somewhere", &d),
                }
            }
        }
    }

    /// The water along a room's baseboard, from stretch to stretch.
    fn inside(&mut self, visit: &Visit) {
        let mut before: Option<Node> = None;
        for step in &visit.steps {
            let enter = self.node(visit.room, step, false, STAND);
            let leave = self.node(visit.room, step, true, STAND);
            if let Some(before) = before {
                self.link(Mark::Supply, before, enter);
            }
            self.branch(Mark::Supply, enter, leave);
            if self.is_here(&enter) {
                self.arrow(Mark::Supply, enter.at, leave.at);
            }
            before = Some(leave);
        }
    }

    /// The return over the elements, from the last room back to the first.
    fn back_above(&mut self, one: &Loop, over: &[Node], begin: &[Node]) {
        for visit in &one.visits {
            for step in &visit.steps {
                let from = self.node(visit.room, step, true, ABOVE);
                let to = self.node(visit.room, step, false, ABOVE);
                self.branch(Mark::Return, from, to);
            }
            for pair in visit.steps.windows(2) {
                let from = self.node(visit.room, &pair[1], false, ABOVE);
                let to = self.node(visit.room, &pair[0], true, ABOVE);
                self.link(Mark::Return, from, to);
            }
        }
        for (to, from) in over.iter().zip(begin.iter().skip(1)) {
            self.link(Mark::Return, *from, *to);
        }
        if let Some(&first) = begin.first() {
            self.boiler(Mark::Return, first);
        }
    }

    /// A straight line between two points of one room.
    fn branch(&mut self, mark: Mark, from: Node, to: Node) {
        if self.is_here(&from) {
            self.line(mark, &[from.at, to.at]);
        }
    }

    /// The way from one point to another: round a corner on this storey, or by a riser.
    fn link(&mut self, mark: Mark, from: Node, to: Node) {
        match (self.is_here(&from), self.is_here(&to)) {
            (true, true) => {
                let corners = [(to.at.0, from.at.1), (from.at.0, to.at.1)];
                let clear = corners.map(|corner| self.clear(&[from.at, corner, to.at]));
                let corner = corners[usize::from(clear[1] > clear[0])];
                self.line(mark, &[from.at, corner, to.at]);
                let long = |a: Place, b: Place| (a.0 - b.0).abs() + (a.1 - b.1).abs();
                let first = long(from.at, corner) > long(corner, to.at);
                let (a, b) = if first { (from.at, corner) } else { (corner, to.at) };
                if long(a, b) > 16.0 {
                    self.arrow(mark, a, b);
                }
            }
            (true, false) => self.riser(mark, from, to.level),
            (false, true) => self.riser(mark, to, from.level),
            (false, false) => {}
        }
    }

    fn riser(&mut self, mark: Mark, node: Node, other: Level) {
        let up = if other > node.level { Mark::RiserUp } else { Mark::RiserDown };
        let at = self.beside(mark, node);
        self.marks.symbol(up, at, 0);
        let place = moved((at.0, at.1 + 5.0), node.inward, 17.0);
        words(&mut self.marks.svg, "d halo", Align::Middle, place, 30.0, &self.letter);
    }

    /// Where the boiler's pipe comes up to a point, or leaves it.
    fn boiler(&mut self, mark: Mark, node: Node) {
        if !self.is_here(&node) {
            return;
        }
        let at = self.beside(mark, node);
        let (symbol, class) = match mark {
            Mark::Return => (Mark::ToBoiler, "strong"),
            _ => (Mark::FromBoiler, "on-ink"),
        };
        self.marks.symbol(symbol, at, 0);
        let place = (at.0, at.1 + 5.0);
        words(&mut self.marks.svg, class, Align::Middle, place, 30.0, &self.letter);
    }

    /// A free place beside a point, with a line to it: on along the wall, or into the room.
    fn beside(&mut self, mark: Mark, node: Node) -> Place {
        let along = moved(node.at, node.away, ASIDE);
        let id = self.job.house.rooms[node.room].id;
        let fits = self.rooms.iter().filter(|room| room.id == id).any(|room| {
            let corner = self.place((room.x, room.y));
            let (wide, deep) = (room.outline.length.si(), room.outline.width.si());
            let far = self.place((room.x + wide, room.y + deep));
            // A mark is as wide as this about its middle.
            let half = 8.0;
            let within = |at: f64, a: f64, b: f64| at > a + half && at < b - half;
            let (x, y) = moved(along, node.away, 2.0);
            match node.away.0.abs() > 0.5 {
                true => within(x, corner.0, far.0),
                false => within(y, corner.1, far.1),
            }
        });
        let free = |at: Place| {
            !self.taken.iter().any(|t| (t.0 - at.0).abs() < 19.0 && (t.1 - at.1).abs() < 19.0)
        };
        let mut at = along;
        if !fits || !free(at) {
            at = moved(node.at, node.inward, ASIDE);
            // Only marks stand in the way, each at most once.
            for _ in 0..self.taken.len() {
                if !free(at) {
                    at = moved(at, node.inward, 19.5);
                }
            }
        }
        self.taken.push(at);
        self.line(mark, &[node.at, at]);
        at
    }

    fn line(&mut self, mark: Mark, points: &[Place]) {
        let mut d = String::new();
        for (nth, &(x, y)) in points.iter().enumerate() {
            d.push_str(&way(&[(if nth == 0 { "M" } else { "L" }, x), (" ", y)]));
        }
        self.marks.note(mark);
        let end = if mark == Mark::Return { " water-0 aside" } else { " water-4 ahead" };
        let mut class = ZONES[self.zone % ZONES.len()].to_string();
        class.push_str(end);
        path(&mut self.marks.svg, &class, &d);
    }

    /// An arrow midway from one point to another.
    fn arrow(&mut self, mark: Mark, from: Place, to: Place) {
        let middle = ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0);
        let (x, y) = (to.0 - from.0, to.1 - from.1);
        let turn = match (x.abs() > y.abs(), x > 0.0, y > 0.0) {
            (true, true, _) => 0,
            (true, false, _) => 180,
            (false, _, true) => 90,
            (false, _, false) => 270,
        };
        let arrow = if mark == Mark::Return { Mark::FlowBack } else { Mark::Flow };
        self.marks.symbol(arrow, middle, turn);
    }

    /// How far a line stays from the words in the rooms' middles.
    fn clear(&self, points: &[Place]) -> f64 {
        let mut least = f64::MAX;
        for pair in points.windows(2) {
            for tenth in 0..=10 {
                let t = f64::from(tenth) / 10.0;
                let x = pair[0].0 + (pair[1].0 - pair[0].0) * t;
                let y = pair[0].1 + (pair[1].1 - pair[0].1) * t;
                for room in self.rooms {
                    let middle = (
                        room.x + room.outline.length.si() / 2.0,
                        room.y + room.outline.width.si() / 2.0,
                    );
                    let middle = self.place(middle);
                    least = least.min((middle.0 - x).abs() / 2.0 + (middle.1 - y).abs());
                }
            }
        }
        least
    }
}
