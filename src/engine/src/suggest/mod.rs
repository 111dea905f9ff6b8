//! Other loops for a zone: its rooms along the way that the pipe takes now, split into loops next to one
//! another, each walked either way round.
//!
//! Every loop that could be is followed by itself; the best split into each number of loops is then
//! found exactly, and the best of those are solved as whole systems. In slices, so that a page can go
//! on meanwhile.

mod circulator;
mod figures;
mod follow;
mod price;
mod route;
mod split;

pub use figures::{Figures, LoopFigures, Trouble};
pub use route::{End, Unknown};
pub use split::{Direction, MOST_LOOPS, Part, Score, Split};

use crate::arrangement::{Solved, solve_piping};
use crate::building::{RoomId, RoomLoad, ZoneId, losses};
use crate::job::{
    Arrangement, BackPath, Draft, Field, Job, PipeLeg, Zone, ZoneField, read, resolve,
};
use crate::order;
use crate::quantity::{Length, Money, Power};
use circulator::PressureLimit;
use figures::figures;
use follow::{Follower, From, Hanging, is_short};
use route::Route;
use split::best_splits;
use std::fmt;

/// What is found for a zone.
#[derive(Debug, Clone, PartialEq)]
pub enum Verdict {
    /// No split is better by what would be worth the change.
    Stays(Figures),
    Changes(Change),
}

/// Loops that are better.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// What first makes them better.
    pub gain: Gain,
    pub loops: Vec<NewLoop>,
    pub before: Figures,
    /// With the pipe that is typed at the rooms.
    pub after: Figures,
    /// Pipe that was reckoned with in its stead, since today no loop begins or ends there.
    pub unknown: Vec<Unknown>,
}

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewLoop {
    /// In the order of the water.
    pub rooms: Vec<RoomId>,
    pub direction: Direction,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Gain {
    /// More rooms get their heat.
    RoomsHeated,
    /// As many rooms are short, by less.
    LessShort,
    /// Of the tube, the velocity, the circulator.
    WithinLimits,
    /// Of what is usual on such a tube.
    WithinPractice,
    Cheaper,
    FewerLoops,
    LessElement,
}

/// A search that goes on step by step.
pub struct Suggestion {
    draft: Draft,
    job: Job,
    loads: Vec<RoomLoad>,
    zone: Zone,
    route: Route,
    follower: Follower,
    /// One loop, and several.
    whole: Hanging,
    apart: Hanging,
    limit: PressureLimit,
    before: Figures,
    before_score: Score,
    /// Rooms short in the whole house.
    short_now: usize,
    /// By first and last room.
    loops: Vec<Option<(Score, Direction)>>,
    next: Next,
    better: Vec<Split>,
    found: Option<(Score, Change)>,
}

impl fmt::Debug for Suggestion {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Suggestion")
    }
}

#[derive(Clone, Copy)]
enum Next {
    /// The loop from one place to another.
    Follow(usize, usize),
    /// A whole system.
    Solve(usize),
}

/// So many rooms are followed in one step.
const ROOMS_A_STEP: usize = 64;
/// So many of the best splits are solved as whole systems.
const SOLVED: usize = 3;
/// Less of the cost, the element or what is beyond a limit is not worth other loops: judgement.
const WORTH: f64 = 0.05;

/// What is found for a zone, all steps at once; none where there is nothing to split: no whole job, no
/// flow, or rooms that do not hang on loops.
pub fn suggest(draft: &Draft, zone: ZoneId) -> Option<Verdict> {
    let mut suggestion = Suggestion::begin(draft, zone)?;
    loop {
        if let Some(verdict) = suggestion.step() {
            return Some(verdict);
        }
    }
}

impl Suggestion {
    /// Begins with the system as it is.
    pub fn begin(draft: &Draft, id: ZoneId) -> Option<Suggestion> {
        let job = read(draft).job?;
        let zone = job.zones.iter().find(|zone| zone.id == id)?.clone();
        if zone.arrangement.has_branches() {
            return None;
        }
        let loads = losses(&job.house).rooms;
        let solved = solve_piping(&job, &loads);
        let lengths: Vec<Length> = solved.elements.iter().map(|e| e.choice.nominal).collect();
        let route = Route::of(&job, &zone, &lengths);
        let wants = |load: &RoomLoad| load.wanted().max(Power::ZERO);
        let in_zone = zone.loops.iter().flatten().filter_map(|&room| loads.get(room));
        let zone_load: Power = in_zone.map(wants).sum();
        let flow_per_load = flow_per_load(&loads, &solved)?;
        if solved.piping.not_solved.is_some() || zone_load <= Power::ZERO {
            return None;
        }
        let [whole, apart] = [Arrangement::Series, Arrangement::Split]
            .map(|arrangement| hanging(draft, id, arrangement));
        let (whole, apart) = (whole?, apart?);
        let now = match zone.loops.len() {
            1 => &whole,
            _ => &apart,
        };
        let bare_cost = bare_cost(&job, &route, now, &route.today());
        let (before, before_score) = figures(&job, &loads, &zone, &solved, bare_cost);
        let rooms = route.len();
        let limit = PressureLimit::of(&job, &zone, &solved);
        Some(Suggestion {
            draft: draft.clone(),
            follower: Follower::new(&job, zone.back, flow_per_load, zone_load),
            whole,
            apart,
            limit,
            before,
            before_score,
            short_now: short_rooms(&loads, &solved),
            loops: vec![None; rooms * rooms],
            next: Next::Follow(0, 0),
            better: Vec::new(),
            found: None,
            job,
            loads,
            zone,
            route,
        })
    }

    /// Goes a little further; gives what is found once it is.
    pub fn step(&mut self) -> Option<Verdict> {
        let mut passed = 0;
        while let Next::Follow(first, last) = self.next {
            if passed >= ROOMS_A_STEP {
                return None;
            }
            passed += 2 * (last + 1 - first);
            let scored = self.follow_both(first, last, self.apart);
            if let Some(place) = self.loops.get_mut(first * self.route.len() + last) {
                *place = scored;
            }
            self.next = match (first + 1, last + 1) {
                (_, next) if next < self.route.len() => Next::Follow(first, next),
                (next, _) if next < self.route.len() => Next::Follow(next, next),
                _ => {
                    self.better = self.worth_solving();
                    Next::Solve(0)
                }
            };
        }
        let Next::Solve(nth) = self.next else { return None };
        match self.better.get(nth).cloned() {
            Some(split) => {
                self.solve(&split);
                self.next = Next::Solve(nth + 1);
                None
            }
            None => Some(match self.found.take() {
                Some((_, change)) => Verdict::Changes(change),
                None => Verdict::Stays(self.before.clone()),
            }),
        }
    }

    /// The best split into one loop, two, and so on, as far as loops were followed.
    pub fn best_splits(&mut self) -> Vec<Split> {
        let rooms = self.route.len();
        let scored = |first: usize, last: usize| *self.loops.get(first * rooms + last)?;
        let mut all = best_splits(rooms, &scored);
        if let Some((score, direction)) = self.follow_both(0, rooms - 1, self.whole) {
            let part = Part { first: 0, last: rooms - 1, direction };
            all.insert(0, Split { score, parts: vec![part] });
        }
        all
    }

    /// How good a split is, each of its loops followed by itself; none where a loop has no load.
    pub fn score(&mut self, parts: &[Part]) -> Option<Score> {
        let hanging = if parts.len() == 1 { self.whole } else { self.apart };
        let mut sum = Score::default();
        for part in parts {
            sum = sum + self.follow(part, hanging)?;
        }
        Some(sum)
    }

    /// The rooms in the order of the route.
    pub fn rooms(&self) -> Vec<RoomId> {
        let rooms = (0..self.route.len()).filter_map(|at| self.route.room(at));
        rooms.filter_map(|room| Some(self.job.house.rooms.get(room)?.id)).collect()
    }

    /// Walked the better way round; as now where both are as good.
    fn follow_both(
        &mut self,
        first: usize,
        last: usize,
        hanging: Hanging,
    ) -> Option<(Score, Direction)> {
        let now = self.follow(&Part { first, last, direction: Direction::AsNow }, hanging)?;
        let turned = self.follow(&Part { first, last, direction: Direction::Reversed }, hanging);
        Some(match turned.filter(|turned| *turned < now) {
            Some(turned) => (turned, Direction::Reversed),
            None => (now, Direction::AsNow),
        })
    }

    fn follow(&mut self, part: &Part, hanging: Hanging) -> Option<Score> {
        // A way back above the elements leads from the far end.
        if (self.route.back, part.direction) == (BackPath::InEnclosure, Direction::Reversed) {
            return None;
        }
        let rooms: Vec<usize> = part.places().filter_map(|place| self.route.room(place)).collect();
        let ways = self.route.ways(part);
        let (facts, pressure) =
            self.follower.follow(&self.job, &self.loads, &hanging, &rooms, &ways);
        // Water would stand still on it.
        if facts.load <= Power::ZERO {
            return None;
        }
        let mut score = facts.score(&self.job);
        score.over_ppm += self.limit.over_ppm(pressure);
        Some(score)
    }

    /// The best splits that may be better than what is now.
    fn worth_solving(&mut self) -> Vec<Split> {
        let today = self.route.today();
        let now = self.score(&today).unwrap_or(self.before_score);
        let mut all = self.best_splits();
        // What troubles the real system may not show where each loop is followed by itself.
        let troubled = self.before_score.short_rooms > 0 || self.before_score.over_ppm > 0;
        all.retain(|split| split.parts != today && (troubled || split.score < now));
        order::sort_by_key(&mut all, |split| split.score);
        all.truncate(SOLVED);
        all
    }

    /// Solves the whole system with these loops, and keeps it where it is the best so far.
    fn solve(&mut self, split: &Split) {
        let loops: Vec<NewLoop> = split.parts.iter().map(|part| self.new_loop(part)).collect();
        let mut draft = self.draft.clone();
        draft.hang_on_loops(
            self.zone.id,
            &loops.iter().map(|l| l.rooms.as_slice()).collect::<Vec<_>>(),
        );
        let Some(job) = read(&draft).job else { return };
        let load_of = |id| self.loads.iter().find(|load| load.room == id).cloned();
        let loads: Vec<RoomLoad> =
            job.house.rooms.iter().filter_map(|room| load_of(room.id)).collect();
        let Some(zone) = job.zones.iter().find(|zone| zone.id == self.zone.id) else { return };
        let solved = solve_piping(&job, &loads);
        if solved.piping.not_solved.is_some() || short_rooms(&loads, &solved) > self.short_now {
            return;
        }
        let hanging = if split.parts.len() == 1 { &self.whole } else { &self.apart };
        let bare_cost = bare_cost(&self.job, &self.route, hanging, &split.parts);
        let (after, score) = figures(&job, &loads, zone, &solved, bare_cost);
        // With the pipe that is reckoned with it must not leave a room colder than now either.
        if split.score.short_rooms > self.before_score.short_rooms {
            return;
        }
        let Some(gain) = gain(&self.before_score, &score) else { return };
        if self.found.as_ref().is_none_or(|(best, _)| score < *best) {
            let unknown = self.route.unknown(&self.job, &split.parts);
            let before = self.before.clone();
            self.found = Some((score, Change { gain, loops, before, after, unknown }));
        }
    }

    fn new_loop(&self, part: &Part) -> NewLoop {
        let rooms = part.places().filter_map(|place| self.route.room(place));
        NewLoop {
            rooms: rooms.filter_map(|room| Some(self.job.house.rooms.get(room)?.id)).collect(),
            direction: part.direction,
        }
    }
}

/// What is better by so much that it is worth other loops; none where nothing is, or something that
/// counts more is worse.
fn gain(before: &Score, after: &Score) -> Option<Gain> {
    let share = |of: u64| (of as f64 * WORTH) as u64;
    let steps = [
        (before.short_rooms, after.short_rooms, 0, Gain::RoomsHeated),
        (before.short_mw, after.short_mw, share(before.short_mw), Gain::LessShort),
        (before.over_ppm, after.over_ppm, share(before.over_ppm), Gain::WithinLimits),
        (before.beyond_ppm, after.beyond_ppm, share(before.beyond_ppm), Gain::WithinPractice),
        (before.cost_mils, after.cost_mils, share(before.cost_mils), Gain::Cheaper),
        (before.loops, after.loops, 0, Gain::FewerLoops),
        (before.element_um, after.element_um, share(before.element_um), Gain::LessElement),
    ];
    for (was, is, least, gain) in steps {
        if is + least < was {
            return Some(gain);
        }
        if is > was + least {
            return None;
        }
    }
    None
}

/// The flow that circuits are meant to have, in kg/s a watt of their load: the same for them all.
fn flow_per_load(loads: &[RoomLoad], solved: &Solved) -> Option<f64> {
    let circuit = solved.piping.circuits.first()?;
    let own = loads.iter().filter(|load| circuit.rooms.contains(&load.room));
    let load: Power = own.map(|load| load.wanted().max(Power::ZERO)).sum();
    let share = circuit.target.si() / load.si();
    (share.is_finite() && share > 0.0).then_some(share)
}

fn short_rooms(loads: &[RoomLoad], solved: &Solved) -> usize {
    let short = |(load, element): (&RoomLoad, &crate::design::RoomElement)| {
        let wanted = load.wanted().max(Power::ZERO);
        is_short(wanted, wanted - element.output)
    };
    loads.iter().zip(&solved.elements).filter(|&pair| short(pair)).count()
}

/// What a zone's tubes and trunk are once it is so arranged.
fn hanging(draft: &Draft, id: ZoneId, arrangement: Arrangement) -> Option<Hanging> {
    let mut draft = draft.clone();
    draft.arrange(id, arrangement);
    let zone = draft.zone(id)?;
    let si = |field| resolve(&draft, Field::Zone(id, field)).si();
    Some(Hanging {
        pipe: zone.pipe,
        main: zone.main,
        trunk: PipeLeg {
            length: Length::from_si(si(ZoneField::Trunk)?),
            elbows: si(ZoneField::TrunkElbows)? as u32,
        },
        from: match arrangement {
            Arrangement::Series => From::Boiler,
            _ => From::Tees(zone.balancing),
        },
    })
}

/// Of these loops without their elements.
fn bare_cost(job: &Job, route: &Route, hanging: &Hanging, parts: &[Part]) -> Money {
    let one = |part: &Part| {
        let ways = route.ways(part);
        let pipe = ways.to.iter().fold(ways.back, |all, way| route::sum(all, way.all()));
        price::of_loop(job, pipe, hanging)
    };
    parts.iter().map(one).sum()
}
