//! The plant of a designed loop: what the functions of its neighbours say of it.
//!
//! What cannot be worked out is left out, and is never a number that is none. Whatever rests on flows
//! that were not found is left out with them.

use super::boiler::{
    Duty, Judged, LEAST_ON_S, PartLoad, Running, judge, needed_output, part_load, volume_for,
};
use super::contents::{Contents, system_volume, tube_volume};
use super::electric::{
    Coils, RELAY, Transformers, ZONE_VALVE_WITH_HEATED_ELEMENT, ZONE_VALVE_WITH_MOTOR, transformers,
};
use super::expansion::{Pressures, System, Tank, TankError, highest, hot_pressure, tank};
use super::fill::{Boiling, Relief, Top, boiling, relief_margin};
use super::reset::{Designed, Point, Setting, points, setting, supply_at};
use super::return_protection::{self, GAS_DEW_POINT, Verdict};
use super::{atmosphere, static_pressure};
use crate::building::{RoomLoad, ZoneId, mean_temperature};
use crate::design::Design;
use crate::fluid::{Charge, Fluid, charge_of};
use crate::job::{BoilerKind, Job, ValveKind, Zoning};
use crate::network::{Passage, Place};
use crate::pipe::Tube;
use crate::quantity::{
    Length, MassFlow, Power, Pressure, Temperature, TemperatureDifference, Volume,
};
use serde::Serialize;

#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PlantDesign {
    /// What the boiler must give.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub needed: Option<Needed>,
    /// The boiler's output against that, where it is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub size: Option<Judged>,
    /// The smallest zone alone, where the burner's least output is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part_load: Option<Alone>,
    /// What the return does to the boiler.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub back: Option<Verdict>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reset: Option<Reset>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub volume: Option<Volumes>,
    pub filling: Filling,
    /// The expansion tank.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tank: Option<Tank>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub no_tank: Option<TankError>,
    /// How the glycol and the water are measured out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub glycol: Option<Charge>,
    #[serde(rename = "freezes_at_k")]
    pub freezes_at: Temperature,
    /// At the highest place, at the supply temperature and the fill pressure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub boiling: Option<Boiling>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub control: Option<Control>,
}

/// What a boiler must give, by part.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Needed {
    #[serde(rename = "loads_w")]
    pub loads: Power,
    #[serde(rename = "pipe_loss_w")]
    pub pipe_loss: Power,
    #[serde(rename = "output_w")]
    pub output: Power,
}

/// The burner while one zone calls.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Alone {
    pub zone: ZoneId,
    /// What the zone takes at the design supply.
    #[serde(rename = "load_w")]
    pub load: Power,
    #[serde(rename = "least_output_w")]
    pub least_output: Power,
    /// That circulates then.
    #[serde(rename = "volume_m3")]
    pub volume: Volume,
    pub running: Running,
    /// What a buffer must add for runs of [`LEAST_ON_S`].
    #[serde(rename = "buffer_m3")]
    pub buffer: Volume,
}

/// The line of an outdoor reset control.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Reset {
    /// From the design day to the mildest on which the house is heated.
    pub points: Vec<Point>,
    pub setting: Setting,
    /// Below this supply the return of a boiler that must not condense is too cool.
    #[serde(rename = "least_supply_k", skip_serializing_if = "Option::is_none")]
    pub least_supply: Option<Temperature>,
}

/// What is filled, by part.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Volumes {
    #[serde(rename = "tubes_m3")]
    pub tubes: Volume,
    #[serde(rename = "elements_m3")]
    pub elements: Volume,
    #[serde(rename = "boiler_m3")]
    pub boiler: Volume,
    #[serde(rename = "other_m3")]
    pub other: Volume,
    #[serde(rename = "total_m3")]
    pub total: Volume,
}

/// Gauge pressures of the system.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Filling {
    #[serde(rename = "cold_pa")]
    pub cold: Pressure,
    /// Cold, at the highest place.
    #[serde(rename = "at_top_pa")]
    pub at_top: Pressure,
    /// With the tank that would be bought, at the supply temperature.
    #[serde(rename = "hot_pa", skip_serializing_if = "Option::is_none")]
    pub hot: Option<Pressure>,
    /// Of what is known: hot, or else cold.
    pub relief: Relief,
}

/// What the transformer feeds.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Control {
    pub coils: u32,
    pub feeds: Fed,
    pub transformers: Transformers,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fed {
    ZoneValves,
    Relays,
}

/// Below the temperature from which on the house needs no heat, by how much heating begins:
/// judgement, 10 °F. Nearer to it the line bends so much that a straight one would be far off.
const BEGINS_BELOW: TemperatureDifference = TemperatureDifference::from_si(10.0 / 1.8);

/// Days in the table of the reset line.
const RESET_DAYS: usize = 6;

/// Works out the plant of a design that has all but its checks.
pub fn plan(job: &Job, design: &Design) -> PlantDesign {
    let fluid = job.circuit.fluid;
    let solved = design.piping.not_solved.is_none() && design.element_length() > Length::ZERO;
    let needed = solved.then(|| needed(job, design)).flatten();
    let volume = solved.then(|| volumes(job, &design.piping.passages)).flatten();
    let tank = volume.map(|volume| tank_for(job, volume.total));
    let found = tank.and_then(Result::ok);
    PlantDesign {
        needed,
        size: needed.and_then(|needed| judge(job.plant.output?, needed.output)),
        part_load: solved.then(|| alone(job, design)).flatten(),
        back: solved.then(|| back(job, design)).flatten(),
        reset: solved.then(|| reset(job, design)).flatten(),
        volume,
        filling: filling(job, found),
        tank: found,
        no_tank: tank.and_then(Result::err),
        glycol: match fluid {
            Fluid::Water => None,
            Fluid::PropyleneGlycol { share } => {
                volume.and_then(|volume| charge_of(volume.total, share).ok())
            }
        },
        freezes_at: fluid.freezing_point(),
        boiling: sound(boils(job, design, job.circuit.supply)),
        control: control(job),
    }
}

/// Rooms that hang on the loop, by what they lose.
pub(crate) fn heated(design: &Design) -> impl Iterator<Item = &RoomLoad> {
    let hangs =
        |room: &RoomLoad| design.piping.circuits.iter().any(|c| c.rooms.contains(&room.room));
    design
        .rooms
        .iter()
        .map(|room| &room.load)
        .filter(move |load| load.wanted() > Power::ZERO && hangs(load))
}

fn needed(job: &Job, design: &Design) -> Option<Needed> {
    let loads: Power = heated(design).map(|load| load.wanted()).sum();
    // Pipes in air warmer than the water would take heat in.
    let pipe_loss = design.piping.pipe_loss.max(Power::ZERO);
    let output = needed_output(&Duty { loads, pipe_loss, tank: job.plant.tank });
    (output.is_finite() && loads > Power::ZERO).then_some(Needed { loads, pipe_loss, output })
}

pub(crate) fn volumes(job: &Job, passages: &[Passage]) -> Option<Volumes> {
    let (mut tubes, mut elements) = (Vec::new(), Vec::new());
    for passage in passages {
        let list = match passage.place {
            Place::Element(_) => &mut elements,
            _ => &mut tubes,
        };
        list.push((passage.tube, passage.length));
    }
    let (boiler, other) = (job.plant.boiler_volume, job.plant.other_volume);
    let total =
        system_volume(&Contents { tubes: &tubes, elements: &elements, boiler, tank: other });
    let hold = |list: &[(Tube, Length)]| -> Volume {
        list.iter().map(|&(tube, length)| tube_volume(tube, length)).sum()
    };
    let (tubes, elements) = (hold(&tubes), hold(&elements));
    (total > Volume::ZERO && total.is_finite()).then_some(Volumes {
        tubes,
        elements,
        boiler,
        other,
        total,
    })
}

fn tank_for(job: &Job, volume: Volume) -> Result<Tank, TankError> {
    let system = System {
        fluid: job.circuit.fluid,
        volume,
        cold: job.plant.cold,
        hot: job.circuit.supply,
        metal: job.plant.metal,
    };
    tank(&system, &pressures(job))
}

/// At the tank, which stands beside gauge and relief valve.
pub(crate) fn pressures(job: &Job) -> Pressures {
    Pressures {
        fill: job.plant.fill,
        highest: highest(job.plant.relief, Pressure::ZERO),
        atmosphere: atmosphere(job.house.site.altitude),
    }
}

fn filling(job: &Job, tank: Option<Tank>) -> Filling {
    let plant = &job.plant;
    let cold = plant.fill;
    let hot = tank.and_then(|tank| {
        let air = atmosphere(job.house.site.altitude);
        hot_pressure(tank.usual.unwrap_or(tank.volume), tank.acceptance, cold, air)
    });
    Filling {
        cold,
        at_top: cold - static_pressure(job.circuit.fluid, plant.cold, plant.top_height),
        hot,
        relief: relief_margin(plant.relief, hot.unwrap_or(cold)),
    }
}

fn sound(found: Boiling) -> Option<Boiling> {
    (found.margin.is_finite() && found.lowest.is_finite()).then_some(found)
}

/// At the highest place, were the supply as warm as this.
pub(crate) fn boils(job: &Job, design: &Design, supply: Temperature) -> Boiling {
    // The circulator pumps away from the tank, so that nothing is below it unless water runs backward.
    let below = design
        .piping
        .passages
        .iter()
        .fold(0.0, |least: f64, passage| least.min(passage.pressure_in.si()));
    boiling(&Top {
        fluid: job.circuit.fluid,
        supply,
        height: job.plant.top_height,
        at_tank: job.plant.fill,
        pump: Pressure::from_si(-below),
        atmosphere: atmosphere(job.house.site.altitude),
    })
}

/// The smallest zone alone; the whole where there is but one.
fn alone(job: &Job, design: &Design) -> Option<Alone> {
    let piping = &design.piping;
    let least_output = match (job.plant.least_output?, job.plant.output) {
        (least, Some(most)) => least.min(most),
        (least, None) => least,
    };
    let mut smallest: Option<(ZoneId, Power, MassFlow, &[Passage])> = None;
    if piping.alone.is_empty() {
        let zone = piping.zones.first()?.zone;
        smallest = Some((zone, piping.heat, piping.mass_flow, &piping.passages));
    }
    for run in &piping.alone {
        let heats = run.not_solved.is_none() && run.heat > Power::ZERO;
        if heats && smallest.is_none_or(|(_, least, ..)| run.heat < least) {
            smallest = Some((*run.zones.first()?, run.heat, run.mass_flow, &run.passages));
        }
    }
    let (zone, load, flow, passages) = smallest?;
    // What stands still stores nothing.
    let moves = |passage: &&Passage| passage.mass_flow.abs() > flow * 1e-6;
    let tubes: Volume = passages
        .iter()
        .filter(moves)
        .map(|passage| tube_volume(passage.tube, passage.length))
        .sum();
    let volume = tubes + job.plant.boiler_volume + job.plant.other_volume;
    let plant = PartLoad {
        least_output,
        load,
        volume,
        fluid: job.circuit.fluid,
        differential: job.plant.differential,
        water: job.circuit.supply - job.plant.differential / 2.0,
    };
    let running = part_load(&plant).ok()?;
    let whole = volume_for(&plant, LEAST_ON_S).ok()?;
    let buffer = (whole - volume).max(Volume::ZERO);
    Some(Alone { zone, load, least_output, volume, running, buffer })
}

fn back(job: &Job, design: &Design) -> Option<Verdict> {
    let boiler = match job.plant.boiler {
        BoilerKind::NonCondensing => {
            return_protection::Boiler::NonCondensing { least: job.plant.least_return }
        }
        BoilerKind::Condensing => {
            return_protection::Boiler::Condensing { dew_point: GAS_DEW_POINT }
        }
    };
    let supply = return_protection::Supply::Constant;
    // Pipes in warm air may bring the water back warmer than it went.
    let back = design.piping.back.min(job.circuit.supply);
    return_protection::judge(boiler, job.circuit.supply, back, supply)
}

fn reset(job: &Job, design: &Design) -> Option<Reset> {
    let room = mean_temperature(&job.house);
    let balance = if job.plant.balance < room { job.plant.balance } else { room };
    let outdoors = job.house.site.outdoors;
    let designed = Designed {
        room,
        outdoors,
        balance,
        supply: job.circuit.supply,
        drop: design.piping.drop(),
        exponent: job.baseboard.element.rating.exponent,
        surplus: least_surplus(design)?,
    };
    let mildest = balance - BEGINS_BELOW;
    if mildest <= outdoors {
        return None;
    }
    let points = points(outdoors, mildest, RESET_DAYS, &|day| supply_at(&designed, day).ok())?;
    let setting = setting(room, &points)?;
    let least_supply = match job.plant.boiler {
        BoilerKind::NonCondensing => Some(job.plant.least_return + design.piping.drop()),
        BoilerKind::Condensing => None,
    };
    let sound = points.iter().all(|point| point.supply.is_finite());
    sound.then_some(Reset { points, setting, least_supply })
}

/// Of all rooms that hang on the loop the least output over load, so that none is cold; one that is
/// short on the design day has a check of its own.
fn least_surplus(design: &Design) -> Option<f64> {
    let mut least: Option<f64> = None;
    for load in heated(design) {
        let ratio = design.room(load.room)?.element.output / load.wanted();
        if least.is_none_or(|least| ratio < least) {
            least = Some(ratio);
        }
    }
    least.map(|least| least.max(1.0)).filter(|least| least.is_finite())
}

/// A valve or a relay for each zone; with a single one, the relay of its circulator.
fn control(job: &Job) -> Option<Control> {
    let zones = job.zones.len() as u32;
    let (feeds, each) = match (zones > 1, job.circuit.zoning, job.plant.valve) {
        (true, Zoning::Valves, ValveKind::Motor) => (Fed::ZoneValves, ZONE_VALVE_WITH_MOTOR),
        (true, Zoning::Valves, ValveKind::HeatedElement) => {
            (Fed::ZoneValves, ZONE_VALVE_WITH_HEATED_ELEMENT)
        }
        _ => (Fed::Relays, RELAY),
    };
    let transformers = transformers(&[Coils { count: zones, each }])?;
    (zones > 0).then_some(Control { coils: zones, feeds, transformers })
}
