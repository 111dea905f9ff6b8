//! The ways to give one room its pieces where there are as many of each as wanted.

use super::model::{Kind, Model, ModelRoom, NEVER, Picometres, Weight};
use crate::order;

/// Of new pieces: the units of wall they take, how many they are, and their least weight.
#[derive(Debug, Clone, Copy)]
pub(super) struct Cell {
    pub sum: u32,
    /// Always 0 where pieces have no bare tube: then how many they are changes no heat.
    pub count: u32,
    pub weight: Weight,
}

const NOTHING: Cell = Cell { sum: 0, count: 0, weight: 0 };

/// Ways to fill one run, for all runs: a run takes those that are no longer than it.
#[derive(Debug)]
pub(super) struct Fills {
    /// With the weights that were asked for.
    pub kinds: Vec<Kind>,
    table: Table,
    /// What can be made, but for nothing; sums rise.
    pub cells: Vec<Cell>,
}

impl Fills {
    pub(super) fn of(model: &Model, kinds: &[Kind]) -> Fills {
        let mut table = Table::of(model, model.longest);
        table.weights[0] = 0;
        for kind in kinds {
            let back = table.place(kind.length, table.one);
            for place in back..table.weights.len() {
                // A row begins with no pieces, which nothing leads to.
                if table.one == 0 || !place.is_multiple_of(table.stride) {
                    let weight = table.weights[place - back] + kind.weight;
                    table.weights[place] = table.weights[place].min(weight);
                }
            }
        }
        let cells = table.cells().skip(1).collect();
        Fills { kinds: kinds.to_vec(), table, cells }
    }

    /// Those that a run takes which holds this.
    pub(super) fn within(&self, hold: u32) -> &[Cell] {
        &self.cells[..self.cells.partition_point(|cell| cell.sum <= hold)]
    }

    /// The least weight of exactly this.
    pub(super) fn weight(&self, sum: u32, count: u32) -> Weight {
        self.table.weights.get(self.table.place(sum, count)).copied().unwrap_or(NEVER)
    }

    /// Adds to the counts, by kind of the model, those that make a cell; the longest first.
    pub(super) fn count(&self, cell: &Cell, counts: &mut [u16]) {
        let (mut sum, mut count) = (cell.sum, cell.count);
        for kind in &self.kinds {
            while kind.length <= sum && self.table.one <= count {
                let (less, fewer) = (sum - kind.length, count - self.table.one);
                let weight = self.weight(less, fewer);
                if weight >= NEVER || weight + kind.weight != self.weight(sum, count) {
                    break;
                }
                (sum, count) = (less, fewer);
                counts[kind.place] += 1;
            }
        }
    }
}

/// Least weights by sum and count.
#[derive(Debug)]
struct Table {
    weights: Vec<Weight>,
    stride: usize,
    /// What a piece counts.
    one: u32,
}

impl Table {
    fn of(model: &Model, longest: u32) -> Table {
        let shortest = model.kinds.iter().map(|kind| kind.length).min().unwrap_or(1);
        let one = u32::from(model.bare > 0);
        let stride = (longest / shortest * one + 1) as usize;
        Table { weights: vec![NEVER; (longest as usize + 1) * stride], stride, one }
    }

    fn place(&self, sum: u32, count: u32) -> usize {
        sum as usize * self.stride + count as usize
    }

    fn cells(&self) -> impl Iterator<Item = Cell> + '_ {
        let made = self.weights.iter().enumerate().filter(|(_, weight)| **weight < NEVER);
        made.map(|(place, &weight)| Cell {
            sum: (place / self.stride) as u32,
            count: (place % self.stride) as u32,
            weight,
        })
    }
}

/// One way to give a room its pieces.
#[derive(Debug, Clone, Copy)]
pub(super) struct Way {
    /// With the fixed pieces.
    pub finned: Picometres,
    pub cell: Cell,
}

/// What a room can be given: finned lengths rise, each once with the least weight.
#[derive(Debug)]
pub(super) struct Ways {
    pub list: Vec<Way>,
    /// The least weight from a place on.
    pub onward: Vec<Weight>,
}

impl Ways {
    pub(super) fn of(model: &Model, room: &ModelRoom, fills: &Fills) -> Ways {
        let cells = stages(model, room, fills).pop().unwrap_or_default();
        let finned = |cell: &Cell| room.fixed + model.finned(cell.sum, cell.count);
        let mut list: Vec<Way> =
            cells.iter().map(|&cell| Way { finned: finned(&cell), cell }).collect();
        if model.bare > 0 {
            order::sort_by(&mut list, |a, b| {
                let order = a.finned.cmp(&b.finned).then(a.cell.weight.cmp(&b.cell.weight));
                order.then(a.cell.sum.cmp(&b.cell.sum))
            });
            list.dedup_by_key(|way| way.finned);
        }
        let mut onward: Vec<Weight> = list.iter().map(|way| way.cell.weight).collect();
        for place in (1..onward.len()).rev() {
            onward[place - 1] = onward[place - 1].min(onward[place]);
        }
        Ways { list, onward }
    }

    /// The first that has this finned length.
    pub(super) fn from(&self, finned: Picometres) -> usize {
        self.list.partition_point(|way| way.finned < finned)
    }
}

/// By run: the pieces of a way. The earlier runs are the fuller of equal ones.
pub(super) fn pieces(model: &Model, room: &ModelRoom, fills: &Fills, way: &Way) -> Vec<Vec<u16>> {
    let stages = stages(model, room, fills);
    let mut pieces = vec![vec![0; model.kinds.len()]; room.runs.len()];
    let mut here = way.cell;
    for (at, run) in room.runs.iter().enumerate().rev() {
        let rest = |cell: &Cell| {
            let sum = here.sum.checked_sub(cell.sum).filter(|&sum| sum <= run.hold)?;
            let count = here.count.checked_sub(cell.count)?;
            let opening = if sum == 0 { 0 } else { run.opening };
            let weight = fills.weight(sum, count);
            let made = weight < NEVER && cell.weight + weight + opening == here.weight;
            made.then_some((*cell, Cell { sum, count, weight }))
        };
        // Sums rise in a stage, so the last is the fullest.
        if let Some((before, own)) = stages[at].iter().rev().find_map(rest) {
            fills.count(&own, &mut pieces[at]);
            here = before;
        }
    }
    pieces
}

/// What the first runs of a room can be given: with none of them, one, and so on.
fn stages(model: &Model, room: &ModelRoom, fills: &Fills) -> Vec<Vec<Cell>> {
    let mut stages = vec![vec![NOTHING]];
    let mut hold = 0;
    for run in &room.runs {
        hold += run.hold;
        let mut table = Table::of(model, hold);
        for cell in &stages[stages.len() - 1] {
            let place = table.place(cell.sum, cell.count);
            table.weights[place] = table.weights[place].min(cell.weight);
            let weight = cell.weight + run.opening;
            for fill in fills.within(run.hold) {
                let place = place + table.place(fill.sum, fill.count);
                table.weights[place] = table.weights[place].min(weight + fill.weight);
            }
        }
        stages.push(table.cells().collect());
    }
    stages
}
