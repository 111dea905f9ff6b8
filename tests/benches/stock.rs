//! How long the choice of stock pieces takes, on every problem of reference g. `highs.py` sets HiGHS
//! beside it.

use criterion::{Criterion, criterion_group, criterion_main};
use finrun_engine::sizing::joint::{NODES, choose_all};
use finrun_tests::stock::cases;
use std::hint::black_box;
use std::time::Duration;

fn benches(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("stock");
    group.warm_up_time(Duration::from_millis(200)).measurement_time(Duration::from_millis(500));
    let text = include_str!("../reference/g_stock_length_selection.json");
    for case in cases(text).expect("check data") {
        group.bench_function(&case.id, |b| {
            b.iter(|| choose_all(black_box(&case.problem), &case.needs, NODES))
        });
    }
    group.finish();
}

criterion_group!(group, benches);
criterion_main!(group);
