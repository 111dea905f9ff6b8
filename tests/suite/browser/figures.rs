//! Every figure on the page against what `cargo xtask solve` makes of the job that the page stored.

use std::collections::BTreeMap;

use finrun_engine::building::Level;
use finrun_engine::fluid::Fluid;
use finrun_engine::named::Named as _;
use finrun_engine::quantity::{Kind, System, Temperature, Value, display_unit, show, show_precise};
use finrun_text as text;
use serde::Deserialize;
use serde_json::Value as Json;

use super::page::Page;
use super::place::Place;
use super::solved::{Figure, Figures, Solved, expected, number, sum};

/// A line that opens to its working: the figures in it, the result of each step, and what the steps
/// start from.
#[derive(Debug, Deserialize)]
struct Working {
    title: String,
    figures: Vec<String>,
    results: Vec<String>,
    legend: Vec<String>,
}

/// What stands on one page, all that opens being open.
#[derive(Debug, Deserialize)]
struct Seen {
    figures: Vec<(String, String)>,
    workings: Vec<Working>,
    rows: Vec<Vec<String>>,
    drawn: Vec<String>,
    /// The texts of each plan.
    plans: Vec<Vec<String>>,
    checks: Vec<String>,
}

const LOOK: &str = "
    const words = (element) => element.textContent.replace(/\\s+/g, ' ').trim();
    const all = (around, css, take) => [...around.querySelectorAll(css)].map(take);
    // What stands in two elements is two words, though nothing but their ends lies between.
    const apart = (element) => element.localName === 'li' && element.children.length ? all(element, ':scope > *', words).join(' ') : words(element);
    return {
      figures: all(document, '[data-figure]', (f) => [f.dataset.figure, apart(f)]),
      workings: all(document, '.working', (working) => ({
        title: words(working.querySelector('summary')),
        figures: all(working.querySelector('summary'), '[data-figure]', (f) => f.dataset.figure),
        results: all(working, '.step .result', words),
        legend: all(working, '.step .legend li', words),
      })),
      rows: all(document, 'table tr', (row) => all(row, 'th, td', words)),
      drawn: all(document, 'svg.loop text', words),
      plans: all(document, 'svg.plan', (plan) => all(plan, 'text', words)),
      checks: all(document, '.checks > ul > li', (check) => check.className),
    };";

/// Holds every figure of every page against `solve`; returns how many were compared.
#[track_caller]
pub(super) fn compare_all(page: &Page, solved: &Solved) -> usize {
    solved.places().into_iter().map(|place| compare(page, solved, place)).sum()
}

#[track_caller]
pub(super) fn compare(page: &Page, solved: &Solved, place: Place) -> usize {
    page.go(place);
    let expected = expected(solved, place);
    let system = solved.draft.units;
    let texts: BTreeMap<_, _> =
        expected.iter().map(|(name, figure)| (name.clone(), figure.text(system))).collect();
    page.wait(&format!("the figures of {place:?}, {system:?}"), || {
        let seen = look(page);
        let shown: BTreeMap<_, _> = seen.figures.iter().cloned().collect();
        let wrong = differences(&texts, &shown, &seen.figures);
        if wrong.is_empty() { Ok(()) } else { Err(format!("\n{}", wrong.join("\n"))) }
    });
    let seen = look(page);
    let mut wrong = workings(&seen, &expected, place, system);
    match place {
        Place::Loop => wrong.extend(the_loop(&seen, solved)),
        Place::HeatLoss => wrong.extend(the_rooms(&seen, solved)),
        _ => {}
    }
    if !wrong.is_empty() {
        page.fail(&format!("{place:?}, {system:?}:\n{}", wrong.join("\n")));
    }
    seen.figures.len() + seen.workings.len()
}

/// Opens all that opens, and reads.
#[track_caller]
fn look(page: &Page) -> Seen {
    page.unfold();
    page.wait("waiting for the workings", || {
        let closed = "return [...document.querySelectorAll('.working > summary')]
            .filter((line) => !line.parentElement.querySelector('.step')).map((line) => line.innerText)";
        match page.script(closed, Vec::new()) {
            Json::Array(lines) if lines.is_empty() => Ok(()),
            lines => Err(format!("no working stands under {lines}")),
        }
    });
    serde_json::from_value(page.script(LOOK, Vec::new())).expect("the script answers so")
}

fn differences(
    expected: &BTreeMap<String, String>,
    shown: &BTreeMap<String, String>,
    all: &[(String, String)],
) -> Vec<String> {
    let mut wrong = Vec::new();
    for (name, text) in expected {
        match shown.get(name) {
            None => wrong.push(format!("{name} is not shown; solve has {text}")),
            Some(other) if other != text => {
                wrong.push(format!("{name} shows {other}; solve has {text}"));
            }
            Some(_) => {}
        }
    }
    for (name, text) in all {
        if !expected.contains_key(name) {
            wrong.push(format!("{name} shows {text}, which solve does not have"));
        } else if shown[name] != *text {
            wrong.push(format!("{name} shows both {text} and {}", shown[name]));
        }
    }
    wrong
}

/// Each figure that opens must be the result of a step below it, or what a step starts from, to five
/// digits.
fn workings(seen: &Seen, expected: &Figures, place: Place, system: System) -> Vec<String> {
    let mut wrong = Vec::new();
    for working in &seen.workings {
        for name in &working.figures {
            let Some(Figure::Number(value)) = expected.get(name) else { continue };
            if place == Place::Lengths && (name.ends_with(".load") || name.ends_with(".other")) {
                // They only stand beside the output there, and open under heat loss.
                continue;
            }
            let precise = |system| show_precise(*value, display_unit(value.kind, system)).text();
            // Some formulas only hold in SI units, and are shown in them.
            let either = [precise(system), precise(System::Si)].map(|text| format!("= {text}"));
            let given =
                |line: &String| either.iter().any(|text| line.contains(&format!("{text},")));
            let result = working.results.iter().any(|result| either.contains(result));
            if !result && !working.legend.iter().any(given) {
                wrong.push(format!("{name}: {} is not in {working:?}", either[0]));
            }
        }
        if working.results.iter().any(|result| result.contains('–') || result.contains("NaN")) {
            wrong.push(format!("{}: {:?}", working.title, working.results));
        }
    }
    wrong
}

/// The table of the rooms, and the plans.
fn the_rooms(seen: &Seen, solved: &Solved) -> Vec<String> {
    let Solved { draft, job, typed, .. } = solved;
    let system = draft.units;
    let mut wrong = Vec::new();
    let bands = &typed.certainty.rooms;
    let expected: Vec<Vec<String>> = job
        .house
        .rooms
        .iter()
        .zip(solved.rooms())
        .zip(bands)
        .map(|((room, solved), band)| {
            let load = &solved["load"]["total_w"];
            let per_area = load.as_f64().unwrap_or(f64::NAN) / room.floor_area.si();
            let per_area = Value::new(Kind::PowerDensity, per_area);
            vec![
                text::room_name(draft, room.id),
                show(room.floor_area.into(), system).text(),
                number(Kind::Power, load).text(system),
                show(per_area, system).text(),
                text::from_to(band.low, band.high, system).replace('\u{a0}', " "),
            ]
        })
        .collect();
    if seen.rows.get(1..) != Some(&expected) {
        wrong.push(format!("the table shows {:?}; solve has {expected:?}", seen.rows));
    }
    // A plan leaves out what finds no room in it, but says nothing else.
    let strange = seen.plans.iter().flatten().filter(|drawn| {
        expected.iter().all(|row| [&row[0], &row[2], &row[3]].iter().all(|known| known != drawn))
    });
    wrong.extend(strange.map(|drawn| format!("a plan shows {drawn}, which no room has")));
    let storeys = Level::ALL
        .iter()
        .filter(|level| job.house.rooms.iter().any(|room| room.level == **level))
        .count();
    if seen.plans.len() != storeys {
        wrong.push(format!("{} plans for {storeys} storeys", seen.plans.len()));
    }
    wrong
}

/// The loop's table and drawing, and the count of its checks.
fn the_loop(seen: &Seen, solved: &Solved) -> Vec<String> {
    let circuit = &solved.design["piping"];
    let system = solved.draft.units;
    let shown_as = |kind, json: &Json| number(kind, json).text(system);
    let mut wrong = Vec::new();
    let passages = circuit["passages"].as_array().cloned().unwrap_or_default();
    let expected: Vec<Vec<String>> = passages
        .iter()
        .map(|passage| {
            let lost = ["friction_pa", "fittings_pa", "equipment_pa"].map(|part| &passage[part]);
            let mean = sum([&passage["water_in_k"], &passage["water_out_k"]].into_iter()) / 2.0;
            let density = Fluid::Water.density(Temperature::from_si(mean)).si();
            let head = sum(lost.into_iter()) / (density * 9.80665);
            vec![
                shown_as(Kind::Length, &passage["length_m"]),
                shown_as(Kind::Temperature, &passage["water_in_k"]),
                shown_as(Kind::Temperature, &passage["water_out_k"]),
                shown_as(Kind::Power, &passage["heat_w"]),
                show(Value::new(Kind::Head, head), system).text(),
            ]
        })
        .collect();
    let shown: Vec<Vec<String>> = seen.rows.iter().skip(1).map(|row| row[1..].to_vec()).collect();
    if shown != expected {
        wrong.push(format!("the table shows {shown:?}; solve has {expected:?}"));
    }
    let drawn = seen.drawn.join(" | ");
    let mut in_drawing = vec![
        shown_as(Kind::Temperature, &circuit["supply_k"]),
        shown_as(Kind::Temperature, &circuit["back_k"]),
        shown_as(Kind::VolumeFlow, &circuit["flow_m3_s"]),
    ];
    for room in solved.rooms() {
        let element = &room["element"];
        // A room without an element has words there.
        if sum([&element["choice"]["nominal_m"]].into_iter()) == 0.0 {
            continue;
        }
        in_drawing.push(shown_as(Kind::Temperature, &element["water_in_k"]));
        in_drawing.push(shown_as(Kind::Temperature, &element["water_out_k"]));
        in_drawing.push(shown_as(Kind::Length, &element["choice"]["nominal_m"]));
    }
    wrong.extend(
        in_drawing
            .iter()
            .filter(|figure| !drawn.contains(figure.as_str()))
            .map(|figure| format!("{figure} is not in the drawing: {drawn}")),
    );
    let checks = solved.design["checks"].as_array().cloned().unwrap_or_default();
    let verdicts: Vec<_> = checks.iter().filter_map(|check| check["severity"].as_str()).collect();
    if seen.checks != verdicts {
        wrong.push(format!("the checks are {:?}; solve has {verdicts:?}", seen.checks));
    }
    wrong
}
