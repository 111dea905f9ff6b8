//! A year summed from its bins.

use super::{BinRun, Burning, COLD_BELOW, SeasonRun, WARM_ABOVE};
use crate::building::{RoomId, ZoneId};
use crate::job::Job;
use crate::plant::return_protection::LEAST_RETURN;
use crate::quantity::{Power, Temperature};
use serde::Serialize;

/// A room's year.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RoomSeason {
    pub room: RoomId,
    /// Hours in which it is colder than it is meant to be by more than [`COLD_BELOW`].
    pub cold_h: f64,
    /// Hours in which it is warmer than it is meant to be by more than [`WARM_ABOVE`], and heated
    /// nevertheless, however short the calls.
    pub warm_h: f64,
    /// The coldest of all bins, and the warmest of those in which it is heated.
    #[serde(rename = "coldest_k")]
    pub coldest: Temperature,
    #[serde(rename = "warmest_k", skip_serializing_if = "Option::is_none")]
    pub warmest: Option<Temperature>,
    /// From its element and the pipe in it.
    pub heat_j: f64,
}

/// A zone's year.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ZoneSeason {
    pub zone: ZoneId,
    /// In which its water runs.
    pub running_h: f64,
}

const SECONDS_AN_HOUR: f64 = 3600.0;

pub(super) fn sums(job: &Job, bins: Vec<BinRun>, burning: Option<Burning>) -> SeasonRun {
    let joules = |of: &dyn Fn(&BinRun) -> Power| -> f64 {
        bins.iter().map(|bin| of(bin).si() * bin.hours * SECONDS_AN_HOUR).sum()
    };
    let hours =
        |of: &dyn Fn(&BinRun) -> f64| -> f64 { bins.iter().map(|bin| of(bin) * bin.hours).sum() };
    let heat_j = joules(&|bin| bin.heat);
    let rooms = job.house.rooms.iter().enumerate().map(|(at, room)| {
        let heated = |bin: &&BinRun| bin.to_rooms[at] > Power::ZERO;
        let cold = |bin: &BinRun| bin.rooms[at] < room.temperature - COLD_BELOW;
        let warm = |bin: &BinRun| heated(&bin) && bin.rooms[at] > room.temperature + WARM_ABOVE;
        let temperatures = bins.iter().map(|bin| bin.rooms[at]);
        RoomSeason {
            room: room.id,
            cold_h: hours(&|bin| f64::from(u8::from(cold(bin)))),
            warm_h: hours(&|bin| f64::from(u8::from(warm(bin)))),
            coldest: temperatures.reduce(Temperature::min).unwrap_or(room.temperature),
            warmest: bins.iter().filter(heated).map(|bin| bin.rooms[at]).reduce(Temperature::max),
            heat_j: joules(&|bin| bin.to_rooms[at]),
        }
    });
    let zones = job
        .zones
        .iter()
        .enumerate()
        .map(|(at, zone)| ZoneSeason { zone: zone.id, running_h: hours(&|bin| bin.zones_run[at]) });
    let cold_return = |bin: &BinRun| bin.back.is_some_and(|back| back < LEAST_RETURN);
    SeasonRun {
        rooms: rooms.collect(),
        zones: zones.collect(),
        heat_j,
        pipe_loss_j: joules(&|bin| bin.pipe_loss),
        running_h: hours(&|bin| bin.runs),
        firing_h: job.plant.output.map(|output| hours(&|bin| (bin.heat / output).min(1.0))),
        cold_return_h: hours(&|bin| if cold_return(bin) { bin.runs } else { 0.0 }),
        pump_j: joules(&|bin| bin.pumps),
        fuel: burning.and_then(|burning| {
            let fuel = heat_j / burning.efficiency / burning.fuel.heat_content_j();
            (burning.efficiency > 0.0 && fuel.is_finite()).then_some(fuel)
        }),
        bins,
    }
}
