//! The words of suggested loops.

use super::{Book, in_both};
use crate::suggest::{changes, largest_last, price, too_long};
use finrun_engine::building::RoomId;
use finrun_engine::quantity::{Length, Power, System, Temperature, Unit, Velocity, VolumeFlow};
use finrun_engine::suggest::{Change, Gain, Trouble};
use finrun_text as text;

fn feet(feet: f64) -> Length {
    Length::of(feet, Unit::Foot)
}

/// One of each kind.
fn every_trouble(room: RoomId) -> Vec<Trouble> {
    let velocity = |value| Velocity::of(value, Unit::FootPerSecond);
    let flow = |value| VolumeFlow::of(value, Unit::GallonPerMinute);
    let (at, most, least) = (1, velocity(4.0), velocity(2.0));
    let all = vec![
        Trouble::Short { room, short: Power::of(820.0, Unit::BtuPerHour) },
        Trouble::Carries { at, element: feet(96.0), carries: feet(88.5) },
        Trouble::Fast { at, velocity: velocity(4.6), most },
        Trouble::PumpShort { meant: flow(4.2), flow: flow(2.9) },
        Trouble::Long { at, element: feet(75.0), usual: feet(66.5) },
        Trouble::Slow { at, velocity: velocity(1.1), least },
    ];
    // A new one does not compile until it stands above.
    for trouble in &all {
        match trouble {
            Trouble::Short { .. }
            | Trouble::Carries { .. }
            | Trouble::Fast { .. }
            | Trouble::PumpShort { .. }
            | Trouble::Long { .. }
            | Trouble::Slow { .. } => {}
        }
    }
    all
}

const GAINS: [Gain; 7] = [
    Gain::RoomsHeated,
    Gain::LessShort,
    Gain::WithinLimits,
    Gain::WithinPractice,
    Gain::Cheaper,
    Gain::FewerLoops,
    Gain::LessElement,
];

#[test]
fn words_of_suggested_loops() {
    let tell = |book: &mut Book| {
        let fixed = [
            text::suggest_loops(),
            text::suggest_note(),
            text::trying_loops(),
            text::use_loops(),
            text::loops_used(),
            text::loops_stay(),
            text::no_loops(),
            text::this_zone(),
            text::today(),
            text::suggested(),
            text::what_is_wrong(),
            text::what_stays(),
            text::before_piping(),
            text::figures_note(),
        ];
        for (at, words) in fixed.into_iter().enumerate() {
            book.add(format!("fixed {at}"), words);
        }
        let mut priced = too_long();
        price(&mut priced, "25");
        for (name, draft) in [("split", priced), ("turned", largest_last())] {
            let change = changes(&draft);
            for system in [System::Us, System::Si] {
                let mut add = |what: &str, lines: Vec<String>| {
                    for (at, line) in lines.into_iter().enumerate() {
                        book.add(format!("{name} {system:?}: {what} {at}"), line);
                    }
                };
                let mut draft = draft.clone();
                draft.units = system;
                add("loop", text::loop_lines(&draft, &change.after, system));
                add("today", text::troubles(&draft, &change.before));
                add("measure", text::to_measure(&draft, &change));
                let rows = text::loop_figures(&change, system).into_iter();
                add("row", rows.map(|(_, name, [a, b])| format!("{name}: {a}, {b}")).collect());
            }
        }
        let draft = largest_last();
        let mut change = changes(&draft);
        change.before.loops.push(change.before.loops[0].clone());
        change.before.problems = every_trouble(draft.rooms[1].id);
        for (at, line) in text::troubles(&draft, &change.before).into_iter().enumerate() {
            book.add(format!("trouble {at}"), line);
        }
        for gain in GAINS {
            let still = Change { gain, ..change.clone() };
            book.add(format!("{gain:?}"), text::gain(&still));
        }
        // Not all is cured.
        (change.after.short_rooms, change.after.problems) = (2, change.before.problems.clone());
        for gain in [Gain::RoomsHeated, Gain::WithinLimits] {
            let still = Change { gain, ..change.clone() };
            book.add(format!("{gain:?}, not all"), text::gain(&still));
        }
        let zoned = |element, head, back, short| text::Zoned {
            element: feet(element),
            head: feet(head),
            back: Temperature::of(back, Unit::Fahrenheit),
            short,
        };
        let before = zoned(42.0, 2.1, 158.0, 1);
        book.add("moved", text::moved(&before, &zoned(41.0, 2.3, 157.0, 0), System::Us));
        book.add("moved in SI", text::moved(&before, &zoned(41.0, 2.3, 157.0, 1), System::Si));
        book.add("nothing moved", text::moved(&before, &before, System::Us));
    };
    insta::assert_snapshot!(in_both(tell));
}
