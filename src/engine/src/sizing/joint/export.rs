//! One circuit's problem written out for another solver: every row of finned lengths that the water
//! allows, since a solver of integer programmes knows no cooling.

use super::flow::{self, Circuit, each};
use super::model::{Model, Weight, metres};
use super::room::{Fills, Ways};
use super::{Costs, Problem, Water};
use serde::Serialize;

/// A circuit as numbers alone. Least cost is sought, with as few runs on inner walls as can be.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Instance {
    pub stock: Vec<StockRow>,
    pub bare_per_piece_m: f64,
    pub joint_cents: u32,
    pub run_cents: u32,
    pub rooms: Vec<RoomRow>,
    pub lengths: Vec<Length>,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StockRow {
    pub length_sixteenths: u32,
    pub price_cents: u32,
    pub available: Option<u32>,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RoomRow {
    /// Of the pieces that stand there.
    pub fixed_finned_m: f64,
    pub runs: Vec<RunRow>,
}

#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RunRow {
    /// Beside the fixed pieces.
    pub free_sixteenths: u32,
    pub fixed_pieces: usize,
    pub is_inner: bool,
}

/// A finned length of one room after those of the rooms before it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Length {
    pub room: usize,
    /// The place in the list of the length of the room before; `None` in the first room.
    pub before: Option<usize>,
    /// With the fixed pieces.
    pub finned_m: f64,
    /// What the room needs of the water that these lengths leave; `None` where no length would do
    /// and it gets the most.
    pub needed_m: Option<f64>,
}

/// Left out are lengths with which the circuit costs more than `over_cents` above the least without
/// limits on the stock, even if they are made in the cheapest way. `None` where a length has no
/// price or more than `most` are left.
pub fn export(
    problem: &Problem,
    water: &dyn Water,
    circuit: usize,
    over_cents: u32,
    most: usize,
) -> Option<Instance> {
    let price = |stock: &super::Stock| {
        Some(StockRow {
            length_sixteenths: stock.length_sixteenths,
            price_cents: stock.price_cents?,
            available: stock.available,
        })
    };
    let stock = problem.stock.iter().map(price).collect::<Option<Vec<StockRow>>>()?;
    let problem = Problem { objective: super::Objective::LeastCost, ..problem.clone() };
    let model = Model::of(&problem);
    let fills = Fills::of(&model, &model.kinds);
    let rooms = model.circuits.get(circuit)?;
    let ways: Vec<Ways> = rooms.iter().map(|room| Ways::of(&model, room, &fills)).collect();
    let hot = flow::hottest(water, circuit, &ways);
    let one = Circuit { ways, hot };
    let (_, least) = flow::best(&model, water, circuit, &one)?;
    let limit = least + model.scale.objective_of(i64::from(over_cents) + 1);
    let later = flow::later(&one);
    let mut lengths: Vec<Length> = Vec::new();
    // Of the room before: place in the list, weight, water.
    let mut before: Vec<(Option<usize>, Weight, f64)> = vec![(None, 0, water.enters_k(circuit))];
    for (room, (ways, hot)) in one.ways.iter().zip(&one.hot).enumerate() {
        let mut next = Vec::new();
        for (place, weight, water_k) in before {
            let needed_m = water.needed_m(circuit, room, water_k);
            // All that are enough, not only those that may be best.
            let mut first = None;
            each(&model, water, (circuit, room), ways, (hot.wish, water_k), &mut |way, _| {
                first = first.or(Some(way));
            });
            let last = match hot.wish {
                flow::Wish::Nothing => 1,
                _ => ways.list.len(),
            };
            for way in &ways.list[first.unwrap_or(last)..last] {
                let weight = weight + way.cell.weight;
                if weight + later[room + 1] > limit {
                    continue;
                }
                let finned_m = metres(way.finned);
                let after = water.after(circuit, room, water_k, finned_m);
                next.push((Some(lengths.len()), weight, after.water_k));
                lengths.push(Length { room, before: place, finned_m, needed_m });
            }
            if lengths.len() > most {
                return None;
            }
        }
        before = next;
    }
    let runs = |room: &super::Room| {
        let run = |run: &super::Run| RunRow {
            free_sixteenths: super::model::free(run),
            fixed_pieces: run.fixed_sixteenths.len(),
            is_inner: run.wall == super::Wall::Inner,
        };
        room.runs.iter().map(run).collect()
    };
    let room = |(room, model): (&super::Room, &super::model::ModelRoom)| RoomRow {
        fixed_finned_m: metres(model.fixed),
        runs: runs(room),
    };
    let rooms = problem.circuits.get(circuit)?.iter().zip(rooms).map(room).collect();
    let Costs { joint_cents, run_cents } = problem.costs;
    let bare_per_piece_m = problem.bare_per_piece_m;
    Some(Instance { stock, bare_per_piece_m, joint_cents, run_cents, rooms, lengths })
}
