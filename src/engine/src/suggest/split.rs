//! Every split of a route into loops next to one another, and the best of them.

use std::ops::Add;

/// More loops than one zone of a house has.
pub const MOST_LOOPS: usize = 4;

/// Rooms next to one another on a route that make a loop, by their places on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part {
    pub first: usize,
    pub last: usize,
    pub direction: Direction,
}

/// Which way the water passes the rooms of a loop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Direction {
    AsNow,
    Reversed,
}

impl Part {
    /// Its places in the order of the water.
    pub fn places(&self) -> impl DoubleEndedIterator<Item = usize> + '_ {
        let count = self.last + 1 - self.first;
        (0..count).map(move |nth| match self.direction {
            Direction::AsNow => self.first + nth,
            Direction::Reversed => self.last - nth,
        })
    }
}

/// How good loops are: the less the better, what stands first counts most.
///
/// Whole numbers, so that sums do not depend on their order and the best of all splits is the best
/// beyond rounding.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Score {
    pub short_rooms: u64,
    /// What those rooms lack, in milliwatts.
    pub short_mw: u64,
    /// Beyond what the tube carries, the highest velocity and the circulator, in millionths of each.
    pub over_ppm: u64,
    /// Beyond the length that is usual on such a tube, in millionths of that.
    pub beyond_ppm: u64,
    /// In thousandths of the currency; nothing while a price is missing.
    pub cost_mils: u64,
    pub loops: u64,
    /// In micrometres.
    pub element_um: u64,
    /// Sum of the squares of the loops' loads, in W²: the least where they are alike.
    pub uneven_w2: u64,
}

impl Add for Score {
    type Output = Score;

    fn add(self, other: Score) -> Score {
        Score {
            short_rooms: self.short_rooms.saturating_add(other.short_rooms),
            short_mw: self.short_mw.saturating_add(other.short_mw),
            over_ppm: self.over_ppm.saturating_add(other.over_ppm),
            beyond_ppm: self.beyond_ppm.saturating_add(other.beyond_ppm),
            cost_mils: self.cost_mils.saturating_add(other.cost_mils),
            loops: self.loops.saturating_add(other.loops),
            element_um: self.element_um.saturating_add(other.element_um),
            uneven_w2: self.uneven_w2.saturating_add(other.uneven_w2),
        }
    }
}

/// A route split into loops.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Split {
    pub score: Score,
    /// In the order of the route; each begins where the one before ends.
    pub parts: Vec<Part>,
}

/// The best split of a route into two loops, into three, and so on. `scored` says how good the rooms
/// from one place to another are as a loop, walked the better way round; none where they can be none.
///
/// By dynamic programming: the best split of the first rooms stays the best whatever follows, since
/// scores add up.
pub(super) fn best_splits(
    rooms: usize,
    scored: &dyn Fn(usize, usize) -> Option<(Score, Direction)>,
) -> Vec<Split> {
    // By how many rooms are in loops already.
    let mut best = vec![None; rooms + 1];
    if let Some(none) = best.first_mut() {
        *none = Some(Split::default());
    }
    let mut whole = Vec::new();
    for loops in 1..=MOST_LOOPS.min(rooms) {
        let ending = |end: usize| {
            let with_last_from = |first: usize| {
                let before: &Split = best.get(first)?.as_ref()?;
                let (score, direction) = scored(first, end - 1)?;
                Some((before.score + score, Part { first, last: end - 1, direction }))
            };
            let (score, part) =
                (0..end).filter_map(with_last_from).min_by_key(|(score, _)| *score)?;
            let mut parts = best.get(part.first)?.as_ref()?.parts.clone();
            parts.push(part);
            Some(Split { score, parts })
        };
        let next: Vec<Option<Split>> = (0..=rooms).map(ending).collect();
        if loops > 1 {
            whole.extend(next.last().cloned().flatten());
        }
        best = next;
    }
    whole
}
