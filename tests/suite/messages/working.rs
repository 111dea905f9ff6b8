//! What stands around a working: formulas, where they come from, what symbols mean.

use super::{Book, in_both};
use finrun_engine::trace::{Formula, Source};
use finrun_text as text;

/// The same in every language.
#[test]
fn formulas() {
    let mut book = Book::default();
    for formula in Formula::ALL {
        if !matches!(formula, Formula::Sum | Formula::RootOfSquares) {
            book.add(format!("{formula:?}"), formula.text());
        }
    }
    insta::assert_snapshot!(book.text());
}

#[test]
fn sources_and_symbols() {
    let tell = |book: &mut Book| {
        for formula in Formula::ALL {
            book.add(format!("{formula:?} source"), text::source(formula.source()));
        }
        for (names, meaning) in text::symbols() {
            book.add(names, meaning);
        }
    };
    // One that no formula names would be a message that nobody sees.
    let used: Vec<Source> = Formula::ALL.iter().map(|formula| formula.source()).collect();
    for source in [
        Source::Arithmetic,
        Source::Transmission,
        Source::StandardAtmosphere,
        Source::Ventilation,
        Source::EnergyBalance,
        Source::RatingPractice,
        Source::Integrated,
        Source::BarePipe,
        Source::Continuity,
        Source::Colebrook,
        Source::DarcyWeisbach,
        Source::Crane,
        Source::Hydrostatics,
        Source::CommonPractice,
    ] {
        assert!(used.contains(&source), "{source:?}");
    }
    insta::assert_snapshot!(in_both(tell));
}
