//! Days of the calendar.

use serde::{Deserialize, Serialize};
use std::fmt;

/// A day of the Gregorian calendar, also before it came into force.
///
/// Held as days since 1970-01-01; written and stored as `2025-12-05`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Day(i32);

/// Why a text is no day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DayError {
    /// Not four digits, two and two, with hyphens between.
    Form,
    /// Not 1 to 12.
    NoSuchMonth { month: i32 },
    /// The month has only `last` days.
    NoSuchDay { day: i32, last: i32 },
}

/// Days of 400 years, after which the calendar repeats.
const ERA: i32 = 146_097;

/// Days from 0000-03-01 to 1970-01-01.
const EPOCH: i32 = 719_468;

impl Day {
    pub const fn since_1970(days: i32) -> Day {
        Day(days)
    }

    pub const fn days_since_1970(self) -> i32 {
        self.0
    }

    /// The day so many days later.
    pub const fn plus(self, days: i32) -> Day {
        Day(self.0.saturating_add(days))
    }

    /// Days from `earlier` to this day; below zero when it is the later one.
    pub const fn days_after(self, earlier: Day) -> i32 {
        self.0.saturating_sub(earlier.0)
    }

    /// Reads `2025-12-05`, with spaces around it forgiven.
    ///
    /// # Errors
    /// [`DayError`] says what is wrong with it.
    pub fn parse(text: &str) -> Result<Day, DayError> {
        let text = text.trim().as_bytes();
        if text.len() != 10 || text[4] != b'-' || text[7] != b'-' {
            return Err(DayError::Form);
        }
        Day::from_calendar(number(&text[..4])?, number(&text[5..7])?, number(&text[8..])?)
    }

    /// # Errors
    /// When there is no such month or day, or the year has not four digits.
    pub fn from_calendar(year: i32, month: i32, day: i32) -> Result<Day, DayError> {
        if !(0..=9999).contains(&year) {
            return Err(DayError::Form);
        }
        let last = match month {
            2 if leap(year) => 29,
            2 => 28,
            4 | 6 | 9 | 11 => 30,
            1..=12 => 31,
            _ => return Err(DayError::NoSuchMonth { month }),
        };
        if !(1..=last).contains(&day) {
            return Err(DayError::NoSuchDay { day, last });
        }
        // Years begin in March, so that the odd day of a leap year comes last. Then the months
        // behind day by day follow 153 days of five months.
        let year = if month < 3 { year - 1 } else { year };
        let of_era = year.rem_euclid(400);
        let of_year = (153 * ((month + 9) % 12) + 2) / 5 + day - 1;
        let days = 365 * of_era + of_era / 4 - of_era / 100 + of_year;
        Ok(Day(year.div_euclid(400) * ERA + days - EPOCH))
    }

    /// Year, month and day, from one.
    pub fn calendar(self) -> (i32, i32, i32) {
        let days = i64::from(self.0) + i64::from(EPOCH);
        let era = i64::from(ERA);
        let day = (days.rem_euclid(era)) as i32;
        let year = (day - day / 1460 + day / 36_524 - day / 146_096) / 365;
        let of_year = day - (365 * year + year / 4 - year / 100);
        let month = (5 * of_year + 2) / 153;
        let of_month = of_year - (153 * month + 2) / 5 + 1;
        let year = year + (days.div_euclid(era) as i32) * 400;
        let (year, month) = if month < 10 { (year, month + 3) } else { (year + 1, month - 9) };
        (year, month, of_month)
    }
}

fn leap(year: i32) -> bool {
    year % 4 == 0 && (year % 100 != 0 || year % 400 == 0)
}

fn number(digits: &[u8]) -> Result<i32, DayError> {
    let mut value = 0;
    for &digit in digits {
        if !digit.is_ascii_digit() {
            return Err(DayError::Form);
        }
        value = 10 * value + i32::from(digit - b'0');
    }
    Ok(value)
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (year, month, day) = self.calendar();
        write!(f, "{year:04}-{month:02}-{day:02}")
    }
}

impl From<Day> for String {
    fn from(day: Day) -> String {
        day.to_string()
    }
}

impl TryFrom<String> for Day {
    type Error = DayError;
    fn try_from(text: String) -> Result<Day, DayError> {
        Day::parse(&text)
    }
}

impl fmt::Display for DayError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not a day")
    }
}
