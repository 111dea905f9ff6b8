//! How fast the release page loads, answers a key and opens again, against its goals.
//!
//! A developer command and no part of `cargo xtask test`: other work on the machine would decide. What
//! measures is `audit/measure.mjs`.

use std::env;
use std::process::{Command, Stdio};

use anyhow::{Context, Result, ensure};
use finrun_engine::job::{Draft, File};
use serde_json::{Value, json};

use crate::{browser, build, project, run, tools};

/// What is measured, by its name in what the script answers.
struct Measure {
    name: &'static str,
    words: &'static str,
    goal: Goal,
}

enum Goal {
    AtLeast(f64),
    AtMost(f64),
}

/// The goals are the project's own but for those of the first visit, which Lighthouse calls good; it
/// stands for a middling phone on a slow network, the others for a processor four times slower.
const MEASURES: [Measure; 7] = [
    Measure { name: "performance", words: "performance, of 100", goal: Goal::AtLeast(98.0) },
    Measure { name: "accessibility", words: "accessibility, of 100", goal: Goal::AtLeast(100.0) },
    Measure { name: "largest_paint_ms", words: "largest paint, ms", goal: Goal::AtMost(1200.0) },
    Measure { name: "blocking_ms", words: "blocked at the start, ms", goal: Goal::AtMost(100.0) },
    Measure { name: "layout_shift", words: "layout shift", goal: Goal::AtMost(0.02) },
    Measure { name: "keystroke_ms", words: "key to result shown, ms", goal: Goal::AtMost(50.0) },
    Measure {
        name: "reopening_ms",
        words: "opened without network, ms",
        goal: Goal::AtMost(1000.0),
    },
];

const ROOMS: usize = 30;
const DEMO: &str = include_str!("../../../public/demo/bungalow.json");

pub(crate) fn audit() -> Result<()> {
    // All that may be missing or need a network comes first, not after minutes of building.
    let modules = tools::lighthouse()?;
    let browser = browser::ready()?;
    let dist = build::build()?;
    let xtask = env::current_exe().context("this program does not know where it stands")?;
    let asked = json!({
        "modules": modules,
        "chrome": browser.chrome,
        "server": [json!(xtask), json!("serve"), json!("--port"), json!("0"), json!("--dist"), json!(dist)],
        "job": many_rooms()?,
    });
    let mut node = Command::new("node");
    node.arg(project::root().join("src/xtask/audit/measure.mjs"))
        .arg(asked.to_string())
        .stderr(Stdio::inherit());
    let answer = run::output(&mut node)?;
    let measured: Value = serde_json::from_str(&answer).context("the measuring script's answer")?;
    let short = judge(&measured)?;
    ensure!(short == 0, "{short} of {} goals are missed", MEASURES.len());
    Ok(())
}

/// Prints a line for each goal; returns how many are missed.
fn judge(measured: &Value) -> Result<usize> {
    println!("{:<28} {:>10} {:>10}", "", "goal", "measured");
    let mut short = 0;
    for Measure { name, words, goal } in &MEASURES {
        let value = measured[name].as_f64().with_context(|| format!("{name} was not measured"))?;
        let (sign, bound, holds) = match *goal {
            Goal::AtLeast(bound) => (">=", bound, value >= bound),
            Goal::AtMost(bound) => ("<=", bound, value <= bound),
        };
        let verdict = if holds { "ok" } else { "SHORT" };
        // The score of a hundred and times need no decimals; a shift is a small fraction.
        let digits = if bound < 1.0 { 3 } else { 0 };
        let goal = format!("{sign} {bound}");
        println!("{words:<28} {goal:>10} {value:>10.digits$} {verdict}");
        short += usize::from(!holds);
    }
    Ok(short)
}

/// The demonstration house, its rooms over and over. Its numbers are invented.
fn many_rooms() -> Result<String> {
    let file: File = serde_json::from_str(DEMO).context("the demonstration house")?;
    let mut draft: Draft =
        file.open().map_err(|_| anyhow::anyhow!("the demonstration house is not sound"))?;
    let few: Vec<_> = draft.rooms.iter().map(|room| room.id).collect();
    for (number, id) in (few.len()..ROOMS).zip(few.iter().cycle()) {
        draft.copy_room(*id, &format!("Room {}", number + 1)).context("a room is gone")?;
    }
    Ok(serde_json::to_string(&File::new(draft))?)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn measured() -> Value {
        json!({ "performance": 98, "accessibility": 100, "largest_paint_ms": 1200, "blocking_ms": 100,
                "layout_shift": 0.02, "keystroke_ms": 50, "reopening_ms": 1000 })
    }

    #[test]
    fn each_goal_that_is_missed_is_counted() -> Result<()> {
        assert_eq!(judge(&measured())?, 0);
        for (name, value) in
            [("performance", 97.0), ("largest_paint_ms", 1201.0), ("layout_shift", 0.021)]
        {
            let mut worse = measured();
            worse[name] = json!(value);
            assert_eq!(judge(&worse)?, 1, "{name}");
        }
        Ok(())
    }

    #[test]
    fn what_was_not_measured_is_no_success() {
        let mut less = measured();
        less["keystroke_ms"] = Value::Null;
        assert!(judge(&less).is_err());
    }

    #[test]
    fn the_large_house_has_its_rooms() -> Result<()> {
        let file: Value = serde_json::from_str(&many_rooms()?)?;
        assert_eq!(file["job"]["rooms"].as_array().map(Vec::len), Some(ROOMS));
        Ok(())
    }
}
