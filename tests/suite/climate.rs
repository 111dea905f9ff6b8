//! The climate table against the files it was packed from, and what is found and derived from it.

mod calendar;
pub(crate) mod season;

use finrun_engine::climate::{Found, Hit, Listed, Station, Table, TableFault, search};
use finrun_engine::numeric::sin as sine;
use finrun_engine::quantity::{Length, Unit};
use proptest::prelude::*;
use std::collections::BTreeMap;
use std::f64::consts::FRAC_PI_2;
use std::sync::OnceLock;

const TEXT: &str = include_str!("../../public/climate.txt");

pub(crate) fn table() -> &'static Table {
    static TABLE: OnceLock<Table> = OnceLock::new();
    TABLE.get_or_init(|| Table::parse(TEXT).expect("a sound table"))
}

pub(crate) type Row = BTreeMap<String, String>;

/// A file of `tests/reference/climate`.
pub(crate) fn csv(name: &str) -> Vec<Row> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/reference/climate");
    let mut reader = csv::Reader::from_path(format!("{folder}/{name}")).expect("a file");
    reader.deserialize().map(|row| row.expect("a row")).collect()
}

fn station_hits(query: &str) -> Vec<Hit> {
    match search(table(), query, None) {
        Found::Zip { hits, .. } => hits,
        Found::Place { mut named, near, .. } => {
            named.extend(near);
            named
        }
        other => panic!("{query}: {other:?}"),
    }
}

fn names(query: &str) -> Vec<String> {
    let name = |hit: &Hit| format!("{}, {}", hit.station.name, hit.station.state);
    station_hits(query).iter().map(name).collect()
}

#[test]
fn every_station_is_packed_as_its_row_has_it() {
    let rows = csv("embed_us.csv");
    assert_eq!(rows.len(), 1020);
    assert_eq!(table().stations().len(), rows.len());
    for (listed, row) in table().stations().iter().zip(&rows) {
        let whole = |name: &str| row[name].parse::<i32>().expect("a whole number");
        let expected = Station {
            state: row["st"].clone(),
            name: row["name"].clone(),
            elevation_m: whole("elev_m"),
            t99_f: whole("t99_f"),
            t996_f: whole("t996_f"),
            mean_f: whole("mean_f"),
            coldest_month_f: whole("jan_f"),
            degree_days_65_f: whole("hdd65"),
            wind_mph: whole("wind_mph"),
        };
        assert_eq!(listed.station, expected);
        assert!(!listed.station.name.contains('\\'), "{}", listed.station.name);
        let degrees = |name: &str| row[name].parse::<f64>().expect("a number");
        assert_eq!(listed.position.latitude_deg, degrees("lat"), "{}", row["name"]);
        assert_eq!(listed.position.longitude_deg, degrees("lon"), "{}", row["name"]);
    }
}

/// Units, on one station whose row is read here by eye: Burlington, 101 m, 99 % at -4 °F.
#[test]
fn a_station_gives_quantities() {
    let hit = &station_hits("Burlington International AP, VT")[0];
    let station = &hit.station;
    assert_eq!(station.elevation(), Length::from_si(f64::from(station.elevation_m)));
    let close = |a: f64, b: f64| (a - b).abs() < 1e-9;
    let t99 = station.design_99().to(Unit::Fahrenheit);
    assert!(close(t99, f64::from(station.t99_f)), "{t99}");
    assert!(station.design_996() < station.design_99());
    assert!(station.coldest_month() < station.mean());
    // 10 mph are 4.4704 m/s by the definition of the mile.
    let ten = Station { wind_mph: 10, degree_days_65_f: 9000, ..station.clone() };
    assert!(close(ten.wind().si(), 4.4704));
    assert!(close(ten.degree_days_65_k(), 5000.0));
}

#[test]
fn a_station_is_stored_whole() {
    let station = &table().stations()[0].station;
    let text = serde_json::to_string(station).expect("json");
    assert_eq!(
        text,
        r#"{"state":"AK","name":"Adak NAS","elevation_m":5,"t99_f":23,"t996_f":19,"mean_f":40,"coldest_month_f":32,"degree_days_65_f":9210,"wind_mph":16}"#
    );
    assert_eq!(&serde_json::from_str::<Station>(&text).expect("a station"), station);
}

#[test]
fn a_damaged_table_names_its_line() {
    let text = TEXT;
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines.len(), 19);
    let with = |line: usize, new: &str| {
        let mut changed = lines.clone();
        changed[line - 1] = new;
        let error = Table::parse(&changed.join("\n")).expect_err("a damaged table");
        assert_eq!(error.line, line);
        error.fault
    };
    assert_eq!(with(1, "finrun-climate 2"), TableFault::Version);
    assert_eq!(with(2, "AK 76,Al 14"), TableFault::Entry { index: 1 });
    assert_eq!(with(3, "a,,b"), TableFault::Entry { index: 1 });
    assert_eq!(with(5, "100,x"), TableFault::Entry { index: 1 });
    assert_eq!(with(4, "9000,1"), TableFault::Bounds { index: 1 });
    assert_eq!(with(6, "5,2147483647"), TableFault::Bounds { index: 1 });
    assert_eq!(with(7, "5,6"), TableFault::Count { expected: 1020, found: 2 });
    assert_eq!(with(8, &"0,".repeat(1020)[..]), TableFault::Entry { index: 1020 });
    let more = format!("{}0", "0,".repeat(1020));
    assert_eq!(with(8, &more), TableFault::Count { expected: 1020, found: 1021 });
    assert_eq!(with(16, "5,6"), TableFault::Count { expected: 896, found: 2 });
    for kept in 0..19 {
        let error = Table::parse(&lines[..kept].join("\n")).expect_err("a cut table");
        // The start of the text is an empty line of another version, not a missing one.
        assert_eq!(error.line, kept + 1);
        assert_eq!(error.fault, TableFault::Missing);
    }
}

proptest! {
    #[test]
    fn no_damage_makes_the_reader_panic(at in 0..64_000_usize, byte in 0..128_u8, cut in 0..64_000_usize) {
        let mut bytes = TEXT.as_bytes().to_vec();
        bytes[at] = byte;
        let text = String::from_utf8(bytes).expect("still ASCII");
        let whole = Table::parse(&text);
        let part = Table::parse(&text[..cut]);
        prop_assert!(part.is_err());
        if let Err(error) = whole {
            prop_assert!((1..=19).contains(&error.line));
        }
    }

    #[test]
    fn no_query_makes_the_search_panic(query in "\\PC{0,20}", altitude in proptest::option::of(-500.0..5000.0)) {
        let _ = search(table(), &query, altitude.map(Length::from_si));
    }
}

/// Each ZIP area's middle and spread are those of its row: the five nearest stations stand as far
/// from it as the angle between two points of a unit sphere, by their rows, has it.
#[test]
fn every_zip_area_is_packed_as_its_row_has_it() {
    let point = |row: &Row| {
        let [latitude, longitude] =
            ["lat", "lon"].map(|name| row[name].parse::<f64>().expect("degrees").to_radians());
        let (sin, cos) = (sine(latitude), sine(latitude + FRAC_PI_2));
        [cos * sine(longitude + FRAC_PI_2), cos * sine(longitude), sin]
    };
    let stations: Vec<[f64; 3]> = csv("embed_us.csv").iter().map(point).collect();
    for (file, column) in [("us_zip3_centroids.csv", "zip3"), ("us_zip5_centroids.csv", "zip")] {
        for row in csv(file) {
            let Found::Zip { zip, spread, hits } = search(table(), &row[column], None) else {
                panic!("{row:?}");
            };
            assert_eq!(zip, row[column]);
            if let Some(km) = row.get("spread_km") {
                assert_eq!(spread.si(), 1000.0 * km.parse::<f64>().expect("kilometres"));
            }
            let from = point(&row);
            let chord = |to: &[f64; 3]| {
                from.iter().zip(to).map(|(a, b)| (a - b) * (a - b)).sum::<f64>().sqrt()
            };
            let mut angles: Vec<f64> =
                stations.iter().map(|to| 2.0 * (0.5 * chord(to)).asin()).collect();
            angles.sort_by(f64::total_cmp);
            for (hit, angle) in hits.iter().zip(angles) {
                let expected_km = 6371.0 * angle;
                let found_km = hit.distance.si() / 1000.0;
                assert!((found_km - expected_km).abs() < 1e-3 + 1e-4 * expected_km, "{zip}");
            }
        }
    }
}

/// Where ZIP codes are, from memory.
#[test]
fn the_nearest_station_of_a_known_zip_is_its_towns() {
    for (zip, expected) in [
        ("05401", "Burlington International AP, VT"),
        ("054", "Burlington International AP, VT"),
        (" 05401-1234 ", "Burlington International AP, VT"),
        ("02108", "Boston Logan Intl AP, MA"),
        ("80202", "Denver/Centennial, CO"),
        ("55401", "Minneapolis/Crystal, MN"),
        // Of prefixes that span hundreds of kilometres.
        ("99701", "Fairbanks Intl AP, AK"),
        ("99501", "Anchorage Merrill Field, AK"),
        ("96720", "Hilo International AP, HI"),
    ] {
        let found = names(zip);
        assert_eq!(found.len(), 5);
        assert_eq!(found[0], expected, "{zip}: {found:?}");
    }
}

/// Burlington to Montpelier is some 55 km, from memory.
#[test]
fn distances_are_those_of_the_map() {
    let hits = station_hits("Burlington International AP, VT");
    assert_eq!(hits[0].distance, Length::ZERO);
    let montpelier = hits.iter().find(|hit| hit.station.name == "Montpelier AP").expect("near");
    assert!((montpelier.distance.si() / 1000.0 - 55.0).abs() < 5.0, "{montpelier:?}");
    assert!(hits.windows(2).all(|pair| pair[0].distance <= pair[1].distance));
}

#[test]
fn what_is_no_zip_is_said() {
    let found = |query: &str| search(table(), query, None);
    // No prefix 000 was ever given out; 213 is not in use (from memory).
    for zip in ["00000", "213", "21301"] {
        assert_eq!(found(zip), Found::NoSuchZip { zip: zip.into() });
    }
    assert_eq!(found("00000-1234"), Found::NoSuchZip { zip: "00000".into() });
    assert_eq!(found("0540"), Found::NotAZip { digits: 4 });
    assert_eq!(found("054012"), Found::NotAZip { digits: 6 });
    assert_eq!(found("  - "), Found::Blank);
    assert_eq!(found("Atlantis"), Found::NoSuchPlace);
    assert_eq!(found("Atlantis, NH"), Found::NoSuchPlace);
    assert_eq!(found("Cañon"), Found::NoSuchPlace);
}

#[test]
fn a_wide_zip_says_so() {
    let spread = |query: &str| match search(table(), query, None) {
        Found::Zip { spread, hits, .. } => (spread.si() / 1000.0, hits[0].uncertainty.si()),
        other => panic!("{other:?}"),
    };
    // The prefix spans Alaska; its ZIP of Fairbanks has a middle of its own.
    let (wide, doubtful) = spread("997");
    let (narrow, better) = spread("99701");
    assert_eq!(wide, 856.0);
    assert!(narrow < 50.0 && better < 0.5 * doubtful, "{better} {doubtful}");
}

#[test]
fn places_are_found_by_words_with_or_without_state() {
    let first = |query: &str| names(query)[0].clone();
    for query in ["concord nh", "Concord, New Hampshire", "CONCORD MUNI, NH"] {
        assert_eq!(first(query), "Concord Municipal AP, NH");
    }
    assert_eq!(names("concord nh").len(), 5);
    // Two states have one: both are listed, and no neighbours of either.
    assert_eq!(
        names("burlington"),
        ["Burlington Municipal AP, IA", "Burlington International AP, VT"]
    );
    // New Mexico's Carlsbad Cavern has a word that begins with these letters, too.
    assert!(names("Carlsbad CA").iter().all(|name| name.ends_with(", CA")));
    assert_eq!(first("Saint Louis, Missouri"), "St Louis Lambert Intl AP, MO");
    assert_eq!(first("ft wayne"), "Fort Wayne Intl AP, IN");
    assert_eq!(first("O'Neill"), "O`neill/Baker Field, NE");
    assert_eq!(first("charleston, west virginia"), "Charleston Yeager AP, WV");
    assert_eq!(first("new york"), "New York Central Prk Obs Belv, NY");
    assert_eq!(first("washington dc"), "Washington Dc Dulles Intl Ar, VA");
    let vermont = csv("embed_us.csv").iter().filter(|row| row["st"] == "VT").count();
    let Found::Place { named, more: 0, near } = search(table(), "vermont", None) else {
        panic!("the state's stations");
    };
    assert_eq!((named.len(), near.len()), (vermont, 1));
    assert!(matches!(search(table(), "AK", None), Found::Place { more, .. } if more > 40));
}

#[test]
fn a_given_altitude_prefers_stations_of_that_height() {
    // Leadville lies at 3026 m, from its row; Denver's plain at some 1600 m, from memory.
    let heights = |altitude| match search(table(), "804", altitude) {
        Found::Zip { hits, .. } => {
            hits.iter().map(|hit| hit.station.elevation().si()).fold(0.0, f64::max)
        }
        other => panic!("{other:?}"),
    };
    assert!(heights(Some(Length::from_si(1600.0))) < 2000.0);
    assert_eq!(heights(Some(Length::from_si(3000.0))), 3026.0);
}

/// Each station is found first by its own name, and its 99 % temperature lies about as far from
/// that of its nearest neighbour as the uncertainty has it.
#[test]
fn the_uncertainty_is_that_of_one_station_from_the_next() {
    let (mut all, mut within_one, mut within_two) = (0, 0, 0);
    for Listed { station, .. } in table().stations() {
        let query = format!("{}, {}", station.name, station.state);
        let Found::Place { named, near, .. } = search(table(), &query, Some(station.elevation()))
        else {
            panic!("{query}");
        };
        assert_eq!(&named[0].station, station, "{query}");
        let Some(neighbour) = near.first() else { continue };
        let off = (neighbour.station.design_99() - station.design_99()).abs();
        // Both are uncertain by themselves: a house has no more than the one.
        let own = named[0].uncertainty.si();
        let expected = (neighbour.uncertainty.si() * neighbour.uncertainty.si() + own * own).sqrt();
        all += 1;
        within_one += usize::from(off.si() <= expected);
        within_two += usize::from(off.si() <= 2.0 * expected);
    }
    let [one, two] = [within_one, within_two].map(|count| f64::from(count as u32) / f64::from(all));
    println!("{all} stations: {one:.3} within one deviation of the neighbour, {two:.3} within two");
    assert!(all > 950, "{all}");
    // A normal error would have 0.683 and 0.954.
    assert!((0.66..0.80).contains(&one), "{one}");
    assert!((0.93..0.98).contains(&two), "{two}");
}
