//! How long the joint choice of all rooms' pieces takes in houses of the largest size.

use criterion::{Criterion, criterion_group, criterion_main};
use finrun_engine::sizing::joint::{
    Costs, NODES, Objective, Problem, Room, Run, Stock, Wall, choose_all,
};
use finrun_tests::element::{Element, Heated, Loop};
use std::hint::black_box;
use std::time::Duration;

/// Numbers that look random and are the same everywhere (Knuth's linear generator, from memory).
struct Numbers(u64);

impl Numbers {
    /// A number from 0 up to this.
    fn below(&mut self, most: u64) -> u64 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % most
    }
}

/// Nine lengths from 2 to 10 ft, three runs a room. `available` is how many there are of each.
fn house(rooms: &[usize], available: Option<u32>, objective: Objective) -> (Problem, Element) {
    let mut numbers = Numbers(12);
    let stock = (2..=10).map(|feet| Stock {
        length_sixteenths: feet * 192,
        price_cents: Some(900 + 520 * feet + numbers.below(400) as u32),
        available,
    });
    let stock = stock.collect();
    let (mut circuits, mut loops) = (Vec::new(), Vec::new());
    for &count in rooms {
        let (mut of_circuit, mut heated) = (Vec::new(), Vec::new());
        for _ in 0..count {
            let run = |wall, sixteenths| Run {
                hold_sixteenths: sixteenths,
                wall,
                fixed_sixteenths: Vec::new(),
            };
            let runs = vec![
                run(Wall::Outer, 1500 + numbers.below(2300) as u32),
                run(Wall::Outer, 1000 + numbers.below(2300) as u32),
                run(Wall::Inner, 1000 + numbers.below(1500) as u32),
            ];
            of_circuit.push(Room { runs });
            heated.push(Heated { load_w: 700.0 + numbers.below(1100) as f64, air_k: 293.15 });
        }
        circuits.push(of_circuit);
        let capacity_w_per_k = 100.0 * count as f64;
        loops.push(Loop { enters_k: 355.0, capacity_w_per_k, rooms: heated });
    }
    let problem = Problem {
        circuits,
        stock,
        bare_per_piece_m: 0.0762,
        costs: Costs { joint_cents: 650, run_cents: 1100 },
        objective,
    };
    (problem, Element { per_metre_w: 1.6, part_lower_k: 20.0, circuits: loops })
}

fn benches(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("joint");
    group.warm_up_time(Duration::from_millis(300)).measurement_time(Duration::from_secs(1));
    group.sample_size(20);
    let objectives = [
        ("closest", Objective::Closest),
        ("cost", Objective::LeastCost),
        ("joints", Objective::FewestJoints),
        ("even", Objective::MostEven),
    ];
    for (name, objective) in objectives {
        for (size, rooms) in [("12 rooms", vec![12]), ("40 rooms", vec![5; 8])] {
            for (limits, available) in
                [("unlimited", None), ("limited", Some(rooms.iter().sum::<usize>() as u32 / 4))]
            {
                let (problem, water) = house(&rooms, available, objective);
                let answer = choose_all(&problem, &water, NODES);
                println!(
                    "{size}, {limits}, {name}: {:?} {} to {}, {} nodes",
                    answer.proof, answer.bound, answer.value, answer.nodes
                );
                group.bench_function(format!("{size}, {limits}, {name}"), |b| {
                    b.iter(|| choose_all(black_box(&problem), &water, NODES));
                });
            }
        }
    }
    group.finish();
}

criterion_group!(group, benches);
criterion_main!(group);
