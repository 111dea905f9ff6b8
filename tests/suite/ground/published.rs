//! Ground heat loss as others have printed it.

use super::{apart, on_sand};
use finrun_engine::building::ground::{
    EdgeInsulation, Extent, Floor, Footprint, Placement, RowOrigin, Shield, SlabEdge, Soil,
    Underfloor, design_day_loss, edge_psi_w_mk, floor_u_w_m2k, periodic_slab_w_mk,
    suspended_ground_u_w_m2k, suspended_u_w_m2k, vented_u_w_m2k,
};
use finrun_engine::named::Named;
use finrun_engine::quantity::{Length, LossCoefficient, Temperature, Unit};

// Tables C1 to C5 of appendix C to the guidance on the Building Regulations of England and Wales
// (Approved Document L, 2002: title and year from memory), calculated by BS EN ISO 13370 for clay.
// The numbers were read in a public copy; that walls are of 0.3 m is from memory, and all five
// tables agree. All are rounded to two places.

/// C1, solid floors: a row for each 0.05 of perimeter to area, a column for each 0.5 m2 K/W.
const C1_SOLID: [[f64; 5]; 20] = [
    [0.13, 0.11, 0.10, 0.09, 0.08],
    [0.22, 0.18, 0.16, 0.14, 0.13],
    [0.30, 0.24, 0.21, 0.18, 0.17],
    [0.37, 0.29, 0.25, 0.22, 0.19],
    [0.44, 0.34, 0.28, 0.24, 0.22],
    [0.49, 0.38, 0.31, 0.27, 0.23],
    [0.55, 0.41, 0.34, 0.29, 0.25],
    [0.60, 0.44, 0.36, 0.30, 0.26],
    [0.65, 0.47, 0.38, 0.32, 0.27],
    [0.70, 0.50, 0.40, 0.33, 0.28],
    [0.74, 0.52, 0.41, 0.34, 0.28],
    [0.78, 0.55, 0.43, 0.35, 0.29],
    [0.82, 0.57, 0.44, 0.35, 0.30],
    [0.86, 0.59, 0.45, 0.36, 0.30],
    [0.89, 0.61, 0.46, 0.37, 0.31],
    [0.93, 0.62, 0.47, 0.37, 0.32],
    [0.96, 0.64, 0.47, 0.38, 0.32],
    [0.99, 0.65, 0.48, 0.39, 0.32],
    [1.02, 0.66, 0.49, 0.39, 0.33],
    [1.05, 0.68, 0.50, 0.40, 0.33],
];

/// C2 and C3, edge insulation of 0.5, 1, 1.5 and 2 m2 K/W: minus psi, for a strip of 0.5, 1 and
/// 1.5 m lying, and of 0.25, 0.5, 0.75 and 1 m standing.
const C2_LYING: [[f64; 4]; 3] =
    [[0.13, 0.18, 0.21, 0.22], [0.20, 0.27, 0.32, 0.34], [0.23, 0.33, 0.39, 0.42]];
const C3_STANDING: [[f64; 4]; 4] = [
    [0.13, 0.18, 0.21, 0.22],
    [0.20, 0.27, 0.32, 0.34],
    [0.23, 0.33, 0.39, 0.42],
    [0.26, 0.37, 0.43, 0.48],
];

/// C4, uninsulated suspended floors: a row for each 0.05, vents of 0.0015 and 0.003 m2/m.
const C4_SUSPENDED: [[f64; 2]; 20] = [
    [0.15, 0.15],
    [0.25, 0.26],
    [0.33, 0.35],
    [0.40, 0.42],
    [0.46, 0.48],
    [0.51, 0.53],
    [0.55, 0.58],
    [0.59, 0.62],
    [0.63, 0.66],
    [0.66, 0.70],
    [0.69, 0.73],
    [0.72, 0.76],
    [0.75, 0.79],
    [0.77, 0.81],
    [0.80, 0.84],
    [0.82, 0.86],
    [0.84, 0.88],
    [0.86, 0.90],
    [0.88, 0.92],
    [0.89, 0.93],
];

/// C5, uninsulated basement floors: a row for each 0.1, a column for each 0.5 m of depth.
const C5_BASEMENT: [[f64; 5]; 10] = [
    [0.20, 0.19, 0.18, 0.17, 0.16],
    [0.34, 0.31, 0.29, 0.27, 0.26],
    [0.44, 0.41, 0.38, 0.35, 0.33],
    [0.53, 0.48, 0.44, 0.41, 0.38],
    [0.61, 0.55, 0.50, 0.46, 0.43],
    [0.68, 0.61, 0.55, 0.50, 0.46],
    [0.74, 0.65, 0.59, 0.53, 0.49],
    [0.79, 0.70, 0.62, 0.56, 0.51],
    [0.84, 0.73, 0.65, 0.58, 0.53],
    [0.89, 0.77, 0.68, 0.60, 0.54],
];

/// On clay, of `perimeter_m` to each square metre.
fn on_clay(perimeter_m: f64, depth_m: f64, resistance_m2k_w: f64) -> Floor {
    let footprint = Footprint { area_m2: 1.0, perimeter_m, wall_thickness_m: 0.3, depth_m };
    Floor { ground: Soil::Clay.ground(), footprint, resistance_m2k_w }
}

/// Every cell of a table: its row's and its column's number, counted from one, and its value.
fn cells<const N: usize>(table: &[[f64; N]]) -> impl Iterator<Item = (f64, f64, f64)> {
    table.iter().enumerate().flat_map(|(row, values)| {
        let cell = move |(column, &value)| (row as f64 + 1.0, column as f64 + 1.0, value);
        values.iter().enumerate().map(cell)
    })
}

fn rounds_to(found: f64, printed: f64) {
    assert!((found - printed).abs() < 0.005, "{found} for {printed}");
}

#[test]
fn solid_floors_are_those_of_the_printed_table() {
    for (row, column, printed) in cells(&C1_SOLID) {
        let floor = on_clay(0.05 * row, 0.0, 0.5 * (column - 1.0));
        rounds_to(floor_u_w_m2k(&floor, None), printed);
    }
}

/// How thick the strips are is not in the copy: an insulant of 0.035 W/mK gives all of them.
#[test]
fn edge_insulation_is_that_of_the_printed_tables() {
    let floor = on_clay(1.0, 0.0, 0.0);
    let lying = cells(&C2_LYING).map(|cell| (Placement::Horizontal, 0.5, cell));
    let standing = cells(&C3_STANDING).map(|cell| (Placement::Vertical, 0.25, cell));
    for (placement, step, (row, column, printed)) in lying.chain(standing) {
        let resistance_m2k_w = 0.5 * column;
        let edge = EdgeInsulation {
            placement,
            depth_m: step * row,
            thickness_m: 0.035 * resistance_m2k_w,
            resistance_m2k_w,
        };
        rounds_to(-edge_psi_w_mk(&floor, &edge), printed);
    }
}

/// What lies behind C4 is not in the copy. Of a grid of usual values, these alone give all of it:
/// floor 0.3 m above ground, walls of 1.7 W/m2K, wind 3 m/s, average shield, deck of 0.2 m2 K/W.
#[test]
fn suspended_floors_are_those_of_the_printed_table() {
    for (row, column, printed) in cells(&C4_SUSPENDED) {
        let floor = on_clay(0.05 * row, 0.0, 0.0);
        let under = Underfloor {
            height_m: 0.3,
            wall_u_w_m2k: 1.7,
            vent_m2_m: 0.0015 * column,
            wind_m_s: 3.0,
            shield: Shield::Average,
        };
        let vented = vented_u_w_m2k(&floor.footprint, &under);
        let deck = 1.0 / (0.17 + 0.2 + 0.17);
        rounds_to(suspended_u_w_m2k(deck, suspended_ground_u_w_m2k(&floor), vented), printed);
    }
}

#[test]
fn basement_floors_are_those_of_the_printed_table() {
    for (row, column, printed) in cells(&C5_BASEMENT) {
        rounds_to(floor_u_w_m2k(&on_clay(0.1 * row, 0.5 * column, 0.0), None), printed);
    }
}

/// The unheated slabs of the state's table, row by row.
#[test]
fn f_factors_are_those_of_the_table() {
    let mut reader =
        csv::Reader::from_reader(include_str!("../../reference/ground_wac.csv").as_bytes());
    let rows: Vec<csv::StringRecord> = reader
        .records()
        .map(|row| row.expect("a row"))
        .filter(|row| &row[0] == "slab_unheated")
        .collect();
    assert_eq!(rows.len(), SlabEdge::ALL.len());
    // A foot is 0.3048 m, a Btu 1055.05585262 J, an hour 3600 s, and 1.8 F a kelvin.
    let factor = 1055.05585262 / 3600.0 / 0.3048 * 1.8;
    for (edge, row) in SlabEdge::ALL.iter().zip(&rows) {
        let number = |column: usize| row[column].parse::<f64>().expect("a number");
        assert_eq!(&row[4], "F Btu/h.ft.F");
        assert!(apart(edge.f_factor().si(), number(3) * factor) < 1e-14, "{edge:?} {row:?}");
        assert!((edge.resistance().to(Unit::UsR) - number(2)).abs() < 1e-12, "{edge:?} {row:?}");
        assert_eq!(extent_in_words(*edge), &row[1]);
        let inferred = row[6].contains("inferred");
        assert_eq!(edge.origin() == RowOrigin::InferredResistance, inferred, "{row:?}");
        // The name says the same as the rest.
        let name = edge.name();
        let r = edge.resistance().to(Unit::UsR);
        assert!(r == 0.0 || name.ends_with(&format!("-r{r:.0}")), "{name}");
    }
    let names: Vec<&str> = SlabEdge::ALL.iter().map(|edge| edge.name()).collect();
    let expected = [
        "uninsulated",
        "horizontal-2-ft-r5",
        "horizontal-2-ft-r10",
        "horizontal-2-ft-r15",
        "horizontal-4-ft-r5",
        "horizontal-4-ft-r10",
        "horizontal-4-ft-r15",
        "vertical-2-ft-r5",
        "vertical-2-ft-r10",
        "vertical-2-ft-r15",
        "vertical-4-ft-r5",
        "vertical-4-ft-r10",
        "vertical-4-ft-r15",
        "whole-r10",
        "whole-r15",
        "whole-r20",
        "whole-r30",
    ];
    assert_eq!(names, expected);
}

/// As the table writes it.
fn extent_in_words(edge: SlabEdge) -> String {
    let feet = |length: Length| format!("{:.0} ft", length.to(Unit::Foot));
    match edge.extent() {
        Extent::Uninsulated => "none".into(),
        Extent::Strip(Placement::Horizontal, width) => {
            format!("{} horizontal no thermal break", feet(width))
        }
        Extent::Strip(Placement::Vertical, depth) => format!("{} vertical", feet(depth)),
        Extent::Whole => "fully insulated (edge R-10)".into(),
    }
}

fn fahrenheit(value: f64) -> Temperature {
    Temperature::of(value, Unit::Fahrenheit)
}

/// One slab is known to have given 4,560 Btu/h by the F-factor and 3,330 by the monthly formulas,
/// but not which: many do. One of them is 50 by 30 ft on clay, uninsulated, walls of 0.3 m, 70 °F
/// inside, where the design day has 31 °F, the year 53 and its coldest month 42.
#[test]
fn the_f_factor_stands_well_above_the_monthly_answer() {
    let feet = |value: f64| Length::of(value, Unit::Foot);
    let (length, width) = (feet(50.0), feet(30.0));
    let (area, perimeter) = (length * width, (length + width) * 2.0);
    let footprint = Footprint {
        area_m2: area.si(),
        perimeter_m: perimeter.si(),
        wall_thickness_m: 0.3,
        depth_m: 0.0,
    };
    let floor = Floor { ground: Soil::Clay.ground(), footprint, resistance_m2k_w: 0.0 };
    let monthly = design_day_loss(
        LossCoefficient::from_si(floor_u_w_m2k(&floor, None) * footprint.area_m2),
        LossCoefficient::from_si(periodic_slab_w_mk(&floor, None) * footprint.perimeter_m),
        fahrenheit(70.0),
        fahrenheit(53.0),
        fahrenheit(42.0),
    );
    let difference = fahrenheit(70.0) - fahrenheit(31.0);
    let by_code = SlabEdge::Uninsulated.f_factor() * perimeter * difference;
    assert!((monthly.to(Unit::BtuPerHour) - 3330.0).abs() < 5.0, "{monthly:?}");
    assert!((by_code.to(Unit::BtuPerHour) - 4560.0).abs() < 5.0, "{by_code:?}");
}

/// Worked by hand: sand, 10 by 8 m, walls of 0.3 m, R 1: B 80/18, d_f 2.72, pi B/d_f 5.1333,
/// U 4/(13.9626 + 2.72) ln 6.1333 = 0.43488; H_pe/P 0.37 x 2 x ln(3.2/2.72 + 1) = 0.57550.
#[test]
fn a_slab_worked_by_hand() {
    let floor = on_sand(80.0, 36.0, 1.0);
    assert!((floor_u_w_m2k(&floor, None) - 0.43488).abs() < 1e-5);
    assert!((periodic_slab_w_mk(&floor, None) - 0.57550).abs() < 1e-5);
}
