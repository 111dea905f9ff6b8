//! The table of stations and ZIP areas, read from its packed text.
//!
//! The text, made by `tests/reference/scripts/climate_pack.py`, has these lines:
//! 1. `finrun-climate 1`, the version;
//! 2. each state with its number of stations, `AK 76,AL 14,...`, in the order of the stations;
//! 3. the stations' names;
//! 4. to 12. one column of the stations each: latitude and longitude in hundredths of a degree,
//!    elevation in m, 99 % temperature in °F, that less the 99.6 % one, annual mean, that less the
//!    coldest month's mean, tens of °F·days below 65 °F, wind in mph;
//! 13. to 16. the three-digit ZIP prefixes: number, latitude, longitude, spread in km;
//! 17. to 19. five-digit ZIP areas of prefixes too wide for one middle: number, latitude, longitude.
//!
//! Commas separate. A number is the step from the one before it, the first from zero: neighbours
//! are alike, and small steps pack well.

use super::Station;
use crate::quantity::Length;

/// The stations and the middles of the ZIP areas.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    pub(super) stations: Vec<Listed>,
    /// By the first three digits.
    pub(super) prefixes: Vec<Area>,
    /// By all five digits.
    pub(super) zips: Vec<Area>,
}

/// A station and where it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Listed {
    pub station: Station,
    pub position: Position,
}

/// A point on the globe; north and east count above zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Position {
    pub latitude_deg: f64,
    pub longitude_deg: f64,
}

/// The houses of a ZIP code.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Area {
    pub(super) code: i32,
    pub(super) middle: Position,
    /// From the middle to the farthest part.
    pub(super) spread: Length,
}

/// A text that is no table: the line, from one, and what is wrong there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TableError {
    pub line: usize,
    pub fault: TableFault,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TableFault {
    /// The text ends before this line.
    Missing,
    /// The text is of another kind or version.
    Version,
    /// The entry at `index`, from zero, is not as the format has it.
    Entry { index: usize },
    /// The entry at `index` lies outside of what can be on earth.
    Bounds { index: usize },
    /// The line has another number of entries than the lines it belongs to.
    Count { expected: usize, found: usize },
}

/// The first line of the table that this version of the engine reads.
pub const VERSION: &str = "finrun-climate 1";

/// A five-digit ZIP area reaches so far from its middle: judgement, half of the usual three-digit
/// area's spread of some 50 km.
const ZIP_SPREAD: Length = Length::from_si(25_000.0);

impl Table {
    /// # Errors
    /// [`TableError`] names the line that is damaged.
    pub fn parse(text: &str) -> Result<Table, TableError> {
        let mut lines = Lines { lines: text.lines(), line: 0 };
        if lines.next()? != VERSION {
            return Err(lines.error(TableFault::Version));
        }
        let stations = read_stations(&mut lines)?;
        let codes = lines.numbers(0, 999)?;
        let prefixes = read_areas(&mut lines, codes, true)?;
        let codes = lines.numbers(0, 99_999)?;
        let zips = read_areas(&mut lines, codes, false)?;
        Ok(Table { stations, prefixes, zips })
    }

    pub fn stations(&self) -> &[Listed] {
        &self.stations
    }
}

fn read_stations(lines: &mut Lines<'_>) -> Result<Vec<Listed>, TableError> {
    let states = lines.states()?;
    let count = states.len();
    let names = lines.names(count)?;
    let positions = lines.positions(count)?;
    // The bounds are wider than the lowest and highest land and any weather: from memory, the Dead
    // Sea shore at -430 m, Everest at 8849 m, -129 to 134 °F, Mount Washington's wind.
    let elevation_m = lines.column(count, -500, 9000)?;
    let t99_f = lines.column(count, -150, 150)?;
    let below_t99_f = lines.column(count, 0, 100)?;
    let mean_f = lines.column(count, -150, 150)?;
    let below_mean_f = lines.column(count, 0, 150)?;
    let tens_of_degree_days = lines.column(count, 0, 8000)?;
    let wind_mph = lines.column(count, 0, 200)?;
    let listed = |i: usize| Listed {
        station: Station {
            state: states[i].to_string(),
            name: names[i].to_string(),
            elevation_m: elevation_m[i],
            t99_f: t99_f[i],
            t996_f: t99_f[i] - below_t99_f[i],
            mean_f: mean_f[i],
            coldest_month_f: mean_f[i] - below_mean_f[i],
            degree_days_65_f: 10 * tens_of_degree_days[i],
            wind_mph: wind_mph[i],
        },
        position: positions[i],
    };
    Ok((0..count).map(listed).collect())
}

fn read_areas(
    lines: &mut Lines<'_>,
    codes: Vec<i32>,
    spread: bool,
) -> Result<Vec<Area>, TableError> {
    let positions = lines.positions(codes.len())?;
    let spreads_km = if spread { Some(lines.column(codes.len(), 0, 20_100)?) } else { None };
    let area = |(i, &code): (usize, &i32)| Area {
        code,
        middle: positions[i],
        spread: match &spreads_km {
            Some(km) => Length::from_si(1000.0 * f64::from(km[i])),
            None => ZIP_SPREAD,
        },
    };
    Ok(codes.iter().enumerate().map(area).collect())
}

/// The lines not yet read, and the number of the last one read.
struct Lines<'a> {
    lines: std::str::Lines<'a>,
    line: usize,
}

impl<'a> Lines<'a> {
    fn next(&mut self) -> Result<&'a str, TableError> {
        self.line += 1;
        let line = self.lines.next();
        line.ok_or_else(|| self.error(TableFault::Missing))
    }

    fn error(&self, fault: TableFault) -> TableError {
        TableError { line: self.line, fault }
    }

    /// The state of each station.
    fn states(&mut self) -> Result<Vec<&'a str>, TableError> {
        let mut states = Vec::new();
        for (index, entry) in self.next()?.split(',').enumerate() {
            let fault = self.error(TableFault::Entry { index });
            let (state, count) = entry.split_once(' ').ok_or(fault)?;
            let count: u16 = count.parse().map_err(|_| fault)?;
            if state.len() != 2 || !state.bytes().all(|byte| byte.is_ascii_uppercase()) {
                return Err(fault);
            }
            for _ in 0..count {
                states.push(state);
            }
        }
        Ok(states)
    }

    fn names(&mut self, count: usize) -> Result<Vec<&'a str>, TableError> {
        let names: Vec<&str> = self.next()?.split(',').collect();
        if let Some(index) = names.iter().position(|name| name.is_empty()) {
            return Err(self.error(TableFault::Entry { index }));
        }
        self.counted(count, names.len())?;
        Ok(names)
    }

    fn positions(&mut self, count: usize) -> Result<Vec<Position>, TableError> {
        let latitudes = self.column(count, -9000, 9000)?;
        let longitudes = self.column(count, -18_000, 18_000)?;
        let position = |(&latitude, &longitude): (&i32, &i32)| Position {
            latitude_deg: f64::from(latitude) / 100.0,
            longitude_deg: f64::from(longitude) / 100.0,
        };
        Ok(latitudes.iter().zip(&longitudes).map(position).collect())
    }

    fn column(&mut self, count: usize, low: i32, high: i32) -> Result<Vec<i32>, TableError> {
        let values = self.numbers(low, high)?;
        self.counted(count, values.len())?;
        Ok(values)
    }

    fn counted(&self, expected: usize, found: usize) -> Result<(), TableError> {
        if found == expected {
            Ok(())
        } else {
            Err(self.error(TableFault::Count { expected, found }))
        }
    }

    /// A line of steps, summed.
    fn numbers(&mut self, low: i32, high: i32) -> Result<Vec<i32>, TableError> {
        let mut values = Vec::new();
        let mut value = 0_i32;
        for (index, entry) in self.next()?.split(',').enumerate() {
            let step: i32 = entry.parse().map_err(|_| self.error(TableFault::Entry { index }))?;
            value = match value.checked_add(step) {
                Some(sum) if low <= sum && sum <= high => sum,
                _ => return Err(self.error(TableFault::Bounds { index })),
            };
            values.push(value);
        }
        Ok(values)
    }
}
