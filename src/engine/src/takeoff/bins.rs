//! Whether pieces fit a number of sticks, by completing one stick at a time (bin completion; Korf,
//! 2002 and 2003, from memory).
//!
//! The longest piece left must lie in some stick. It is put in each kind of stick that holds it,
//! with every set of other pieces that is worth trying: none fits on top, and no piece of the set
//! could be changed for a longer one. What sticks may waste in all is known, so that a stick that
//! wastes more ends its branch; so does a remainder that was met before.

use super::cut_plan::Filled;

#[derive(Debug)]
pub(super) enum Fitted {
    Into(Vec<Filled>),
    Not,
    /// The nodes ran out.
    Unknown,
}

/// Remainders that are kept at the most, for the memory's sake.
const MOST_FAILED: usize = 20_000;

/// Pieces of one length.
#[derive(Debug, Clone, Copy)]
struct Like {
    /// With a kerf, as sticks are: then a stick holds what its sum allows.
    length: u32,
    number: u16,
}

/// One way to fill a stick.
#[derive(Debug, Clone)]
struct Set {
    waste: u32,
    /// By length, as the pieces are.
    numbers: Vec<u16>,
}

#[derive(Debug)]
pub(super) struct Bins<'a> {
    /// Longest first.
    pieces: Vec<Like>,
    /// Longest first, without the kerf.
    sticks: &'a [u32],
    kerf: u32,
    /// Nodes that may be taken, and that were.
    most: u64,
    taken: u64,
}

impl<'a> Bins<'a> {
    /// Of pieces and sticks that are sorted, longest first.
    pub(super) fn of(pieces: &[u32], sticks: &'a [u32], kerf: u32, nodes: u64) -> Bins<'a> {
        let mut likes: Vec<Like> = Vec::new();
        for &piece in pieces {
            match likes.last_mut() {
                Some(like) if like.length == piece + kerf => like.number += 1,
                _ => likes.push(Like { length: piece + kerf, number: 1 }),
            }
        }
        Bins { pieces: likes, sticks, kerf, most: nodes, taken: 0 }
    }

    pub(super) fn nodes(&self) -> u64 {
        self.taken
    }

    /// Looks for a place for every piece in so many sticks of each length.
    pub(super) fn fit(&mut self, sticks: &[u32]) -> Fitted {
        let holds: u64 = self
            .sticks
            .iter()
            .zip(sticks)
            .map(|(&s, &n)| u64::from(s + self.kerf) * u64::from(n))
            .sum();
        let wanted: u64 =
            self.pieces.iter().map(|like| u64::from(like.length) * u64::from(like.number)).sum();
        let Some(waste) = holds.checked_sub(wanted) else {
            return Fitted::Not;
        };
        let mut state = State {
            left: self.pieces.iter().map(|like| like.number).collect(),
            sticks: sticks.iter().map(|&number| number as u16).collect(),
            filled: Vec::new(),
            failed: Failed::default(),
        };
        if self.dive(&mut state, waste) || self.fill(&mut state, waste) {
            let mut plan = Vec::new();
            for (stick, numbers) in &state.filled {
                let mut cuts = Vec::new();
                for (like, &number) in self.pieces.iter().zip(numbers) {
                    cuts.extend(std::iter::repeat_n(like.length - self.kerf, usize::from(number)));
                }
                plan.push((*stick, cuts));
            }
            Fitted::Into(plan)
        } else if self.is_spent() {
            Fitted::Unknown
        } else {
            Fitted::Not
        }
    }

    pub(super) fn take(&mut self, nodes: u64) {
        self.taken += nodes;
    }

    pub(super) fn is_spent(&self) -> bool {
        self.taken >= self.most
    }

    /// Fills one stick after the other with the first set that wastes no more than its share, and
    /// never looks back: where there is waste to spare that is often enough, and soon done.
    fn dive(&mut self, state: &mut State, waste: u64) -> bool {
        let before = (state.left.clone(), state.sticks.clone());
        let mut waste = waste;
        while let Some(longest) = state.left.iter().position(|&number| number > 0) {
            let length = self.pieces[longest].length;
            let holds =
                |&kind: &usize| state.sticks[kind] > 0 && self.sticks[kind] + self.kerf >= length;
            let kind = (0..self.sticks.len()).find(holds);
            let sticks: u64 = state.sticks.iter().map(|&number| u64::from(number)).sum();
            let set = kind.and_then(|kind| {
                let hold = self.sticks[kind] + self.kerf;
                let sets = self.sets(&state.left, longest, hold, (waste, Some(waste / sticks)));
                Some((kind, sets.into_iter().next()?))
            });
            let Some((kind, set)) = set else {
                (state.left, state.sticks) = before;
                state.filled.clear();
                return false;
            };
            waste -= u64::from(set.waste);
            state.sticks[kind] -= 1;
            for (left, number) in state.left.iter_mut().zip(&set.numbers) {
                *left -= number;
            }
            state.filled.push((self.sticks[kind], set.numbers));
        }
        true
    }

    /// Fills the sticks that are left with the pieces that are left, if that can be; `waste` is
    /// what these sticks hold over these pieces.
    fn fill(&mut self, state: &mut State, waste: u64) -> bool {
        let Some(longest) = state.left.iter().position(|&number| number > 0) else {
            return true;
        };
        if self.is_spent() || state.failed.is_known(&state.left, &state.sticks) {
            return false;
        }
        self.taken += 1;
        for kind in 0..self.sticks.len() {
            let hold = self.sticks[kind] + self.kerf;
            if state.sticks[kind] == 0 || hold < self.pieces[longest].length {
                continue;
            }
            state.sticks[kind] -= 1;
            for set in self.sets(&state.left, longest, hold, (waste, None)) {
                if self.is_spent() {
                    break;
                }
                for (left, number) in state.left.iter_mut().zip(&set.numbers) {
                    *left -= number;
                }
                state.filled.push((self.sticks[kind], set.numbers));
                if self.fill(state, waste - u64::from(set.waste)) {
                    return true;
                }
                if let Some((_, numbers)) = state.filled.pop() {
                    for (left, number) in state.left.iter_mut().zip(numbers) {
                        *left += number;
                    }
                }
            }
            state.sticks[kind] += 1;
        }
        if !self.is_spent() && state.failed.kept.len() < MOST_FAILED {
            state.failed.add(&state.left, &state.sticks);
        }
        false
    }

    /// The sets with the longest piece that are worth trying, the least waste first; no more than
    /// are found until one wastes no more than is `enough`.
    fn sets(
        &mut self,
        left: &[u16],
        longest: usize,
        hold: u32,
        (waste, enough): (u64, Option<u64>),
    ) -> Vec<Set> {
        let mut sets = Vec::new();
        let mut numbers = vec![0; left.len()];
        numbers[longest] = 1;
        let room = hold - self.pieces[longest].length;
        let shortest = left.iter().rposition(|&number| number > 0).unwrap_or(longest);
        let mut look = Look { left, shortest, waste, enough, done: false, sets: &mut sets };
        self.complete(&mut look, longest, room, &mut numbers);
        // Stable: of equal waste those with the longer pieces come first, as they were found.
        sets.sort_by_key(|set| set.waste);
        sets
    }

    /// Adds pieces from length `at` on, the most first.
    fn complete(&mut self, look: &mut Look<'_>, at: usize, room: u32, numbers: &mut Vec<u16>) {
        if look.done || self.is_spent() {
            return;
        }
        self.taken += 1;
        let next = (at..look.left.len())
            .find(|&like| look.left[like] > numbers[like] && self.pieces[like].length <= room);
        let Some(next) = next else {
            if u64::from(room) <= look.waste && !self.could_be_longer(look, room, numbers) {
                // A set is as long as the list of lengths: so is what it takes.
                self.taken += numbers.len() as u64 / 32;
                look.done = look.enough.is_some_and(|enough| u64::from(room) <= enough);
                look.sets.push(Set { waste: room, numbers: numbers.clone() });
            }
            return;
        };
        let length = self.pieces[next].length;
        let before = numbers[next];
        let most = u32::from(look.left[next] - before).min(room / length);
        for more in (0..=most).rev() {
            let room = room - more * length;
            // Without this piece the shorter ones must fill the stick.
            let rest: u64 = (next + 1..=look.shortest)
                .map(|like| u64::from(self.pieces[like].length) * u64::from(look.left[like]))
                .sum();
            if u64::from(room) > rest + look.waste {
                break;
            }
            numbers[next] = before + more as u16;
            self.complete(look, next + 1, room, numbers);
        }
        numbers[next] = before;
    }

    /// Whether a piece that is left fits on top, or in place of a shorter one of the set: then the
    /// set with it can do all that this one can, since the other may go where it would have gone.
    fn could_be_longer(&self, look: &Look<'_>, room: u32, numbers: &[u16]) -> bool {
        let mut replaced = 0;
        for like in (0..numbers.len()).rev() {
            let length = self.pieces[like].length;
            if look.left[like] > numbers[like] && length <= replaced + room {
                return true;
            }
            if numbers[like] > 0 {
                replaced = length;
            }
        }
        false
    }
}

/// What a search for sets is given.
struct Look<'a> {
    left: &'a [u16],
    shortest: usize,
    waste: u64,
    enough: Option<u64>,
    done: bool,
    sets: &'a mut Vec<Set>,
}

struct State {
    left: Vec<u16>,
    sticks: Vec<u16>,
    filled: Vec<(u32, Vec<u16>)>,
    failed: Failed,
}

/// Remainders that were searched in vain.
#[derive(Default)]
struct Failed {
    /// Places in `kept`, plus one.
    places: Vec<u32>,
    kept: Vec<Vec<u16>>,
}

impl Failed {
    fn is_known(&self, left: &[u16], sticks: &[u16]) -> bool {
        self.places.get(self.place(left, sticks)).is_some_and(|&place| place != 0)
    }

    fn add(&mut self, left: &[u16], sticks: &[u16]) {
        if self.places.len() <= 2 * self.kept.len() {
            self.places = vec![0; (4 * self.kept.len()).next_power_of_two().max(64)];
            for at in 0..self.kept.len() {
                let (left, sticks) = self.kept[at].split_at(left.len());
                let place = self.place(left, sticks);
                self.places[place] = at as u32 + 1;
            }
        }
        let place = self.place(left, sticks);
        self.kept.push([left, sticks].concat());
        self.places[place] = self.kept.len() as u32;
    }

    /// Where this remainder stands, or would.
    fn place(&self, left: &[u16], sticks: &[u16]) -> usize {
        let mask = self.places.len().wrapping_sub(1);
        let mut mixed: u64 = 0;
        for &number in left.iter().chain(sticks) {
            // Knuth's multiplier by the golden section, from memory.
            mixed = (mixed ^ u64::from(number)).wrapping_mul(0x9E37_79B9_7F4A_7C15).rotate_left(23);
        }
        let mut place = mixed as usize & mask;
        while let Some(kept) =
            self.places.get(place).and_then(|&at| self.kept.get((at as usize).wrapping_sub(1)))
        {
            if kept.starts_with(left) && kept.ends_with(sticks) {
                break;
            }
            place = (place + 1) & mask;
        }
        place
    }
}
