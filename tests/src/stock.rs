//! Kind g: the cheapest stock pieces for rooms.

use crate::tally::{Tally, Tolerance};
use finrun_engine::sizing::select::{NODES, Outcome, Problem, Room, Selection, Stock, select};
use serde::Deserialize;

/// Whole cents, so that any difference is far outside.
const EXACT: Tolerance = Tolerance::Share(1e-9);

#[derive(Debug, Deserialize)]
struct File {
    #[serde(alias = "cases")]
    instances: Vec<Instance>,
}

#[derive(Debug, Deserialize)]
struct Instance {
    id: String,
    stock_lengths_ft: Vec<u32>,
    price_cents: Vec<u32>,
    joint_cost_cents_per_piece: u32,
    rooms: Vec<Wanted>,
    available: Option<serde_json::Map<String, serde_json::Value>>,
    status: String,
    optimal_cost_cents: Option<u64>,
}

#[derive(Debug, Deserialize)]
struct Wanted {
    segments_usable_ft: Vec<f64>,
    min_total_ft: f64,
}

/// One problem with its proven optimum in cents, or `None` where it has no answer.
#[derive(Debug, Clone)]
pub struct Case {
    pub id: String,
    pub problem: Problem,
    pub optimum_cents: Option<u64>,
}

/// The problems of a file's text.
pub fn cases(text: &str) -> Result<Vec<Case>, String> {
    let file: File = serde_json::from_str(text).map_err(|error| error.to_string())?;
    file.instances.iter().map(case).collect()
}

fn case(instance: &Instance) -> Result<Case, String> {
    let Instance { id, stock_lengths_ft, price_cents, .. } = instance;
    let optimum_cents = match (instance.status.as_str(), instance.optimal_cost_cents) {
        ("optimal", Some(cents)) => Some(cents),
        ("infeasible", None) => None,
        _ => return Err(format!("{id}: status and cost do not agree")),
    };
    if stock_lengths_ft.len() != price_cents.len() {
        return Err(format!("{id}: lengths and prices differ in number"));
    }
    let mut stock: Vec<Stock> = Vec::new();
    for (&feet, &cents) in stock_lengths_ft.iter().zip(price_cents) {
        let limit = instance.available.as_ref().and_then(|all| all.get(&feet.to_string()));
        let available = match limit {
            None => None,
            Some(limit) => {
                Some(limit.as_u64().ok_or(format!("{id}: not a number of pieces"))? as u32)
            }
        };
        stock.push(Stock { length_sixteenths: feet * 192, price_cents: Some(cents), available });
    }
    let mut rooms = Vec::new();
    for wanted in &instance.rooms {
        let segments = wanted.segments_usable_ft.iter().map(|&feet| sixteenths(id, feet));
        rooms.push(Room {
            segments_sixteenths: segments.collect::<Result<_, _>>()?,
            need_sixteenths: sixteenths(id, wanted.min_total_ft)?,
        });
    }
    let problem = Problem { rooms, stock, joint_cents: instance.joint_cost_cents_per_piece };
    Ok(Case { id: id.clone(), problem, optimum_cents })
}

/// Whole sixteenths of an inch, or the file means something else.
fn sixteenths(id: &str, feet: f64) -> Result<u32, String> {
    let sixteenths = feet * 192.0;
    if sixteenths >= 0.0 && sixteenths.fract() == 0.0 {
        Ok(sixteenths as u32)
    } else {
        Err(format!("{id}: {feet} ft is not in sixteenths of an inch"))
    }
}

pub(crate) fn check(text: &str) -> Result<Tally, String> {
    let mut tally = Tally::default();
    for case in cases(text)? {
        let outcome = select(&case.problem, NODES).map(|answer| answer.outcome);
        match (&outcome, case.optimum_cents) {
            (Ok(Outcome::Infeasible { .. }), None) => {
                tally.compare("no answer", EXACT, &case.id, 1.0, 1.0);
            }
            (_, None) => tally.compare("no answer", EXACT, &case.id, 0.0, 1.0),
            (Ok(Outcome::Optimal(found)), Some(cents)) => {
                let cost = found.cost_cents.map_or(f64::NAN, |cents| cents as f64);
                tally.compare("cost", EXACT, &case.id, cost, cents as f64);
                let valid = fault(&case.problem, found).is_none();
                tally.compare("valid", EXACT, &case.id, f64::from(u8::from(valid)), 1.0);
            }
            (_, Some(cents)) => tally.compare("cost", EXACT, &case.id, f64::NAN, cents as f64),
        }
        tally.case();
    }
    Ok(tally)
}

/// What is wrong with a selection, by the problem alone.
pub fn fault(problem: &Problem, found: &Selection) -> Option<String> {
    let Problem { rooms, stock, joint_cents } = problem;
    if found.pieces_sixteenths.len() != rooms.len() {
        return Some("not as many rooms".into());
    }
    let mut used = vec![0; stock.len()];
    for (at, (room, chosen)) in rooms.iter().zip(&found.pieces_sixteenths).enumerate() {
        if chosen.len() != room.segments_sixteenths.len() {
            return Some(format!("room {at} has not as many segments"));
        }
        for (&segment, pieces) in room.segments_sixteenths.iter().zip(chosen) {
            if pieces.iter().sum::<u32>() > segment {
                return Some(format!("room {at}: {pieces:?} on {segment}"));
            }
            if !pieces.is_sorted_by(|a, b| a >= b) {
                return Some(format!("room {at}: {pieces:?} not longest first"));
            }
            for &piece in pieces {
                match stock.iter().position(|stock| stock.length_sixteenths == piece) {
                    Some(kind) => used[kind] += 1,
                    None => return Some(format!("room {at}: {piece} is no stock length")),
                }
            }
        }
        if chosen.iter().flatten().sum::<u32>() < room.need_sixteenths {
            return Some(format!("room {at} falls short"));
        }
    }
    let over = |(stock, &used): (&Stock, &u32)| stock.available.is_some_and(|most| used > most);
    if stock.iter().zip(&used).any(over) {
        return Some(format!("{used:?} is more than there is"));
    }
    let cost = |(stock, &used): (&Stock, &u32)| {
        Some(u64::from(used) * u64::from(stock.price_cents? + joint_cents))
    };
    let length = |(stock, &used): (&Stock, &u32)| u64::from(used * stock.length_sixteenths);
    let cost: Option<u64> = stock.iter().zip(&used).map(cost).sum();
    let length: u64 = stock.iter().zip(&used).map(length).sum();
    let sums = (found.cost_cents, found.length_sixteenths, found.pieces, &found.used);
    let right = (cost, length, used.iter().sum::<u32>(), &used);
    (sums != right).then(|| format!("sums {sums:?} for {right:?}"))
}
