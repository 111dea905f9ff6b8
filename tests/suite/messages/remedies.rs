//! What is said of ways out that were worked out, and of what is built beyond the loads.

use super::examples::{fahrenheit, feet, gpm};
use super::{Book, in_both};
use crate::support::{FOUR_ROOMS, open};
use finrun_engine::building::SurfaceId;
use finrun_engine::job::PriceField;
use finrun_engine::oversize::{Burner, Oversize};
use finrun_engine::plant::boiler::{Cycle, CycleVerdict, Running};
use finrun_engine::quantity::{Area, Money, Power, Resistance, System, Unit};
use finrun_engine::remedy::{Circulator, Does, Way, Worked};
use finrun_engine::takeoff::item::Class;
use finrun_text as text;

fn btu(value: f64) -> Power {
    Power::of(value, Unit::BtuPerHour)
}

#[test]
fn ways_out_that_were_worked_out() {
    let draft = open(FOUR_ROOMS);
    let room = draft.rooms[1].id;
    let wall: SurfaceId = draft.rooms[1].surfaces[0].id;
    let ways = [
        ("hotter", Way::HotterWater { supply: fahrenheit(191.0) }),
        ("element", Way::BetterElement { factor: 1.3, element: feet(46.0) }),
        ("ruled out", Way::RuledOutWall { wall, pieces: feet(3.0) }),
        ("new wall", Way::NewWall { length: feet(3.5) }),
        ("flow", Way::MoreFlow { flow: gpm(3.3), circulator: Circulator::GivesIt }),
        ("pump", Way::MoreFlow { flow: gpm(5.3), circulator: Circulator::TooSmall }),
        ("circuit", Way::SecondCircuit { from: room, pipe: feet(38.0) }),
        ("loss", Way::LessLoss { by: btu(420.0) }),
        (
            "insulate",
            Way::Insulate {
                surface: wall,
                resistance: Resistance::of(21.0, Unit::UsR),
                area: Area::of(96.0, Unit::SquareFoot),
            },
        ),
        ("first", Way::MoveFirst),
    ];
    let tell = |book: &mut Book| {
        let mut add = |key: &str, way, does, cost: Option<f64>, unpriced| {
            let worked = Worked { room, way, does, cost: cost.map(Money::from_si), unpriced };
            for system in [System::Us, System::Si] {
                book.add(format!("{key} {system:?}"), text::worked(&worked, &draft, system));
            }
        };
        for (key, way) in ways {
            add(key, way, Does::HeatsAll, Some(0.0), Vec::new());
        }
        let not_enough = Does::NotEnough { remains: btu(420.0) };
        add("no price known", ways[7].1, Does::HeatsRoom, None, Vec::new());
        add("too little", ways[0].1, not_enough, Some(0.0), Vec::new());
        add("priced", ways[3].1, Does::HeatsRoom, Some(54.25), Vec::new());
        let parts = vec![Class::Piece(feet(3.0)), Class::Part(PriceField::EndCap)];
        add("partly priced", ways[3].1, Does::HeatsRoom, Some(12.0), parts.clone());
        add("unpriced", ways[3].1, Does::HeatsRoom, None, parts);
    };
    insta::assert_snapshot!(in_both(tell));
}

#[test]
fn what_is_built_beyond_the_loads() {
    let cycle = |on_s| {
        Running::Cycling(Cycle { on_s, off_s: 900.0, per_hour: 2.0, verdict: CycleVerdict::Short })
    };
    let over = Oversize {
        rooms: Vec::new(),
        length: feet(2.4),
        pieces: btu(900.0),
        margin: Power::ZERO,
        back: fahrenheit(157.0),
        back_exact: fahrenheit(160.0),
        supply: fahrenheit(180.0),
        supply_enough: Some(fahrenheit(174.0)),
        calls_at_half: 0.46,
        burner: None,
    };
    let tell = |book: &mut Book| {
        for system in [System::Us, System::Si] {
            book.add(format!("supply {system:?}"), text::supply_enough(&over, system));
            book.add(format!("calls {system:?}"), text::calls_at_half(&over, system));
        }
        let none = Oversize { supply_enough: None, ..over.clone() };
        book.add("no lower supply", text::supply_enough(&none, System::Us));
        let burner = Burner { built: cycle(300.0), exact: cycle(270.0) };
        book.add("burner", text::burner_runs(&burner));
        let burner = Burner { built: Running::Throughout, exact: cycle(2700.0) };
        book.add("burner throughout", text::burner_runs(&burner));
    };
    insta::assert_snapshot!(in_both(tell));
}
