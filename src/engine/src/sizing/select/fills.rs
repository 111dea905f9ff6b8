//! The ways to fill one segment.

use super::bound::{Piece, Tables, exact, free_pieces, pieces};
use super::model::{Counts, MAKES, MOST_STOCK, Model};
use super::search::{Budget, COMPARED, MOST_NARROW};

/// One way to fill a segment.
#[derive(Debug, Clone)]
pub(super) struct Fill {
    pub length: u32,
    pub weight: i64,
    pub counts: Counts,
}

/// When the nodes are spent, ways are looked for in so many steps.
const NARROW_STEPS: u64 = 4096;

/// The ways to fill a segment that holds `hold`, none worse in every way than another: numbers of
/// the limited kinds, the rest as light as it can be. Left out are those that no plan has that
/// weighs at most `over` more than the bound. Also whether all were looked at; there is always one.
pub(super) fn of(
    model: &Model,
    tables: &Tables,
    (hold, over): (u32, i64),
    budget: &mut Budget,
) -> (Vec<Fill>, bool) {
    let free = free_pieces(model);
    let exact = exact(&free, hold);
    let nothing = Fill { length: 0, weight: 0, counts: [0; MOST_STOCK] };
    let fills = vec![nothing];
    let mut ways = Ways { model, tables, over, free, exact, hold, steps: 0, whole: true, fills };
    ways.from(0, (0, 0), [0; MOST_STOCK], budget);
    let Ways { mut fills, whole, .. } = ways;
    fills.sort_unstable_by(|a, b| {
        let fuller = b.length.cmp(&a.length);
        a.weight.cmp(&b.weight).then(fuller).then_with(|| b.counts.cmp(&a.counts))
    });
    let mut kept: Vec<Fill> = Vec::new();
    for fill in fills {
        let beats = |one: &Fill| one.length >= fill.length && uses_no_more(model, one, &fill);
        if !kept.iter().rev().take(COMPARED).any(beats) {
            kept.push(fill);
        }
    }
    (kept, whole)
}

fn uses_no_more(model: &Model, one: &Fill, other: &Fill) -> bool {
    let mut kinds = model.kinds.iter().enumerate();
    kinds.all(|(at, kind)| kind.limit.is_none() || one.counts[at] <= other.counts[at])
}

struct Ways<'a> {
    model: &'a Model,
    tables: &'a Tables,
    over: i64,
    /// Unlimited pieces,
    free: Vec<Piece>,
    /// and their least weight by their sum.
    exact: Vec<i64>,
    hold: u32,
    steps: u64,
    whole: bool,
    fills: Vec<Fill>,
}

impl Ways<'_> {
    /// Goes on from numbers of the limited kinds before `kind`, with their length and their weight
    /// with rents.
    fn from(
        &mut self,
        kind: usize,
        (length, weight): (u32, i64),
        counts: Counts,
        budget: &mut Budget,
    ) {
        self.steps += 1;
        budget.take(1);
        // What these pieces weigh over the lightest of their sum, every plan with them weighs over
        // the bound: the rest of the segment could stand beside those too.
        if weight - self.tables.exact[length as usize] > self.over {
            return;
        }
        if self.steps > NARROW_STEPS && budget.is_spent() {
            self.whole = false;
            return;
        }
        let kinds = &self.model.kinds;
        let Some(next) = (kind..kinds.len()).find(|&at| kinds[at].limit.is_some()) else {
            self.end((length, weight), counts, budget);
            return;
        };
        let (one, rent) = (kinds[next], self.tables.rents[next]);
        let most = ((self.hold - length) / one.length).min(u32::from(one.limit.unwrap_or(0)));
        for count in (0..=most).rev() {
            let mut counts = counts;
            counts[next] = count as u16;
            let weight = weight + i64::from(count) * (one.weight + rent);
            self.from(next + 1, (length + count * one.length, weight), counts, budget);
        }
    }

    /// All limited kinds are numbered: adds each sum of the others.
    fn end(&mut self, (length, weight): (u32, i64), counts: Counts, budget: &mut Budget) {
        let room = self.hold - length;
        budget.take(u64::from(room) / 64);
        for more in 0..=room {
            let added = self.exact[more as usize];
            let sum = length + more;
            let least = self.tables.exact[sum as usize];
            if added >= MAKES || weight + added - least > self.over {
                continue;
            }
            if self.fills.len() >= MOST_NARROW && budget.is_spent() {
                self.whole = false;
                return;
            }
            let mut counts = counts;
            for (count, more) in counts.iter_mut().zip(pieces(&self.free, &self.exact, more)) {
                *count += more;
            }
            let weight = weight + added - self.tables.rent_of(&counts);
            self.fills.push(Fill { length: sum, weight, counts });
            budget.take(1);
        }
    }
}
