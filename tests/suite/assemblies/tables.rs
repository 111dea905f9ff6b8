//! Materials, framing, windows and doors against the tables they were taken from.

use finrun_engine::building::assembly::HeatFlow;
use finrun_engine::building::catalogue::Origin;
use finrun_engine::building::material::Heat;
use finrun_engine::building::{Assembly, Framing, Material};
use finrun_engine::named::{Named, find};
use finrun_engine::quantity::{Length, Unit};
use std::collections::BTreeSet;
use std::path::Path;

/// Rows of a table in `reference`, without its heading.
fn table(name: &str, heading: &[&str]) -> Vec<csv::StringRecord> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference").join(name);
    let mut reader = csv::Reader::from_path(&path).expect("a table");
    assert_eq!(reader.headers().expect("a heading"), heading);
    let rows: Vec<_> = reader.records().map(|row| row.expect("a row")).collect();
    assert!(!rows.is_empty(), "{name} is empty");
    rows
}

fn named<T: Named>(row: &csv::StringRecord) -> T {
    find(&row[0]).unwrap_or_else(|| panic!("nothing is stored as {}", &row[0]))
}

fn number(row: &csv::StringRecord, column: usize) -> f64 {
    row[column].parse().expect("a number")
}

fn conductivity(material: Material) -> f64 {
    match material.heat(HeatFlow::Horizontal) {
        Heat::Conductivity(conductivity) => conductivity.si(),
        Heat::Fixed(_) => panic!("{material:?} has no conductivity"),
    }
}

/// The names of those whose origin is this one.
fn from(origin: Origin) -> BTreeSet<&'static str> {
    let all = Material::ALL.iter().filter(|material| material.origin() == origin);
    all.map(|material| material.name()).collect()
}

#[test]
fn materials_are_those_of_the_standard() {
    let heading = ["stored_name", "row", "density_kg_m3", "conductivity_w_mk"];
    let rows = table("materials_en12524.csv", &heading);
    let mut seen = BTreeSet::new();
    for row in &rows {
        let material: Material = named(row);
        assert_eq!(conductivity(material), number(row, 3), "{material:?}");
        assert_eq!(material.range(), None, "{material:?}");
        seen.insert(material.name());
    }
    assert_eq!(seen, from(Origin::MaterialStandard));
}

#[test]
fn insulation_is_as_printed_with_its_span() {
    let rows = table("insulation_r_per_inch.csv", &["stored_name", "row", "low", "usual", "high"]);
    let mut seen = BTreeSet::new();
    for row in &rows {
        let material: Material = named(row);
        let per_inch = material.resistance(Length::of(1.0, Unit::Inch), HeatFlow::Upward);
        let per_inch = per_inch.to(Unit::UsR);
        let close = |found: f64, column| (found / number(row, column) - 1.0).abs() < 1e-12;
        assert!(close(per_inch, 3), "{material:?}: {per_inch}");
        let range = material.range().expect("a span");
        assert!(close(per_inch * range.low, 2) && close(per_inch * range.high, 4), "{range:?}");
        // What is between the ends is what is used, or the span would say nothing.
        assert!(range.low < 1.0 && range.high > 1.0, "{material:?}");
        seen.insert(material.name());
    }
    assert_eq!(seen, from(Origin::InsulationPages));
}

/// What stands in no table is held to what else is known: a brick wall of 4 in is to 0.8,
/// hollow blocks to 1.3, open-cell foam to 3.8 an inch (ranges from memory).
#[test]
fn materials_from_memory_are_in_their_range() {
    let r = |material: Material, inches| {
        let thickness = Length::of(inches, Unit::Inch);
        material.resistance(thickness, HeatFlow::Horizontal).to(Unit::UsR)
    };
    assert!((0.4..0.8).contains(&r(Material::Brick, 3.625)));
    assert!((1.0..1.2).contains(&r(Material::HollowBlock8, 7.625)));
    assert!((1.2..1.35).contains(&r(Material::HollowBlock12, 11.625)));
    assert!((3.5..3.8).contains(&r(Material::OpenCellFoam, 1.0)));
    assert!((0.4..0.5).contains(&r(Material::AsphaltShingles, 0.25)));
    assert!((0.55..0.65).contains(&r(Material::VinylSiding, 0.5)));
    assert!((0.05..0.25).contains(&r(Material::Stucco, 1.0)));
    // Still air: ISO 6946, table of unventilated air layers, from memory; thickness adds nothing.
    for (flow, still) in
        [(HeatFlow::Horizontal, 0.18), (HeatFlow::Upward, 0.16), (HeatFlow::Downward, 0.21)]
    {
        for inches in [1.0, 10.0] {
            let thickness = Length::of(inches, Unit::Inch);
            assert_eq!(Material::AirCavity.resistance(thickness, flow).si(), still, "{flow:?}");
        }
    }
}

#[test]
fn framing_is_that_of_the_state_code() {
    let heading = ["stored_name", "row", "studs_plates", "headers", "source"];
    for row in table("framing_fractions.csv", &heading) {
        let framing: Framing = named(&row);
        let share = number(&row, 2) + number(&row, 3);
        assert!((framing.share() - share).abs() < 1e-12, "{framing:?}");
    }
    // Wider spacing and better corners take less wood.
    let walls = [Framing::StandardWall, Framing::IntermediateWall, Framing::AdvancedWall];
    assert!(walls.windows(2).all(|pair| pair[0].share() > pair[1].share()));
    assert_eq!(Framing::None.share(), 0.0);
}

#[test]
fn windows_and_doors_are_those_of_the_tables() {
    let rows =
        table("windows_doors_u.csv", &["stored_name", "row", "u_btu_h_ft2_f", "source", "read"]);
    let mut seen = BTreeSet::new();
    for row in &rows {
        let assembly: Assembly = named(row);
        let found = assembly.transmittance().to(Unit::UsU);
        assert!((found / number(row, 2) - 1.0).abs() < 1e-12, "{assembly:?}: {found}");
        let origin = match (row[3].starts_with("IECC"), &row[4]) {
            (true, "read") => Origin::IeccDefault,
            (true, _) => Origin::IeccFromMemory,
            (false, _) => Origin::StateCode,
        };
        assert_eq!(assembly.origin(), origin, "{assembly:?}");
        seen.insert(assembly);
    }
    // Whatever is not in the tables is built of layers, or says that it comes from nowhere.
    for &assembly in Assembly::ALL {
        let elsewhere = matches!(
            assembly.origin(),
            Origin::Layers | Origin::FromMemory | Origin::CommonPractice
        );
        assert_eq!(seen.contains(&assembly), !elsewhere, "{assembly:?}");
        assert_eq!(assembly.build().is_some(), assembly.origin() == Origin::Layers, "{assembly:?}");
    }
}
