//! How long it takes to find how the flow divides, without making the network: from nothing (cold)
//! and from the solution (warm). `epanet.py` sets EPANET's own engine beside it.

use criterion::{Criterion, criterion_group, criterion_main};
use finrun_engine::network::{Network, solve, solve_from};
use finrun_tests::hydraulic::cases;
use std::hint::black_box;

fn network(id: &str) -> Network {
    let cases = cases(include_str!("../reference/e_hydraulic_networks.json")).expect("check data");
    cases.into_iter().find(|case| case.id == id).expect("the case").network
}

fn benches(criterion: &mut Criterion) {
    for (name, id) in [
        ("single loop of 6 links", "open-e02"),
        ("three circuits, 9 links, drawn pump curve", "open-e08"),
        ("four circuits, 13 links", "open-e11"),
    ] {
        let network = network(id);
        let solved = solve(&network).expect("it rests");
        criterion.bench_function(&format!("{id} {name}, cold"), |b| {
            b.iter(|| solve(black_box(&network)));
        });
        criterion.bench_function(&format!("{id} {name}, warm"), |b| {
            b.iter(|| solve_from(black_box(&network), black_box(&solved)));
        });
    }
}

criterion_group!(group, benches);
criterion_main!(group);
