//! The ways to give one room its pieces where there are as many of each as wanted.

use super::model::{Kind, Model, ModelRoom, NEVER, Picometres, Weight};

/// The least weight of new pieces that take `sum` units in `count` pieces.
#[derive(Debug, Clone, Copy)]
pub(super) struct Cell {
    sum: u32,
    count: u32,
    weight: Weight,
}

/// Ways to fill one run, for all runs: a run takes those that are no longer than it.
#[derive(Debug)]
pub(super) struct Fills {
    /// Its kinds with the weights that were asked for.
    kinds: Vec<Kind>,
    /// By sum, then count.
    exact: Vec<Weight>,
    stride: usize,
    /// What can be made, but for nothing; sums rise.
    cells: Vec<Cell>,
}

impl Fills {
    pub(super) fn of(kinds: &[Kind], longest: u32) -> Fills {
        let shortest = kinds.iter().map(|kind| kind.length).min().unwrap_or(1);
        let stride = (longest / shortest + 1) as usize;
        let mut exact = vec![NEVER; (longest as usize + 1) * stride];
        exact[0] = 0;
        for kind in kinds {
            let back = kind.length as usize * stride + 1;
            for place in back..exact.len() {
                // A row begins with no pieces, which nothing leads to.
                if !place.is_multiple_of(stride) {
                    exact[place] = exact[place].min(exact[place - back] + kind.weight);
                }
            }
        }
        let made = exact.iter().enumerate().skip(1).filter(|(_, weight)| **weight < NEVER);
        let cells = made.map(|(place, &weight)| Cell {
            sum: (place / stride) as u32,
            count: (place % stride) as u32,
            weight,
        });
        let cells = cells.collect();
        Fills { kinds: kinds.to_vec(), exact, stride, cells }
    }

    /// How many of each kind make a cell, the longest first.
    fn counts(&self, sum: u32, count: u32) -> Vec<u16> {
        let mut place = sum as usize * self.stride + count as usize;
        let mut counts = vec![0; self.kinds.len()];
        for (kind, counted) in self.kinds.iter().zip(&mut counts) {
            let back = kind.length as usize * self.stride + 1;
            while !place.is_multiple_of(self.stride)
                && back <= place
                && self.exact[place - back] + kind.weight == self.exact[place]
                && self.exact[place] < NEVER
            {
                place -= back;
                *counted += 1;
            }
        }
        counts
    }
}

/// One way to give a room its pieces.
#[derive(Debug, Clone, Copy)]
pub(super) struct Way {
    /// With the fixed pieces.
    pub finned: Picometres,
    pub weight: Weight,
    sum: u32,
    count: u32,
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
        let cells = stages(room, fills).pop().unwrap_or_default();
        let way = |cell: &Cell| Way {
            finned: room.fixed + model.finned(cell.sum, cell.count),
            weight: cell.weight,
            sum: cell.sum,
            count: cell.count,
        };
        let mut list: Vec<Way> = cells.iter().map(way).collect();
        list.sort_unstable_by(|a, b| {
            let order = a.finned.cmp(&b.finned).then(a.weight.cmp(&b.weight));
            order.then(a.sum.cmp(&b.sum))
        });
        list.dedup_by_key(|way| way.finned);
        let mut onward: Vec<Weight> = list.iter().map(|way| way.weight).collect();
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
pub(super) fn pieces(room: &ModelRoom, fills: &Fills, way: &Way) -> Vec<Vec<u16>> {
    let stages = stages(room, fills);
    let mut pieces = Vec::new();
    let (mut sum, mut count, mut weight) = (way.sum, way.count, way.weight);
    for (at, run) in room.runs.iter().enumerate().rev() {
        let before = |cell: &Cell| {
            let Some((sum, count)) = sum.checked_sub(cell.sum).zip(count.checked_sub(cell.count))
            else {
                return false;
            };
            let own = match (sum, count) {
                (0, 0) => 0,
                _ if sum > run.hold || count as usize >= fills.stride => return false,
                _ => fills.exact[sum as usize * fills.stride + count as usize] + run.opening,
            };
            cell.weight + own == weight
        };
        // Sums rise in a stage, so the last is the fullest.
        let cell = stages[at].iter().rev().copied().find(before);
        let cell = cell.unwrap_or(Cell { sum, count, weight });
        pieces.push(fills.counts(sum - cell.sum, count - cell.count));
        (sum, count, weight) = (cell.sum, cell.count, cell.weight);
    }
    pieces.reverse();
    pieces
}

/// What the first runs of a room can be given, with none of them, one, and so on.
fn stages(room: &ModelRoom, fills: &Fills) -> Vec<Vec<Cell>> {
    let mut stages = vec![vec![Cell { sum: 0, count: 0, weight: 0 }]];
    let most: u32 = room.runs.iter().map(|run| run.hold).sum();
    let stride = room.runs.iter().map(|run| run.hold as usize).sum::<usize>();
    let stride = stride / fills.kinds.iter().map(|k| k.length as usize).min().unwrap_or(1) + 1;
    let mut table = vec![NEVER; (most as usize + 1) * stride];
    for run in &room.runs {
        let before = &stages[stages.len() - 1];
        let fit = fills.cells.partition_point(|cell| cell.sum <= run.hold);
        table.fill(NEVER);
        for cell in before {
            let place = cell.sum as usize * stride + cell.count as usize;
            table[place] = table[place].min(cell.weight);
            for fill in &fills.cells[..fit] {
                let place = place + fill.sum as usize * stride + fill.count as usize;
                table[place] = table[place].min(cell.weight + fill.weight + run.opening);
            }
        }
        let made = table.iter().enumerate().filter(|(_, weight)| **weight < NEVER);
        let cells = made.map(|(place, &weight)| Cell {
            sum: (place / stride) as u32,
            count: (place % stride) as u32,
            weight,
        });
        stages.push(cells.collect());
    }
    stages
}
