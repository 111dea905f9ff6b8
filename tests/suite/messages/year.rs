//! What is said of the house in use: through the year, on the design day, with cooler water.

use super::in_both;
use crate::support::{FOUR_ROOMS, V6_FIXTURE, open, solve};
use finrun_engine::bills::Fuel;
use finrun_engine::building::RoomId;
use finrun_engine::climate::Season;
use finrun_engine::comfort::{Change, Comfort};
use finrun_engine::cooler::{CoolRoom, CoolSupply, USUAL_SUPPLIES, cooler};
use finrun_engine::job::{
    Choice, ControlField, Field, Holds, Mass, Pick, RoomMass, Setback, SupplyBy,
};
use finrun_engine::named::Named as _;
use finrun_engine::quantity::{Length, System, Temperature, TemperatureDifference, Unit};
use finrun_engine::season::{Burning, Controls, NoSeason, season};
use finrun_engine::transient::design_day;
use finrun_text as text;

#[test]
fn how_the_house_is_run() {
    let draft = open(V6_FIXTURE);
    let zone = draft.zones[0].id;
    insta::assert_snapshot!(in_both(|book| {
        for field in ControlField::ALL {
            book.add(field.name(), text::field_label(Field::Control(*field)));
        }
        for choice in [Choice::SupplyBy, Choice::Mass, Choice::Holds(zone)] {
            book.add(choice, text::choice_label(choice));
        }
        let room = Choice::RoomMass(draft.rooms[0].id);
        book.add("a room's", text::choice_label(room));
        let mut picks = vec![Pick::Holds(Holds::FirstRoom), Pick::Holds(Holds::RoomValves)];
        picks.push(Pick::RoomMass(RoomMass::AsHouse));
        picks.extend(SupplyBy::ALL.iter().copied().map(Pick::SupplyBy));
        picks.extend(Mass::ALL.map(Pick::Mass));
        for pick in picks {
            book.add(format!("{pick:?}"), text::pick(&draft, pick));
        }
        for why in [NoSeason::NothingHeated, NoSeason::NoFlows, NoSeason::NotSettled] {
            book.add(format!("{why:?}"), text::no_season(why));
        }
        let sentences = text::SEASON_WORDS.iter().chain(text::NIGHT_WORDS);
        for (name, words) in sentences.chain(text::COOLER_WORDS).chain(text::COMFORT_WORDS) {
            book.add(name, words());
        }
    }));
}

#[test]
fn what_would_help_a_year() {
    let mut draft = open(FOUR_ROOMS);
    for room in &mut draft.rooms {
        room.name = "Sol".to_string();
    }
    let (zone, room) = (draft.zones[0].id, draft.rooms[1].id);
    let comfort = Comfort {
        cold_h: 1200.0,
        warm_h: 30.0,
        off: TemperatureDifference::from_si(0.8),
        fuel: Some(900.0),
        element: Length::of(75.0, Unit::Foot),
    };
    insta::assert_snapshot!(in_both(|book| {
        let by = Length::of(2.0, Unit::Foot);
        for change in [
            Change::Thermostat(zone, room),
            Change::RoomValves(zone),
            Change::Reset,
            Change::Balance(zone),
            Change::First(room),
            Change::TurnRound(zone),
            Change::Split(zone),
            Change::Shorten(room, by),
            Change::Damper(room, 0.6),
            Change::OwnZone(room),
        ] {
            book.add(format!("{change:?}"), text::comfort_change(&draft, change));
        }
        for (end, name, [before, _]) in text::comfort_figures(&draft, &comfort, &comfort) {
            book.add(end, format!("{name}: {before}"));
        }
    }));
}

#[test]
fn a_year_a_day_and_cooler_water() {
    let draft = open(V6_FIXTURE);
    let (job, design) = solve(&draft);
    let bins = Season::of(draft.station.as_ref().expect("a station")).bins();
    let controls = Controls::of(&job, &design);
    let year = season(&job, &design, &bins, &controls, Burning::of(&job)).expect("a year");
    let control = job.control.clone().expect("a control");
    let day =
        design_day(&job, &design, &controls, &control.masses, control.setback).expect("a day");
    let cool = cooler(&job, &design, &bins, &controls, &USUAL_SUPPLIES).expect("an answer");
    let mut rooms = open(FOUR_ROOMS);
    for (room, name) in rooms.rooms.iter_mut().zip(["Sol", "Luna", "Marte", "Venus"]) {
        // Names are the same in every language.
        room.name = name.to_string();
    }
    let at = |f: f64| Temperature::of(f, Unit::Fahrenheit);
    insta::assert_snapshot!(in_both(|book| {
        for system in [System::Us, System::Si] {
            book.add(format!("limits {system:?}"), text::season_limits(system));
            for (end, name, shown) in text::season_sums(&year, Some(&control), system) {
                book.add(format!("{end} {system:?}"), format!("{name}: {shown}"));
            }
            let mut calm = year.clone();
            for room in &mut calm.rooms {
                (room.cold_h, room.warm_h) = (0.0, 0.0);
            }
            book.add(format!("calm {system:?}"), text::season_verdict(&rooms, &calm, system));
            (calm.rooms[0].room, calm.rooms[0].cold_h) = (RoomId(6), 30.0);
            (calm.rooms[1].room, calm.rooms[1].warm_h) = (RoomId(18), 1500.0);
            book.add(format!("troubled {system:?}"), text::season_verdict(&rooms, &calm, system));
            let (room, most) = (at(70.0), at(200.0));
            let line = text::cooler_line(cool.line.as_ref(), room, most, system);
            book.add(format!("line {system:?}"), line);
            book.add(format!("supply {system:?}"), text::at_supply(at(140.0), system));
            for (enough_from, short_h) in
                [(None, 900.0), (Some(at(31.0)), 900.0), (Some(at(5.0)), 0.0)]
            {
                let of = CoolSupply { supply: at(140.0), rooms: Vec::new(), enough_from, short_h };
                let key = format!("enough {enough_from:?} {system:?}");
                book.add(key, text::supply_said(&of, system));
            }
            for (add, fits) in [(Some(3.0), true), (Some(9.0), false), (None, false)] {
                let add = add.map(|feet| Length::of(feet, Unit::Foot));
                let room = CoolRoom { room: RoomId(6), share: 0.8, add, fits };
                // A length alone is the same in both languages where it is metric.
                let [_, (_, said), _] = text::cool_room(&room, system).try_into().expect("three");
                book.add(format!("add {add:?} {system:?}"), format!("{}: {said}", text::to_add()));
            }
        }
        book.add("no line", text::cooler_line(None, at(70.0), at(200.0), System::Us));
        book.add("chart", text::season_picture(4));
        book.add("day's chart", text::night_picture(4));
        book.add("cooler chart", text::cooler_picture());
        book.add("hours", text::most_hours("800"));
        for fuel in [
            Fuel::NaturalGasTherm,
            Fuel::NaturalGasCcf,
            Fuel::HeatingOilGallon,
            Fuel::PropaneGallon,
        ] {
            // A therm is one in both.
            let said = text::fuel_amount(800.0, fuel, System::Us);
            book.add(format!("{fuel:?}"), format!("{}: {said}", text::hours_word()));
        }
        let setbacks =
            [("as it is", control.setback), ("none", Setback { hours: 0.0, ..control.setback })];
        for (key, setback) in setbacks {
            for (end, said) in text::night_said(&rooms, &day, setback, System::Us) {
                book.add(format!("{key} {end}"), said);
            }
        }
        book.add("never", text::recovered(None));
    }));
    let setback = Setback { recover_h: 3.0, ..control.setback };
    insta::assert_snapshot!(in_both(|book| {
        let mut say = |key: &str, hours: Option<f64>, strength: Option<f64>| {
            let mut day = day.clone();
            day.zones.truncate(1);
            day.zones[0].recovered_h = hours;
            day.boiler = strength.map(|_| design.piping.heat);
            day.strength = strength;
            for (end, said) in
                text::night_said(&rooms, &day, setback, System::Us).into_iter().take(2)
            {
                book.add(format!("{key} {end}"), said);
            }
        };
        say("in time", Some(2.5), Some(1.0));
        say("late", Some(5.25), Some(1.62));
        say("never", None, None);
    }));
}
