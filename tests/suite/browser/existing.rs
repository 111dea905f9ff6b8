//! A system that stands: its rooms against `solve --existing`, and a fault found from what is typed.

use finrun_engine::existing::{At, Explained, Limit, explain};
use finrun_engine::job::measured;
use finrun_engine::quantity::{Kind, MassFlow, Temperature, Unit, Value};
use finrun_text as text;

use super::axe::{Violation, axe, axe_on_colours};
use super::looks::Theme;
use super::page::{Page, View};
use super::place::Place;
use super::solved::{Figure, Solved, number, solve};
use super::visit;
use super::year::printed;
use crate::existing::faults::{Real, Run, read_all};
use crate::support::{DEMO, FOUR_ROOMS};
use finrun_engine::job::{Field, Measured, Ran, SpotField};

pub(super) fn figures(solved: &Solved) -> Vec<(String, Figure)> {
    let Ok(json) = printed(solved, "--existing") else { return Vec::new() };
    let mut all = Vec::new();
    for room in json["gets"].as_array().map_or(&[][..], Vec::as_slice) {
        let key = |end: &str| format!("room-{}.{end}", room["room"]);
        all.push((key("loses"), number(Kind::Power, &room["wants_w"])));
        all.push((key("gets"), number(Kind::Power, &room["gets_w"])));
        all.push((key("reaches"), number(Kind::Temperature, &room["reaches_k"])));
        let limits = [Limit::None, Limit::NotConnected, Limit::Element, Limit::Water, Limit::Flow];
        let limit = limits
            .into_iter()
            .find(|limit| serde_json::to_value(limit).expect("a word") == room["limit"]);
        let said = text::limit_said(limit.expect("a limit"));
        all.push((key("limit"), Figure::Words(said.to_owned())));
    }
    match explain(&solved.job, &solved.typed, &measured(&solved.draft)) {
        Ok(explained) => all.extend(told(solved, &explained)),
        Err(why) => {
            let said = text::nothing_explained(why).to_owned();
            all.push(("existing.nothing".to_owned(), Figure::Words(said)));
        }
    }
    all
}

fn told(solved: &Solved, explained: &Explained) -> Vec<(String, Figure)> {
    let draft = &solved.draft;
    let mut all = Vec::new();
    for (nth, likely) in explained.likely.iter().enumerate().take(6) {
        if nth == 0 || likely.share >= 0.01 {
            let title = text::explanation(draft, likely.explanation);
            all.push((format!("existing.likely-{nth}"), Figure::Words(title)));
        }
    }
    let number = |at: At, value: f64| -> Figure {
        let circuit = &solved.job.circuit;
        Figure::Number(match at {
            At::Flow(_) => {
                Value::from(MassFlow::from_si(value) / circuit.fluid.density(circuit.supply))
            }
            _ => Value::from(Temperature::from_si(value)),
        })
    };
    for (nth, next) in explained.next.iter().enumerate() {
        let of = |value| number(next.at, value).text(draft.units);
        let expected = text::expected_there(&of(next.if_first), &of(next.if_second));
        let said = format!("{}: {expected}", text::measured_at(draft, next.at));
        all.push((format!("existing.next-{nth}"), Figure::Words(said)));
    }
    for (nth, of) in explained.compared.iter().enumerate() {
        let key = |end: &str| format!("existing.reading-{nth}.{end}");
        all.push((key("read"), number(of.at, of.read)));
        all.push((key("entered"), number(of.at, of.calculated)));
        all.push((key("first"), number(of.at, of.explained)));
    }
    all
}

#[track_caller]
fn holds(broken: &[Violation]) {
    let broken: Vec<String> = broken.iter().map(ToString::to_string).collect();
    assert!(broken.is_empty(), "{broken:#?}");
}

/// Types readings as a thermometer shows them, in tenths of a degree.
fn type_readings(page: &Page, measured: &Measured) {
    let type_into = |label: &str, value: Option<Temperature>| {
        if let Some(value) = value {
            page.type_into(label, &format!("{:.1}", value.to(Unit::Fahrenheit)));
        }
    };
    page.choose("Before the readings it ran", "Without a stop, until the rooms no longer changed");
    type_into("Outdoors meanwhile", measured.outdoors);
    type_into("Boiler's supply", measured.boiler_supply);
    type_into("Boiler's return", measured.boiler_back);
    for (room, spot) in &measured.spots {
        let fields = [
            (SpotField::WaterIn, spot.water_in),
            (SpotField::WaterOut, spot.water_out),
            (SpotField::Air, spot.air),
        ];
        for (field, value) in fields {
            let Some(value) = value else { continue };
            // A lone loop is headed as its first room is: the box is found by its id.
            let box_id = Field::Spot(*room, field).to_string();
            let script = "const box = document.getElementById(arguments[0]);
                box.scrollIntoView({block: 'center'}); box.focus(); box.select();";
            page.script(script, vec![box_id.into()]);
            page.press_keys(&format!("{:.1}", value.to(Unit::Fahrenheit)));
        }
    }
}

/// On the shipped bungalow, with readings made of it with two fifths of its flow.
#[test]
fn readings_on_a_phone_find_low_flow() {
    visit(View::Phone, |page| {
        page.open_job(DEMO, Place::Existing);
        page.wait_for_text(text::nothing_explained(
            finrun_engine::existing::NoExplanation::NoSupply,
        ));
        let solved = solve(page);
        let run = Run {
            supply: Temperature::of(170.0, Unit::Fahrenheit),
            outdoors: Temperature::of(12.0, Unit::Fahrenheit),
            ran: Ran::Throughout,
        };
        let real = Real::of(&solved.job, &solved.typed).flow(0.4);
        type_readings(page, &read_all(&real, run));
        page.wait_for("[data-figure='existing.likely-0']");
        page.wait("the first explanation", || {
            match page.text_of("[data-figure='existing.likely-0']").as_str() {
                "Low flow everywhere" => Ok(()),
                other => Err(other.to_owned()),
            }
        });
        let all = page.text_of(".told");
        assert!(all.contains("Almost certain") && all.contains("of the flow calculated"), "{all}");
        page.wait_until_saved();
        // From its beginning, as every page is judged: no box lies half under the plate.
        page.leave();
        page.script("scrollTo(0, 0)", vec![]);
        holds(&axe(page));
        page.emulate(Theme::Dark);
        holds(&axe_on_colours(page));
        page.picture_of_all("existing-phone-dark");
        page.emulate(Theme::Light);
        page.picture_of_all("existing-phone");
        super::figures::compare(page, &solve(page), Place::Existing);
    });
}

/// The plan's pieces are entered as what stands with one tap; without one of them its room is short, and
/// nothing is put in its place.
#[test]
fn pieces_are_entered_as_they_stand() {
    visit(View::Desk, |page| {
        page.open_job(FOUR_ROOMS, Place::Existing);
        page.press(text::existing_as_planned());
        page.wait_until_saved();
        let solved = solve(page);
        let planned = solved.typed.rooms[1].element.choice.nominal;
        page.unfold();
        let taken = page.script(
            "const room = [...document.querySelectorAll('details')].find((d) => d.innerText.startsWith(arguments[0]));
            const acts = [...room.querySelectorAll('.stands button')].filter((b) => b.innerText === arguments[1]);
            acts[0].click(); return acts.length",
            vec![
                text::room_name(&solved.draft, solved.typed.rooms[1].room).into(),
                text::existing_take().into(),
            ],
        );
        assert_ne!(taken, serde_json::json!(0));
        page.wait_for_text(text::limit_said(Limit::Element));
        page.wait_until_saved();
        let after = solve(page);
        assert!(after.typed.rooms[1].element.choice.nominal < planned);
        holds(&axe(page));
        page.picture_of_all("existing-desk");
    });
}
