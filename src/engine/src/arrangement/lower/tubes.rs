//! The tubes and elements of a way, each as a link: how long, with which fittings, in which air.

use super::{At, Builder, NONE, Plan};
use crate::job::{Approach, Job, PipeLeg};
use crate::network::{Equipment, Link, Place, Surface, Warms};
use crate::pipe::{Fitting, Tube};
use crate::quantity::{Length, MassFlow};

impl Builder<'_> {
    /// The pipe to a room: outside the rooms, then in the enclosure.
    pub(super) fn approach(
        &mut self,
        from: At,
        room: usize,
        tube: Tube,
        tees: &[(Fitting, u32)],
    ) -> At {
        let job = self.plan.job;
        let Approach { outside, inside, .. } = job.approaches[room];
        let id = job.house.rooms[room].id;
        let described = inside.length > Length::ZERO || inside.elbows > 0;
        let mut at = from;
        if !described || outside.length > Length::ZERO || outside.elbows > 0 || !tees.is_empty() {
            at = self.outside(at, Place::To(id), tube, outside, tees, None);
        }
        if described {
            let link = self.in_room(Place::Inside(id), room, tube, inside);
            at = self.stretch(at, link, None);
        }
        at
    }

    pub(super) fn element(&mut self, from: At, room: usize, to: Option<At>) -> At {
        let job = self.plan.job;
        let choice = &self.plan.choices[room];
        let link = Link {
            place: Place::Element(job.house.rooms[room].id),
            tube: job.circuit.tube,
            length: choice.nominal,
            surface: Surface::Finned { element: job.baseboard.element, finned: choice.finned },
            surroundings: job.house.rooms[room].temperature,
            fittings: Vec::new(),
            extra_k: 0.0,
            equipment: Equipment::None,
        };
        let to = self.stretch(from, link, to);
        if let Some(tag) = self.tags.last_mut() {
            tag.element = Some(room);
        }
        to
    }

    pub(super) fn outside(
        &mut self,
        from: At,
        place: Place,
        tube: Tube,
        leg: PipeLeg,
        tees: &[(Fitting, u32)],
        to: Option<At>,
    ) -> At {
        let mut link = self.pipe(place, tube, leg);
        link.fittings.extend_from_slice(tees);
        self.stretch(from, link, to)
    }

    pub(super) fn pipe(&self, place: Place, tube: Tube, leg: PipeLeg) -> Link {
        bare(self.plan.job, place, tube, leg)
    }

    pub(super) fn in_room(&self, place: Place, room: usize, tube: Tube, leg: PipeLeg) -> Link {
        let job = self.plan.job;
        Link {
            surface: Surface::Bare { film: job.circuit.pipe_film, cover: None, warms: Warms::Room },
            surroundings: job.house.rooms[room].temperature,
            ..self.pipe(place, tube, leg)
        }
    }
}

/// A whole route, inside and outside the rooms.
pub(super) fn whole(approach: &Approach) -> PipeLeg {
    let Approach { inside, outside, .. } = approach;
    PipeLeg { length: inside.length + outside.length, elbows: inside.elbows + outside.elbows }
}

pub(crate) fn bare(job: &Job, place: Place, tube: Tube, leg: PipeLeg) -> Link {
    let circuit = &job.circuit;
    Link {
        place,
        tube,
        length: leg.length,
        surface: Surface::Bare {
            film: circuit.pipe_film,
            cover: circuit.cover,
            warms: Warms::Nothing,
        },
        surroundings: circuit.pipe_surroundings,
        fittings: vec![(Fitting::Elbow90, leg.elbows)],
        extra_k: 0.0,
        equipment: Equipment::None,
    }
}

pub(super) fn boiler_room(plan: &Plan<'_>) -> Link {
    let circuit = &plan.job.circuit;
    // The largest pipe that the boiler's water has to pass.
    let mains = plan
        .job
        .zones
        .iter()
        .map(|zone| if zone.arrangement.has_main() { zone.main } else { zone.pipe });
    let tube =
        mains.fold(
            circuit.tube,
            |most, tube| {
                if tube.flow_area() > most.flow_area() { tube } else { most }
            },
        );
    let all: MassFlow = plan.circuits.iter().map(|circuit| circuit.target).sum();
    Link {
        fittings: vec![
            (Fitting::Elbow90, circuit.boiler_elbows),
            (Fitting::TeeRun, circuit.boiler_tees),
            (Fitting::BallValve, circuit.boiler_valves),
        ],
        equipment: Equipment::Head { head: circuit.equipment_head, at: all },
        ..bare(plan.job, Place::BoilerRoom, tube, NONE)
    }
}
