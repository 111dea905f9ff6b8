//! What is bought: shares to spare, bundles, prices by size, supplies by the joint, the cut plan, and that
//! every line can be traced.

use super::{cost_of, counted, price_all, row};
use crate::random_house::full_houses;
use crate::shipped::{COTTAGE, SHIPPED, TWO_STOREY};
use crate::support::{open, set, solve};
use finrun_engine::compare::layouts;
use finrun_engine::job::{
    Draft, Field, Group, LegField, LegKind, PriceField, RoomField, SizedField, ZoneField, read,
};
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{Length, Money, Unit};
use finrun_engine::takeoff::cost::Price;
use finrun_engine::takeoff::cutting::{Cutting, cuttings};
use finrun_engine::takeoff::item::{Class, Form, Item, Whose};
use finrun_engine::takeoff::list::{Buy, Entry, Note, TakeOff, list};
use finrun_engine::takeoff::straights::straights;
use proptest::prelude::*;

fn taken_off(draft: &Draft) -> TakeOff {
    let (job, design) = solve(draft);
    list(&job, &design)
}

fn entry(take_off: &TakeOff, field: PriceField) -> &Entry {
    let own = |entry: &&Entry| entry.line.class == Class::Part(field);
    take_off.lines.iter().find(own).unwrap_or_else(|| panic!("{field:?} is on the list"))
}

fn near(a: Money, b: f64) -> bool {
    (a.si() - b).abs() < 1e-6 * (1.0 + b.abs())
}

/// 7 joints' couplings and so on: a share to spare of 10 % makes 22 elbows 25, and one coupling two;
/// other kinds stay.
#[test]
fn what_is_to_spare_is_rounded_up_to_whole_things() {
    let mut draft = open(COTTAGE);
    price_all(&mut draft);
    set(&mut draft, Field::Price(PriceField::Elbow), "2");
    set(&mut draft, Field::Spare(Group::Fittings), "10");
    let take_off = taken_off(&draft);
    let elbow = entry(&take_off, PriceField::Elbow);
    assert_eq!(elbow.buy, Buy::Count(25), "22 and a tenth of it");
    assert_eq!(elbow.sum, Some(Money::from_si(50.0)));
    assert_eq!(entry(&take_off, PriceField::Coupling).buy, Buy::Count(2));
    assert_eq!(entry(&take_off, PriceField::Cradle).buy, Buy::Count(10));
    // 31 ft of pipe are 40 ft of sticks; a third more is 41.33 ft and takes another stick.
    set(&mut draft, Field::Price(PriceField::Pipe), "3");
    let bought = |draft: &Draft| {
        let take_off = taken_off(draft);
        let pipe = entry(&take_off, PriceField::Pipe);
        let Buy::Lengths(lengths) = &pipe.buy else { panic!("{pipe:?}") };
        let feet = |of: &(Length, u32)| (of.0.to(Unit::Foot).round() as u32, of.1);
        (lengths.iter().map(feet).collect::<Vec<_>>(), pipe.sum.expect("a price").si())
    };
    let (sticks, price) = bought(&draft);
    assert_eq!(sticks, [(20, 2)]);
    assert!((price - 120.0).abs() < 1e-6, "{price}");
    set(&mut draft, Field::Spare(Group::Pipe), "33.4");
    let (sticks, price) = bought(&draft);
    assert_eq!(sticks, [(20, 2), (10, 1)]);
    assert!((price - 150.0).abs() < 1e-6, "{price}");
}

/// A part without a price is in that of its bundle where that is typed, and else is missing; a bundle
/// that is but a name for its parts is never missing. Shut-offs of the boiler room are no loop's.
#[test]
fn what_is_in_the_price_of_another_costs_nothing_more() {
    let mut draft = open(COTTAGE);
    let bare = cost_of(&draft).1;
    let missing = |cost: &finrun_engine::takeoff::cost::Cost, field| {
        cost.unpriced.contains(&Class::Part(field))
    };
    assert!(missing(&bare, PriceField::PurgeValve) && !missing(&bare, PriceField::LoopValves));
    set(&mut draft, Field::Price(PriceField::LoopValves), "60");
    let set_price = cost_of(&draft).1;
    assert!(near(set_price.known, 60.0), "{:?}", set_price.known);
    assert!(!missing(&set_price, PriceField::PurgeValve));
    let purge = set_price.lines.iter().find(|l| l.class == Class::Part(PriceField::PurgeValve));
    assert_eq!(purge.and_then(|line| line.price), Some(Price::Within(PriceField::LoopValves)));
    assert!(missing(&set_price, PriceField::ShutOffValve), "four in the boiler room");
    // Priced apart, it is paid beside the set.
    set(&mut draft, Field::Price(PriceField::PurgeValve), "25");
    assert!(near(cost_of(&draft).1.known, 85.0));
    // A circulator has flanges and relay in its price.
    set(&mut draft, Field::Price(PriceField::Circulator), "100");
    let pump = cost_of(&draft).1;
    assert!(near(pump.known, 185.0) && !missing(&pump, PriceField::Flanges));
}

/// The price of a size stands before that of any size, for that size only.
#[test]
fn a_size_has_its_own_price() {
    let mut draft = open(COTTAGE);
    set(&mut draft, Field::Price(PriceField::Elbow), "2");
    let of_one = |tube, text: &str, draft: &Draft| {
        let mut draft = draft.clone();
        set(&mut draft, Field::SizedPrice(tube, SizedField::Elbow), text);
        cost_of(&draft).1.known
    };
    assert!(near(cost_of(&draft).1.known, 44.0), "22 elbows");
    assert!(near(of_one(Tube::CopperMHalf, "3", &draft), 66.0));
    assert!(near(of_one(Tube::CopperMThreeQuarter, "3", &draft), 44.0));
}

/// From the fittings of the cottage: 75 joints, by hand in `quantities.md`; one spool holds 50.
#[test]
fn supplies_go_by_the_joint() {
    let mut draft = open(COTTAGE);
    let supplies = |draft: &Draft| {
        let take_off = taken_off(draft);
        [PriceField::Solder, PriceField::Gas].map(|field| entry(&take_off, field).buy.clone())
    };
    assert_eq!(supplies(&draft), [Buy::Count(2), Buy::Count(1)]);
    // One elbow more is two joints more: 77.
    let first = draft.rooms[0].id;
    set(&mut draft, Field::Room(first, RoomField::Elbows), "5");
    assert_eq!(supplies(&draft), [Buy::Count(2), Buy::Count(2)]);
    // 17 elbows: 101 joints.
    set(&mut draft, Field::Room(first, RoomField::Elbows), "17");
    assert_eq!(supplies(&draft), [Buy::Count(3), Buy::Count(2)]);
}

/// Wire is bought where it is measured; where it is not, that is said.
#[test]
fn wire_that_is_not_measured_is_said() {
    let mut draft = open(COTTAGE);
    let zone = draft.zones[0].id;
    assert!(taken_off(&draft).notes.contains(&Note::WireNotMeasured(1)));
    set(&mut draft, Field::Zone(zone, ZoneField::Wire), "31.2");
    let take_off = taken_off(&draft);
    assert!(!take_off.notes.iter().any(|note| matches!(note, Note::WireNotMeasured(_))));
    let Buy::Length(wire) = entry(&take_off, PriceField::Wire).buy else { panic!("a length") };
    assert!((wire.to(Unit::Foot) - 32.0).abs() < 1e-9, "whole feet");
}

/// Legs are straights of their own; corners are told apart; a splice where the enclosure goes straight on.
#[test]
fn legs_are_cut_one_by_one() {
    let (mut draft, rooms) = row();
    for (nth, kind) in [LegKind::OutsideCorner, LegKind::Along].into_iter().enumerate() {
        draft.add_leg(rooms[1].0, kind);
        set(&mut draft, Field::Leg(rooms[1].0, nth, LegField::Length), ["1", "3"][nth]);
    }
    draft.add_leg(rooms[2].0, LegKind::Doorway);
    set(&mut draft, Field::Leg(rooms[2].0, 0, LegField::Length), "7");
    let (job, design) = solve(&draft);
    let legs: Vec<(Option<LegKind>, f64)> = straights(&job, &design)
        .iter()
        .filter(|straight| straight.leg.is_some())
        .map(|straight| (straight.leg, (straight.length.to(Unit::Foot) * 1e6).round() / 1e6))
        .collect();
    let by_hand = [
        (Some(LegKind::OutsideCorner), 1.0),
        (Some(LegKind::Along), 3.0),
        (Some(LegKind::Doorway), 7.0),
    ];
    assert_eq!(legs, by_hand);
    let items = counted(&draft);
    let form = |form: Form| items.iter().filter(|item| item.form == form).count();
    assert_eq!((form(Form::Inside), form(Form::Outside)), (0, 1));
    let of_second = |field| {
        let own = |item: &&Item| {
            item.class == Class::Part(field) && item.whose == Whose::Room(rooms[1].0)
        };
        items.iter().filter(own).map(|item| item.amount.number()).sum::<f64>()
    };
    // The enclosure along the wall goes on in that of the element.
    assert_eq!(of_second(PriceField::SpliceCover), 1.0);
}

/// PEX comes in coils, longer ones where a stretch is longer; copper of 45 ft is two sticks and a piece.
#[test]
fn long_stretches_take_long_coils_or_couplings() {
    let (mut draft, rooms) = row();
    set(&mut draft, Field::Room(rooms[1].0, RoomField::PipeTo), "45");
    let (job, design) = solve(&draft);
    let [copper] = &cuttings(&job, &design)[..] else { panic!("one tube") };
    assert_eq!(copper.pieces.iter().filter(|piece| piece.part.1 == 3).count(), 3);
    assert!(copper.plan.is_ok());
    draft.zones[0].pipe = Tube::PexThreeQuarter;
    let coils = |draft: &Draft| {
        let (job, design) = solve(draft);
        let all = cuttings(&job, &design);
        let coil = all.iter().find(|of| of.tube == Tube::PexThreeQuarter).expect("a coil").clone();
        let bought = coil.bought(0.0);
        bought.iter().map(|(l, n)| (l.to(Unit::Foot).round() as u32, *n)).collect::<Vec<_>>()
    };
    assert_eq!(coils(&draft), [(100, 1)]);
    set(&mut draft, Field::Room(rooms[1].0, RoomField::PipeTo), "99");
    assert_eq!(coils(&draft), [(100, 2)], "no coil holds 99 ft and another stretch");
    set(&mut draft, Field::Room(rooms[1].0, RoomField::PipeTo), "120");
    assert_eq!(coils(&draft), [(300, 1)]);
}

/// Every piece once, and nothing of a stick is lost but to the saw.
fn adds_up(cutting: &Cutting) {
    let plan = cutting.plan.as_ref().expect("a plan");
    let mut times = vec![0; cutting.pieces.len()];
    for stick in &plan.sticks {
        assert!(cutting.sold_sixteenths.contains(&stick.stick_sixteenths));
        let mut cuts = 0;
        for cut in &stick.cuts {
            times[cut.piece] += 1;
            assert_eq!(cut.length_sixteenths, cutting.pieces[cut.piece].length_sixteenths);
            cuts += cut.length_sixteenths;
        }
        let saw = stick.stick_sixteenths - cuts - stick.offcut_sixteenths;
        let number = stick.cuts.len() as u32;
        let between = (number - 1) * cutting.kerf_sixteenths;
        assert!((between..=between + cutting.kerf_sixteenths).contains(&saw), "{stick:?}");
        assert!(stick.offcut_sixteenths == 0 || saw == number * cutting.kerf_sixteenths);
    }
    assert!(times.iter().all(|&times| times == 1), "{times:?}");
}

fn is_sound(draft: &Draft) {
    let Some(job) = read(draft).job else { return };
    let design = finrun_engine::design::design(&job);
    let take_off = list(&job, &design);
    // Pipe: its straights are its length, and its pieces are its straights but for the rounding up.
    let straight: Length = straights(&job, &design).iter().map(|s| s.length).sum();
    let pipe = |entry: &&Entry| entry.line.class == Class::Part(PriceField::Pipe);
    let needed: f64 =
        take_off.lines.iter().filter(pipe).map(|entry| entry.line.amount.number()).sum();
    assert!((straight.si() - needed).abs() < 1e-6, "{straight:?} {needed}");
    let mut cut = 0.0;
    let mut pieces = 0;
    for cutting in &take_off.cuttings {
        adds_up(cutting);
        cut += cutting.pieces.iter().map(|p| f64::from(p.length_sixteenths)).sum::<f64>();
        pieces += cutting.pieces.len();
    }
    let over = cut * 0.0254 / 16.0 - needed;
    assert!((-1e-6..=pieces as f64 * 0.0254 / 16.0 + 1e-6).contains(&over), "{over}");
    for entry in &take_off.lines {
        let mut number = 0.0;
        for (whose, amount) in entry.reasons.iter().flat_map(|because| &because.parts) {
            number += amount.number();
            let room = |id| job.house.rooms.iter().any(|room| room.id == id);
            let zone = |id| job.zones.iter().any(|zone| zone.id == id);
            assert!(match *whose {
                Whose::House => true,
                Whose::Zone(id) => zone(id),
                Whose::Loop(id, first) => zone(id) && room(first),
                Whose::Room(id) => room(id),
            });
        }
        let line = entry.line.amount.number();
        assert!((line - number).abs() < 1e-6 * (1.0 + line), "{entry:?}");
        assert!(!entry.reasons.is_empty());
    }
    let total = |sums: &mut dyn Iterator<Item = Money>| sums.map(Money::si).sum::<f64>();
    let groups = total(&mut take_off.groups.iter().map(|(_, sum)| *sum));
    assert!(near(take_off.sum, groups));
    for by in [&take_off.by_subject, &take_off.by_circuit] {
        let sum = total(&mut by.iter().map(|(_, sum)| *sum));
        assert!(near(take_off.needed, sum), "{:?} {sum}", take_off.needed);
    }
    let caps = |form| {
        let own = |entry: &&Entry| entry.line.form == form;
        take_off.lines.iter().filter(own).map(|entry| entry.line.amount.number()).sum::<f64>()
    };
    assert_eq!(caps(Form::Left), caps(Form::Right));
}

#[test]
fn every_line_of_every_layout_can_be_traced() {
    for text in SHIPPED {
        let mut draft = open(text);
        price_all(&mut draft);
        set(&mut draft, Field::Spare(Group::Pipe), "10");
        for layout in layouts(&draft) {
            let mut changed = draft.clone();
            changed.lay_out(layout);
            is_sound(&changed);
        }
    }
    // What is bought costs no less than what is needed, and with nothing to spare more by pipe only.
    let mut draft = open(TWO_STOREY);
    price_all(&mut draft);
    let take_off = taken_off(&draft);
    let (job, _) = solve(&draft);
    let price = job.prices.by_length(PriceField::Pipe).expect("a price");
    let more = price * Length::of(130.0 - 108.0, Unit::Foot);
    let solid: f64 = (take_off.sum - take_off.needed).si();
    assert!((solid - more.si()).abs() < 1e-6, "{solid} {more:?}");
    assert_eq!(take_off.unpriced, 0);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn random_houses_add_up(draft in full_houses()) {
        is_sound(&draft);
    }
}
