//! The problem in the search's own units: lengths in the stock's common divisor, one weight a piece.

use super::bound::Tables;
use super::{Problem, SelectError, Selection};

/// Stock lengths at most, so that counts stand in an array.
pub(super) const MOST_STOCK: usize = 24;
/// By kind of piece, in the model's order.
pub(super) type Counts = [u16; MOST_STOCK];
/// A weight from which on something cannot be made.
pub(super) const MAKES: i64 = i64::MAX / 4;

/// Beyond any house, and small enough that no sum of weights overflows: 1000 ft of one wall,
/// 5000 ft in all, ten thousand dollars a piece. Judgement.
const MOST_SEGMENT: u32 = 192_000;
const MOST_LENGTH: u64 = 1_000_000;
const MOST_CENTS: u64 = 1_000_000;
/// Steps of the dynamic programmes at the most, a minute or so.
const MOST_STEPS: u64 = 10_000_000_000;
/// More than all pieces of a selection: a cent outweighs every number of pieces.
const PIECES: u64 = 1 << 16;
/// What a unit that a room stays short by weighs, where pieces weigh one each.
pub(super) const SHORT: i64 = PIECES as i64;
/// More than all lengths of a selection: a piece outweighs every length.
const LENGTHS: i64 = 1 << 32;

/// A stock length that fits somewhere and is there.
#[derive(Debug, Clone, Copy)]
pub(super) struct Kind {
    pub length: u32,
    pub weight: i64,
    /// `None` where more than this can never be used.
    pub limit: Option<u16>,
    typed: usize,
}

#[derive(Debug, Clone)]
pub(super) struct ModelRoom {
    pub need: u32,
    /// Whether it may stay short, at [`SHORT`] a unit.
    pub soft: bool,
    /// Each segment's place in [`Model::holds`].
    pub segments: Vec<usize>,
    typed: usize,
}

#[derive(Debug, Clone)]
pub(super) struct Model {
    /// Longest first.
    pub kinds: Vec<Kind>,
    /// What segments hold, each number once.
    pub holds: Vec<u32>,
    pub rooms: Vec<ModelRoom>,
    unit: u32,
    /// Weight of a cent, of a piece where there are no prices, or of a unit that a room is short.
    pub whole: i64,
}

/// Refuses what is not a problem.
pub(super) fn check(problem: &Problem) -> Result<(), SelectError> {
    let Problem { rooms, stock, joint_cents } = problem;
    if stock.is_empty() {
        return Err(SelectError::NoStock);
    }
    if rooms.is_empty() {
        return Err(SelectError::NoRooms);
    }
    let priced = stock.iter().any(|stock| stock.price_cents.is_some());
    for (at, one) in stock.iter().enumerate() {
        if one.length_sixteenths == 0 {
            return Err(SelectError::NoLength { stock: at });
        }
        if stock[..at].iter().any(|before| before.length_sixteenths == one.length_sixteenths) {
            return Err(SelectError::Repeated { stock: at });
        }
        if priced && one.price_cents.is_none() {
            return Err(SelectError::NoPrice { stock: at });
        }
        if u64::from(one.price_cents.unwrap_or(0)) + u64::from(*joint_cents) > MOST_CENTS {
            return Err(SelectError::TooLarge);
        }
    }
    for (at, room) in rooms.iter().enumerate() {
        if room.segments_sixteenths.is_empty() {
            return Err(SelectError::NoSegments { room: at });
        }
        if room.need_sixteenths == 0 {
            return Err(SelectError::NoNeed { room: at });
        }
    }
    let shortest = stock.iter().map(|stock| stock.length_sixteenths).min().unwrap_or(1);
    let segments = || rooms.iter().flat_map(|room| &room.segments_sixteenths);
    if segments().all(|&segment| segment < shortest) {
        return Err(SelectError::NoneFits);
    }
    let total: u64 = segments().map(|&segment| u64::from(segment)).sum();
    let pieces: u64 = segments().map(|&segment| u64::from(segment / shortest)).sum();
    let large = stock.len() > MOST_STOCK
        || segments().any(|&segment| segment > MOST_SEGMENT)
        || total > MOST_LENGTH
        || pieces >= PIECES
        || steps(problem) > MOST_STEPS;
    if large { Err(SelectError::TooLarge) } else { Ok(()) }
}

/// The most that the dynamic programmes over the rooms' segments can take.
fn steps(problem: &Problem) -> u64 {
    let unit = u64::from(common(problem).max(1));
    let mut steps = 0;
    for room in &problem.rooms {
        let mut sum = 0;
        for &segment in &room.segments_sixteenths {
            let segment = u64::from(segment) / unit;
            sum = (sum + segment).min(u64::from(room.need_sixteenths) / unit + 1);
            steps += segment * sum;
        }
    }
    steps
}

/// The greatest length that divides every piece that fits and is there; 0 if there is none.
fn common(problem: &Problem) -> u32 {
    usable(problem).fold(0, |unit, at| divisor(problem.stock[at].length_sixteenths, unit))
}

fn divisor(a: u32, b: u32) -> u32 {
    let (mut a, mut b) = (a, b);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

fn usable(problem: &Problem) -> impl Iterator<Item = usize> + '_ {
    let segments = problem.rooms.iter().flat_map(|room| &room.segments_sixteenths);
    let longest = segments.copied().max().unwrap_or(0);
    (0..problem.stock.len()).filter(move |&at| {
        let stock = &problem.stock[at];
        stock.length_sixteenths <= longest && stock.available != Some(0)
    })
}

impl Model {
    /// `None` when nothing that fits is there.
    pub(super) fn of(problem: &Problem) -> Option<Model> {
        Model::build(problem, problem.rooms.len(), None)
    }

    /// The least that room `soft` can stay short by while all before it are met.
    pub(super) fn of_shortage(problem: &Problem, soft: usize) -> Option<Model> {
        Model::build(problem, soft + 1, Some(soft))
    }

    fn build(problem: &Problem, rooms: usize, soft: Option<usize>) -> Option<Model> {
        let unit = common(problem);
        if unit == 0 {
            return None;
        }
        let mut model =
            Model { kinds: Vec::new(), holds: Vec::new(), rooms: Vec::new(), unit, whole: 0 };
        for (typed, room) in problem.rooms[..rooms].iter().enumerate() {
            let segments = room.segments_sixteenths.iter().map(|&s| model.hold(s / unit)).collect();
            let need = room.need_sixteenths.div_ceil(unit);
            let room = ModelRoom { need, soft: soft == Some(typed), segments, typed };
            // By its numbers, so that the order typed does not matter.
            let rank = |typed: usize| {
                let room = &problem.rooms[typed];
                (room.need_sixteenths, &room.segments_sixteenths)
            };
            let place = model.rooms.iter().position(|other| rank(typed) > rank(other.typed));
            model.rooms.insert(place.unwrap_or(model.rooms.len()), room);
        }
        let priced = problem.stock.iter().all(|stock| stock.price_cents.is_some());
        model.whole = if priced || soft.is_some() { PIECES as i64 } else { LENGTHS };
        for typed in usable(problem) {
            let stock = &problem.stock[typed];
            let length = stock.length_sixteenths / unit;
            let weight = match stock.price_cents {
                _ if soft.is_some() => 1,
                Some(price) => {
                    (i64::from(price) + i64::from(problem.joint_cents)) * model.whole + 1
                }
                None => model.whole + i64::from(length),
            };
            let most = model.most_of(length);
            let limit = stock.available.filter(|&n| n < most).map(|n| n as u16);
            let place = model.kinds.iter().position(|other| other.length < length);
            let place = place.unwrap_or(model.kinds.len());
            model.kinds.insert(place, Kind { length, weight, limit, typed });
        }
        Some(model)
    }

    /// The place of what a segment holds.
    fn hold(&mut self, units: u32) -> usize {
        let known = self.holds.iter().position(|&hold| hold == units);
        known.unwrap_or_else(|| {
            self.holds.push(units);
            self.holds.len() - 1
        })
    }

    /// Pieces of a length that all segments together hold.
    fn most_of(&self, length: u32) -> u32 {
        let segments = self.rooms.iter().flat_map(|room| &room.segments);
        segments.map(|&segment| self.holds[segment] / length).sum()
    }

    /// No selection weighs more, whatever is added for rent.
    pub(super) fn most(&self, tables: &Tables) -> i64 {
        let pieces = self.kinds.iter().map(|kind| kind.length).min().map_or(0, |l| self.most_of(l));
        let heaviest =
            self.kinds.iter().zip(&tables.rents).map(|(kind, rent)| kind.weight + rent).max();
        let short =
            self.rooms.iter().filter(|room| room.soft).map(|room| SHORT * i64::from(room.need));
        i64::from(pieces)
            .saturating_mul(heaviest.unwrap_or(0))
            .saturating_add(short.sum())
            .min(MAKES)
    }

    /// Whether some room's segments, each with all that is there, do not hold what it needs.
    pub(super) fn is_short(&self) -> bool {
        let longest = self.holds.iter().copied().max().unwrap_or(0) as usize;
        // By sum: how many of the kind that is looked at a way to this sum takes, at the least.
        let mut makes: Vec<Option<u16>> = vec![None; longest + 1];
        makes[0] = Some(0);
        for kind in &self.kinds {
            for sum in 0..makes.len() {
                let before = sum.checked_sub(kind.length as usize).and_then(|sum| makes[sum]);
                makes[sum] = match (makes[sum], before) {
                    (Some(_), _) => Some(0),
                    (None, Some(n)) if kind.limit.is_none_or(|limit| n < limit) => Some(n + 1),
                    (None, _) => None,
                };
            }
        }
        let reach = |&segment: &usize| {
            let hold = self.holds[segment] as usize;
            (0..=hold).rev().find(|&sum| makes[sum].is_some()).unwrap_or(0) as u64
        };
        self.rooms.iter().any(|room| {
            let reach: u64 = room.segments.iter().map(reach).sum();
            !room.soft && reach < u64::from(room.need)
        })
    }

    /// Whether a plan uses no more than is there.
    pub(super) fn allowed(&self, plan: &[Counts]) -> bool {
        let used = totals(plan);
        let within =
            |(at, kind): (usize, &Kind)| kind.limit.is_none_or(|most| used[at] <= u32::from(most));
        self.kinds.iter().enumerate().all(within)
    }

    /// A weight as people are told it: cents, or pieces where there are no prices.
    pub(super) fn shown(&self, weight: i64) -> u64 {
        (weight / self.whole.max(1)).max(0) as u64
    }

    /// What is missing of `need`, both in sixteenths, for a shortage's weight.
    pub(super) fn short(&self, need: u32, weight: i64) -> u32 {
        let reached = i64::from(need.div_ceil(self.unit)) - weight / SHORT;
        (i64::from(need) - reached * i64::from(self.unit)).max(0) as u32
    }

    /// A plan in the order typed.
    pub(super) fn selection(&self, problem: &Problem, plan: &[Counts]) -> Selection {
        let mut pieces_sixteenths: Vec<Vec<Vec<u32>>> = problem
            .rooms
            .iter()
            .map(|room| vec![Vec::new(); room.segments_sixteenths.len()])
            .collect();
        let mut used = vec![0_u32; problem.stock.len()];
        let mut segments = plan.iter();
        for room in &self.rooms {
            for (place, counts) in (0..room.segments.len()).zip(&mut segments) {
                for (kind, &count) in self.kinds.iter().zip(counts) {
                    let length = problem.stock[kind.typed].length_sixteenths;
                    let pieces = &mut pieces_sixteenths[room.typed][place];
                    pieces.extend(std::iter::repeat_n(length, usize::from(count)));
                    used[kind.typed] += u32::from(count);
                }
            }
        }
        let cost = |(stock, &used): (&super::Stock, &u32)| {
            let price = u64::from(stock.price_cents?) + u64::from(problem.joint_cents);
            Some(price * u64::from(used))
        };
        let length = |(stock, &used): (&super::Stock, &u32)| {
            u64::from(stock.length_sixteenths) * u64::from(used)
        };
        let all = || problem.stock.iter().zip(&used);
        Selection {
            cost_cents: all().map(cost).sum(),
            pieces: used.iter().sum(),
            length_sixteenths: all().map(length).sum(),
            pieces_sixteenths,
            used,
        }
    }
}

/// How many of each kind a plan uses.
pub(super) fn totals(plan: &[Counts]) -> [u32; MOST_STOCK] {
    let mut used = [0_u32; MOST_STOCK];
    for counts in plan {
        for (sum, &count) in used.iter_mut().zip(counts) {
            *sum += u32::from(count);
        }
    }
    used
}
