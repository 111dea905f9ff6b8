//! What is built beyond the loads, by hand on a house of one room; and the margin that a user may want.

use crate::random_house::houses;
use crate::support::{add_room, add_wall, cold_day, house, set, solve};
use finrun_engine::building::RoomId;
use finrun_engine::job::{CircuitField, Draft, Field, HouseField, PlantField};
use finrun_engine::oversize::oversize;
use finrun_engine::plant::boiler::Running;
use finrun_engine::quantity::{Power, Unit};
use proptest::prelude::*;

/// A room of 0.5 Btu/(h ft2 F) x 8 ft x 20 ft x 70 °F = 5600 Btu/h, on pipe that loses nothing.
fn one_room() -> (Draft, RoomId) {
    let mut draft = cold_day();
    let room = add_room(&mut draft, "Only", "20", "10");
    add_wall(&mut draft, room, "20", "0.5");
    set(&mut draft, Field::Circuit(CircuitField::PipeFilm), "0");
    (draft, room)
}

const LOAD_W: f64 = 5600.0 * 0.293_071;
/// Of water near 75 °C, J/(kg K), from memory.
const WATER_J_KG_K: f64 = 4191.0;

/// Heat of so many feet in water that enters at a supply, in °F and W: the rating of 600 Btu/h a foot at
/// 180 °F over 65, to the power 1.4, at 4 gpm of 8.1 lb, as hot water weighs; marched in 2000 slices.
#[expect(clippy::disallowed_methods, reason = "independent of the engine's own")]
fn marched(feet: f64, supply_f: f64, flow_kg_s: f64) -> f64 {
    let slices = 2000;
    let rated = 600.0 * 0.293_071 * (flow_kg_s / (4.0 * 8.1 / 60.0 * 0.4536)).powf(0.04);
    let mut water_f = supply_f;
    let mut heat = 0.0;
    for _ in 0..slices {
        let slice = rated * ((water_f - 70.0) / 115.0).powf(1.4) * feet / f64::from(slices);
        heat += slice;
        water_f -= slice / (flow_kg_s * WATER_J_KG_K) * 1.8;
    }
    heat
}

#[test]
fn one_room_by_hand() {
    let (mut draft, room) = one_room();
    set(&mut draft, Field::Plant(PlantField::LeastOutput), "20000");
    let (job, design) = solve(&draft);
    let over = oversize(&job, &design).expect("a heated house");
    // 20 °F of drop at the load.
    let flow = LOAD_W / (WATER_J_KG_K * 20.0 / 1.8);
    assert!((design.piping.mass_flow.si() / flow - 1.0).abs() < 1e-3);
    let feet = design.element_length().to(Unit::Foot);
    assert_eq!(feet, feet.round());
    let own = over.rooms.first().expect("its room");
    assert_eq!((over.rooms.len(), own.room), (1, room));
    // The length that just gives the load, by halving.
    let halve = |low: f64, high: f64, enough: &dyn Fn(f64) -> bool| {
        let (mut low, mut high) = (low, high);
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if enough(middle) { high = middle } else { low = middle }
        }
        high
    };
    let needed = halve(0.0, 50.0, &|feet| marched(feet, 180.0, flow) >= LOAD_W);
    assert!((own.length.to(Unit::Foot) - (feet - needed)).abs() < 0.02, "{own:?} {feet} {needed}");
    let pieces = marched(feet, 180.0, flow) - LOAD_W;
    assert!((own.pieces.si() - pieces).abs() < 3.0, "{own:?} {pieces}");
    assert_eq!((own.margin, over.pieces), (Power::ZERO, own.pieces));
    // Just long enough, the water comes back 20 °F cooler; with the pieces cooler still.
    assert!((over.back_exact.to(Unit::Fahrenheit) - 160.0).abs() < 0.02, "{over:?}");
    let back = 180.0 - 20.0 * (LOAD_W + pieces) / LOAD_W;
    assert!((over.back.to(Unit::Fahrenheit) - back).abs() < 0.05, "{over:?} {back}");
    let supply = halve(100.0, 180.0, &|supply| marched(feet, supply, flow) >= LOAD_W);
    let enough = over.supply_enough.expect("enough").to(Unit::Fahrenheit);
    assert!((-0.05..0.5).contains(&(enough - supply)), "{enough} {supply}");
    assert!((over.calls_at_half - 0.5 * LOAD_W / (LOAD_W + pieces)).abs() < 1e-3);
    // The burner's surplus over what the elements take warms the same water: C dT/(P - Q).
    let burner = over.burner.expect("a burner");
    let on = |running| match running {
        Running::Cycling(cycle) => f64::from(cycle.on_s as f32),
        Running::Throughout => f64::NAN,
    };
    let ratio = on(burner.built) / on(burner.exact);
    let output = 20_000.0 * 0.293_071;
    let by_hand = (output - LOAD_W) / (output - LOAD_W - pieces);
    assert!((ratio / by_hand - 1.0).abs() < 0.01, "{ratio} {by_hand}");
}

/// A margin is added to the loss and told apart from what the pieces add.
#[test]
fn a_margin_is_told_apart() {
    let (mut draft, _) = one_room();
    house(&mut draft, HouseField::Margin, "25");
    let (job, design) = solve(&draft);
    let over = oversize(&job, &design).expect("a heated house");
    assert!((over.margin.si() / (0.25 * LOAD_W) - 1.0).abs() < 1e-3, "{over:?}");
    assert!((design.load.si() / LOAD_W - 1.0).abs() < 1e-3, "the loss stays what it is");
    let given: Power = design.rooms.iter().map(|room| room.element.output).sum();
    assert!((given - design.load - over.margin - over.pieces).abs().si() < 1e-6);
    assert!((over.back_exact.to(Unit::Fahrenheit) - 160.0).abs() < 0.02, "{over:?}");
    // 25 % more heat than is lost: called for 40 % of the time, or less.
    assert!(over.calls_at_half <= 0.4 + 1e-6 && over.calls_at_half > 0.3, "{over:?}");
}

/// A house that is not heated has no excess.
#[test]
fn a_short_house_has_no_excess() {
    let (mut draft, room) = one_room();
    let wall = draft.room(room).expect("its room").surfaces[0].id;
    let free = Field::Surface(room, wall, finrun_engine::job::SurfaceField::Free);
    set(&mut draft, free, "4");
    let (job, design) = solve(&draft);
    assert_eq!(oversize(&job, &design), None);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    /// Whatever the house: a room that is not short gives its loss and the margin on it.
    #[test]
    fn a_margin_is_kept(draft in houses(), percent in 0.0..50.0) {
        let mut draft = draft;
        house(&mut draft, HouseField::Margin, &format!("{percent:.3}"));
        let share: f64 = format!("{percent:.3}").parse::<f64>().expect("a number") / 100.0;
        let (_, design) = solve(&draft);
        for room in &design.rooms {
            let wanted = room.load.total.si().max(0.0) * (1.0 + share);
            let gives = room.element.output.si() >= wanted - 2e-9 * wanted.abs() - room.load.other.si();
            prop_assert!(gives || room.short() > Power::ZERO, "{room:?}");
        }
    }
}
