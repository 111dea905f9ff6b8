//! Circuits: whether the water that comes back is what it should be, and what it tells if not.

use super::at::{Air, At, Runs, Way, back, output};
use super::{CircuitJudged, READING};
use crate::arrangement::CircuitDesign;
use crate::building::{Room, RoomId};
use crate::job::{Arrangement, Balancing, Spot};
use crate::numeric::pow;
use crate::quantity::{Power, Temperature, TemperatureDifference, VolumeFlow};

#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CircuitFinding {
    /// Only one of supply and return was measured.
    HalfRead,
    /// Water so little warmer than the rooms tells nothing.
    TooCool {
        supply: Temperature,
    },
    Fits {
        drop: TemperatureDifference,
        expected: TemperatureDifference,
    },
    /// A flow that was measured without the water's temperatures.
    FlowFits {
        measured: VolumeFlow,
        meant: VolumeFlow,
    },
    /// `share` of the flow that is meant.
    FlowLow {
        share: f64,
        by: By,
    },
    FlowHigh {
        share: f64,
        by: By,
    },
    /// Next to no flow: air, or something shut.
    Still {
        share: f64,
        by: By,
    },
    /// The return is nearly as hot as the supply: the water goes another way, or no heat is taken.
    HardlyCools {
        drop: TemperatureDifference,
        expected: TemperatureDifference,
    },
    /// The return is hotter than the supply.
    Backward {
        supply: Temperature,
        back: Temperature,
    },
    /// The flow is right, and so much of the heat is given.
    LessHeat {
        share: f64,
    },
    /// The flow is right, and more heat seems to be given than there can be.
    MoreHeat {
        share: f64,
    },
    /// The first rooms are cool and the last ones warm, as if the water came from the other end.
    Reversed {
        first: RoomId,
        last: RoomId,
    },
    ValveFits {
        set: f64,
    },
    ValveOff {
        set: f64,
        planned: f64,
    },
}

/// What a flow was judged by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum By {
    /// A flow that was measured.
    Meter { measured: VolumeFlow, meant: VolumeFlow },
    /// The drop: so much less flow loses so much more temperature.
    Drop { drop: TemperatureDifference, expected: TemperatureDifference },
}

/// Water has to be this much warmer than the rooms to be judged by, 36 °F: judgement.
const WARM: TemperatureDifference = TemperatureDifference::from_si(20.0);

/// A drop within this share of the expected one fits: judgement, beside [`READING`].
const DROP_SHARE: f64 = 0.15;

/// Less than this share of the expected drop is hardly any, of the flow hardly any: judgement.
const HARDLY: f64 = 0.3;

/// A measured flow that fits, and the heat that then fits: judgement.
const FLOW_FITS: std::ops::RangeInclusive<f64> = 0.85..=1.2;
const HEAT_FITS: std::ops::RangeInclusive<f64> = 0.75..=1.25;

/// A valve's scale is good to this share: judgement.
const VALVE_SHARE: f64 = 0.15;

/// Rooms of a loop are told apart by direction when their heat lies this much apart: judgement.
const APART: f64 = 0.15;

pub(super) fn circuits(runs: &mut Runs<'_>) -> Vec<CircuitJudged> {
    let design = runs.design;
    let mut judged = Vec::new();
    for circuit in &design.piping.circuits {
        let Some(&first) = circuit.rooms.first() else { continue };
        let spot = runs.measured.at(first);
        let mut findings = Vec::new();
        let expected = spot.supply.and_then(|supply| expected(runs, circuit, supply));
        match (spot.supply, spot.back, expected) {
            (Some(supply), Some(came), Some(should)) => {
                findings.push(by_water(runs, circuit, spot, Water { supply, came, should }));
            }
            (None, None, _) => findings.extend(by_flow_alone(runs, circuit, spot)),
            (Some(_), Some(_), None) => {}
            _ => findings.push(CircuitFinding::HalfRead),
        }
        findings.extend(reversed(runs, circuit));
        findings.extend(valve(runs, circuit, spot));
        if expected.is_some() || !findings.is_empty() {
            judged.push(CircuitJudged { first, back: expected, findings });
        }
    }
    judged
}

/// What the circuit would bring back at this supply.
fn expected(
    runs: &mut Runs<'_>,
    circuit: &CircuitDesign,
    supply: Temperature,
) -> Option<Temperature> {
    let ran = runs.at(At { supply, air: Air::Measured, way: Way::Designed })?;
    back(circuit, ran)
}

/// A circuit's temperatures: the two measured ones, and what should come back.
struct Water {
    supply: Temperature,
    came: Temperature,
    should: Temperature,
}

fn by_water(runs: &Runs<'_>, circuit: &CircuitDesign, spot: Spot, water: Water) -> CircuitFinding {
    let Water { supply, came, should } = water;
    let air = mean_air(runs, circuit);
    if supply - air < WARM {
        return CircuitFinding::TooCool { supply };
    }
    if came > supply + READING {
        return CircuitFinding::Backward { supply, back: came };
    }
    let (drop, expected) = (supply - came, supply - should);
    let fluid = runs.job.circuit.fluid;
    let meant = circuit.mass_flow / fluid.density(supply);
    if let Some(measured) = spot.flow {
        let heat = (measured / meant) * (drop / expected);
        return by_flow(measured, meant).unwrap_or(match heat {
            share if share < *HEAT_FITS.start() => CircuitFinding::LessHeat { share },
            share if share > *HEAT_FITS.end() => CircuitFinding::MoreHeat { share },
            _ => CircuitFinding::Fits { drop, expected },
        });
    }
    // Both readings of the drop may be off.
    let off = (READING * std::f64::consts::SQRT_2).max(expected * DROP_SHARE);
    if drop < expected * HARDLY {
        return CircuitFinding::HardlyCools { drop, expected };
    }
    if (drop - expected).abs() <= off {
        return CircuitFinding::Fits { drop, expected };
    }
    let by = By::Drop { drop, expected };
    let exponent = runs.job.baseboard.element.rating.exponent;
    let share = share_of_flow(supply - air, drop, expected, exponent);
    match share {
        share if share < HARDLY => CircuitFinding::Still { share, by },
        share if share < 1.0 => CircuitFinding::FlowLow { share, by },
        share => CircuitFinding::FlowHigh { share, by },
    }
}

/// What a flow that was measured tells; none where it fits.
fn by_flow(measured: VolumeFlow, meant: VolumeFlow) -> Option<CircuitFinding> {
    let by = By::Meter { measured, meant };
    let share = measured / meant;
    Some(match share {
        share if share < HARDLY => CircuitFinding::Still { share, by },
        share if share < *FLOW_FITS.start() => CircuitFinding::FlowLow { share, by },
        share if share > *FLOW_FITS.end() => CircuitFinding::FlowHigh { share, by },
        _ => return None,
    })
}

fn by_flow_alone(runs: &Runs<'_>, circuit: &CircuitDesign, spot: Spot) -> Option<CircuitFinding> {
    let water = &runs.job.circuit;
    let (measured, meant) = (spot.flow?, circuit.mass_flow / water.fluid.density(water.supply));
    Some(by_flow(measured, meant).unwrap_or(CircuitFinding::FlowFits { measured, meant }))
}

/// The share of its flow that a circuit has which loses `drop` instead of `expected`.
///
/// Energy balance: `m c dT = Q`, and the elements give heat by the power law of their rating at the
/// mean water: `m/m0 = (Q/Q0) (dT0/dT)`.
fn share_of_flow(
    excess: TemperatureDifference,
    drop: TemperatureDifference,
    expected: TemperatureDifference,
    exponent: f64,
) -> f64 {
    let mean = |drop: TemperatureDifference| (excess - drop / 2.0).si().max(0.0);
    let heat = pow(mean(drop) / mean(expected), exponent);
    heat * (expected / drop)
}

fn mean_air(runs: &Runs<'_>, circuit: &CircuitDesign) -> Temperature {
    let rooms = runs.job.house.rooms.iter().filter(|room| circuit.rooms.contains(&room.id));
    let airs: Vec<f64> = rooms.map(|room| runs.air(room, Air::Measured).si()).collect();
    Temperature::from_si(airs.iter().sum::<f64>() / airs.len().max(1) as f64)
}

fn valve(runs: &Runs<'_>, circuit: &CircuitDesign, spot: Spot) -> Option<CircuitFinding> {
    let set = spot.valve_cv?;
    if circuit.valve.fitted == Balancing::None {
        return None;
    }
    let open = runs.job.circuit.parts.balancing.gallons_per_minute();
    let planned = circuit.valve.cv.unwrap_or(open).min(open);
    let off = (set / planned - 1.0).abs();
    Some(match off <= VALVE_SHARE {
        true => CircuitFinding::ValveFits { set },
        false => CircuitFinding::ValveOff { set, planned },
    })
}

/// Whether the rooms of a loop are warm as if the water ran through them from the other end.
///
/// Of what the thermostat lets through every room gets the same share, so that what a room loses, over
/// what its element gives all the time, is alike for all rooms: in the direction that the water
/// really has.
fn reversed(runs: &mut Runs<'_>, circuit: &CircuitDesign) -> Option<CircuitFinding> {
    let zone = runs.job.zones.iter().find(|zone| zone.id == circuit.zone)?;
    if !matches!(zone.arrangement, Arrangement::Series | Arrangement::Split) {
        return None;
    }
    let supply = runs.supply_of(circuit)?;
    let outdoors = runs.measured.outdoors?;
    let read = |room: &RoomId| runs.measured.at(*room).air.is_some();
    let rooms: Vec<RoomId> = circuit.rooms.iter().copied().filter(read).collect();
    let (&first, &last) = (rooms.first()?, rooms.last()?);
    if rooms.len() < 2 {
        return None;
    }
    let shares = |runs: &mut Runs<'_>, way: Way| {
        let losses: Vec<Power> =
            rooms.iter().map(|&room| loses_now(runs, room, outdoors)).collect::<Option<_>>()?;
        let ran = runs.at(At { supply, air: Air::Measured, way })?;
        let given = rooms.iter().map(|&room| output(room, ran));
        let shares: Vec<f64> = losses.iter().zip(given).map(|(&loss, heat)| loss / heat).collect();
        shares.iter().all(|share| share.is_finite() && *share > 0.0).then_some(shares)
    };
    let forward = shares(runs, Way::Designed)?;
    let backward = shares(runs, Way::Backward)?;
    let rises = forward.first() < forward.last();
    let tells = spread(&forward) > APART && spread(&backward) < 0.5 * spread(&forward);
    (rises && tells).then_some(CircuitFinding::Reversed { first, last })
}

/// What a room loses at the air that was measured, as if all its losses followed the outdoors.
pub(super) fn loses_now(runs: &Runs<'_>, room: RoomId, outdoors: Temperature) -> Option<Power> {
    let of_job = runs.job.house.rooms.iter().find(|of| of.id == room)?;
    let air = runs.air(of_job, Air::Measured);
    loses(runs, of_job, air, outdoors)
}

/// What a room loses at this air, less what it has from elsewhere.
pub(super) fn loses(
    runs: &Runs<'_>,
    room: &Room,
    air: Temperature,
    outdoors: Temperature,
) -> Option<Power> {
    let load = &runs.design.room(room.id)?.load;
    let designed = room.temperature - runs.job.house.site.outdoors;
    let share = (air - outdoors) / designed;
    Some(load.total * share - load.other)
}

/// How far apart numbers lie, as a share of their mean.
fn spread(numbers: &[f64]) -> f64 {
    let most = numbers.iter().copied().fold(f64::MIN, f64::max);
    let least = numbers.iter().copied().fold(f64::MAX, f64::min);
    (most - least) * numbers.len() as f64 / numbers.iter().sum::<f64>()
}
