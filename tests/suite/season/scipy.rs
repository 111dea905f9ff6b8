//! Rest and a night against scipy: tests/reference/j_house_in_time.json, made by
//! `scripts/gen_j_house_in_time.py` (scipy.optimize.root, scipy.integrate.solve_ivp with Radau) of the
//! conductances, the heat stored and the loop that `cargo xtask solve JOB --nodes` prints.

use super::{one_bin, run};
use crate::support::{FOUR_ROOMS, V1_FIXTURE, V2_FIXTURE, open, solve};
use finrun_engine::season::Controls;
use finrun_engine::transient::{Setback, design_day, exported};
use serde_json::Value;

fn cases() -> Vec<Value> {
    let text = include_str!("../../reference/j_house_in_time.json");
    let all: Value = serde_json::from_str(text).expect("JSON");
    all["cases"].as_array().expect("cases").clone()
}

fn job_of(case: &Value) -> &'static str {
    match case["job"].as_str() {
        Some("four-rooms") => FOUR_ROOMS,
        Some("v1-fixture") => V1_FIXTURE,
        Some("v2-fixture") => V2_FIXTURE,
        other => panic!("{other:?}"),
    }
}

fn numbers(list: &Value) -> Vec<f64> {
    list.as_array().expect("a list").iter().map(|k| k.as_f64().expect("a number")).collect()
}

/// Whether two exports are one, but for the last digits.
fn alike(a: &Value, b: &Value) -> bool {
    match (a, b) {
        (Value::Number(a), Value::Number(b)) => {
            let (a, b) = (a.as_f64().expect("a number"), b.as_f64().expect("a number"));
            (a - b).abs() <= 1e-6 * a.abs().max(1.0)
        }
        (Value::Array(a), Value::Array(b)) => {
            a.len() == b.len() && a.iter().zip(b).all(|(a, b)| alike(a, b))
        }
        (Value::Object(a), Value::Object(b)) => {
            a.len() == b.len() && a.iter().all(|(k, a)| b.get(k).is_some_and(|b| alike(a, b)))
        }
        (a, b) => a == b,
    }
}

#[test]
fn rest_and_the_night_are_those_of_scipy() {
    let cases = cases();
    assert_eq!(cases.len(), 3);
    for case in &cases {
        let name = case["job"].as_str().expect("a name");
        let (job, design) = solve(&open(job_of(case)));
        let (controls, outdoors) = (Controls::usual(&job), job.house.site.outdoors);
        let now = exported(&job, &design, &controls, &[], outdoors).expect("rest");
        let now = serde_json::to_value(now.expect("one loop")).expect("JSON");
        assert!(alike(&now, &case["nodes"]), "{name} has changed: make the file again");

        let found = run(&job, &design, &one_bin(outdoors), &controls);
        let bin = &found.bins[0];
        let at = bin.rooms.iter().chain(&bin.spaces);
        for (found, expected) in at.zip(numbers(&case["rest_k"])) {
            assert!((found.si() - expected).abs() < 2e-3, "{name}: {found:?} for {expected}");
        }
        let share = case["rest_share"].as_f64().expect("a share");
        assert!((bin.zones_run[0] - share).abs() < 1e-4, "{name}: {} {share}", bin.zones_run[0]);

        let night = design_day(&job, &design, &controls, &[], Setback::USUAL);
        let night = night.expect("a night");
        let expected = case["night_k"].as_array().expect("a list");
        assert_eq!(night.samples.len(), expected.len());
        let mut worst = 0.0_f64;
        for (sample, expected) in night.samples.iter().zip(expected) {
            let at = sample.rooms.iter().chain(&sample.spaces);
            for (found, expected) in at.zip(numbers(expected)) {
                worst = worst.max((found.si() - expected).abs());
            }
        }
        println!("{name}: the night within {worst} K");
        assert!(worst < 0.05, "{name}: {worst}");
    }
}
