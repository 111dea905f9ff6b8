//! Rules on boiler and filling.

use super::{Check, Finding, Remedy, Severity, Subject};
use crate::building::RoomUse;
use crate::design::Design;
use crate::fluid::{share_for, vapour_pressure};
use crate::job::Job;
use crate::network::Place;
use crate::plant::boiler::{CycleVerdict, LEAST_ON_S, OVERSIZED, Running, Size};
use crate::plant::design::{Alone, PlantDesign, boils};
use crate::plant::expansion::RELIEF_SHARE;
use crate::plant::fill::{
    BoilingVerdict, LEAST_AT_TOP, NEAR_BOILING, ReliefVerdict, USUAL_AT_TOP, fill_pressure,
};
use crate::plant::return_protection::{Advice, Verdict};
use crate::quantity::{Length, Pressure, Temperature, TemperatureDifference};

/// 10 °F, by which glycol should stay free of crystals below the coldest air: judgement.
const FREEZE_MARGIN: TemperatureDifference = TemperatureDifference::from_si(10.0 / 1.8);

pub(super) fn checks(job: &Job, design: &Design) -> Vec<Check> {
    let Some(plant) = &design.plant else { return Vec::new() };
    let mut out = Vec::new();
    out.extend(size(job, plant));
    out.extend(plant.part_load.as_ref().and_then(short_cycle));
    out.extend(back(job, design, plant));
    out.extend(boiling(job, design, plant).or_else(|| fill_low(job, plant)));
    out.extend(relief(job, plant));
    out.extend(freezes(job, design, plant));
    out
}

fn on_boiler(severity: Severity, finding: Finding, remedies: Vec<Remedy>) -> Check {
    Check { severity, subject: Subject::Boiler, finding, remedies }
}

/// The boiler's output, where it is known.
fn size(job: &Job, plant: &PlantDesign) -> Option<Check> {
    let (output, needed) = (job.plant.output?, plant.needed?.output);
    let finding = Finding::BoilerSize { output, needed, most: needed * OVERSIZED };
    Some(match plant.size?.verdict {
        Size::Fits => on_boiler(Severity::Holds, finding, Vec::new()),
        Size::Short => {
            on_boiler(Severity::Stop, finding, vec![Remedy::LargerBoiler, Remedy::ReduceLoss])
        }
        Size::Oversized => on_boiler(
            Severity::Watch,
            finding,
            vec![Remedy::SmallerBoiler, Remedy::ModulatingBoiler],
        ),
    })
}

fn short_cycle(alone: &Alone) -> Option<Check> {
    let Running::Cycling(cycle) = alone.running else { return None };
    (cycle.verdict == CycleVerdict::Short).then(|| {
        let finding = Finding::ShortCycle {
            on_s: cycle.on_s,
            least_s: LEAST_ON_S,
            load: alone.load,
            output: alone.least_output,
        };
        let buffer = Remedy::Buffer { volume: alone.buffer };
        let remedies = vec![Remedy::ModulatingBoiler, buffer, Remedy::JoinZones];
        on_boiler(Severity::Watch, finding, remedies)
    })
}

/// Below the boiler's least return, flue gas may condense in one that is not made for it.
fn back(job: &Job, design: &Design, plant: &PlantDesign) -> Option<Check> {
    let Some(Verdict::Cold { advice, .. }) = plant.back else { return None };
    let first = match advice {
        Advice::Bypass(mixing) => Remedy::Bypass { share: mixing.supply_share },
        Advice::MixingValve(_) => Remedy::MixingValve,
        Advice::HotterBoiler => Remedy::HotterBoiler,
    };
    let finding = Finding::ReturnCool { back: design.piping.back, least: job.plant.least_return };
    Some(on_boiler(Severity::Watch, finding, vec![first, Remedy::CondensingBoiler]))
}

/// The supply against the boiling point at the top.
fn boiling(job: &Job, design: &Design, plant: &PlantDesign) -> Option<Check> {
    let boiling = plant.boiling?;
    let severity = match boiling.verdict {
        BoilingVerdict::Boils => Severity::Stop,
        BoilingVerdict::Near => Severity::Watch,
        BoilingVerdict::Clear | BoilingVerdict::DrawsAir => return None,
    };
    let supply = job.circuit.supply;
    let finding = Finding::Boils { supply, boils_at: boiling.boils_at };
    let mut remedies = Vec::new();
    let fill = fill_for(job, boiling.lowest);
    remedies.extend((fill < highest_fill(job)).then_some(Remedy::Fill { pressure: fill }));
    remedies.push(Remedy::LowerSupply { supply: clear_supply(job, design) });
    Some(on_boiler(severity, finding, remedies))
}

/// The supply that is clear of boiling at the top; cooler water weighs a little more.
fn clear_supply(job: &Job, design: &Design) -> Temperature {
    let mut supply = job.circuit.supply;
    for _ in 0..4 {
        supply = boils(job, design, supply).boils_at - NEAR_BOILING;
    }
    supply - TemperatureDifference::from_si(1e-6)
}

/// The fill pressure that keeps the top clear of boiling, and gives it what it should have besides.
fn fill_for(job: &Job, lowest: Pressure) -> Pressure {
    let wanted = vapour_pressure(job.circuit.supply + NEAR_BOILING);
    // A hair more, so that the margin is not missed by the last digit.
    let clear = job.plant.fill + (wanted - lowest) * (1.0 + 1e-6);
    clear.max(usual_fill(job))
}

fn usual_fill(job: &Job) -> Pressure {
    fill_pressure(job.circuit.fluid, job.plant.cold, job.plant.top_height, USUAL_AT_TOP)
}

/// Above it no tank is large enough.
fn highest_fill(job: &Job) -> Pressure {
    job.plant.relief * RELIEF_SHARE
}

fn fill_low(job: &Job, plant: &PlantDesign) -> Option<Check> {
    let at_top = plant.filling.at_top;
    // A typed pressure was rounded when it was read off.
    (at_top < LEAST_AT_TOP * 0.98).then(|| {
        let finding = Finding::FillLow { fill: job.plant.fill, at_top, least: LEAST_AT_TOP };
        let remedies = vec![Remedy::Fill { pressure: usual_fill(job) }];
        on_boiler(Severity::Watch, finding, remedies)
    })
}

fn relief(job: &Job, plant: &PlantDesign) -> Option<Check> {
    let severity = match plant.filling.relief.verdict {
        ReliefVerdict::Clear => return None,
        ReliefVerdict::Near => Severity::Watch,
        ReliefVerdict::Lifts => Severity::Stop,
    };
    let pressure = plant.filling.hot.unwrap_or(plant.filling.cold);
    let finding = Finding::ReliefNear { pressure, setting: job.plant.relief };
    let fill = usual_fill(job);
    let lower = fill < highest_fill(job) && fill < job.plant.fill;
    let remedies = lower.then_some(Remedy::Fill { pressure: fill }).into_iter().collect();
    Some(on_boiler(severity, finding, remedies))
}

/// Air around pipes that is colder than the liquid stands: as typed, and in unheated spaces below
/// the rooms, where pipes usually run.
fn freezes(job: &Job, design: &Design, plant: &PlantDesign) -> Vec<Check> {
    let freezes_at = plant.freezes_at;
    let in_rooms = |place| matches!(place, Place::Element(_) | Place::Inside(_) | Place::Above(_));
    let mut passages = design.piping.passages.iter();
    let outside = passages.any(|p| p.length > Length::ZERO && !in_rooms(p.place));
    let one = |subject, air: Temperature| {
        let finding = Finding::MayFreeze { air, freezes_at };
        let mut remedies = vec![Remedy::WarmPipes];
        let share = share_for(air - FREEZE_MARGIN);
        remedies.extend(share.map(|share| Remedy::Glycol { share: share.max(LEAST_GLYCOL) }));
        Check { severity: Severity::Watch, subject, finding, remedies }
    };
    let mut out = Vec::new();
    if !outside {
        return out;
    }
    let typed = job.circuit.pipe_surroundings;
    out.extend((typed < freezes_at).then(|| one(Subject::Loop, typed)));
    for (space, balance) in job.house.spaces.iter().zip(&design.spaces) {
        let below = matches!(space.used, RoomUse::CrawlSpace | RoomUse::Basement);
        if below && balance.temperature < freezes_at {
            out.push(one(Subject::Room(space.id), balance.temperature));
        }
    }
    out
}

/// Weaker, what a product adds against corrosion is too thin (makers' practice, from memory).
const LEAST_GLYCOL: f64 = 0.25;
