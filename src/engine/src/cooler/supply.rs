//! What it takes to run at one supply.

use super::Trial;
use crate::arrangement::choose_for;
use crate::building::RoomId;
use crate::climate::Bin;
use crate::numeric::root;
use crate::quantity::{Length, Temperature};
use serde::Serialize;

/// A supply that the system was not made for, on the design day.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CoolSupply {
    #[serde(rename = "supply_k")]
    pub supply: Temperature,
    /// Those that need heat and have an element, in the order of the job.
    pub rooms: Vec<CoolRoom>,
    /// From this outdoor temperature on, gains counted, it heats every room as they are; none where it
    /// never does.
    #[serde(rename = "enough_from_k", skip_serializing_if = "Option::is_none")]
    pub enough_from: Option<Temperature>,
    /// Hours of the year in which it does not.
    pub short_h: f64,
}

/// A room at that supply.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct CoolRoom {
    pub room: RoomId,
    /// What it gets over what it needs, as it is: a loss no larger than this share of the present one
    /// would do.
    pub share: f64,
    /// Finned length to add, while each room before it has what it needs; none where no length does.
    #[serde(rename = "add_m", skip_serializing_if = "Option::is_none")]
    pub add: Option<Length>,
    /// Whether pieces of that length and the present one together stand on its free walls.
    pub fits: bool,
}

impl Trial<'_> {
    pub(super) fn at(&mut self, supply: Temperature, bins: &[Bin]) -> Option<CoolSupply> {
        let (need_w, rooms_k) = (self.needs.designed_w.clone(), self.needs.rooms_k.clone());
        let given_w = self.given_w(supply.si())?;
        let lengths = self.heating(supply)?.lengthen(&rooms_k, &need_w);
        let wanting = |at: &usize| self.hangs(*at) && need_w[*at] > 0.0;
        let rooms = (0..need_w.len()).filter(wanting).map(|at| {
            let present = self.design.rooms[at].element.choice.finned;
            let needed = lengths[at].map(Length::from_si);
            let fits = needed.is_some_and(|needed| {
                let choice = choose_for(self.job, &self.job.house.rooms[at], Some(needed));
                needed <= present || choice.finned.si() >= needed.si() * (1.0 - 1e-9)
            });
            CoolRoom {
                room: self.job.house.rooms[at].id,
                share: given_w[at] / need_w[at],
                add: needed.map(|needed| (needed - present).max(Length::ZERO)),
                fits,
            }
        });
        let rooms = rooms.collect();
        let enough_from = self.enough_from(&given_w, bins);
        let short_h = bins.iter().filter(|bin| self.is_short(&given_w, bin.outdoors));
        let short_h = short_h.map(|bin| bin.hours).sum();
        Some(CoolSupply { supply, rooms, enough_from, short_h })
    }

    /// The outdoor temperature from which on these outputs are enough, within what the bins have.
    fn enough_from(&self, given_w: &[f64], bins: &[Bin]) -> Option<Temperature> {
        let coldest = bins.first()?.outdoors.min(self.job.house.site.outdoors);
        let mildest = bins.iter().map(|bin| bin.outdoors).find(|t| !self.is_short(given_w, *t))?;
        if !self.is_short(given_w, coldest) {
            return Some(coldest);
        }
        let spare = |kelvin: f64| self.spare(given_w, Temperature::from_si(kelvin));
        root(spare, coldest.si(), mildest.si(), 0.01).map(Temperature::from_si)
    }

    fn is_short(&self, given_w: &[f64], outdoors: Temperature) -> bool {
        self.spare(given_w, outdoors) < -1e-6
    }

    /// What the worst room gets beyond what it needs, W.
    fn spare(&self, given_w: &[f64], outdoors: Temperature) -> f64 {
        let Some(need_w) = self.needs.on(outdoors) else { return f64::NAN };
        let spare = given_w.iter().zip(&need_w).enumerate().filter(|(at, _)| self.hangs(*at));
        spare.map(|(_, (given, need))| given - need.max(0.0)).fold(f64::INFINITY, f64::min)
    }
}
