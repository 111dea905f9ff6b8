//! Every choice, tried: the words of the engine's promise and nothing of its code.

use finrun_engine::sizing::joint::{Answer, Objective, Problem, Room, Wall, Water};

/// One way to give a room its pieces: by run and stock row, how many.
type Way = Vec<Vec<u32>>;

/// What counts, in its order. Real numbers are whole microwatts or billionths, as near as need be.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Merit {
    pub short: i64,
    pub inner: u32,
    pub objective: i64,
    /// Cost, of the fewest joints.
    pub second: i64,
    pub pieces: u32,
    pub length: u32,
}

/// What a room is to be given.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Wish {
    Nothing,
    /// This finned length, which is the most.
    Most(f64),
    Enough,
    /// Anything; what is missing counts.
    Anything,
}

struct Try<'a> {
    problem: &'a Problem,
    water: &'a dyn Water,
    ways: Vec<Vec<Vec<Way>>>,
    wishes: Vec<Vec<Wish>>,
    best: Option<Merit>,
}

/// The best of all choices.
pub(super) fn best(problem: &Problem, water: &dyn Water) -> Option<Merit> {
    let ways = all_ways(problem);
    let wishes = wishes(problem, water, &ways);
    let mut all = Try { problem, water, ways, wishes, best: None };
    all.go(0, 0, water_at(water, problem, 0), &mut Sofar::new(problem));
    if all.best.is_none() {
        for wish in all.wishes.iter_mut().flatten() {
            if *wish != Wish::Nothing {
                *wish = Wish::Anything;
            }
        }
        all.go(0, 0, water_at(water, problem, 0), &mut Sofar::new(problem));
    }
    all.best
}

/// How many choices there are, without regard to limits.
pub(super) fn count(problem: &Problem) -> f64 {
    all_ways(problem).iter().flatten().map(|ways| ways.len() as f64).product()
}

fn all_ways(problem: &Problem) -> Vec<Vec<Vec<Way>>> {
    let of_room = |room: &Room| {
        let mut ways: Vec<Way> = vec![Vec::new()];
        for run in &room.runs {
            let fixed: u32 = run.fixed_sixteenths.iter().sum();
            let mut fills = Vec::new();
            fill(problem, run.hold_sixteenths.saturating_sub(fixed), &mut Vec::new(), &mut fills);
            let more = |way: &Way| -> Vec<Way> {
                let with = |fill: &Vec<u32>| [way.as_slice(), std::slice::from_ref(fill)].concat();
                fills.iter().map(with).collect()
            };
            ways = ways.iter().flat_map(more).collect();
        }
        ways
    };
    problem.circuits.iter().map(|rooms| rooms.iter().map(of_room).collect()).collect()
}

/// Every number of each stock row that fits.
fn fill(problem: &Problem, hold: u32, counts: &mut Vec<u32>, fills: &mut Vec<Vec<u32>>) {
    let Some(stock) = problem.stock.get(counts.len()) else {
        fills.push(counts.clone());
        return;
    };
    for count in 0..=hold / stock.length_sixteenths {
        if stock.available.is_some_and(|most| count > most) {
            break;
        }
        counts.push(count);
        fill(problem, hold - count * stock.length_sixteenths, counts, fills);
        counts.pop();
    }
}

fn finned_m(problem: &Problem, length_sixteenths: u32) -> f64 {
    (f64::from(length_sixteenths) / 16.0 * 0.0254 - problem.bare_per_piece_m).max(0.0)
}

/// Of a room's fixed and new pieces.
fn finned_of(problem: &Problem, room: &Room, way: &Way) -> f64 {
    let fixed = room.runs.iter().flat_map(|run| &run.fixed_sixteenths);
    let fixed: f64 = fixed.map(|&length| finned_m(problem, length)).sum();
    let new = way.iter().flat_map(|counts| counts.iter().zip(&problem.stock));
    let new =
        new.map(|(&count, stock)| f64::from(count) * finned_m(problem, stock.length_sixteenths));
    fixed + new.sum::<f64>()
}

fn reaches(finned_m: f64, needed_m: f64) -> bool {
    finned_m >= needed_m * (1.0 - 1e-9)
}

/// A room that is short even with the shortest lengths that do in all rooms before it, limits aside,
/// gets the most.
fn wishes(problem: &Problem, water: &dyn Water, ways: &[Vec<Vec<Way>>]) -> Vec<Vec<Wish>> {
    let endless = Problem {
        stock: problem
            .stock
            .iter()
            .map(|stock| finrun_engine::sizing::joint::Stock {
                available: stock.available.filter(|&available| available == 0),
                ..*stock
            })
            .collect(),
        ..problem.clone()
    };
    let mut all = Vec::new();
    let endless_ways = all_ways(&endless);
    assert!(endless_ways.len() == ways.len());
    for (at, rooms) in problem.circuits.iter().enumerate() {
        let mut water_k = water.enters_k(at);
        let mut of_circuit = Vec::new();
        for (place, room) in rooms.iter().enumerate() {
            let mut lengths: Vec<f64> =
                endless_ways[at][place].iter().map(|way| finned_of(problem, room, way)).collect();
            lengths.sort_by(f64::total_cmp);
            let needed = water.needed_m(at, place, water_k);
            let first = needed
                .and_then(|needed| lengths.iter().copied().find(|&length| reaches(length, needed)));
            let most = lengths[lengths.len() - 1];
            let (wish, length) = match (needed, first) {
                (Some(0.0), _) => (Wish::Nothing, finned_of(problem, room, &Vec::new())),
                (_, Some(first)) => (Wish::Enough, first),
                (_, None) => (Wish::Most(most), most),
            };
            of_circuit.push(wish);
            water_k = water.after(at, place, water_k, length).water_k;
        }
        all.push(of_circuit);
    }
    all
}

fn water_at(water: &dyn Water, problem: &Problem, at: usize) -> (f64, f64) {
    match problem.circuits.get(at) {
        Some(_) => (water.enters_k(at), water.part_enters_k(at)),
        None => (0.0, 0.0),
    }
}

#[derive(Debug, Clone)]
struct Sofar {
    used: Vec<u32>,
    short: i64,
    inner: u32,
    heat: i64,
    cents: u64,
    joints: u32,
    pieces: u32,
    length: u32,
    least: f64,
    most: f64,
}

impl Sofar {
    fn new(problem: &Problem) -> Sofar {
        Sofar {
            used: vec![0; problem.stock.len()],
            short: 0,
            inner: 0,
            heat: 0,
            cents: 0,
            joints: 0,
            pieces: 0,
            length: 0,
            least: f64::INFINITY,
            most: 0.0,
        }
    }

    fn merit(&self, problem: &Problem) -> Merit {
        let priced = problem.stock.iter().all(|stock| stock.price_cents.is_some());
        let cents = if priced { self.cents as i64 } else { 0 };
        let (objective, second) = match problem.objective {
            Objective::Closest => (self.heat, 0),
            Objective::LeastCost if priced => (cents, 0),
            Objective::LeastCost => (i64::from(self.pieces), 0),
            Objective::FewestJoints => (i64::from(self.joints), cents),
            Objective::MostEven if self.most > 0.0 => {
                ((self.most / self.least * 1e9).round() as i64, 0)
            }
            Objective::MostEven => (1_000_000_000, 0),
        };
        let Sofar { short, inner, pieces, length, .. } = *self;
        Merit { short, inner, objective, second, pieces, length }
    }
}

impl Try<'_> {
    fn go(&mut self, at: usize, place: usize, (water_k, part_k): (f64, f64), sofar: &mut Sofar) {
        let problem = self.problem;
        let Some(rooms) = problem.circuits.get(at) else {
            let merit = sofar.merit(problem);
            if self.best.as_ref().is_none_or(|best| merit < *best) {
                self.best = Some(merit);
            }
            return;
        };
        let Some(room) = rooms.get(place) else {
            let entering = water_at(self.water, problem, at + 1);
            return self.go(at + 1, 0, entering, sofar);
        };
        let wish = self.wishes[at][place];
        let needed = self.water.needed_m(at, place, water_k);
        for index in 0..self.ways[at][place].len() {
            let way = self.ways[at][place][index].clone();
            let finned = finned_of(problem, room, &way);
            let is_met = needed.is_some_and(|needed| reaches(finned, needed));
            let is_wished = match wish {
                Wish::Nothing => way.iter().flatten().all(|&count| count == 0),
                Wish::Most(most) => (finned - most).abs() < 1e-9,
                Wish::Enough => is_met,
                Wish::Anything => true,
            };
            let mut next = sofar.clone();
            if !is_wished || !next.take(problem, room, &way) {
                continue;
            }
            let after = self.water.after(at, place, water_k, finned);
            let part = self.water.part_after(at, place, part_k, finned);
            let load_w = self.water.load_w(at, place);
            if wish == Wish::Anything && !is_met {
                next.short += ((load_w - after.output_w) * 1e6).round().max(0.0) as i64;
            }
            next.heat += (after.output_w * 1e6).round() as i64;
            if is_met && load_w > 0.0 {
                next.least = next.least.min(part.output_w / load_w);
                next.most = next.most.max(part.output_w / load_w);
            }
            self.go(at, place + 1, (after.water_k, part.water_k), &mut next);
        }
    }
}

impl Sofar {
    /// Adds a room's pieces; false where there are not so many.
    fn take(&mut self, problem: &Problem, room: &Room, way: &Way) -> bool {
        for (run, counts) in room.runs.iter().zip(way) {
            let new: u32 = counts.iter().sum();
            let fixed = run.fixed_sixteenths.len() as u32;
            self.pieces += new + fixed;
            self.joints += if new + fixed > 0 { new + fixed + 1 } else { 0 };
            if new > 0 {
                self.inner += u32::from(run.wall == Wall::Inner);
                let costs = problem.costs;
                self.cents += u64::from(new) * u64::from(costs.joint_cents);
                if fixed == 0 {
                    self.cents += u64::from(costs.joint_cents) + u64::from(costs.run_cents);
                }
            }
            for ((&count, stock), used) in counts.iter().zip(&problem.stock).zip(&mut self.used) {
                *used += count;
                if stock.available.is_some_and(|most| *used > most) {
                    return false;
                }
                self.cents += u64::from(count) * u64::from(stock.price_cents.unwrap_or(0));
                self.length += count * stock.length_sixteenths;
            }
        }
        true
    }
}

/// What an answer's pieces come to, by the same words; or what is wrong with them.
pub(super) fn merit(
    problem: &Problem,
    water: &dyn Water,
    answer: &Answer,
    is_weighed: bool,
) -> Result<Merit, String> {
    let mut left: Vec<u32> = answer.used.clone();
    let mut sofar = Sofar::new(problem);
    let priced = problem.stock.iter().all(|stock| stock.price_cents.is_some());
    for (at, rooms) in problem.circuits.iter().enumerate() {
        let (mut water_k, mut part_k) = water_at(water, problem, at);
        for (place, room) in rooms.iter().enumerate() {
            let mut way = Way::new();
            for (run, pieces) in room.runs.iter().zip(&answer.pieces_sixteenths[at][place]) {
                if pieces.iter().sum::<u32>()
                    > run.hold_sixteenths.max(run.fixed_sixteenths.iter().sum())
                {
                    return Err(format!("{pieces:?} on {run:?}"));
                }
                if !pieces.is_sorted_by(|a, b| a >= b) {
                    return Err(format!("{pieces:?} not longest first"));
                }
                let mut new = pieces.clone();
                for fixed in &run.fixed_sixteenths {
                    let Some(place) = new.iter().position(|piece| piece == fixed) else {
                        return Err(format!("{fixed} is gone"));
                    };
                    new.remove(place);
                }
                let mut counts = vec![0; problem.stock.len()];
                for piece in new {
                    let row = (0..left.len()).find(|&row| {
                        left[row] > 0 && problem.stock[row].length_sixteenths == piece
                    });
                    let Some(row) = row else {
                        return Err(format!("{piece} is not in {:?}", answer.used));
                    };
                    left[row] -= 1;
                    counts[row] += 1;
                }
                way.push(counts);
            }
            if !sofar.take(problem, room, &way) {
                return Err(format!("{:?} is more than there is", answer.used));
            }
            let finned = finned_of(problem, room, &way);
            let needed = water.needed_m(at, place, water_k);
            let is_met = needed.is_some_and(|needed| reaches(finned, needed));
            let after = water.after(at, place, water_k, finned);
            let part = water.part_after(at, place, part_k, finned);
            let load_w = water.load_w(at, place);
            if answer.short_w[at][place].is_some() == is_met {
                return Err(format!("room {at} {place} is said to be short or not"));
            }
            if !is_met && is_weighed {
                sofar.short += ((load_w - after.output_w) * 1e6).round().max(0.0) as i64;
            }
            sofar.heat += (after.output_w * 1e6).round() as i64;
            if is_met && load_w > 0.0 {
                sofar.least = sofar.least.min(part.output_w / load_w);
                sofar.most = sofar.most.max(part.output_w / load_w);
            }
            (water_k, part_k) = (after.water_k, part.water_k);
        }
    }
    if left.iter().any(|&left| left > 0) {
        return Err(format!("{left:?} of {:?} are nowhere", answer.used));
    }
    let merit = sofar.merit(problem);
    let told = (answer.cost_cents, answer.pieces, answer.joints, answer.inner_runs);
    let right = (priced.then_some(sofar.cents), sofar.pieces, sofar.joints, sofar.inner);
    if told != right {
        return Err(format!("sums {told:?} for {right:?}"));
    }
    let loads: f64 = (0..problem.circuits.len())
        .flat_map(|at| (0..problem.circuits[at].len()).map(move |room| (at, room)))
        .map(|(at, room)| water.load_w(at, room))
        .sum();
    let value = match problem.objective {
        Objective::Closest => merit.objective as f64 / 1e6 - loads,
        Objective::MostEven => merit.objective as f64 / 1e9,
        _ => merit.objective as f64,
    };
    if (answer.value - value).abs() > 1e-4 {
        return Err(format!("value {} for {value}", answer.value));
    }
    Ok(merit)
}
