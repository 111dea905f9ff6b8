//! How long the page waits for a new result after a keystroke: `cargo xtask bench`.

use criterion::{BatchSize, BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use finrun_engine::arrangement::{run, solve_piping};
use finrun_engine::building::{RoomUse, SurfaceKind, losses};
use finrun_engine::compare::{self, Comparison};
use finrun_engine::design::design;
use finrun_engine::job::{
    Behind, Draft, Entry, Field, File, FlowBasis, HouseField, PumpKind, RoomField, SurfaceField,
};
use finrun_engine::network::TypicalPump;
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{Temperature, Unit};
use finrun_engine::remedy::{Remedies, Step};
use finrun_tests::houses::{house, job, zones_of};
use std::hint::black_box;
use std::time::{Duration, Instant};

fn four_rooms() -> Draft {
    serde_json::from_str::<File>(include_str!("../jobs/four-rooms.json"))
        .expect("a job file")
        .open()
        .expect("a sound job")
}

/// Such a house on a slab, with an attic over all and a garage beside the first room: ground, shared
/// leakage, spaces in balance, and the band.
fn whole_house(count: u32) -> Draft {
    let mut draft = house(count);
    let set = |draft: &mut Draft, field, text: &str| {
        let unit = draft.box_unit(field);
        draft.set_entry(field, Entry { text: text.to_string(), unit });
    };
    set(&mut draft, Field::House(HouseField::MeanTemperature), "48");
    set(&mut draft, Field::House(HouseField::ColdestMonth), "22");
    let attic = draft.add_space(RoomUse::Attic, "Attic");
    let garage = draft.add_space(RoomUse::Garage, "Garage");
    set(&mut draft, Field::Room(garage, RoomField::FloorLength), "22");
    set(&mut draft, Field::Room(garage, RoomField::FloorWidth), "20");
    draft.add_shell(attic);
    draft.add_shell(garage);
    let rooms: Vec<_> = draft.rooms.iter().map(|room| (room.id, room.surfaces.clone())).collect();
    for (room, surfaces) in &rooms {
        draft.add_surface_to(*room, SurfaceKind::Floor, Behind::Ground);
        for surface in surfaces.iter().filter(|s| s.kind == SurfaceKind::Ceiling) {
            draft.set_behind(*room, surface.id, Behind::Room(attic));
        }
    }
    if let Some((room, surfaces)) = rooms.first() {
        draft.set_behind(*room, surfaces[0].id, Behind::Room(garage));
    }
    draft.set_tube(Tube::CopperMOneAndQuarter);
    draft
}

fn benches(criterion: &mut Criterion) {
    let four = job(&four_rooms());
    criterion.bench_function("design of four rooms", |b| b.iter(|| design(black_box(&four))));
    let draft = house(30);
    let thirty = job(&draft);
    criterion.bench_function("design of 30 rooms", |b| b.iter(|| design(black_box(&thirty))));
    // The slowest kind of house: every room short, so that remedies are searched for.
    let mut cold = job(&draft);
    cold.circuit.supply = Temperature::of(110.0, Unit::Fahrenheit);
    criterion
        .bench_function("design of 30 rooms, all short", |b| b.iter(|| design(black_box(&cold))));
    criterion.bench_function("reading and design of 30 rooms", |b| {
        b.iter(|| design(&job(black_box(&draft))));
    });
    // The goal is 2 ms.
    let forty = job(&whole_house(40));
    criterion.bench_function("design of 40 rooms on the ground, band included", |b| {
        b.iter(|| design(black_box(&forty)));
    });
}

/// The time a room must stay the same, however many there are.
fn by_rooms(criterion: &mut Criterion) {
    let jobs = [10, 30, 100, 300, 1000].map(|count| (count, job(&whole_house(count))));
    let mut group = criterion.benchmark_group("by rooms");
    group.sample_size(20);
    for (count, job) in &jobs {
        group.throughput(Throughput::Elements(u64::from(*count)));
        group.bench_with_input(BenchmarkId::new("design", count), job, |b, job| {
            b.iter(|| design(black_box(job)));
        });
        group.bench_with_input(BenchmarkId::new("heat loss", count), job, |b, job| {
            b.iter(|| losses(black_box(&job.house)));
        });
    }
    group.finish();
}

/// Forty rooms on eight loops, each a zone: flow and temperature of every combination of them. The goal
/// is 5 ms in the browser for what one looks at: all together and each alone, which bound the rest.
fn zones(criterion: &mut Criterion) {
    let mut draft = house(40);
    draft.flow_basis = FlowBasis::FromPump;
    draft.pump.kind = PumpKind::Typical(TypicalPump::Medium);
    zones_of(&mut draft, 5);
    let job = job(&draft);
    let design = design(&job);
    assert_eq!(design.piping.not_solved, None);
    let loads: Vec<_> = design.rooms.iter().map(|room| room.load.clone()).collect();
    let zones: Vec<_> = job.zones.iter().map(|zone| zone.id).collect();
    let on = |combination: usize| -> Vec<_> {
        let calls = |at: &usize| combination >> at & 1 == 1;
        (0..zones.len()).filter(calls).map(|at| zones[at]).collect()
    };
    let mut group = criterion.benchmark_group("40 rooms on 8 loops");
    group.bench_function("sized, all together and each alone", |b| {
        b.iter(|| solve_piping(black_box(&job), &loads));
    });
    group.bench_function("one combination", |b| {
        b.iter(|| run(black_box(&job), &design, &on(0b1010_0110)));
    });
    group.bench_function("all 255 combinations", |b| {
        b.iter(|| (1..256).map(|c| run(black_box(&job), &design, &on(c)).flow.si()).sum::<f64>());
    });
    group.finish();
}

/// A step of the side by side: one layout of forty rooms. The goal is 60 ms in the browser, about 15 here.
fn layouts(criterion: &mut Criterion) {
    let mut draft = house(40);
    draft.set_tube(Tube::CopperMOneAndQuarter);
    zones_of(&mut draft, 5);
    let mut group = criterion.benchmark_group("40 rooms laid out");
    group.sample_size(10);
    for (at, layout) in compare::layouts(&draft).into_iter().enumerate() {
        let before = || {
            let mut comparison = Comparison::of(&draft);
            comparison.skip(at);
            comparison
        };
        group.bench_function(format!("{layout:?}"), |b| {
            b.iter_batched(before, |mut rows| rows.step(), BatchSize::SmallInput);
        });
    }
    group.finish();
}

/// What a keystroke costs while a room is short must be what it costs while none is: the ways out are
/// worked out afterwards, in steps.
fn short(criterion: &mut Criterion) {
    let mut draft = house(40);
    zones_of(&mut draft, 5);
    let heated = job(&draft);
    assert!(design(&heated).rooms.iter().all(|room| room.short().si() == 0.0));
    let room = draft.rooms[17].id;
    let walls: Vec<_> = draft.rooms[17].surfaces.iter().map(|wall| wall.id).collect();
    for wall in walls.into_iter().take(2) {
        let field = Field::Surface(room, wall, SurfaceField::Free);
        draft.set_entry(field, Entry { text: "2' 6\"".to_string(), unit: Unit::Foot });
    }
    let one = job(&draft);
    let solved = design(&one);
    assert_eq!(solved.rooms.iter().filter(|room| room.short().si() > 0.0).count(), 1);
    let mut group = criterion.benchmark_group("40 rooms on 8 zones");
    group.sample_size(20);
    group.bench_function("all heated", |b| b.iter(|| design(black_box(&heated))));
    group.bench_function("one short", |b| b.iter(|| design(black_box(&one))));
    // The page takes one step at a time, so that only the longest is felt: 12 ms here are some 50 in a
    // browser.
    let mut remedies = Remedies::new(&one, &solved);
    let (mut steps, mut longest) = (0, Duration::ZERO);
    loop {
        let began = Instant::now();
        if remedies.step() == Step::Done {
            break;
        }
        longest = longest.max(began.elapsed());
        steps += 1;
    }
    println!("ways out of one short room: {steps} steps, the longest {longest:?}");
    group.bench_function("one short, its ways out", |b| {
        b.iter(|| Remedies::all(black_box(&one), &solved));
    });
    group.finish();
}

criterion_group!(group, benches, by_rooms, zones, layouts, short);
criterion_main!(group);
