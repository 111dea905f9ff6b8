//! What a house is built with, counted by hand, and what that costs.

mod bought;
mod by_hand;
mod forms;

use crate::shipped::{COTTAGE, SHIPPED};
use crate::support::{add_room, add_wall, cold_day, open, set, solve};
use finrun_engine::building::{RoomId, SurfaceId};
use finrun_engine::compare::{Layout, layouts};
use finrun_engine::job::{
    Choice, Draft, Field, LegField, LegKind, Pick, PriceField, StockField, SurfaceField, Zoning,
};
use finrun_engine::named::Named;
use finrun_engine::pipe::{Material, Tube};
use finrun_engine::quantity::{Length, Money, Unit};
use finrun_engine::takeoff::cost::{Cost, cost};
use finrun_engine::takeoff::count::{count, joints};
use finrun_engine::takeoff::item::{Amount, Class, Item, Reason, Whose};

/// All of one class: things, or feet.
fn sum(items: &[Item], is_of: impl Fn(&Item) -> bool) -> f64 {
    let amount = |item: &Item| match item.amount {
        Amount::Count(count) => f64::from(count),
        Amount::Length(length) => length.to(Unit::Foot),
    };
    // Feet that went through metres and back, to a millionth.
    (items.iter().filter(|item| is_of(item)).map(amount).sum::<f64>() * 1e6).round() / 1e6
}

fn part(items: &[Item], field: PriceField) -> f64 {
    sum(items, |item| item.class == Class::Part(field))
}

fn counted(draft: &Draft) -> Vec<Item> {
    let (job, design) = solve(draft);
    count(&job, &design)
}

fn cost_of(draft: &Draft) -> (Vec<Item>, Cost) {
    let (job, design) = solve(draft);
    let items = count(&job, &design);
    let cost = cost(&job, &items);
    (items, cost)
}

/// A price of its own for everything.
fn price_all(draft: &mut Draft) {
    for &feet in &draft.element.stock_ft.clone() {
        let price = format!("{}", 10 * u32::from(feet) + 3);
        set(draft, Field::Stocked(feet, StockField::Price), &price);
    }
    for (nth, &field) in PriceField::ALL.iter().enumerate() {
        set(draft, Field::Price(field), &format!("{}", 7 * nth + 2));
    }
}

/// Each kind of thing stands for something that is there, and every piece of the design is counted.
#[test]
fn every_piece_of_every_layout_is_counted_once() {
    for text in SHIPPED {
        let mut draft = open(text);
        draft.add_zone();
        let last = draft.rooms.last().map(|room| room.id).expect("a room");
        let zone = draft.zones[1].id;
        draft.place_room(last, finrun_engine::job::Hung { zone, branch: 0 }, None);
        for layout in layouts(&draft) {
            let mut changed = draft.clone();
            changed.lay_out(layout);
            let (_, design) = solve(&changed);
            let items = counted(&changed);
            let pieces = sum(&items, |item| matches!(item.class, Class::Piece(_)));
            assert_eq!(pieces, design.piece_count() as f64, "{layout:?}");
            let runs =
                design.rooms.iter().map(|room| room.element.choice.runs.len()).sum::<usize>();
            let at_pieces = sum(&items, |item| {
                item.class == Class::Part(PriceField::Joint) && item.reason == Reason::AtPieces
            });
            assert_eq!(at_pieces, pieces + runs as f64);
            // Pipe is whatever the water passes beside the elements.
            let element = |p: &&finrun_engine::network::Passage| {
                !matches!(p.place, finrun_engine::network::Place::Element(_))
            };
            let pipe: Length =
                design.piping.passages.iter().filter(element).map(|p| p.length).sum();
            assert!((part(&items, PriceField::Pipe) - pipe.to(Unit::Foot)).abs() < 1e-5);
            assert_eq!(part(&items, PriceField::Thermostat), design.piping.zones.len() as f64);
            let hard = |field| {
                sum(&items, |item| {
                    let copper = |tube: Tube| tube.material() != Material::Pex;
                    item.class == Class::Part(field) && item.tube.is_some_and(copper)
                })
            };
            use PriceField::*;
            let two =
                [Elbow, Reducer, BalancingValve, ZoneValve, ShutOffValve, PurgeValve, FlowCheck];
            let solder = part(&items, Joint)
                + part(&items, Transition)
                + hard(Adapter)
                + two.into_iter().map(|field| 2.0 * hard(field)).sum::<f64>()
                + 3.0 * (hard(Tee) + hard(DiverterTee));
            assert_eq!(f64::from(joints(&items)), solder);
            for item in &items {
                let known = match item.whose {
                    Whose::House => true,
                    Whose::Zone(zone) => changed.zone(zone).is_some(),
                    Whose::Loop(zone, room) => {
                        changed.zone(zone).is_some() && changed.room(room).is_some()
                    }
                    Whose::Room(room) => changed.room(room).is_some(),
                };
                assert!(known && !matches!(item.amount, Amount::Count(0)), "{item:?}");
            }
        }
    }
}

#[test]
fn a_sum_is_that_of_its_lines_and_nothing_is_guessed() {
    let bare = cost_of(&open(COTTAGE));
    assert_eq!(bare.1.known, Money::ZERO);
    // Without a price of its own the enclosure is in that of the pieces.
    assert!(bare.1.lines.iter().all(|line| line.sum.is_none()));
    assert!(!bare.1.unpriced.contains(&Class::Part(PriceField::Enclosure)));
    // What is but a name for others is bought where it has a price.
    assert!(!bare.1.unpriced.contains(&Class::Part(PriceField::Joint)));
    assert!(bare.1.unpriced.contains(&Class::Part(PriceField::Coupling)));

    let mut draft = open(COTTAGE);
    price_all(&mut draft);
    let (items, whole) = cost_of(&draft);
    assert_eq!(whole.unpriced, []);
    let lines: Money = whole.lines.iter().filter_map(|line| line.sum).sum();
    assert_eq!(whole.known, lines);
    // By hand from the counts.
    let mut by_hand = 0.0;
    for &feet in &draft.element.stock_ft {
        let is_of = |item: &Item| match item.class {
            Class::Piece(length) => (length.to(Unit::Foot) - f64::from(feet)).abs() < 1e-6,
            _ => false,
        };
        by_hand += sum(&items, is_of) * f64::from(10 * u32::from(feet) + 3);
    }
    for (nth, &field) in PriceField::ALL.iter().enumerate() {
        by_hand += part(&items, field) * (7 * nth + 2) as f64;
    }
    assert!((whole.known.si() - by_hand).abs() < 1e-6, "{} {by_hand}", whole.known.si());

    // One price less is one line less in the sum, and is said.
    set(&mut draft, Field::Price(PriceField::Elbow), "");
    let less = cost_of(&draft).1;
    assert_eq!(less.unpriced, [Class::Part(PriceField::Elbow)]);
    let elbows = whole.lines.iter().find(|l| l.class == Class::Part(PriceField::Elbow));
    let elbows = elbows.and_then(|line| line.sum).expect("elbows");
    assert!((whole.known - less.known - elbows).si().abs() < 1e-9 && elbows > Money::ZERO);
}

/// Bought pieces cost nothing; their enclosure does where it has a price of its own.
#[test]
fn what_was_bought_costs_nothing() {
    let mut draft = open(COTTAGE);
    price_all(&mut draft);
    let (items, whole) = cost_of(&draft);
    let piece = items.iter().find_map(|item| match item.class {
        Class::Piece(length) => Some(length),
        _ => None,
    });
    let feet = piece.expect("a piece").to(Unit::Foot).round() as u8;
    // The same pieces, whatever would be chosen now.
    let after = |draft: &Draft| cost(&solve(draft).0, &items);
    set(&mut draft, Field::Stocked(feet, StockField::Have), "1");
    let less = after(&draft);
    let saved = f64::from(10 * u32::from(feet) + 3);
    assert!(((whole.known - less.known).si() - saved).abs() < 1e-6);
    // One that has no price and needs none is not missing.
    set(&mut draft, Field::Stocked(feet, StockField::Price), "");
    set(&mut draft, Field::Stocked(feet, StockField::Have), "9");
    assert_eq!(after(&draft).unpriced, []);
    set(&mut draft, Field::Stocked(feet, StockField::Have), "0");
    assert!(matches!(after(&draft).unpriced[..], [Class::Piece(_)]));
}

/// Three rooms in a row, 12 ft of outside wall each, warm enough for one piece.
fn row() -> (Draft, Vec<(RoomId, SurfaceId)>) {
    let mut draft = cold_day();
    let rooms: Vec<(RoomId, SurfaceId)> = ["One", "Two", "Three"]
        .into_iter()
        .map(|name| {
            let room = add_room(&mut draft, name, "12", "10");
            (room, add_wall(&mut draft, room, "12", "0.3"))
        })
        .collect();
    (draft, rooms)
}

/// Round a corner in the enclosure two caps are saved, and a corner, a foot of enclosure over plain pipe
/// and its elbow are added; a doorway has the caps and no corner.
#[test]
fn enclosures_that_run_on_share_their_caps() {
    let (mut draft, rooms) = row();
    let before = counted(&draft);
    assert_eq!(part(&before, PriceField::EndCap), 6.0);
    draft.add_leg(rooms[1].0, LegKind::InsideCorner);
    set(&mut draft, Field::Leg(rooms[1].0, 0, LegField::Length), "1");
    draft.add_leg(rooms[2].0, LegKind::Doorway);
    let after = counted(&draft);
    assert_eq!(part(&after, PriceField::EndCap), 4.0);
    assert_eq!(part(&after, PriceField::Corner), 1.0);
    let more = |field| part(&after, field) - part(&before, field);
    assert!((more(PriceField::Enclosure) - 1.0).abs() < 1e-5);
    // Four elbows each that were taken for the ways; one at the corner, four at the door.
    assert_eq!(more(PriceField::Elbow), (1.0 + 4.0) - (4.0 + 4.0));
    // Between mains each run stands by itself.
    let zone = draft.zones[0].id;
    draft.arrange(zone, finrun_engine::job::Arrangement::DirectReturn);
    assert_eq!(part(&counted(&draft), PriceField::EndCap), 6.0);
}

/// A room without an element has no caps, joints or tees of its own.
#[test]
fn a_room_without_an_element_has_no_ends() {
    use finrun_engine::job::RoomField;
    for (at, _) in row().1.iter().enumerate() {
        let (mut draft, rooms) = row();
        set(&mut draft, Field::Room(rooms[at].0, RoomField::OtherHeat), "99999");
        let items = counted(&draft);
        assert_eq!(part(&items, PriceField::EndCap), 4.0, "room {at}");
        assert_eq!(part(&items, PriceField::Joint), 4.0, "room {at}");
        let zone = draft.zones[0].id;
        draft.arrange(zone, finrun_engine::job::Arrangement::ReverseReturn);
        let items = counted(&draft);
        assert_eq!(part(&items, PriceField::Tee), 2.0 + 2.0, "one branch, and the boiler room's");
        assert_eq!(part(&items, PriceField::BalancingValve), 2.0);
    }
}

/// Pieces that are kept are told apart; they are bought, soldered and capped like any other.
#[test]
fn pieces_that_are_kept_are_told_apart() {
    let (mut draft, rooms) = row();
    price_all(&mut draft);
    let (before, cost_before) = cost_of(&draft);
    let first = before.iter().find_map(|item| match item.class {
        Class::Piece(length) if item.whose == Whose::Room(rooms[0].0) => Some(length),
        _ => None,
    });
    let feet = first.expect("a piece").to(Unit::Foot).round() as u8;
    draft.fix_pieces(rooms[0].0, rooms[0].1, 0, vec![feet]);
    let (after, cost_after) = cost_of(&draft);
    let kept = |items: &[Item]| sum(items, |item| matches!(item.class, Class::Kept(_)));
    let others = |items: &[Item]| sum(items, |item| matches!(item.class, Class::Piece(_)));
    assert_eq!((kept(&before), kept(&after)), (0.0, 1.0));
    assert_eq!(others(&after), others(&before) - 1.0);
    for field in [PriceField::Joint, PriceField::EndCap, PriceField::Enclosure] {
        assert_eq!(part(&before, field), part(&after, field));
    }
    assert_eq!(cost_after.known, cost_before.known);
}

/// Zones by valve or by circulator: a part each, and two tees where one more leaves the header.
#[test]
fn zones_need_their_valves_and_tees() {
    let (mut draft, rooms) = row();
    let one = counted(&draft);
    let zone = draft.add_zone();
    draft.pick(Choice::Hung(rooms[2].0), Pick::Hung(finrun_engine::job::Hung { zone, branch: 0 }));
    let two = counted(&draft);
    let more = |items: &[Item], field| part(items, field) - part(&one, field);
    let fields = [
        PriceField::ZoneValve,
        PriceField::Circulator,
        PriceField::Thermostat,
        PriceField::LoopValves,
        PriceField::Tee,
    ];
    assert_eq!(fields.map(|field| more(&two, field)), [2.0, 0.0, 1.0, 1.0, 2.0]);
    draft.zoning = Zoning::Circulators;
    let own = counted(&draft);
    assert_eq!(fields.map(|field| more(&own, field)), [0.0, 1.0, 1.0, 1.0, 2.0]);
}

/// A layout leaves nothing of a draft that it does not need to change.
#[test]
fn own_zones_stay_as_they_are() {
    let (mut draft, _) = row();
    draft.add_zone();
    let mut same = draft.clone();
    same.lay_out(Layout::AsDrawn);
    assert_eq!(same, draft);
    let field = SurfaceField::Length;
    assert!(draft.rooms.iter().all(|room| {
        room.surfaces.iter().all(|s| draft.entry(Field::Surface(room.id, s.id, field)).is_some())
    }));
}

/// A second run of wall in a room has two caps more, and a joint more than pieces, in every layout.
#[test]
fn a_second_run_has_ends_of_its_own() {
    let mut draft = cold_day();
    draft.element.stock_ft = vec![7];
    let room = add_room(&mut draft, "Corner room", "8", "8");
    // 5,400 Btu/h: one piece of 7 ft gives some 4,000.
    add_wall(&mut draft, room, "8", "0.6");
    add_wall(&mut draft, room, "8", "0.6");
    for layout in layouts(&draft) {
        let mut changed = draft.clone();
        changed.lay_out(layout);
        let items = counted(&changed);
        let of = |field| part(&items, field);
        assert_eq!((of(PriceField::Joint), of(PriceField::EndCap)), (4.0, 4.0), "{layout:?}");
    }
}
