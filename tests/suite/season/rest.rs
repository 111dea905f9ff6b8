//! Each bin at rest: against the design's own balance, and nothing lost on the way.

use super::{airless, bins, one_bin, plain, run};
use crate::random_house::{full_houses, houses};
use crate::shipped::SHIPPED;
use crate::support::{FOUR_ROOMS, job_of, open, solve};
use finrun_engine::arrangement;
use finrun_engine::building::{Exchange, losses};
use finrun_engine::design::{Design, design};
use finrun_engine::job::{Draft, Job};
use finrun_engine::network::Place;
use finrun_engine::quantity::Power;
use finrun_engine::season::{Controls, NoSeason, season};
use proptest::prelude::*;

/// At the design's outdoor temperature, with the rooms meant to have what the season found, the design's
/// own loads are what its own elements give, for the share of the time that the zone runs.
fn agrees_with_the_design(name: &str, job: &Job, design: &Design) {
    let outdoors = job.house.site.outdoors;
    let found = run(job, design, &one_bin(outdoors), &plain(job));
    let bin = &found.bins[0];
    let mut meant = job.clone();
    for (room, found) in meant.house.rooms.iter_mut().zip(&bin.rooms) {
        room.temperature = *found;
    }
    let losses = losses(&meant.house);
    let zones: Vec<_> = job.zones.iter().map(|zone| zone.id).collect();
    let given = arrangement::run(&meant, design, &zones);
    for (at, load) in losses.rooms.iter().enumerate() {
        let to_room = |place: &Place| match place {
            Place::Element(id) | Place::Inside(id) | Place::Above(id) => *id == load.room,
            _ => false,
        };
        let passages = given.passages.iter().filter(|passage| to_room(&passage.place));
        let while_running: Power = passages
            .map(|p| if matches!(p.place, Place::Element(_)) { p.to_room } else { p.heat })
            .sum();
        let expected = load.total - load.other;
        let zone = job.zones.iter().position(|zone| zone.loops.iter().flatten().any(|&r| r == at));
        let mean = while_running * bin.zones_run[zone.expect("its zone")];
        let close = 1e-6 * (expected.abs().si() + 100.0);
        let off = (mean - expected).si();
        assert!(off.abs() < close, "{name}, room {at}: {mean:?} for {expected:?}");
        assert!((bin.to_rooms[at] - expected).si().abs() < close);
    }
    for (space, found) in losses.spaces.iter().zip(&bin.spaces) {
        assert!((space.temperature - *found).si().abs() < 1e-6, "{name}");
    }
    if job.zones.len() == 1 && bin.runs > 0.0 {
        assert!((bin.back.expect("a return") - given.back).si().abs() < 1e-5, "{name}");
    }
}

#[test]
fn rest_on_the_design_day_is_the_designs_own() {
    for text in SHIPPED.into_iter().chain([FOUR_ROOMS]) {
        let draft = open(text);
        let (job, design) = airless(&draft);
        agrees_with_the_design(&draft.name, &job, &design);
    }
}

/// As they are meant to be, rooms lose in the season's exchange what their loads say, air and ground
/// included.
#[test]
fn the_exchange_on_the_design_day_is_the_loads() {
    for text in SHIPPED.into_iter().chain([FOUR_ROOMS]) {
        let (job, design) = solve(&open(text));
        let day = Exchange::of(&job.house).day(job.house.site.outdoors);
        let rooms = job.house.rooms.iter().map(|room| room.temperature.si());
        let spaces = design.spaces.iter().map(|space| space.temperature.si());
        let losses = day.losses_w(&rooms.chain(spaces).collect::<Vec<f64>>());
        for (room, loss) in design.rooms.iter().zip(&losses) {
            let off = room.load.total.si() - loss;
            assert!(off.abs() < 1e-6 * room.load.total.si().abs().max(1.0), "{off}");
        }
        for (loss, held) in losses.iter().zip(&day.held_k).skip(design.rooms.len()) {
            assert!(loss.abs() < 1e-6 || held.is_some(), "{loss}");
        }
    }
}

/// Heat that comes goes: in every bin, and over the year.
fn closes(job: &Job, design: &Design, controls: &Controls) -> Result<(), TestCaseError> {
    let found = match season(job, design, &bins(), controls, None) {
        Ok(found) => found,
        // Nothing that needs heat.
        Err(NoSeason::NothingHeated | NoSeason::NoFlows) => return Ok(()),
        Err(error) => return Err(TestCaseError::fail(format!("{error:?}"))),
    };
    let exchange = Exchange::of(&job.house);
    for bin in &found.bins {
        let day = exchange.day(bin.outdoors);
        let all = bin.rooms.iter().chain(&bin.spaces).map(|t| t.si());
        let losses = day.losses_w(&all.collect::<Vec<f64>>());
        let size = losses.iter().map(|loss| loss.abs()).sum::<f64>() + 1.0;
        for (at, (room, loss)) in job.house.rooms.iter().zip(&losses).enumerate() {
            if day.held_k[at].is_some() {
                continue;
            }
            let left = loss - bin.to_rooms[at].si() - bin.gains[at].si();
            prop_assert!(left.abs() < 1e-6 * size, "{}: {left} of {size}", room.name);
        }
        prop_assert!(bin.unbalanced.si().abs() < 1e-6 * size);
        prop_assert!(bin.zones_run.iter().all(|share| (0.0..=1.0).contains(share)));
    }
    let rooms: f64 = found.rooms.iter().map(|room| room.heat_j).sum();
    prop_assert!((found.heat_j - rooms - found.pipe_loss_j).abs() <= 1e-9 * found.heat_j.abs());
    Ok(())
}

fn closes_for(draft: &Draft) -> Result<(), TestCaseError> {
    let job = job_of(draft);
    let design = design(&job);
    closes(&job, &design, &Controls::usual(&job))?;
    closes(&job, &design, &plain(&job))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn heat_is_neither_made_nor_lost(draft in houses()) {
        closes_for(&draft)?;
    }

    #[test]
    fn heat_is_neither_made_nor_lost_with_spaces_and_ground(draft in full_houses()) {
        closes_for(&draft)?;
    }
}
