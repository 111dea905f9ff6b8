//! The shipped two-storey house against `../jobs/two-storey.md`, which `../jobs/two_storey.py`
//! worked from what is typed in it: every assembly, flow, path and sum, within the rounding shown.

use crate::shipped::TWO_STOREY;
use crate::support::{open, solve};
use finrun_engine::building::{Assembly, Path, PathLoss, Through, house_flow};
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Job};
use finrun_engine::named::find;
use finrun_engine::quantity::{Power, Temperature, Unit};

const HAND: &str = include_str!("../jobs/two-storey.md");

/// A table's rows, cell by cell, without its head.
fn rows(section: &str) -> Vec<Vec<&'static str>> {
    let cells = |line: &'static str| -> Vec<&'static str> {
        line.trim_matches('|').split('|').map(str::trim).collect()
    };
    let lines = HAND.lines().skip_while(|line| !line.starts_with(section)).skip(1);
    lines
        .take_while(|line| !line.starts_with('#'))
        .filter(|line| line.starts_with('|'))
        .skip(2)
        .map(cells)
        .collect()
}

/// Found against the hand's figure, within half of its last place.
fn check(what: &str, found: f64, hand: &str) {
    let expected: f64 = hand.parse().unwrap_or_else(|_| panic!("{what}: {hand}"));
    let places = hand.split_once('.').map_or(0, |(_, behind)| behind.len());
    let half: f64 = format!("0.5e-{places}").parse().expect("a number");
    assert!((found - expected).abs() <= half * (1.0 + 1e-6), "{what}: {found} against {hand}");
}

fn solved() -> (Draft, Job, Design) {
    let draft = open(TWO_STOREY);
    let (job, design) = solve(&draft);
    (draft, job, design)
}

#[test]
fn assemblies_are_those_of_the_hand() {
    let rows = rows("## Assemblies");
    assert_eq!(rows.len(), 17);
    for row in rows {
        let assembly: Assembly = find(row[0]).expect(row[0]);
        check(row[0], assembly.transmittance().to(Unit::UsU), row[3]);
    }
}

#[test]
fn the_houses_air_is_that_of_the_hand() {
    let (_, job, _) = solved();
    let rows = rows("## Air");
    assert_eq!(rows.len(), job.house.rooms.len() + 1);
    let house = rows.last().expect("the sum");
    let flow = house_flow(&job.house);
    assert_eq!(flow.infiltration, flow.leaked);
    check("house", flow.leaked.to(Unit::CubicFootPerMinute), house[2]);
}

/// As the hand names a path.
fn name(path: Path) -> String {
    match path {
        Path::Surface(surface) => format!("{}", surface.0),
        Path::Opening(surface, opening) => format!("{}/{}", surface.0, opening.0),
        Path::Ground(surface) => format!("{} ground", surface.0),
        Path::GroundSwing(surface) => format!("{} swing", surface.0),
        Path::SlabEdge(surface) => format!("{} edge", surface.0),
        Path::Neighbour(room, Through::Surface(surface)) => format!("{}:{}", room.0, surface.0),
        Path::Neighbour(room, Through::Opening(surface, opening)) => {
            format!("{}:{}/{}", room.0, surface.0, opening.0)
        }
        Path::Air => "air".to_string(),
        Path::Ventilation => "ventilation".to_string(),
    }
}

/// Every path of the hand is there, every path found is the hand's, and so is the sum.
fn check_paths(of: &str, paths: &[PathLoss], total: Power) {
    let mut rows = rows(&format!("### {of} at "));
    let sum = rows.pop().expect("the sum");
    assert_eq!(sum[0], "sum", "{of}");
    let mut names: Vec<String> = paths.iter().map(|path| name(path.path)).collect();
    let mut hands: Vec<&str> = rows.iter().map(|row| row[0]).collect();
    names.sort();
    hands.sort_unstable();
    assert_eq!(names, hands, "{of}");
    for row in rows {
        let path = paths.iter().find(|path| name(path.path) == row[0]).expect(row[0]);
        let what = |figure: &str| format!("{of}, {}, {figure}", row[0]);
        let f = |temperature: Temperature| temperature.to(Unit::Fahrenheit);
        // The hand has no area for the swing, the engine none for air.
        match path.area.zip(path.transmittance) {
            Some((area, u)) => {
                check(&what("area"), area.to(Unit::SquareFoot), row[2]);
                check(&what("U"), u.to(Unit::UsU), row[3]);
            }
            None => assert_eq!(row[2], "-", "{}", what("area")),
        }
        let conductance = path.conductance.to(Unit::BtuPerHourFahrenheit);
        check(&what("conductance"), conductance, row[4]);
        check(&what("from"), f(path.inside), row[5]);
        check(&what("to"), f(path.beyond), row[6]);
        check(&what("heat"), path.loss.to(Unit::BtuPerHour), row[7]);
    }
    check(&format!("{of}, sum"), total.to(Unit::BtuPerHour), sum[7]);
}

#[test]
fn each_path_of_each_room_is_that_of_the_hand() {
    let (draft, _, design) = solved();
    assert_eq!(design.rooms.len(), 9);
    for room in &design.rooms {
        let name = &draft.room(room.room).expect("the room").name;
        check_paths(name, &room.load.paths, room.load.total);
    }
    let house = HAND.lines().last().expect("the house's load");
    let load = design.load.to(Unit::BtuPerHour);
    check("house", load, house.strip_suffix(" Btu/h").expect("Btu/h"));
}

#[test]
fn each_path_and_temperature_of_each_space_is_that_of_the_hand() {
    let (draft, _, design) = solved();
    assert_eq!(design.spaces.len(), 3);
    for space in &design.spaces {
        let name = &draft.room(space.space).expect("the space").name;
        let total = space.paths.iter().map(|path| path.loss).sum();
        check_paths(name, &space.paths, total);
        let head = format!("### {name} at ");
        let at = HAND.lines().find_map(|line| line.strip_prefix(head.as_str()));
        let at = at.and_then(|at| at.strip_suffix(" °F")).expect("its temperature");
        check(name, space.temperature.to(Unit::Fahrenheit), at);
    }
}
