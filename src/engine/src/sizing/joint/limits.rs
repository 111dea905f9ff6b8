//! How many of each limited kind are used, packed so that all are added and compared at once.

use super::model::Kind;

const WORDS: usize = 4;

/// Numbers of the limited kinds; nothing of others.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Used([u64; WORDS]);

impl Used {
    pub(super) const NONE: Used = Used([0; WORDS]);

    fn plus(&self, other: &Used) -> Used {
        let mut sum = *self;
        for (word, more) in sum.0.iter_mut().zip(&other.0) {
            *word += more;
        }
        sum
    }
}

/// Where each kind's number stands. A field has two bits more than its limit: one for the sum of
/// two numbers, and one that stays free, so that a subtraction shows there which is the greater.
#[derive(Debug, Clone)]
pub(super) struct Limits {
    /// By kind: word and shift; `None` where there is no limit.
    fields: Vec<Option<(usize, u32)>>,
    most: Used,
    guard: Used,
}

impl Limits {
    /// Leaves out kinds whose numbers find no more bits, beyond any house; also whether none was.
    pub(super) fn of(kinds: &mut Vec<Kind>) -> (Limits, bool) {
        let mut limits = Limits { fields: Vec::new(), most: Used::NONE, guard: Used::NONE };
        let (mut word, mut free, before) = (0, 0, kinds.len());
        kinds.retain(|kind| {
            let Some(limit) = kind.limit else {
                limits.fields.push(None);
                return true;
            };
            let bits = 34 - limit.leading_zeros();
            if free + bits > 64 {
                (word, free) = (word + 1, 0);
            }
            if word >= WORDS {
                return false;
            }
            limits.most.0[word] |= u64::from(limit) << free;
            limits.guard.0[word] |= 1 << (free + bits - 1);
            limits.fields.push(Some((word, free)));
            free += bits;
            true
        });
        (limits, kinds.len() == before)
    }

    /// Both together, if there are so many.
    pub(super) fn sum(&self, one: &Used, other: &Used) -> Option<Used> {
        let sum = one.plus(other);
        self.no_more(&sum, &self.most).then_some(sum)
    }

    /// Whether one uses no more than the other of anything.
    pub(super) fn no_more(&self, one: &Used, other: &Used) -> bool {
        let words = one.0.iter().zip(&other.0).zip(&self.guard.0);
        words.into_iter().all(|((one, other), guard)| ((other | guard) - one) & guard == *guard)
    }

    /// One piece of a kind.
    pub(super) fn piece(&self, kind: usize) -> Used {
        let mut used = Used::NONE;
        if let Some(Some((word, shift))) = self.fields.get(kind) {
            used.0[*word] = 1 << shift;
        }
        used
    }
}
