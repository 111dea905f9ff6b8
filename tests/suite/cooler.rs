//! Cooler water: against the element's own law, the design's search, and the season run with it.

use crate::season::{bins, fahrenheit, one_bin, plain, run};
use crate::shipped::SHIPPED;
use crate::support::{FOUR_ROOMS, add_room, add_wall, cold_day, house, open, set, solve};
use finrun_engine::arrangement::{self, lowest_supply};
use finrun_engine::cooler::{Cooler, USUAL_SUPPLIES, cooler};
use finrun_engine::design::Design;
use finrun_engine::job::{
    Arrangement, CircuitField, Field, FlowBasis, HouseField, Job, PlantField,
};
use finrun_engine::network::Place;
use finrun_engine::quantity::{Length, Temperature, Unit};
use finrun_engine::season::{Controls, Holds, Supply};

fn found(job: &Job, design: &Design, controls: &Controls) -> Cooler {
    cooler(job, design, &bins(), controls, &USUAL_SUPPLIES).expect("an answer")
}

/// On the design day, without gains, it is the supply that the design's own search finds, which is at most
/// a quarter of a kelvin too high. None of these houses has pipe in its rooms, which that search leaves out.
#[test]
fn the_design_day_is_the_designs_own_search() {
    for text in SHIPPED.into_iter().chain([FOUR_ROOMS]) {
        let draft = open(text);
        let (job, design) = solve(&draft);
        let pipe_in_rooms = design
            .piping
            .passages
            .iter()
            .any(|p| matches!(p.place, Place::Inside(_) | Place::Above(_)));
        assert!(!pipe_in_rooms, "{}", draft.name);
        let expected = lowest_supply(&job, &design).expect("a supply");
        let day = found(&job, &design, &plain(&job)).days[0];
        let over = (expected - day.supply.expect("a supply")).si();
        assert!((-0.05..0.3).contains(&over), "{}: {over}", draft.name);
        // The room that limits is the one with the least to spare.
        let spare =
            |room: &finrun_engine::design::RoomDesign| room.element.output / room.load.wanted();
        let heated = design.rooms.iter().filter(|room| room.load.wanted().si() > 0.0);
        let least = heated.min_by(|a, b| spare(a).total_cmp(&spare(b))).expect("a room");
        assert_eq!(day.limiting, least.room, "{}", draft.name);
    }
}

/// The trade's conversion of ratings to other water temperatures, with 65 °F air (from memory): 0.69 at
/// 180 °F, 0.38 at 140, 0.30 at 130, 0.24 at 120. A room at 65 °F whose element just does at 180 °F, with
/// so much water that it does not cool, needs that many times the length.
#[test]
fn feet_to_add_follow_the_trades_conversion() {
    let mut draft = cold_day();
    house(&mut draft, HouseField::Indoors, "65");
    let room = add_room(&mut draft, "Room", "20", "20");
    add_wall(&mut draft, room, "60", "0.1");
    set(&mut draft, Field::Circuit(CircuitField::Supply), "180");
    draft.flow_basis = FlowBasis::Typed;
    set(&mut draft, Field::Circuit(CircuitField::Flow), "20");
    let (job, design) = solve(&draft);
    let element = &design.rooms[0].element;
    let present = element.choice.finned;
    let just = element.needed.expect("a length");
    for (cool, conversion) in
        found(&job, &design, &plain(&job)).supplies.iter().zip([0.38, 0.30, 0.24])
    {
        let needed = present + cool.rooms[0].add.expect("a length");
        let times = needed / just;
        assert!((times / (0.69 / conversion) - 1.0).abs() < 0.05, "{:?}: {times}", cool.supply);
        // What it gets as it is, over what it needs, by the same.
        let share = cool.rooms[0].share * (just / present);
        assert!((share * times - 1.0).abs() < 0.02, "{share} {times}");
    }
}

/// With the feet added, each room gets at that supply what it needs; in the loop's order, so that those
/// that follow have what the others leave.
#[test]
fn the_feet_added_heat_every_room() {
    for text in SHIPPED.into_iter().chain([FOUR_ROOMS]) {
        let (job, design) = solve(&open(text));
        for cool in found(&job, &design, &plain(&job)).supplies {
            let (mut job, mut longer) = (job.clone(), design.clone());
            job.circuit.supply = cool.supply;
            for room in &cool.rooms {
                let add = room.add.expect("a length");
                let of = longer.rooms.iter_mut().find(|other| other.room == room.room);
                of.expect("its room").element.choice.finned += add;
            }
            let zones: Vec<_> = job.zones.iter().map(|zone| zone.id).collect();
            let given = arrangement::run(&job, &longer, &zones);
            for room in &cool.rooms {
                let at =
                    |p: &&finrun_engine::network::Passage| p.place == Place::Element(room.room);
                let given = given.passages.iter().find(at).expect("its element").to_room;
                let wanted = design.room(room.room).expect("the room").load.wanted();
                let share = given / wanted;
                let exactly = room.add.is_some_and(|add| add > Length::ZERO);
                assert!(
                    share > 1.0 - 1e-3 && (!exactly || share < 1.0 + 1e-3),
                    "{room:?}: {share}"
                );
                assert!(exactly || room.share > 0.99, "{room:?}");
            }
        }
    }
}

/// Where each room has its valve, the line that is to be set holds every room on every day that it is for.
#[test]
fn the_line_to_set_heats_every_room() {
    let mut draft = open(FOUR_ROOMS);
    let zone = draft.zones[0].id;
    draft.zone_mut(zone).expect("the zone").arrangement = Arrangement::HomeRun;
    let (job, design) = solve(&draft);
    let controls = Controls { zones: vec![(zone, Holds::RoomValves)], ..plain(&job) };
    let cool = found(&job, &design, &controls);
    let line = cool.line.expect("a line");
    let (coldest, mildest) = (cool.days[0].outdoors, cool.days[cool.days.len() - 1].outdoors);
    let by_line = |lower_k: f64| {
        let mut line = line;
        line.shift = line.shift - finrun_engine::quantity::TemperatureDifference::from_si(lower_k);
        let controls = Controls { supply: Supply::Reset(line, None), ..controls.clone() };
        run(&job, &design, &bins(), &controls)
    };
    let within =
        |bin: &finrun_engine::season::BinRun| bin.outdoors >= coldest && bin.outdoors <= mildest;
    let least_k = |run: &finrun_engine::season::SeasonRun| {
        let bins = run.bins.iter().filter(|bin| within(bin));
        let short = bins.flat_map(|bin| job.house.rooms.iter().zip(&bin.rooms));
        short.map(|(room, at)| (*at - room.temperature).si()).fold(f64::INFINITY, f64::min)
    };
    assert!(least_k(&by_line(0.0)) > -0.02, "{}", least_k(&by_line(0.0)));
    // It is no hotter than it must be: the line touches what is asked somewhere.
    assert!(least_k(&by_line(6.0)) < -0.2, "{}", least_k(&by_line(6.0)));
    for day in &cool.days {
        let indoors = finrun_engine::building::mean_temperature(&job.house);
        let set = indoors + line.shift + (indoors - day.outdoors) * line.slope;
        assert!(
            set - day.supply.expect("a supply")
                > finrun_engine::quantity::TemperatureDifference::from_si(-1e-9)
        );
    }
}

/// Cooler water condenses for more of the year's heat; the milder the day, the cooler it may be.
#[test]
fn the_line_condenses_more() {
    let (job, design) = solve(&open(FOUR_ROOMS));
    let cool = found(&job, &design, &Controls::usual(&job));
    let by_line = cool.by_line.expect("a line");
    assert_eq!(cool.now.condensing_h, 0.0);
    assert!(by_line.condensing_h > 1000.0 && by_line.condensing_share > 0.3, "{by_line:?}");
    assert!(by_line.condensing_h <= by_line.running_h && by_line.condensing_share <= 1.0);
    // The share of the heat, not of the hours: of the bins that come back below 130 °F.
    let line = cool.line.expect("a line");
    let controls = Controls { supply: Supply::Reset(line, None), ..Controls::usual(&job) };
    let year = run(&job, &design, &bins(), &controls);
    let (mut cold, mut whole) = (0.0, 0.0);
    for bin in &year.bins {
        let heat = bin.heat.si() * bin.hours;
        whole += heat;
        cold += if bin.back.is_some_and(|back| back < fahrenheit(130.0)) { heat } else { 0.0 };
    }
    assert!((by_line.condensing_share - cold / whole).abs() < 1e-9, "{by_line:?}");
    for (colder, milder) in cool.days.iter().zip(&cool.days[1..]) {
        assert!(colder.supply > milder.supply, "{colder:?} {milder:?}");
    }
    // At a supply that is hot enough on some day, the outdoor temperature from which on is that day's.
    let middle = cool.days[2];
    let at = [middle.supply.expect("a supply")];
    let one = cooler(&job, &design, &bins(), &Controls::usual(&job), &at).expect("an answer");
    let from = one.supplies[0].enough_from.expect("a temperature");
    assert!((from - middle.outdoors).si().abs() < 0.1, "{from:?} {middle:?}");
    let colder = bins().into_iter().filter(|bin| bin.outdoors < from).map(|bin| bin.hours);
    assert!((one.supplies[0].short_h - colder.sum::<f64>()).abs() < 1e-9);
}

/// A boiler that may not be hot enough has no line; the rooms are cold then in the season too.
#[test]
fn a_low_limit_has_no_line() {
    let (mut job, design) = solve(&open(FOUR_ROOMS));
    job.circuit.boiler_limit = fahrenheit(130.0);
    job.circuit.supply = fahrenheit(130.0);
    let cool = found(&job, &design, &plain(&job));
    assert_eq!((cool.days[0].supply, cool.line, cool.by_line), (None, None, None));
    let last = cool.days.last().and_then(|day| day.supply).expect("a supply");
    assert!(last < Temperature::of(130.0, Unit::Fahrenheit));
    let day = run(&job, &design, &one_bin(job.house.site.outdoors), &plain(&job));
    assert_eq!(day.bins[0].runs, 1.0);
    assert!(day.rooms.iter().any(|room| room.cold_h > 0.0));
}

/// With a margin typed, each day's water is for the loss and that much more, as the design's own search has
/// it; and from the design day the days go on to 55 °F, 10 °F below where sun and people carry the house, by
/// equal steps.
#[test]
fn days_hold_the_margin_and_reach_the_balance() {
    for margin in ["0", "30"] {
        let mut draft = open(FOUR_ROOMS);
        house(&mut draft, HouseField::Margin, margin);
        set(&mut draft, Field::Plant(PlantField::Balance), "65");
        let (job, design) = solve(&draft);
        let expected = lowest_supply(&job, &design).expect("a supply");
        let day = found(&job, &design, &plain(&job)).days[0];
        let over = (expected - day.supply.expect("a supply")).si();
        assert!((-0.05..0.3).contains(&over), "{margin} %: {over}");
        let days = found(&job, &design, &Controls::usual(&job)).days;
        let (coldest, mildest) = (job.house.site.outdoors, fahrenheit(55.0));
        let last = days.len() - 1;
        for (nth, day) in days.iter().enumerate() {
            let share = nth as f64 / last as f64;
            let expected = coldest.si() + share * (mildest - coldest).si();
            assert!((day.outdoors.si() - expected).abs() < 1e-9, "{day:?}");
        }
    }
}

/// By hand: at 120 °F a room wants some 2.9 times its element. Ten feet become 29, which stand on 60 ft of
/// wall and not on 15 ft that lose as much.
#[test]
fn feet_that_no_wall_has_do_not_fit() {
    let fits = |long: &str, u: &str| {
        let mut draft = cold_day();
        let room = add_room(&mut draft, "Room", "20", "20");
        add_wall(&mut draft, room, long, u);
        let (job, design) = solve(&draft);
        let cool = found(&job, &design, &plain(&job)).supplies.pop().expect("120 °F");
        assert!(cool.rooms[0].add.expect("a length").to(Unit::Foot) > 6.0);
        cool.rooms[0].fits
    };
    assert!(fits("60", "0.1"));
    assert!(!fits("15", "0.4"));
}
