//! How long a year of a house takes, a design day in steps of a minute, and how cool its water may be. The
//! goal is 50 ms each in the browser, some 15 here.

use criterion::{Criterion, criterion_group, criterion_main};
use finrun_engine::climate::{Bin, Season, Station};
use finrun_engine::cooler::{USUAL_SUPPLIES, cooler};
use finrun_engine::design::{Design, design};
use finrun_engine::job::{Draft, FlowBasis, Job, PumpKind};
use finrun_engine::network::TypicalPump;
use finrun_engine::pipe::Tube;
use finrun_engine::season::{Controls, Supply, season};
use finrun_engine::transient::{Setback, design_day};
use finrun_tests::houses::{house, job, zones_of};
use std::hint::black_box;

/// A cold northern place; numbers invented.
fn bins() -> Vec<Bin> {
    let station = Station {
        state: "VT".to_string(),
        name: "Somewhere".to_string(),
        elevation_m: 100,
        t99_f: 5,
        t996_f: -1,
        mean_f: 46,
        coldest_month_f: 20,
        degree_days_65_f: 7400,
        wind_mph: 8,
    };
    Season::of(&station).bins()
}

fn designed(draft: &Draft) -> (Job, Design) {
    let job = job(draft);
    let design = design(&job);
    assert_eq!(design.piping.not_solved, None);
    (job, design)
}

fn benches(criterion: &mut Criterion) {
    let bins = bins();
    let mut draft = house(30);
    draft.set_tube(Tube::CopperMOneAndQuarter);
    let (one_loop, one_solved) = designed(&draft);
    let mut bench = |name: &str, job: &Job, design: &Design, controls: &Controls| {
        season(job, design, &bins, controls, None).expect("a year");
        criterion.bench_function(name, |b| {
            b.iter(|| season(black_box(job), design, &bins, controls, None));
        });
    };
    let fixed = Controls::usual(&one_loop);
    bench("a year of 30 rooms on a loop", &one_loop, &one_solved, &fixed);
    let reset = one_solved.plant.as_ref().and_then(|plant| plant.reset.as_ref()).expect("a line");
    let by_line = Controls { supply: Supply::Reset(reset.setting, None), ..fixed.clone() };
    bench("a year of 30 rooms on a loop, by a reset line", &one_loop, &one_solved, &by_line);
    zones_of(&mut draft, 10);
    draft.flow_basis = FlowBasis::FromPump;
    draft.pump.kind = PumpKind::Typical(TypicalPump::Medium);
    let (three_zones, solved) = designed(&draft);
    bench("a year of 30 rooms in 3 zones", &three_zones, &solved, &fixed);
    bench("a year of 30 rooms in 3 zones, by a reset line", &three_zones, &solved, &by_line);
    let mut day = |name: &str, job: &Job, design: &Design| {
        let run = || design_day(job, design, &fixed, &[], Setback::USUAL);
        run().expect("a day");
        criterion.bench_function(name, |b| b.iter(run));
    };
    day("a design day of 30 rooms on a loop", &one_loop, &one_solved);
    day("a design day of 30 rooms in 3 zones", &three_zones, &solved);
    let mut cool = |name: &str, job: &Job, design: &Design| {
        let run = || cooler(job, design, &bins, &fixed, &USUAL_SUPPLIES);
        run().expect("an answer");
        criterion.bench_function(name, |b| b.iter(run));
    };
    cool("cooler water of 30 rooms on a loop", &one_loop, &one_solved);
    cool("cooler water of 30 rooms in 3 zones", &three_zones, &solved);
}

criterion_group!(group, benches);
criterion_main!(group);
