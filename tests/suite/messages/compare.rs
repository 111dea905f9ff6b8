//! The words in which arrangements are compared.

use super::{Book, in_both};
use crate::support::{FOUR_ROOMS, open};
use finrun_engine::compare::{Arranged, Column, Control, Direction, Layout, Missing, side_by_side};
use finrun_engine::job::{Arrangement, PriceField};
use finrun_engine::named::Named;
use finrun_engine::quantity::VolumeFlow;
use finrun_engine::quantity::{Length, Money, Power, System, Temperature, Unit, Velocity};
use finrun_engine::takeoff::item::{Amount, Class, Form};
use finrun_text as text;

fn row() -> Arranged {
    Arranged {
        layout: Layout::OneZone(Arrangement::Series),
        solved: true,
        flow: VolumeFlow::of(3.2, Unit::GallonPerMinute),
        head: Length::of(4.5, Unit::Foot),
        electric: Power::from_si(12.4),
        back: Temperature::of(160.0, Unit::Fahrenheit),
        velocity: Velocity::of(2.0, Unit::FootPerSecond),
        element: Length::of(54.0, Unit::Foot),
        least: 1.01,
        most: 1.12,
        evenness: Some(1.109),
        lowest_supply: Some(Temperature::of(176.0, Unit::Fahrenheit)),
        short: 0,
        valves: 2,
        joints: 40,
        control: Control::None,
        cost: Money::from_si(812.5),
        unpriced: 0,
        missing: Vec::new(),
    }
}

fn no_price() -> Missing {
    let class = Class::Part(PriceField::Gauge);
    Missing { class, tube: None, form: Form::Only, amount: Amount::Count(1) }
}

/// Other values wherever it can have any.
fn other() -> Arranged {
    Arranged {
        electric: Power::from_si(12.1),
        element: Length::of(50.5, Unit::Foot),
        evenness: None,
        lowest_supply: None,
        joints: 61,
        control: Control::ByRoom,
        cost: Money::from_si(900.0),
        unpriced: 1,
        missing: vec![no_price()],
        ..row()
    }
}

#[test]
fn words_of_the_comparison() {
    let tell = |book: &mut Book| {
        let unpriced =
            Arranged { cost: Money::ZERO, unpriced: 3, control: Control::ByZone, ..row() };
        let unsolved = Arranged { solved: false, ..row() };
        for &column in Column::ALL {
            book.add(format!("{column:?}"), text::column(column));
            for (which, of) in [
                ("", row()),
                (", other", other()),
                (", unpriced", unpriced.clone()),
                (", unsolved", unsolved.clone()),
            ] {
                book.add(format!("{column:?}{which}"), text::cell(column, &of, System::Us));
            }
            book.add(format!("{column:?}, in SI"), text::cell(column, &row(), System::Si));
            let difference = text::kept_difference(column, &other(), &row(), System::Us);
            book.add(format!("{column:?}, difference"), difference);
            for direction in [Direction::Rising, Direction::Falling] {
                book.add(format!("{column:?}, {direction:?}"), text::sorted_by(column, direction));
            }
        }
        book.add("best", text::best());
        book.add("working", text::working_on(2, 7));
        book.add("working, last", text::working_on(7, 7));
        book.add("laid out", text::laid_out(text::arrangement(Arrangement::Split)));
        let one = open(FOUR_ROOMS);
        let mut two = one.clone();
        two.add_zone();
        for (name, draft) in [("one", one), ("two", two)] {
            for layout in [Layout::AsDrawn, Layout::OneZone(Arrangement::Split)] {
                book.add(format!("{name}: {layout:?}"), text::layout(&draft, layout));
            }
        }
    };
    insta::assert_snapshot!(in_both(tell));
}

/// A best cell is one that looks better than another; and a cost is none while prices are missing.
#[test]
fn the_best_is_told_only_where_it_is_seen() {
    let rows = side_by_side(&open(FOUR_ROOMS));
    for &column in Column::ALL {
        let best = text::best_cell(column, &rows, System::Us);
        let shown = |row| text::cell(column, row, System::Us);
        if let Some(best) = &best {
            assert!(column.better().is_some());
            let alike = rows.iter().filter(|row| shown(row) == *best).count();
            assert!((1..rows.len()).contains(&alike), "{column:?}");
        }
    }
    let of = |column, rows: &[Arranged]| text::best_cell(column, rows, System::Us);
    assert_eq!(of(Column::Cost, &rows), None);
    assert_eq!(of(Column::Cost, &[row(), other()]), None);
    let dearer = Arranged { unpriced: 0, missing: Vec::new(), ..other() };
    // What has no price in either decides nothing.
    let short = |row: Arranged| Arranged { missing: vec![no_price()], ..row };
    assert!(of(Column::Cost, &[short(row()), short(other())]).is_some());
    let cheap = Some(text::cell(Column::Cost, &row(), System::Us));
    assert_eq!(of(Column::Cost, &[dearer, row()]), cheap);
    assert_eq!(of(Column::Electric, &[row(), other()]), None, "both draw 12 W as it is shown");
    let best = Some(text::cell(Column::Joints, &row(), System::Us));
    assert_eq!(of(Column::Joints, &[row(), other()]), best);
    let yes = Some(text::cell(Column::Control, &other(), System::Us));
    assert_eq!(of(Column::Control, &[row(), other()]), yes);
}
