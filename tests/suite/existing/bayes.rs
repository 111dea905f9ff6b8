//! Bayes' rule by brute force: the readings' likelihood, integrated point by point over the range of each
//! strength, with predictions and slopes from the suite's own runs (see `faults`). The module that explains
//! goes by Laplace's method about the best strength, and by a model of its own.
//!
//! Chances, ranges and what the calculation leaves open are the judgements that stand in `existing`, typed
//! here once more.

use super::faults::{Real, Run, read_all};
use super::gets::standing;
use super::solved;
use crate::support::{FOUR_ROOMS, open};
use finrun_engine::existing::{At, Explanation, Order, Sure, WATER, explain, gets};
use finrun_engine::job::{Measured, Ran};
use finrun_engine::numeric::{exp, ln};
use finrun_engine::quantity::{Temperature, TemperatureDifference, Unit, VolumeFlow};

const READINGS: usize = 4;

fn run() -> Run {
    let fahrenheit = |value: f64| Temperature::of(value, Unit::Fahrenheit);
    Run { supply: fahrenheit(170.0), outdoors: fahrenheit(12.0), ran: Ran::AWhile }
}

/// Supply and return, and the water behind the second and the third element.
fn readings(measured: &Measured) -> [f64; READINGS] {
    let out = |nth: usize| measured.spots[nth].1.water_out;
    [measured.boiler_supply, measured.boiler_back, out(1), out(2)].map(|t| t.expect("read").si())
}

/// Only those.
fn few(measured: &Measured) -> Measured {
    let mut few = measured.clone();
    for (nth, (_, spot)) in few.spots.iter_mut().enumerate() {
        (spot.air, spot.water_in, spot.supply, spot.back) = (None, None, None, None);
        if nth == 0 || nth == 3 {
            spot.water_out = None;
        }
    }
    few
}

/// A system with all that is open of it: each by a small step, over the step, times its standard error.
fn nearby(real: &Real, at: Run, flow: f64) -> Vec<[f64; READINGS]> {
    const STEP: f64 = 0.02;
    let base = readings(&read_all(&real.clone().flow(flow), at));
    let slope = |moved: [f64; READINGS], step: f64, error: f64| {
        std::array::from_fn(|nth| (moved[nth] - base[nth]) / step * error)
    };
    let hotter = Run { supply: at.supply + TemperatureDifference::from_si(0.5), ..at };
    let rooms = real.job.house.rooms.len();
    let more = |rooms: std::ops::Range<usize>| {
        let real = rooms.fold(real.clone(), |real, room| real.output(room, exp(STEP)));
        readings(&read_all(&real.flow(flow), at))
    };
    let mut all = vec![
        slope(readings(&read_all(&real.clone().flow(flow), hotter)), 0.5, 20.0),
        slope(readings(&read_all(&real.clone().flow(flow * exp(STEP)), at)), STEP, 0.10),
        slope(more(0..rooms), STEP, 0.05),
    ];
    all.extend((0..rooms).map(|room| slope(more(room..room + 1), STEP, 0.05)));
    all
}

/// The logarithm of the likelihood of what was read, but for a constant, by elimination.
fn ln_likelihood(real: &Real, at: Run, flow: f64, read: [f64; READINGS]) -> f64 {
    let predicted = readings(&read_all(&real.clone().flow(flow), at));
    let mut rows = [[0.0; READINGS + 1]; READINGS];
    let slopes = nearby(real, at, flow);
    for (a, row) in rows.iter_mut().enumerate() {
        for b in 0..READINGS {
            row[b] = slopes.iter().map(|slope| slope[a] * slope[b]).sum();
        }
        row[a] += WATER.si() * WATER.si();
        row[READINGS] = read[a] - predicted[a];
    }
    // The covariance is positive, so that no row has to be moved; the squares come out on the way.
    let (mut squares, mut ln_determinant) = (0.0, 0.0);
    for pivot in 0..READINGS {
        let of = rows[pivot];
        squares += of[READINGS] * of[READINGS] / of[pivot];
        ln_determinant += ln(of[pivot]);
        for row in rows.iter_mut().skip(pivot + 1) {
            let times = row[pivot] / of[pivot];
            for (value, above) in row.iter_mut().zip(of) {
                *value -= times * above;
            }
        }
    }
    -0.5 * (squares + ln_determinant)
}

/// The mean likelihood over a range whose logarithms are alike, by the trapezoid rule.
fn mean(range: (f64, f64), ln_likelihood: impl Fn(f64) -> f64) -> f64 {
    const PARTS: usize = 48;
    let (low, high) = (ln(range.0), ln(range.1));
    let at = |nth: usize| exp(low + (high - low) * nth as f64 / PARTS as f64);
    let weight = |nth: usize| if nth == 0 || nth == PARTS { 0.5 } else { 1.0 };
    (0..=PARTS).map(|nth| weight(nth) * exp(ln_likelihood(at(nth)))).sum::<f64>() / PARTS as f64
}

#[test]
fn shares_are_those_of_bayes_by_brute_force() {
    let (job, design) = solved(&open(FOUR_ROOMS));
    assert_eq!(design.piping.circuits.len(), 1);
    let (real, at) = (Real::of(&job, &design), run());
    let id = |room: usize| job.house.rooms[room].id;
    let rooms = job.house.rooms.len();
    let order = |change: &dyn Fn(&mut Vec<usize>)| {
        let mut other = real.clone();
        change(&mut other.job.zones[0].loops[0]);
        other
    };
    let mut compared = 0;
    // Laplace's method takes the likelihood for a bell, and is off by so much; also where the best lies at an
    // end of the range and the likelihood rises beyond it.
    for fault in [real.clone().flow(0.8), real.clone().output(1, 0.6), real.clone().flow(0.17)] {
        let measured = few(&read_all(&fault, at));
        let read = readings(&measured);
        let likelihood = |of: &Real, flow: f64| ln_likelihood(of, at, flow, read);
        let mut worth: Vec<(Explanation, f64)> = vec![
            (Explanation::AsCalculated, 2.0 * exp(likelihood(&real, 1.0))),
            (Explanation::LowFlow, mean((0.2, 0.85), |share| likelihood(&real, share))),
            (Explanation::Air { first: id(0) }, mean((0.02, 0.2), |s| likelihood(&real, s))),
        ];
        for room in 0..rooms {
            let blocked = |share: f64| likelihood(&real.clone().output(room, share), 1.0);
            let each = mean((0.1, 0.85), blocked) / rooms as f64;
            worth.push((Explanation::Blocked { room: id(room) }, each));
        }
        let wrong = |order| Explanation::WrongOrder { first: id(0), order };
        let reversed = exp(likelihood(&order(&|rooms| rooms.reverse()), 1.0));
        worth.push((wrong(Order::Reversed), 0.5 * 0.7 * reversed));
        for nth in 1..rooms {
            let swapped = exp(likelihood(&order(&|rooms| rooms.swap(nth - 1, nth)), 1.0));
            let order = Order::Swapped { before: id(nth - 1), behind: id(nth) };
            worth.push((wrong(order), 0.5 * 0.3 * swapped / (rooms - 1) as f64));
        }
        let sum: f64 = worth.iter().map(|(_, worth)| worth).sum();
        let explained = explain(&job, &design, &measured).expect("explained");
        assert_eq!(explained.likely.len(), worth.len());
        for (explanation, worth) in worth {
            let of = explained.likely.iter().find(|one| one.explanation == explanation);
            let (found, share) = (of.expect("weighed").share, worth / sum);
            assert!((found - share).abs() < 0.06, "{explanation:?}: {found} instead of {share}");
            compared += usize::from(share > 0.1 && share < 0.9);
        }
    }
    assert!(compared > 3, "some are neither certain nor out of the question: {compared}");
}

/// Two rooms have too little element: the one that comes to rest farther below what it is meant to be is
/// named.
#[test]
fn the_colder_of_two_short_rooms_is_named() {
    for (first, second) in [(0.7, 0.5), (0.5, 0.7)] {
        let share = |room| match room {
            1 => first,
            2 => second,
            _ => 1.0,
        };
        let (job, _, built) = standing(FOUR_ROOMS, share);
        let below = |nth: usize| {
            let of = gets(&job, &built)[nth];
            (job.house.rooms[nth].temperature - of.reaches.expect("rest")).si()
        };
        let colder = if below(1) > below(2) { 1 } else { 2 };
        assert_eq!(colder, if first < second { 1 } else { 2 });
        let measured = read_all(&Real::of(&job, &built), run());
        let explained = explain(&job, &built, &measured).expect("explained");
        let named = Explanation::TooLittle { room: job.house.rooms[colder].id };
        assert!(explained.likely.iter().any(|one| one.explanation == named), "{explained:?}");
    }
}

/// Two thermometers on one supply: half the square of their difference, in standard errors, is what no
/// explanation takes away. Of four readings three are free, and chi-square with three is 11.34 in one of a
/// hundred cases (any table): 4.2 errors apart are 8.8, and fit; 5.1 apart are 13.0, and do not.
#[test]
fn readings_fit_up_to_one_in_a_hundred() {
    let (job, design) = solved(&open(FOUR_ROOMS));
    let all = read_all(&Real::of(&job, &design), run());
    let fits = |errors: f64| {
        let mut measured = few(&all);
        measured.spots[2].1.water_out = None;
        let supply = all.boiler_supply.expect("read");
        measured.spots[0].1.supply = Some(supply + WATER * errors);
        explain(&job, &design, &measured).expect("explained").fits
    };
    assert!(fits(0.0) && fits(4.2));
    assert!(!fits(5.1));
}

/// By hand: 2 gpm are 0.1262 L/s, and water of 170 °F weighs 0.974 kg/L (steam tables): 0.1229 kg/s.
#[test]
fn a_metered_flow_is_weighed_hot() {
    let (mut job, design) = solved(&open(FOUR_ROOMS));
    job.circuit.supply = run().supply;
    let mut measured = few(&read_all(&Real::of(&job, &design), run()));
    measured.spots[0].1.flow = Some(VolumeFlow::of(2.0, Unit::GallonPerMinute));
    let explained = explain(&job, &design, &measured).expect("explained");
    let flow = explained.compared.iter().find(|one| matches!(one.at, At::Flow(_)));
    let read = flow.expect("compared").read;
    assert!((read / 0.1229 - 1.0).abs() < 0.005, "{read}");
}

/// Two neighbours that are piped the other way about are told from any others.
#[test]
fn swapped_neighbours_are_named() {
    let (job, design) = solved(&open(FOUR_ROOMS));
    for nth in 1..4 {
        let mut real = Real::of(&job, &design);
        let id = |at: usize| job.house.rooms[job.zones[0].loops[0][at]].id;
        real.job.zones[0].loops[0].swap(nth - 1, nth);
        let at = Run { ran: Ran::Throughout, ..run() };
        let explained = explain(&job, &design, &read_all(&real, at)).expect("explained");
        let order = Order::Swapped { before: id(nth - 1), behind: id(nth) };
        let first = explained.likely[0];
        assert_eq!(first.explanation, Explanation::WrongOrder { first: id(0), order });
        assert!(first.sure >= Sure::Likely, "{first:?}");
    }
}
