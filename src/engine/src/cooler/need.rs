//! What each room needs on a day, as warm as it is meant to be.

use crate::building::Exchange;
use crate::design::Design;
use crate::job::Job;
use crate::quantity::Temperature;
use crate::season::Controls;
use crate::season::balance::with_rooms_at;
use crate::season::bin::gains_w;

#[derive(Debug)]
pub(super) struct Needs<'a> {
    exchange: &'a Exchange<'a>,
    pub(super) rooms_k: Vec<f64>,
    /// From elsewhere, W.
    gains_w: Vec<f64>,
    /// On the design day, as the design has it.
    pub(super) designed_w: Vec<f64>,
    /// Of its loss, that each room is to have beyond it.
    margin: f64,
}

impl<'a> Needs<'a> {
    pub(super) fn of(
        job: &Job,
        design: &Design,
        exchange: &'a Exchange<'a>,
        controls: &Controls,
    ) -> Option<Needs<'a>> {
        Some(Needs {
            exchange,
            rooms_k: job.house.rooms.iter().map(|room| room.temperature.si()).collect(),
            gains_w: gains_w(job, controls, exchange)?,
            designed_w: design.rooms.iter().map(|room| room.load.wanted().si()).collect(),
            margin: job.house.margin,
        })
    }

    /// Of each room on a day as cold as this, W, with the design's margin.
    pub(super) fn on(&self, outdoors: Temperature) -> Option<Vec<f64>> {
        let day = self.exchange.day(outdoors);
        let losses = day.losses_w(&with_rooms_at(&day, &self.rooms_k)?);
        let rooms = losses.iter().zip(&self.gains_w).take(self.rooms_k.len());
        Some(rooms.map(|(loss, gain)| loss + loss.max(0.0) * self.margin - gain).collect())
    }
}
