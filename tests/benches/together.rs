//! How long the pieces of a whole house take to choose: `cargo xtask bench`. In the browser the goal for
//! twelve rooms on a loop is 50 ms, and for forty on eight loops 500 ms.

use criterion::{Criterion, criterion_group, criterion_main};
use finrun_engine::arrangement::solve_piping;
use finrun_engine::building::losses;
use finrun_engine::job::{Draft, Objective};
use finrun_engine::named::Named;
use finrun_engine::pipe::Tube;
use finrun_tests::houses::{count, house, job, price, zones_of};
use std::hint::black_box;

fn twelve() -> Draft {
    let mut draft = house(12);
    draft.set_tube(Tube::CopperMOne);
    price(&mut draft);
    draft
}

fn forty() -> Draft {
    let mut draft = house(40);
    zones_of(&mut draft, 5);
    price(&mut draft);
    draft
}

fn benches(criterion: &mut Criterion) {
    let mut limited_twelve = twelve();
    count(&mut limited_twelve, [2, 2, 3, 3, 3, 3, 4, 3, 4]);
    let mut limited_forty = forty();
    count(&mut limited_forty, [5, 5, 9, 9, 9, 12, 14, 8, 12]);
    let houses = [
        ("12 rooms on a loop", twelve()),
        ("12 rooms, few of each length", limited_twelve),
        ("40 rooms on 8 loops", forty()),
        ("40 rooms, few of each length", limited_forty),
    ];
    for (name, mut draft) in houses {
        let mut group = criterion.benchmark_group(name);
        group.sample_size(10);
        for &objective in Objective::ALL {
            draft.element.objective = objective;
            let job = job(&draft);
            let loads = losses(&job.house).rooms;
            let proof = solve_piping(&job, &loads).together.proof;
            group.bench_function(format!("{} ({proof:?})", objective.name()), |b| {
                b.iter(|| solve_piping(black_box(&job), &loads));
            });
        }
        group.finish();
    }
}

criterion_group!(group, benches);
criterion_main!(group);
