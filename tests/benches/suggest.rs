//! How long the page looks for other loops: `cargo xtask bench`.

use criterion::{Criterion, criterion_group, criterion_main};
use finrun_engine::suggest::{Suggestion, suggest};
use finrun_tests::houses::{house, zones_of};
use std::hint::black_box;

/// Other loops for each of the eight zones, and for all forty rooms on one loop, the most there is to
/// follow. The goal is 500 ms in the browser on a slow phone for all zones, 50 ms a step.
fn suggestions(criterion: &mut Criterion) {
    let mut eight = house(40);
    zones_of(&mut eight, 5);
    let mut group = criterion.benchmark_group("suggested loops");
    group.sample_size(10);
    group.bench_function("each of 8 zones of 5 rooms", |b| {
        b.iter(|| {
            let zones = eight.zones.iter().map(|zone| zone.id);
            zones.filter_map(|zone| suggest(black_box(&eight), zone)).count()
        });
    });
    let one = house(40);
    group.bench_function("40 rooms on one loop", |b| {
        b.iter(|| suggest(black_box(&one), one.zones[0].id));
    });
    let mut slowest = std::time::Duration::ZERO;
    let begun = std::time::Instant::now();
    let mut suggestion = Suggestion::begin(&one, one.zones[0].id).expect("a zone on loops");
    println!("begun in {:?}", begun.elapsed());
    let mut steps = 1;
    loop {
        let begun = std::time::Instant::now();
        let done = suggestion.step().is_some();
        slowest = slowest.max(begun.elapsed());
        if done {
            break;
        }
        steps += 1;
    }
    println!("{steps} steps, the slowest {slowest:?}");
    group.finish();
}

criterion_group!(group, suggestions);
criterion_main!(group);
