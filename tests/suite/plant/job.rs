//! The plant of whole jobs, against numbers worked by hand from the trade's tables.

use super::{btu_per_hour, fahrenheit, gallons, near};
use crate::random_house::full_houses;
use crate::support::{V3_FIXTURE, add_room, add_wall, cold_day, job_of, open, set, solve};
use finrun_engine::arrangement::run;
use finrun_engine::building::ZoneId;
use finrun_engine::check::{Finding, Remedy};
use finrun_engine::design::design;
use finrun_engine::fluid::Fluid;
use finrun_engine::job::{
    Antifreeze, BoilerKind, CircuitField, Draft, Field, FlowBasis, Job, PlantField, TankHeating,
    ValveKind, Zoning,
};
use finrun_engine::named::Named;
use finrun_engine::network::Place;
use finrun_engine::plant::boiler::{IndirectTank, Running};
use finrun_engine::plant::design::{Fed, PlantDesign};
use finrun_engine::plant::expansion::Metal;
use finrun_engine::quantity::{Length, TemperatureDifference, Unit};
use proptest::prelude::*;

/// Two rooms of 0.5 Btu/(h ft2 F) x 96 ft2 x 70 °F = 3360 Btu/h each, on one loop of 3/4 in copper,
/// type M, with three pipes of 10 ft.
fn two_rooms() -> Draft {
    let mut draft = cold_day();
    for name in ["First", "Second"] {
        let id = add_room(&mut draft, name, "12", "10");
        add_wall(&mut draft, id, "12", "0.5");
    }
    draft.flow_basis = FlowBasis::Typed;
    set(&mut draft, Field::Circuit(CircuitField::Flow), "4");
    draft
}

fn type_plant(draft: &mut Draft, field: PlantField, text: &str) {
    set(draft, Field::Plant(field), text);
}

fn plant(draft: &Draft) -> PlantDesign {
    solve(draft).1.plant.expect("it has rooms")
}

#[test]
fn a_small_job_by_hand() {
    let mut draft = two_rooms();
    type_plant(&mut draft, PlantField::Output, "40000");
    let (_, design) = solve(&draft);
    let plant = design.plant.as_ref().expect("it has rooms");
    let needed = plant.needed.expect("a load");
    near(needed.loads.to(Unit::BtuPerHour), 6720.0, 1e-9);
    // 30 ft of 7/8 in outside at 10 W/(m2 K), some 118 °F above the air around.
    let pipes = 10.0 * std::f64::consts::PI * 0.022225 * 9.144 * (118.0 / 1.8);
    near(needed.pipe_loss.si(), pipes, 0.01);
    near(needed.output.si(), needed.loads.si() + needed.pipe_loss.si(), 1e-12);
    near(plant.size.expect("typed").ratio, 40_000.0 / needed.output.to(Unit::BtuPerHour), 1e-9);

    // 0.0269 gal a foot (trade's table, from memory) in 30 ft of pipe and the elements; the boiler's
    // 10 gal are the judgement that a blank takes.
    let element = design.element_length().to(Unit::Foot);
    let held = 0.0269 * (30.0 + element) + 10.0;
    let volume = plant.volume.expect("a loop");
    near(volume.total.to(Unit::Gallon), held, 1e-3);
    near(volume.elements.to(Unit::Gallon), 0.0269 * element, 5e-3);

    // 62.4 lb/ft3 are 0.4333 psi a foot: 9 ft and 5 psi.
    near(plant.filling.cold.to(Unit::Psi), 0.4333 * 9.0 + 5.0, 1e-3);
    near(plant.filling.at_top.to(Unit::Psi), 5.0, 1e-6);

    // Steam tables (from memory): 0.01602 and 0.01651 ft3/lb at 50 and 180 °F; copper 9.5e-6 a °F.
    let growth = 0.01651 / 0.01602 - 1.0 - 3.0 * 9.5e-6 * 130.0;
    let tank = plant.tank.expect("a tank");
    near(tank.acceptance.to(Unit::Gallon), held * growth, 0.02);
    let (cold, most) = (8.90 + 14.696, 27.0 + 14.696);
    near(tank.volume.to(Unit::Gallon), held * growth / (1.0 - cold / most), 0.02);
    assert_eq!(tank.usual, Some(gallons(2.0)));
    // Boyle: 2 gal of air pressed together by what the water grows.
    let hot = cold * 2.0 / (2.0 - tank.acceptance.to(Unit::Gallon)) - 14.696;
    near(plant.filling.hot.expect("a tank").to(Unit::Psi), hot, 2e-3);

    // The water at 180 °F weighs 60.6 lb/ft3: 9 ft of it leave 8.90 - 3.79 psi gauge, 19.81 psi
    // absolute, at which water boils at 227.4 °F (steam tables, from memory: 227.96 °F at 20 psi).
    let boiling = plant.boiling.expect("numbers");
    near(boiling.lowest.to(Unit::Psi), 19.81, 1e-3);
    near(boiling.boils_at.to(Unit::Fahrenheit), 227.4, 1e-3);

    // All of it warmed by 20 °F, at 60.8 lb/ft3: what the burner gives beyond what the loop takes.
    let alone = plant.part_load.expect("typed");
    near(alone.load.si(), design.piping.heat.si(), 1e-12);
    let surplus = 40_000.0 - alone.load.to(Unit::BtuPerHour);
    let stored = held * 60.8 / 7.4805 * 20.0;
    match alone.running {
        Running::Cycling(cycle) => near(cycle.on_s, 3600.0 * stored / surplus, 5e-3),
        Running::Throughout => panic!("it gives four times as much"),
    }
    let ten_minutes = held * 600.0 / (3600.0 * stored / surplus);
    near(alone.buffer.to(Unit::Gallon), ten_minutes - held, 0.01);
}

/// The supply of each day of the table, put into the loop as it was designed, gives each room what it
/// loses then, and the one with the least to spare no more than that.
#[test]
fn the_reset_line_heats_every_room_on_every_day() {
    let (job, design) = solve(&two_rooms());
    let plant = design.plant.as_ref().expect("it has rooms");
    let reset = plant.reset.as_ref().expect("a line");
    assert_eq!(reset.points.len(), 6);
    let (first, last) = (reset.points[0], reset.points[5]);
    near(first.outdoors.si(), fahrenheit(0.0).si(), 1e-12);
    near(last.outdoors.si(), fahrenheit(55.0).si(), 1e-12);
    for point in &reset.points {
        let mut day = job.clone();
        day.circuit.supply = point.supply;
        let ran = run(&day, &design, &[job.zones[0].id]);
        let share = (65.0 - point.outdoors.to(Unit::Fahrenheit)) / 65.0;
        let mut least = f64::INFINITY;
        for room in &design.rooms {
            let place = Place::Element(room.room);
            let passage = ran.passages.iter().find(|p| p.place == place).expect("its element");
            least = least.min(passage.to_room / (room.load.total * share));
        }
        assert!((0.985..1.03).contains(&least), "{point:?}: {least}");
        // The line stands above each point, by no more than it says.
        let line = job.house.rooms[0].temperature
            + reset.setting.shift
            + (job.house.rooms[0].temperature - point.outdoors) * reset.setting.slope;
        let above = (line - point.supply).si();
        assert!((-1e-9..=reset.setting.excess.si() + 1e-9).contains(&above), "{above}");
    }
    // 130 °F of return and the loop's drop.
    let drop = design.piping.drop();
    let least = reset.least_supply.expect("not condensing");
    near((least - fahrenheit(130.0)).si(), drop.si(), 1e-6);
}

/// Two zones of one room each, the second with 20 ft of pipe more.
fn two_zones() -> Draft {
    let mut draft = two_rooms();
    let zone = draft.add_zone();
    let room = draft.rooms[1].id;
    draft.rooms[1].zone = zone;
    set(&mut draft, Field::Room(room, finrun_engine::job::RoomField::PipeTo), "30");
    draft
}

#[test]
fn the_smallest_zone_alone_holds_its_own_water() {
    let mut draft = two_zones();
    type_plant(&mut draft, PlantField::LeastOutput, "40000");
    type_plant(&mut draft, PlantField::BoilerVolume, "3");
    type_plant(&mut draft, PlantField::OtherVolume, "1.5");
    let (_, design) = solve(&draft);
    let alone = design.plant.as_ref().and_then(|plant| plant.part_load).expect("typed");
    let heats: Vec<f64> = design.piping.alone.iter().map(|run| run.heat.si()).collect();
    assert_eq!(alone.zone, ZoneId(0), "{heats:?}");
    assert!(heats[0] < heats[1]);
    near(alone.load.si(), heats[0], 1e-12);
    // 10 ft there, 10 ft back and its element; nothing of the other zone.
    let element: Length = design.rooms[0].element.choice.nominal;
    let held = 0.0269 * (20.0 + element.to(Unit::Foot)) + 4.5;
    near(alone.volume.to(Unit::Gallon), held, 1e-3);
}

#[test]
fn a_transformer_feeds_what_starts_the_zones() {
    let control = |draft: &Draft| plant(draft).control.expect("a zone");
    let one = control(&two_rooms());
    assert_eq!((one.feeds, one.coils), (Fed::Relays, 1));
    let mut draft = two_zones();
    let valves = control(&draft);
    assert_eq!((valves.feeds, valves.coils), (Fed::ZoneValves, 2));
    near(valves.transformers.load_va, 2.0 * 0.32 * 24.0, 1e-12);
    draft.plant.valve = ValveKind::HeatedElement;
    near(control(&draft).transformers.load_va, 2.0 * 0.9 * 24.0, 1e-12);
    draft.zoning = Zoning::Circulators;
    let relays = control(&draft);
    assert_eq!((relays.feeds, relays.coils), (Fed::Relays, 2));
    near(relays.transformers.load_va, 10.0, 1e-12);
}

/// Water and half glycol: what the share says by mass is what is measured out, and the loop, which
/// carries less heat a gallon, comes back cooler.
#[test]
fn glycol_fills_the_loop_that_is_designed() {
    let mut draft = two_rooms();
    let water = solve(&draft).1;
    draft.plant.antifreeze = Antifreeze::PropyleneGlycol;
    type_plant(&mut draft, PlantField::GlycolShare, "50");
    let (job, design) = solve(&draft);
    assert_eq!(job.circuit.fluid, Fluid::PropyleneGlycol { share: 0.5 });
    assert!(design.piping.drop() > water.piping.drop());
    let plant = design.plant.expect("it has rooms");
    let charge = plant.glycol.expect("filled with it");
    // Pure glycol of 1.036 and water of 0.998 kg/L at 20 °C (from memory).
    let (glycol, pure) = (charge.glycol.si() * 1036.0, charge.water.si() * 998.2);
    near(glycol / (glycol + pure), 0.5, 1e-3);
    let volume = plant.volume.expect("a loop").total;
    assert!((1.0..1.03).contains(&((charge.glycol + charge.water) / volume)));
    // ASHRAE's table: half by mass freezes at about -28 °F; the data behind the fit say -26.
    let freezes = plant.freezes_at.to(Unit::Fahrenheit);
    assert!((-30.0..-22.0).contains(&freezes), "{freezes}");
    assert!(water.plant.is_some_and(|plant| plant.glycol.is_none()));
}

/// What the third version's fixture says of its plant.
#[test]
fn a_plant_is_read_as_it_was_typed() {
    let job = job_of(&open(V3_FIXTURE));
    let plant = job.plant;
    assert_eq!(plant.boiler, BoilerKind::Condensing);
    assert_eq!((plant.metal, plant.valve), (Metal::Steel, ValveKind::HeatedElement));
    near(plant.output.expect("typed").si(), 23_400.0, 1e-12);
    near(plant.least_output.expect("typed").to(Unit::BtuPerHour), 20_500.0, 1e-12);
    assert_eq!(plant.tank, IndirectTank::Priority(btu_per_hour(61_000.0)));
    near(plant.boiler_volume.to(Unit::Gallon), 1.2, 1e-12);
    near(plant.other_volume.si(), 0.045, 1e-12);
    near(plant.differential.to(Unit::FahrenheitDegree), 18.0, 1e-12);
    near(plant.top_height.to(Unit::Foot), 17.5, 1e-12);
    near(plant.fill.to(Unit::Psi), 15.5, 1e-12);
    near(plant.relief.to(Unit::Psi), 30.0, 1e-12);
    near(plant.cold.to(Unit::Fahrenheit), 48.0, 1e-12);
    near(plant.balance.to(Unit::Fahrenheit), 62.0, 1e-12);
    assert_eq!(job.circuit.fluid, Fluid::PropyleneGlycol { share: 0.35 });
}

/// A boiler of which nothing is known keeps nobody from a design, and is not judged.
#[test]
fn what_is_not_known_is_not_judged() {
    let plant = plant(&two_rooms());
    assert_eq!((plant.size, plant.part_load), (None, None));
    assert!(plant.needed.is_some() && plant.tank.is_some() && plant.reset.is_some());
}

/// What the checks propose with a number comes true when it is taken, and only just.
#[test]
fn remedies_of_the_filling_do_what_they_say() {
    let mut draft = two_rooms();
    type_plant(&mut draft, PlantField::TopHeight, "18");
    type_plant(&mut draft, PlantField::Fill, "8");
    set(&mut draft, Field::Circuit(CircuitField::Supply), "219");
    set(&mut draft, Field::Circuit(CircuitField::BoilerLimit), "230");
    let job = job_of(&draft);
    let boils = |job: &Job| {
        let mut checks = design(job).checks.into_iter();
        checks.find(|check| matches!(check.finding, Finding::Boils { .. }))
    };
    let check = boils(&job).expect("219 °F boils at next to no pressure");
    assert_eq!(check.remedies.len(), 2);
    for remedy in check.remedies {
        let (mut taken, mut nearly) = (job.clone(), job.clone());
        match remedy {
            Remedy::Fill { pressure } => {
                taken.plant.fill = pressure;
                nearly.plant.fill = pressure * 0.99;
            }
            Remedy::LowerSupply { supply } => {
                taken.circuit.supply = supply;
                nearly.circuit.supply = supply + TemperatureDifference::from_si(0.2);
            }
            other => panic!("{other:?}"),
        }
        assert_eq!(boils(&taken), None, "{remedy:?}");
        assert!(boils(&nearly).is_some(), "{remedy:?}");
    }
}

/// Texts that a field takes at the ends of its bounds, in the unit of its box.
fn ends(field: PlantField) -> impl Strategy<Value = Option<f64>> {
    let spec = Field::Plant(field).spec();
    proptest::option::of((0.0..=1.0).prop_map(move |at| spec.least + at * (spec.most - spec.least)))
}

fn plants() -> impl Strategy<Value = Vec<Option<f64>>> {
    PlantField::ALL.iter().map(|&field| ends(field).boxed()).collect::<Vec<_>>()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// Any plant in any house: numbers, or nothing.
    #[test]
    fn every_number_of_a_plant_is_one(
        draft in full_houses(),
        values in plants(),
        (boiler, tank, metal, glycol) in
            (any::<bool>(), 0_usize..3, any::<bool>(), any::<bool>()),
    ) {
        let mut draft = draft;
        for (&field, value) in PlantField::ALL.iter().zip(values) {
            let field = Field::Plant(field);
            if let Some(si) = value {
                let unit = draft.box_unit(field);
                set(&mut draft, field, &format!("{:.9}", unit.from_si(si)));
            }
        }
        draft.plant.boiler = BoilerKind::ALL[usize::from(boiler)];
        draft.plant.tank = TankHeating::ALL[tank];
        draft.plant.metal = Metal::ALL[usize::from(metal)];
        draft.plant.antifreeze = Antifreeze::ALL[usize::from(glycol)];
        let (_, design) = solve(&draft);
        let text = serde_json::to_string(&(&design.plant, &design.checks)).expect("plain data");
        // A number that is none is written as null.
        prop_assert!(design.plant.is_none() || !text.contains("null"), "{}", text);
    }
}
