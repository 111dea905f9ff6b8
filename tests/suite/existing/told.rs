//! What is said when readings are few, wrong or cannot tell.

use super::faults::{Real, Run, noisy, read_all};
use super::seeded::{Random, case};
use super::solved;
use crate::support::{FOUR_ROOMS, open};
use finrun_engine::design::Design;
use finrun_engine::existing::{
    At, Explained, Explaining, Explanation, NoExplanation, Scale, Sure, explain,
};
use finrun_engine::job::{Job, Measured, Ran, Spot};
use finrun_engine::quantity::{Temperature, Unit, VolumeFlow};

fn fahrenheit(value: f64) -> Temperature {
    Temperature::of(value, Unit::Fahrenheit)
}

fn cold_day() -> Run {
    Run { supply: fahrenheit(170.0), outdoors: fahrenheit(12.0), ran: Ran::Throughout }
}

/// Only these places.
fn only(measured: &Measured, keep: &dyn Fn(At) -> bool) -> Measured {
    let kept = |at: At, value: Option<Temperature>| value.filter(|_| keep(at));
    let spot = |(room, spot): &(finrun_engine::building::RoomId, Spot)| {
        let spot = Spot {
            supply: kept(At::Supply(*room), spot.supply),
            back: kept(At::Back(*room), spot.back),
            air: kept(At::Air(*room), spot.air),
            water_in: kept(At::WaterIn(*room), spot.water_in),
            water_out: kept(At::WaterOut(*room), spot.water_out),
            ..Spot::default()
        };
        (*room, spot)
    };
    Measured {
        boiler_back: kept(At::BoilerBack, measured.boiler_back),
        spots: measured.spots.iter().map(spot).collect(),
        ..measured.clone()
    }
}

#[test]
fn too_few_readings_are_no_explanation() {
    let (job, design) = solved(&open(FOUR_ROOMS));
    let all = read_all(&Real::of(&job, &design), cold_day());
    let nothing = Measured::default();
    assert_eq!(explain(&job, &design, &nothing), Err(NoExplanation::NoSupply));
    let without = Measured { boiler_supply: None, ..all.clone() };
    assert_eq!(explain(&job, &design, &without), Err(NoExplanation::NoSupply));
    let one = only(&all, &|at| at == At::BoilerBack);
    assert_eq!(explain(&job, &design, &one), Err(NoExplanation::TooFew));
    let mut still = design.clone();
    still.piping.not_solved = Some(finrun_engine::network::NotSolved::NoConvergence);
    assert_eq!(explain(&job, &still, &all), Err(NoExplanation::NotSolved));
}

/// The strength that is found is the one that the readings were made with.
#[test]
fn how_much_is_found_too() {
    let (job, design) = solved(&open(FOUR_ROOMS));
    let real = Real::of(&job, &design);
    let id = job.house.rooms[2].id;
    let cases = [
        (real.clone().flow(0.4), Explanation::LowFlow, Scale::Flow, 0.4),
        (real.clone().output(2, 0.35), Explanation::Blocked { room: id }, Scale::Output, 0.35),
        (real.clone().losing(2, 2.2), Explanation::MoreLoss { room: id }, Scale::Loss, 2.2),
    ];
    for (real, expected, scale, strength) in cases {
        let explained = explain(&job, &design, &read_all(&real, cold_day())).expect("explained");
        let first = explained.likely[0];
        assert_eq!(first.explanation, expected);
        assert!(first.sure >= Sure::Likely, "{first:?}");
        let (of, found) = first.strength.expect("a strength");
        assert_eq!(of, scale);
        assert!((found / strength - 1.0).abs() < 0.02, "{found} {strength}");
        // What it explains is what was read, to a tenth of a degree; what was calculated is not.
        assert!(explained.fits);
        let worst = |of: fn(&finrun_engine::existing::Compared) -> f64| {
            explained.compared.iter().map(of).fold(0.0, f64::max)
        };
        assert!(worst(|one| (one.read - one.explained).abs()) < 0.15);
        assert!(worst(|one| (one.read - one.calculated).abs()) > 1.0);
    }
}

/// A lone loop at a fifth of its flow is low flow or air, and the water cannot say which.
#[test]
fn what_cannot_be_told_apart_is_said() {
    let (job, design) = solved(&open(FOUR_ROOMS));
    let real = Real::of(&job, &design).flow(0.2);
    let explained = explain(&job, &design, &read_all(&real, cold_day())).expect("explained");
    let first = job.house.rooms[0].id;
    let leading: Vec<Explanation> =
        explained.likely[..2].iter().map(|likely| likely.explanation).collect();
    assert!(leading.contains(&Explanation::LowFlow), "{leading:?}");
    assert!(leading.contains(&Explanation::Air { first }), "{leading:?}");
    assert!(explained.likely[1].alike);
    assert!(explained.likely[0].sure < Sure::Likely);
    // At half of its flow there is no doubt.
    let real = Real::of(&job, &design).flow(0.5);
    let explained = explain(&job, &design, &read_all(&real, cold_day())).expect("explained");
    assert!(explained.likely.iter().all(|likely| !likely.alike));
    // Without rooms a cold one is explained by no loss.
    let measured = Measured { outdoors: None, ..read_all(&real, cold_day()) };
    let explained = explain(&job, &design, &measured).expect("explained");
    assert!(!explained.rooms_told);
    let losses = explained.likely.iter().filter(|likely| {
        matches!(likely.explanation, Explanation::MoreLoss { .. } | Explanation::HouseLoss)
    });
    assert_eq!(losses.count(), 0);
}

/// Readings that nothing makes are not explained away.
#[test]
fn readings_that_fit_nothing_are_said_not_to_fit() {
    let (job, design) = solved(&open(FOUR_ROOMS));
    let mut measured = read_all(&Real::of(&job, &design), cold_day());
    assert!(explain(&job, &design, &measured).expect("explained").fits);
    // Hotter behind the element than before it.
    measured.spots[1].1.water_out = Some(fahrenheit(178.0));
    assert!(!explain(&job, &design, &measured).expect("explained").fits);
}

fn sound(explained: &Explained) {
    let sum: f64 = explained.likely.iter().map(|likely| likely.share).sum();
    assert!((sum - 1.0).abs() < 1e-9, "{sum}");
    for likely in &explained.likely {
        assert!((0.0..=1.0).contains(&likely.share), "{likely:?}");
        assert!(likely.strength.is_none_or(|(_, strength)| (0.0..=5.0).contains(&strength)));
    }
    for next in &explained.next {
        assert!(next.if_first.is_finite() && next.if_second.is_finite() && next.apart.is_finite());
    }
    assert!(explained.likely.windows(2).all(|two| two[0].share >= two[1].share));
}

/// An explanation at a time.
fn by_steps(job: &Job, design: &Design, measured: &Measured) -> Explained {
    let mut explaining = Explaining::new(job, design);
    loop {
        if let Some(explained) = explaining.step(job, design, measured).expect("explained") {
            return explained;
        }
    }
}

/// Whatever is typed within the fields' bounds, numbers stay numbers; and the same readings give the same
/// answer to the last bit.
#[test]
fn extreme_readings_stay_numbers() {
    let (job, design) = solved(&open(FOUR_ROOMS));
    let mut answers = 0;
    for ran in [Ran::AWhile, Ran::Throughout, Ran::ByThermostat] {
        for (water, air) in
            [(32.0, 32.0), (250.0, 32.0), (32.0, 120.0), (250.0, 120.0), (70.0, 70.0)]
        {
            let of = |job: &Job| Measured {
                outdoors: Some(fahrenheit(-80.0)),
                boiler_supply: Some(fahrenheit(water)),
                boiler_back: Some(fahrenheit(250.0 - water + 32.0)),
                ran,
                spots: job
                    .house
                    .rooms
                    .iter()
                    .map(|room| {
                        let water = Some(fahrenheit(water));
                        let spot = Spot {
                            supply: water,
                            back: water,
                            flow: Some(VolumeFlow::ZERO),
                            valve_cv: Some(0.0),
                            air: Some(fahrenheit(air)),
                            water_in: water,
                            water_out: Some(fahrenheit(140.0)),
                        };
                        (room.id, spot)
                    })
                    .collect(),
                ..Measured::default()
            };
            let measured = of(&job);
            if let Ok(explained) = explain(&job, &design, &measured) {
                sound(&explained);
                answers += 1;
                assert_eq!(explain(&job, &design, &measured).expect("again"), explained);
                assert_eq!(by_steps(&job, &design, &measured), explained);
            }
        }
    }
    assert!(answers >= 10, "{answers}");
}

/// From a few readings on, the place that is named tells more than any other would on the average: the
/// fault's own share, after that reading, against the mean after each other one.
#[test]
fn what_to_read_next_tells_most() {
    let (mut by_named, mut by_others, mut cases) = (0.0, 0.0, 0);
    for seed in 0..32 {
        let case = case(seed);
        let mut random = Random::new(seed + 77);
        let all = noisy(read_all(&case.real, case.run), &mut || random.gauss() / 1.8);
        let room = |nth: usize| case.job.house.rooms[nth % case.job.house.rooms.len()].id;
        let few = [At::BoilerBack, At::Air(room(seed as usize)), At::WaterOut(room(seed as usize))];
        let share = |also: Option<At>| {
            let measured = only(&all, &|at| few.contains(&at) || also == Some(at));
            let explained = explain(&case.job, &case.design, &measured).expect("explained");
            sound(&explained);
            let own = explained.likely.iter().find(|one| one.explanation == case.expected);
            (own.map_or(0.0, |own| own.share), explained.next)
        };
        let (_, next) = share(None);
        let Some(next) = next.first() else { continue };
        let rooms = case.job.house.rooms.iter().map(|room| room.id);
        let places = rooms.flat_map(|id| [At::WaterIn(id), At::WaterOut(id), At::Air(id)]);
        let others: Vec<f64> = places
            .filter(|at| !few.contains(at) && *at != next.at)
            .step_by(3)
            .map(|at| share(Some(at)).0)
            .collect();
        by_named += share(Some(next.at)).0;
        by_others += others.iter().sum::<f64>() / others.len() as f64;
        cases += 1;
    }
    println!("{cases} cases: {by_named:.1} by the place named, {by_others:.1} by others");
    assert!(cases >= 16);
    assert!(by_named > 1.05 * by_others);
}
