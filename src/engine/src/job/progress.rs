//! How far the work on site is, and what was measured when the system was started.

use super::draft::Draft;
use super::entries::{Entries, Entry};
use super::existing::Ran;
use super::field::{Field, MeasuredField, SpotField};
use super::resolve::resolve;
use crate::building::RoomId;
use crate::named::names;
use crate::quantity::{Pressure, Temperature, VolumeFlow};
use crate::stored::stored;

/// What the job keeps of the days on site.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ProgressDraft {
    /// Steps of which something is noted, also such as the job no longer has: they may come back.
    pub steps: Vec<StepDraft>,
    pub measured: Entries<MeasuredField>,
    pub spots: Vec<SpotDraft>,
}

stored!(ProgressDraft { steps: default, measured: default, spots: default });

/// What is noted of one step of the installation.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct StepDraft {
    /// The step's id, which is kept as text so that a step of a newer list is kept too.
    pub step: String,
    pub done: Done,
    /// The day, such as "2026-03-01", as the calendar gives it.
    pub date: String,
    pub note: String,
    /// The number of a photograph.
    pub photo: String,
}

stored!(StepDraft { step, done: default, date: default, note: default, photo: default });

#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Done {
    #[default]
    Open,
    Done,
}

names!(Done {
    Open = "open",
    Done = "done",
});

/// What was measured at one circuit, which its first room stands for, or in one room.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SpotDraft {
    pub room: RoomId,
    pub entries: Entries<SpotField>,
}

stored!(SpotDraft { room, entries: default });

/// What was measured, as far as it can be read.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Measured {
    pub outdoors: Option<Temperature>,
    /// Cold, at the gauge.
    pub fill: Option<Pressure>,
    /// Of the tank's air, before filling.
    pub pre_charge: Option<Pressure>,
    /// Of all the water, where it leaves the boiler and where it comes back.
    pub boiler_supply: Option<Temperature>,
    pub boiler_back: Option<Temperature>,
    pub ran: Ran,
    pub spots: Vec<(RoomId, Spot)>,
}

/// What was measured at one place.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Spot {
    /// Where the circuit leaves the boiler room.
    pub supply: Option<Temperature>,
    /// Where the circuit comes back, before it joins others.
    pub back: Option<Temperature>,
    pub flow: Option<VolumeFlow>,
    /// The flow coefficient that the balancing valve's scale says.
    pub valve_cv: Option<f64>,
    /// Of the room.
    pub air: Option<Temperature>,
    /// On the pipe before and behind the room's element.
    pub water_in: Option<Temperature>,
    pub water_out: Option<Temperature>,
}

impl Measured {
    pub fn at(&self, room: RoomId) -> Spot {
        let spot = self.spots.iter().find(|(of, _)| *of == room);
        spot.map(|(_, spot)| *spot).unwrap_or_default()
    }
}

/// Reads what was measured; what cannot be read has its error in [`super::read`].
pub fn measured(draft: &Draft) -> Measured {
    let si = |field| match draft.entry(field) {
        Some(_) => resolve(draft, field).si(),
        None => None,
    };
    let one = |field| si(Field::Measured(field));
    let spot = |spot: &SpotDraft| {
        let at = |field| si(Field::Spot(spot.room, field));
        let temperature = |field| at(field).map(Temperature::from_si);
        let read = Spot {
            supply: temperature(SpotField::Supply),
            back: temperature(SpotField::Back),
            flow: at(SpotField::Flow).map(VolumeFlow::from_si),
            valve_cv: at(SpotField::Valve),
            air: temperature(SpotField::Air),
            water_in: temperature(SpotField::WaterIn),
            water_out: temperature(SpotField::WaterOut),
        };
        (spot.room, read)
    };
    Measured {
        outdoors: one(MeasuredField::Outdoors).map(Temperature::from_si),
        fill: one(MeasuredField::Fill).map(Pressure::from_si),
        pre_charge: one(MeasuredField::PreCharge).map(Pressure::from_si),
        boiler_supply: one(MeasuredField::BoilerSupply).map(Temperature::from_si),
        boiler_back: one(MeasuredField::BoilerBack).map(Temperature::from_si),
        ran: draft.existing.ran,
        spots: draft.progress.spots.iter().map(spot).collect(),
    }
}

impl ProgressDraft {
    pub fn step(&self, id: &str) -> Option<&StepDraft> {
        self.steps.iter().find(|step| step.step == id)
    }

    pub fn is_done(&self, id: &str) -> bool {
        self.step(id).is_some_and(|step| step.done == Done::Done)
    }

    /// How many readings are typed.
    pub fn readings(&self) -> usize {
        let spots = self.spots.iter().map(|spot| spot.entries.len());
        self.measured.len() + spots.sum::<usize>()
    }

    pub fn spot(&self, room: RoomId) -> Option<&SpotDraft> {
        self.spots.iter().find(|spot| spot.room == room)
    }

    pub(super) fn set_spot(&mut self, room: RoomId, field: SpotField, entry: Entry) {
        if self.spot(room).is_none() {
            self.spots.push(SpotDraft { room, entries: Entries::default() });
        }
        if let Some(spot) = self.spots.iter_mut().find(|spot| spot.room == room) {
            spot.entries.set(field, entry);
        }
        self.spots.retain(|spot| spot.entries != Entries::default());
    }
}

impl Draft {
    /// Changes what is noted of a step. One of which nothing is left to say is forgotten.
    pub fn note_step(&mut self, id: &str, change: &mut dyn FnMut(&mut StepDraft)) {
        let steps = &mut self.progress.steps;
        if !steps.iter().any(|step| step.step == id) {
            steps.push(StepDraft { step: id.to_string(), ..StepDraft::default() });
        }
        if let Some(step) = steps.iter_mut().find(|step| step.step == id) {
            change(step);
        }
        steps.retain(|step| {
            let blank = [&step.date, &step.note, &step.photo].iter().all(|text| text.is_empty());
            step.done == Done::Done || !blank
        });
    }
}
