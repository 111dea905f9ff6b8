//! How much of a way out is needed: the least that does, by halving.

use super::tries::{Reach, Try};
use super::{Case, Does, Tried, Worked, does, price};
use crate::arrangement::size_elements;

/// A way out on trial.
#[derive(Debug)]
pub(super) struct Search {
    at: usize,
    what: Try,
    reach: Reach,
    aim: Aim,
    /// At the upper end of what is left.
    best: Option<Tried>,
}

/// What has to be reached.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Aim {
    /// Nothing was tried yet.
    Open,
    AllRooms,
    ThisRoom,
}

pub(super) enum Turn {
    On,
    /// It is no way out, and nothing is to be said of it.
    Nothing,
    Found(Worked),
}

impl Search {
    /// `None` where nothing of it can be had.
    pub(super) fn begin(case: &Case, at: usize, what: Try) -> Option<Search> {
        let reach = what.reach(case, at)?;
        Some(Search { at, what, reach, aim: Aim::Open, best: None })
    }

    /// Tries once: the most that can be had first, then the middle of what is left.
    pub(super) fn turn(&mut self, case: &Case) -> Turn {
        let Reach { low, high, fine } = self.reach;
        if self.aim == Aim::Open {
            let tried = self.try_with(case, high);
            self.aim = match tried.does {
                Does::HeatsAll => Aim::AllRooms,
                Does::HeatsRoom => Aim::ThisRoom,
                Does::NotEnough { .. } if self.what.is_told_when_too_little() => {
                    return Turn::Found(self.worked(case, tried));
                }
                Does::NotEnough { .. } => return Turn::Nothing,
            };
            self.best = Some(tried);
        } else {
            let middle = low + (high - low) / 2.0;
            let tried = self.try_with(case, middle);
            let enough = matches!(
                (self.aim, tried.does),
                (_, Does::HeatsAll) | (Aim::ThisRoom, Does::HeatsRoom)
            );
            match enough {
                true => {
                    self.reach.high = middle;
                    self.best = Some(tried);
                }
                false => self.reach.low = middle,
            }
        }
        if self.reach.high - self.reach.low > fine {
            return Turn::On;
        }
        match self.best.take() {
            Some(best) => Turn::Found(self.worked(case, best)),
            None => Turn::Nothing,
        }
    }

    fn try_with(&self, case: &Case, amount: f64) -> Tried {
        let (job, loads) = self.what.made(case, self.at, amount);
        let elements = size_elements(&job, &loads);
        let does = does(&loads, &elements, self.at);
        Tried { elements, does }
    }

    fn worked(&self, case: &Case, tried: Tried) -> Worked {
        let way = self.what.way(case, self.at, self.reach.high, &tried);
        let price::Sum { cost, unpriced } = price::of(case, self.at, &way, &tried);
        let room = case.loads.get(self.at).map(|load| load.room).unwrap_or_default();
        Worked { room, way, does: tried.does, cost, unpriced }
    }
}
