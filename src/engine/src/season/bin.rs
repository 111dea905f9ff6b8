//! One outdoor temperature: the steady state, and what the plant does in it.

use super::balance::{Steady, settle, with_rooms_at};
use super::system::{System, chance_alone};
use super::{BinRun, Controls, Gains, NoSeason, Supply};
use crate::arrangement::Tried;
use crate::building::{Exchange, mean_temperature};
use crate::climate::Bin;
use crate::design::Design;
use crate::job::Job;
use crate::plant::boiler::{PartLoad, Running, part_load};
use crate::quantity::{Power, Temperature, Volume};

/// A designed house with its controls, and where the last bin came to rest.
pub(crate) struct Place<'a> {
    job: &'a Job,
    tried: Tried<'a>,
    controls: &'a Controls,
    exchange: &'a Exchange<'a>,
    pub(crate) gains_w: Vec<f64>,
    pub(crate) system: System,
    /// That the system was solved for.
    supply: Temperature,
    last: Option<Steady>,
}

impl<'a> Place<'a> {
    pub(crate) fn of(
        job: &'a Job,
        design: &Design,
        controls: &'a Controls,
        exchange: &'a Exchange<'a>,
    ) -> Result<Place<'a>, NoSeason> {
        let supply = job.circuit.supply;
        let mut tried = Tried::of(job, design);
        let system = System::of(job, design, controls, &mut tried).ok_or(NoSeason::NoFlows)?;
        let gains_w = gains_w(job, controls, exchange).ok_or(NoSeason::NotSettled)?;
        Ok(Place { job, tried, controls, exchange, gains_w, system, supply, last: None })
    }

    /// The house at rest on a day as cold as this.
    pub(crate) fn rest(&mut self, outdoors: Temperature) -> Result<Steady, NoSeason> {
        let supply = self.supply_at(outdoors);
        if supply != self.supply {
            self.system.supply(&mut self.tried, supply).ok_or(NoSeason::NoFlows)?;
            self.supply = supply;
        }
        let day = self.exchange.day(outdoors);
        let found = settle(&day, &self.gains_w, &mut self.system, self.last.as_ref());
        // A guess from another day may lead astray.
        let found = found.or_else(|| settle(&day, &self.gains_w, &mut self.system, None));
        let steady = found.ok_or(NoSeason::NotSettled)?;
        self.last = Some(steady.clone());
        Ok(steady)
    }

    fn supply_at(&self, outdoors: Temperature) -> Temperature {
        let most = self.job.circuit.supply;
        match self.controls.supply {
            Supply::Fixed => most,
            Supply::Reset(setting, least) => {
                let room = mean_temperature(&self.job.house);
                let line = room + setting.shift + (room - outdoors) * setting.slope;
                line.max(least.unwrap_or(room)).min(most)
            }
        }
    }
}

/// What each node has from elsewhere, W.
pub(crate) fn gains_w(job: &Job, controls: &Controls, exchange: &Exchange<'_>) -> Option<Vec<f64>> {
    let other = job.house.rooms.iter().map(|room| room.other_heat.si());
    let mut gains: Vec<f64> = other.chain(job.house.spaces.iter().map(|_| 0.0)).collect();
    if let Gains::From(balance) = controls.gains {
        let rooms: Vec<f64> = job.house.rooms.iter().map(|room| room.temperature.si()).collect();
        let day = exchange.day(balance);
        let losses = day.losses_w(&with_rooms_at(&day, &rooms)?);
        for (gain, loss) in gains.iter_mut().zip(&losses).take(rooms.len()) {
            *gain = gain.max(*loss);
        }
    }
    Some(gains)
}

pub(super) fn run_bin(place: &mut Place<'_>, bin: &Bin) -> Result<BinRun, NoSeason> {
    let steady = place.rest(bin.outdoors)?;
    let day = place.exchange.day(bin.outdoors);
    let Place { job, system, gains_w, supply, .. } = place;
    let rooms = job.house.rooms.len();
    let zones_run = system.running(&steady.shares);
    let runs = 1.0 - zones_run.iter().map(|share| 1.0 - share).product::<f64>();
    let mut to_rooms = vec![Power::ZERO; rooms];
    for (caller, share) in system.callers.iter().zip(&steady.shares) {
        for &room in &caller.rooms {
            to_rooms[room] += Power::from_si(share * steady.given.to_room_w[room]);
        }
    }
    let lost = steady.given.zone_lost_w.iter().zip(&zones_run);
    let pipe_loss = Power::from_si(lost.map(|(lost, share)| lost * share).sum());
    let heat = to_rooms.iter().copied().sum::<Power>() + pipe_loss;
    let losses = day.losses_w(&steady.at_k);
    let left = losses.iter().zip(&day.held_k).zip(&*gains_w).enumerate();
    // What is held takes or gives whatever it has to.
    let left =
        left.filter(|(_, ((_, held), _))| held.is_none()).map(|(node, ((loss, _), gain))| {
            loss - gain - to_rooms.get(node).copied().unwrap_or(Power::ZERO).si()
        });
    let unbalanced = Power::from_si(left.sum());
    let output = job.plant.output.filter(|output| heat > *output);
    let kelvin = |k: &f64| Temperature::from_si(*k);
    Ok(BinRun {
        outdoors: bin.outdoors,
        hours: bin.hours,
        supply: *supply,
        rooms: steady.at_k[..rooms].iter().map(kelvin).collect(),
        spaces: steady.at_k[rooms..].iter().map(kelvin).collect(),
        to_rooms,
        gains: gains_w[..rooms].iter().map(|w| Power::from_si(*w)).collect(),
        runs,
        back: back(system, &steady, &zones_run, runs),
        heat,
        pipe_loss,
        beyond_boiler: output.map_or(Power::ZERO, |output| heat - output),
        cycles_per_h: cycles_per_h(job, system, &zones_run, runs, heat, *supply),
        pumps: pumps(system, &zones_run, runs),
        zones_run,
        unbalanced,
    })
}

/// The return while anything runs, by the flow of each state: all zones, or one alone.
fn back(system: &System, steady: &Steady, zones_run: &[f64], runs: f64) -> Option<Temperature> {
    let backs = &steady.given.back_k;
    if runs <= 0.0 || backs.is_empty() {
        return None;
    }
    let (mut weight, mut sum) = (0.0, 0.0);
    let mut add = |share: f64, flow_kg_s: f64, back_k: f64| {
        weight += share * flow_kg_s;
        sum += share * flow_kg_s * back_k;
    };
    let mut together = runs;
    for (zone, heating) in system.alone.iter().enumerate() {
        let share = zones_run[zone] * chance_alone(zones_run, zone);
        together -= share;
        add(share, heating.flow_kg_s, backs[zone + 1]);
    }
    add(together.max(0.0), system.all.flow_kg_s, backs[0]);
    (weight > 0.0).then(|| Temperature::from_si(sum / weight))
}

/// Mean electric power: a circulator of its own runs while its zone does, the one of all while any does.
fn pumps(system: &System, zones_run: &[f64], runs: f64) -> Power {
    let mean = system.all.electric_w.iter().map(|(zone, electric_w)| match zone {
        Some(zone) => electric_w * zones_run[*zone],
        None => electric_w * runs,
    });
    Power::from_si(mean.sum())
}

/// Starts of the burner, against what the running zones take while any runs and with the water that
/// circulates then on the average.
fn cycles_per_h(
    job: &Job,
    system: &System,
    zones_run: &[f64],
    runs: f64,
    heat: Power,
    supply: Temperature,
) -> Option<f64> {
    let least_output = match (job.plant.least_output?, job.plant.output) {
        (least, Some(most)) => least.min(most),
        (least, None) => least,
    };
    if runs <= 0.0 || heat <= Power::ZERO {
        return Some(0.0);
    }
    let moving =
        system.all.zone_volume_m3.iter().zip(zones_run).map(|(volume, share)| volume * share);
    let volume = Volume::from_si(moving.sum::<f64>() / runs);
    let plant = PartLoad {
        least_output,
        load: heat / runs,
        volume: volume + job.plant.boiler_volume + job.plant.other_volume,
        fluid: job.circuit.fluid,
        differential: job.plant.differential,
        water: supply - job.plant.differential / 2.0,
    };
    match part_load(&plant).ok()? {
        // It starts with the call and stops with it; how often that is, the thermostat says.
        Running::Throughout => Some(0.0),
        Running::Cycling(cycle) => Some(cycle.per_hour * runs),
    }
}
