//! Days against known dates and against counting on.

use finrun_engine::climate::{Day, DayError};
use proptest::prelude::*;

fn day(text: &str) -> Day {
    Day::parse(text).unwrap_or_else(|error| panic!("{text}: {error:?}"))
}

/// Days of the week of known dates, from memory; and Monday is 0 by the count from a Thursday.
#[test]
fn days_fall_on_their_days_of_the_week() {
    for (text, weekday) in [
        ("1970-01-01", 3),
        ("1969-07-20", 6),
        ("2000-01-01", 5),
        ("2001-09-11", 1),
        ("2024-02-29", 3),
        ("1900-01-01", 0),
        // The first day of the Gregorian calendar, a Friday.
        ("1582-10-15", 4),
    ] {
        assert_eq!((day(text).days_since_1970() + 3).rem_euclid(7), weekday, "{text}");
    }
    assert_eq!(day("1970-01-01").days_since_1970(), 0);
    // A billion seconds after 1970 it was 2001-09-09, from memory.
    assert_eq!(day("2001-09-09").days_since_1970(), 1_000_000_000 / 86_400);
    assert_eq!(day("2026-03-01").days_after(day("2026-02-01")), 28);
}

#[test]
fn what_is_no_day_is_said() {
    let error = |text: &str| Day::parse(text).expect_err("no day");
    for text in
        ["", "2025-1-05", "2025/12/05", "12-05-2025", "2025-12-0x", "+025-12-05", "２０２５-12-05"]
    {
        assert_eq!(error(text), DayError::Form, "{text}");
    }
    assert_eq!(error("2025-13-05"), DayError::NoSuchMonth { month: 13 });
    assert_eq!(error("2025-00-05"), DayError::NoSuchMonth { month: 0 });
    assert_eq!(error("2025-02-29"), DayError::NoSuchDay { day: 29, last: 28 });
    assert_eq!(error("1900-02-29"), DayError::NoSuchDay { day: 29, last: 28 });
    assert_eq!(error("2000-04-31"), DayError::NoSuchDay { day: 31, last: 30 });
    assert_eq!(error("2000-04-00"), DayError::NoSuchDay { day: 0, last: 30 });
    assert_eq!(day(" 2000-02-29 ").to_string(), "2000-02-29");
    let text = serde_json::to_string(&day("2025-12-05")).expect("json");
    assert_eq!(text, r#""2025-12-05""#);
    assert_eq!(serde_json::from_str::<Day>(&text).expect("a day"), day("2025-12-05"));
    assert!(serde_json::from_str::<Day>(r#""2025-12-32""#).is_err());
}

proptest! {
    /// Each day follows the one before as a calendar on a wall has it.
    #[test]
    fn the_calendar_comes_back_and_has_no_gaps(days in -719_528..2_932_896_i32) {
        let today = Day::since_1970(days);
        prop_assert_eq!(Day::parse(&today.to_string()), Ok(today));
        let (year, month, of_month) = today.calendar();
        prop_assert_eq!(Day::from_calendar(year, month, of_month), Ok(today));
        let next = match Day::from_calendar(year, month, of_month + 1) {
            Ok(next) => next,
            Err(_) => Day::from_calendar(year, month + 1, 1)
                .or_else(|_| Day::from_calendar(year + 1, 1, 1))
                .expect("a new month or year"),
        };
        prop_assert_eq!(next, today.plus(1));
    }

    #[test]
    fn no_day_makes_the_calendar_panic(days in any::<i32>(), text in "[0-9-]{0,12}") {
        let _ = Day::since_1970(days).to_string();
        let _ = Day::parse(&text);
    }
}
