//! The pipe of a designed job as it is laid, for whoever buys it.

use super::lower::lower;
use super::pumping::Built;
use super::run::usual_drive;
use crate::design::Design;
use crate::job::Job;
use crate::network::Place;
use crate::pipe::{Fitting, Tube};
use crate::quantity::Length;

/// A stretch of pipe between elements.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Laid {
    pub place: Place,
    pub tube: Tube,
    pub length: Length,
    pub elbows: u32,
}

/// Every stretch but the elements and the valves, in the order of flow, zone after zone: the same
/// that the flows were found with.
pub fn laid(job: &Job, design: &Design) -> Vec<Laid> {
    let built = Built::of(job, design);
    let on = vec![true; job.zones.len()];
    let plumbing = lower(built.plan(&on, usual_drive(job)));
    let mut all = Vec::new();
    for link in plumbing.stretches.iter().map(|stretch| &stretch.link) {
        let elbow = |(kind, _): &&(Fitting, u32)| *kind == Fitting::Elbow90;
        let elbows = link.fittings.iter().filter(elbow).map(|(_, count)| count).sum();
        let is_element = matches!(link.place, Place::Element(_));
        if !is_element && (link.length > Length::ZERO || elbows > 0) {
            all.push(Laid { place: link.place, tube: link.tube, length: link.length, elbows });
        }
    }
    all
}
