//! Kind f: the output law fitted to rating tables.

use crate::tally::{Tally, Tolerance};
use finrun_engine::emitter::{Point, Reference, fit};
use finrun_engine::quantity::{LinearPower, MassFlow, Temperature, TemperatureDifference, Unit};
use serde::Deserialize;

const FITTED: Tolerance = Tolerance::Share(0.001);
/// The files print three figures, of which the first may stand alone.
const STANDARD_ERROR: Tolerance = Tolerance::Share(0.01);

#[derive(Debug, Deserialize)]
struct File {
    #[serde(alias = "cases")]
    tables: Vec<Table>,
}

#[derive(Debug, Deserialize)]
struct Table {
    id: String,
    #[serde(rename = "Ta_C")]
    air_celsius: f64,
    #[serde(rename = "Tw_C")]
    water_celsius: Vec<f64>,
    #[serde(rename = "q_W_per_m")]
    output: Vec<LinearPower>,
    #[serde(rename = "dTref_K")]
    excess: TemperatureDifference,
    #[serde(rename = "fit_nls")]
    expected: Expected,
}

#[derive(Debug, Deserialize)]
struct Expected {
    #[serde(rename = "q0_W_per_m")]
    output: f64,
    n: f64,
    se_q0: Option<f64>,
    se_n: Option<f64>,
}

pub(crate) fn check(text: &str) -> Result<Tally, String> {
    let file: File = serde_json::from_str(text).map_err(|error| error.to_string())?;
    let mut tally = Tally::default();
    for table in &file.tables {
        if table.water_celsius.len() != table.output.len() {
            return Err(format!("{}: temperatures and outputs differ in number", table.id));
        }
        compare(&mut tally, table);
        tally.case();
    }
    Ok(tally)
}

fn compare(tally: &mut Tally, table: &Table) {
    // The tables have one flow, so any will do.
    let flow = MassFlow::from_si(0.063);
    let air = Temperature::of(table.air_celsius, Unit::Celsius);
    let points: Vec<Point> = table
        .water_celsius
        .iter()
        .zip(&table.output)
        .map(|(&water, &output)| Point {
            water: Temperature::of(water, Unit::Celsius),
            flow,
            output,
        })
        .collect();
    let found = fit(&points, Reference { water: air + table.excess, air, flow });
    // A fit that fails is as far off as can be.
    let (output, n, errors) = match &found {
        Ok(fit) => (fit.output.si(), fit.exponent, fit.errors),
        Err(_) => (f64::NAN, f64::NAN, None),
    };
    tally.compare("output", FITTED, &table.id, output, table.expected.output);
    tally.compare("exponent", FITTED, &table.id, n, table.expected.n);
    if let Some(expected) = table.expected.se_q0 {
        let found = errors.map_or(f64::NAN, |errors| errors.output.si());
        tally.compare("error of output", STANDARD_ERROR, &table.id, found, expected);
    }
    if let Some(expected) = table.expected.se_n {
        let found = errors.map_or(f64::NAN, |errors| errors.exponent);
        tally.compare("error of exponent", STANDARD_ERROR, &table.id, found, expected);
    }
}
