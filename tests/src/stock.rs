//! Kind g: the cheapest stock pieces for rooms.

use crate::tally::{Tally, Tolerance};
use finrun_engine::sizing::joint::{
    After, Answer, Costs, NODES, Objective, Problem, Proof, Room, Run, Stock, Wall, Water,
    choose_all,
};
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
    pub needs: Needs,
    pub optimum_cents: Option<u64>,
}

/// Rooms that need so many sixteenths of an inch whatever the water, each on a circuit of its own.
#[derive(Debug, Clone)]
pub struct Needs(pub Vec<u32>);

impl Water for Needs {
    fn enters_k(&self, _: usize) -> f64 {
        350.0
    }

    fn needed_m(&self, circuit: usize, _: usize, _: f64) -> Option<f64> {
        Some(f64::from(self.0[circuit]) / 16.0 * 0.0254)
    }

    fn after(&self, _: usize, _: usize, water_k: f64, finned_m: f64) -> After {
        After { water_k, output_w: finned_m }
    }

    fn load_w(&self, circuit: usize, _: usize) -> f64 {
        f64::from(self.0[circuit]) / 16.0 * 0.0254
    }

    fn part_enters_k(&self, circuit: usize) -> f64 {
        self.enters_k(circuit)
    }

    fn part_after(&self, circuit: usize, room: usize, water_k: f64, finned_m: f64) -> After {
        self.after(circuit, room, water_k, finned_m)
    }
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
        // A joint for each piece, whichever run it is on, is as good as a dearer piece.
        let price_cents = Some(cents + instance.joint_cost_cents_per_piece);
        stock.push(Stock { length_sixteenths: feet * 192, price_cents, available });
    }
    let (mut circuits, mut needs) = (Vec::new(), Vec::new());
    for wanted in &instance.rooms {
        let mut runs = Vec::new();
        for &feet in &wanted.segments_usable_ft {
            let hold_sixteenths = sixteenths(id, feet)?;
            runs.push(Run { hold_sixteenths, wall: Wall::Outer, fixed_sixteenths: Vec::new() });
        }
        circuits.push(vec![Room { runs }]);
        needs.push(sixteenths(id, wanted.min_total_ft)?);
    }
    let problem = Problem {
        circuits,
        stock,
        bare_per_piece_m: 0.0,
        costs: Costs { joint_cents: 0, run_cents: 0 },
        objective: Objective::LeastCost,
    };
    Ok(Case { id: id.clone(), problem, needs: Needs(needs), optimum_cents })
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
        let answer = choose_all(&case.problem, &case.needs, NODES);
        let is_proven = answer.proof == Proof::Optimal;
        let is_short = answer.short_w.iter().flatten().any(Option::is_some);
        match case.optimum_cents {
            None => {
                let found = f64::from(u8::from(is_proven && is_short));
                tally.compare("no answer", EXACT, &case.id, found, 1.0);
            }
            Some(cents) => {
                let cost = answer.cost_cents.filter(|_| is_proven && !is_short);
                let cost = cost.map_or(f64::NAN, |cents| cents as f64);
                tally.compare("cost", EXACT, &case.id, cost, cents as f64);
                let valid = fault(&case, &answer).is_none();
                tally.compare("valid", EXACT, &case.id, f64::from(u8::from(valid)), 1.0);
            }
        }
        tally.case();
    }
    Ok(tally)
}

/// What is wrong with an answer, by the problem alone.
pub fn fault(case: &Case, answer: &Answer) -> Option<String> {
    let Problem { circuits, stock, .. } = &case.problem;
    let mut used = vec![0; stock.len()];
    let mut cents = 0;
    if answer.pieces_sixteenths.len() != circuits.len() {
        return Some("not as many rooms".into());
    }
    let rooms = circuits.iter().zip(&answer.pieces_sixteenths).zip(&case.needs.0);
    for (at, ((circuit, chosen), &need)) in rooms.enumerate() {
        if chosen.len() != 1 || chosen[0].len() != circuit[0].runs.len() {
            return Some(format!("room {at} has not as many runs"));
        }
        for (run, pieces) in circuit[0].runs.iter().zip(&chosen[0]) {
            if pieces.iter().sum::<u32>() > run.hold_sixteenths {
                return Some(format!("room {at}: {pieces:?} on {}", run.hold_sixteenths));
            }
            for &piece in pieces {
                let Some(kind) = stock.iter().position(|one| one.length_sixteenths == piece) else {
                    return Some(format!("room {at}: {piece} is no stock length"));
                };
                used[kind] += 1;
                cents += u64::from(stock[kind].price_cents.unwrap_or(0));
            }
        }
        if chosen.iter().flatten().flatten().sum::<u32>() < need {
            return Some(format!("room {at} falls short"));
        }
    }
    let over = |(stock, &used): (&Stock, &u32)| stock.available.is_some_and(|most| used > most);
    if stock.iter().zip(&used).any(over) {
        return Some(format!("{used:?} is more than there is"));
    }
    let told = (answer.cost_cents, &answer.used);
    (told != (Some(cents), &used)).then(|| format!("sums {told:?} for {cents}, {used:?}"))
}
