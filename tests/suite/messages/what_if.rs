//! The words of changes that are weighed.

use super::{Book, in_both};
use crate::support::{V6_FIXTURE, choices, open};
use finrun_engine::building::ChangeId;
use finrun_engine::job::{
    ChangeField, ChangeKind, Choice, Field, OutsideWalls, Pick, UValue, Whose,
};
use finrun_engine::named::Named;
use finrun_engine::quantity::{Area, Money, System, Unit};
use finrun_engine::season::NoSeason;
use finrun_engine::what_if::{NotWeighed, Payback, Reach, Weighing, apply};
use finrun_text as text;

#[test]
fn changes_that_are_weighed() {
    let draft = open(V6_FIXTURE);
    let mut book = Book::default();
    for (name, words) in text::WHAT_IF_WORDS {
        book.add(name, words());
    }
    let windows = draft.what_if[0].id;
    for choice in choices(&draft) {
        let of_change = match choice {
            Choice::ChangeKind(id)
            | Choice::ChangeWhose(id)
            | Choice::ChangeBuild(id)
            | Choice::ChangeLeaks(id)
            | Choice::ChangeAirClass(id)
            | Choice::ChangeLevel(id)
            | Choice::OutsideWalls(id) => id == windows,
            _ => false,
        };
        if !of_change {
            continue;
        }
        book.add(choice, text::choice_label(choice));
        for pick in draft.picks(choice) {
            if !matches!(pick, Pick::Build(UValue::Listed(_))) {
                book.add(format!("{choice} {pick:?}"), text::pick(&draft, pick));
            }
        }
    }
    for change in &draft.what_if {
        book.add(change.id.0, text::change_title(&draft, change.id));
    }
    book.add("gone", text::change_name(&draft, ChangeId(9999)));
    for (count, area) in [(0, Some(0.0)), (1, Some(12.0)), (7, Some(98.0)), (3, None)] {
        let reach = Reach { count, area: area.map(|area| Area::of(area, Unit::SquareFoot)) };
        book.add(format!("reach {count}"), text::reached(&reach, System::Us));
    }
    let mut weighed = Weighing::of(&draft).expect("changes").all().expect("a comparison");
    let changed = apply(&draft);
    for system in [System::Us, System::Si] {
        for (key, name, cells) in text::weighed_rows(&weighed, &draft, system) {
            book.add(format!("{key} {system:?}"), format!("{name}: {}", cells.join("; ")));
        }
        for (id, name, cells) in text::weighed_rooms(&weighed, (&draft, &changed), system) {
            let cells = cells.map(|[before, after]| text::then_now(&before, &after));
            book.add(format!("room {id} {system:?}"), format!("{name}: {}", cells.join("; ")));
        }
    }
    book.add("heads", text::weighed_room_heads().join("; "));
    let wrong = NotWeighed::Wrong(Box::new(changed), Vec::new());
    for why in [NotWeighed::NothingOn, NotWeighed::NoJob, NotWeighed::Unread, wrong] {
        let name = format!("{why:?}").chars().take(9).collect::<String>();
        book.add(name, text::not_weighed(&why));
    }
    for why in [NoSeason::NothingHeated, NoSeason::NoFlows, NoSeason::NotSettled] {
        book.add(format!("{why:?}"), text::no_year(why));
    }
    weighed.cost = Money::from_si(8400.0);
    for payback in [
        Payback::Years(0.02),
        Payback::Years(11.26),
        Payback::Years(250.0),
        Payback::NothingSaved,
        Payback::CostMissing,
        Payback::PriceMissing,
        Payback::NoYear,
    ] {
        weighed.payback = payback;
        book.add(format!("{payback:?}"), text::paid_back(&weighed, System::Us));
    }
    weighed.payback = Payback::CostMissing;
    weighed.uncosted = 1;
    book.add("one uncosted", text::paid_back(&weighed, System::Us));
    insta::assert_snapshot!(book.text());
    assert!(draft.what_if.iter().all(|change| Named::ALL.contains(&change.kind)));
}

/// Nothing of its own is left in English.
#[test]
fn changes_in_both_languages() {
    let draft = open(V6_FIXTURE);
    let windows = draft.what_if[0].id;
    let weighed = Weighing::of(&draft).expect("changes").all().expect("a comparison");
    let said = in_both(|book| {
        for (name, words) in text::WHAT_IF_WORDS {
            book.add(name, words());
        }
        for &field in ChangeField::ALL {
            let field = Field::Change(windows, field);
            book.add(field, text::field_label(field));
            let note = text::field_note(field);
            if !note.is_empty() {
                book.add(format!("{field} note"), note);
            }
        }
        for choice in [
            Choice::ChangeKind(windows),
            Choice::ChangeWhose(windows),
            Choice::ChangeBuild(windows),
            Choice::ChangeLeaks(windows),
            Choice::ChangeAirClass(windows),
            Choice::ChangeLevel(windows),
            Choice::OutsideWalls(windows),
        ] {
            book.add(choice, text::choice_label(choice));
        }
        for &kind in ChangeKind::ALL {
            book.add(kind.name(), text::pick(&draft, Pick::ChangeKind(kind)));
        }
        for &walls in OutsideWalls::ALL {
            book.add(walls.name(), text::pick(&draft, Pick::OutsideWalls(walls)));
        }
        book.add("house", text::pick(&draft, Pick::Whose(Whose::House)));
        book.add("title", text::change_title(&draft, windows));
        book.add("title of one that is off", text::change_title(&draft, draft.what_if[2].id));
        for (count, area) in [(0, Some(0.0)), (1, Some(12.0)), (7, Some(98.0)), (3, None)] {
            let reach = Reach { count, area: area.map(|area| Area::of(area, Unit::SquareFoot)) };
            book.add(format!("reach {count}"), text::reached(&reach, System::Us));
        }
        for why in [NotWeighed::NothingOn, NotWeighed::NoJob, NotWeighed::Unread] {
            book.add(format!("{why:?}"), text::not_weighed(&why));
        }
        for why in [NoSeason::NothingHeated, NoSeason::NoFlows, NoSeason::NotSettled] {
            book.add(format!("{why:?}"), text::no_year(why));
        }
        for (key, name, cells) in text::weighed_rows(&weighed, &draft, System::Us) {
            book.add(key, name);
            book.add(format!("{key} difference"), &cells[2]);
        }
        book.add("heads", text::weighed_room_heads().join("; "));
        book.add("alike", text::then_now("8", "8"));
        book.add("then", text::then_now("8", "7"));
        let mut weighed = weighed.clone();
        for payback in [
            Payback::Years(0.02),
            Payback::Years(11.26),
            Payback::Years(250.0),
            Payback::NothingSaved,
            Payback::CostMissing,
            Payback::PriceMissing,
            Payback::NoYear,
        ] {
            weighed.payback = payback;
            book.add(format!("{payback:?}"), text::paid_back(&weighed, System::Us));
        }
    });
    insta::assert_snapshot!(said);
}
