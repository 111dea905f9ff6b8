//! The days on site: steps ticked and noted with a thumb, readings judged, both there on another day
//! and on paper.

use std::process::Command;

use finrun_engine::install::steps;
use finrun_engine::job::Balancing;
use finrun_engine::quantity::{Kind, Unit, Value, VolumeFlow};
use finrun_text as text;
use serde_json::json;

use super::jobs::whole;
use super::page::{Page, View};
use super::place::Place;
use super::solved::{Figure, Solved, number, solve};
use super::visit;
use crate::support::FOUR_ROOMS;

/// What stands on the two pages of a job of which nothing is measured.
pub(super) fn figures(solved: &Solved, place: Place) -> Vec<(String, Figure)> {
    let Solved { draft, job, typed, .. } = solved;
    let mut figures = Vec::new();
    let mut add = |name: String, figure| figures.push((name, figure));
    if place == Place::Install {
        let steps = steps(job, typed);
        let done = steps.iter().filter(|step| draft.progress.is_done(&step.id())).count();
        if !steps.is_empty() {
            let said = text::steps_done(done, steps.len());
            add("install.done".to_owned(), Figure::Words(said));
        }
        return figures;
    }
    let value = |value: Value| Figure::Number(value);
    let design = &solved.design;
    let plant = &design["plant"];
    let outdoors = value(job.house.site.outdoors.into());
    add("measured.outdoors.calculated".to_owned(), outdoors);
    let fill = number(Kind::Pressure, &plant["filling"]["cold_pa"]);
    add("measured.fill.calculated".to_owned(), fill);
    let charge = number(Kind::Pressure, &plant["tank"]["pre_charge_pa"]);
    add("measured.pre-charge.calculated".to_owned(), charge);
    for (room, of) in solved.rooms().iter().zip(&job.house.rooms) {
        let name = format!("room-{}.measured-air.calculated", room["room"]);
        add(name, value(of.temperature.into()));
    }
    let circuits = design["piping"]["circuits"].as_array().cloned().unwrap_or_default();
    for (circuit, typed) in circuits.iter().zip(&typed.piping.circuits) {
        let name = |end: &str| format!("room-{}.measured-{end}.calculated", circuit["rooms"][0]);
        add(name("supply"), number(Kind::Temperature, &design["piping"]["supply_k"]));
        add(name("back"), number(Kind::Temperature, &circuit["back_k"]));
        let density = job.circuit.fluid.density(job.circuit.supply).si();
        let flow = circuit["mass_flow_kg_s"].as_f64().unwrap_or(f64::NAN) / density;
        add(name("flow"), value(VolumeFlow::from_si(flow).into()));
        if typed.valve.fitted == Balancing::Valves {
            let open = job.circuit.parts.balancing.gallons_per_minute();
            let cv = circuit["valve"]["cv"].as_f64().map_or(open, |cv| cv.min(open));
            add(name("valve"), value(Value::number(cv)));
        }
    }
    figures
}

fn done(page: &Page) -> String {
    page.text_of("[data-figure='install.done']")
}

fn is_ticked(page: &Page, id: &str) -> bool {
    page.script("return document.getElementById(arguments[0]).checked", vec![json!(id)])
        == json!(true)
}

#[test]
fn steps_are_ticked_and_noted_on_a_phone_and_are_there_again() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Loop);
        page.press("Installation");
        page.wait_for_text("Prepare and protect");
        let nothing = done(page);
        assert!(nothing.starts_with("0 of "), "{nothing}");

        page.press("Have old materials tested");
        page.wait_for_text(&nothing.replacen('0', "1", 1));
        page.press("Note, photo, date: Have old materials tested");
        page.type_into("Note", "Duct tape sent to the <lab>");
        page.type_into("Number of the photo", "0417");
        // The tick has the day of today; the reader types another.
        let today = page.value_of("Date");
        assert!(today.len() == 10 && today.starts_with("20"), "{today}");
        page.script(
            "const box = document.getElementById('check-old-house.house.date');
             box.value = '2026-03-01'; box.dispatchEvent(new Event('input', { bubbles: true }))",
            vec![],
        );
        page.wait_for_text("2026-03-01 · photo 0417 · Duct tape sent to the <lab>");
        page.wait_until_saved();

        page.reload();
        page.wait_for_text("2026-03-01 · photo 0417 · Duct tape sent to the <lab>");
        assert!(done(page).starts_with("1 of "));
        assert!(is_ticked(page, "check-old-house.house"));
        assert!(!is_ticked(page, "protect.house"));

        // Undo takes one tick back, redo brings it again.
        page.press("Clear and cover");
        page.wait_for_text(&nothing.replacen('0', "2", 1));
        page.press("Undo");
        page.wait_for_text(&nothing.replacen('0', "1", 1));
        assert!(!is_ticked(page, "protect.house"));
        page.press("Redo");
        page.wait_for_text(&nothing.replacen('0', "2", 1));
        assert!(is_ticked(page, "protect.house"));
        page.go(Place::Loop);
        page.wait_for_text(&nothing.replacen('0', "2", 1));
    });
}

#[test]
fn readings_are_judged_kept_and_stop_nothing() {
    visit(View::Phone, |page| {
        page.open_job(FOUR_ROOMS, Place::Commission);
        let solved = solve(page);
        let circuit = &solved.typed.piping.circuits[0];
        let first = circuit.rooms[0];
        let drop = (solved.typed.piping.supply - circuit.back).to(Unit::FahrenheitDegree);
        let supply = solved.typed.piping.supply.to(Unit::Fahrenheit);
        let judged = format!("[data-figure='judged-circuit-{}.0']", first.0);
        let name = text::circuit_at(&solved.draft, first);
        let read = |supply: f64, back: f64| {
            page.within(&name, || {
                page.type_into("Supply", &format!("{supply:.1}"));
                page.type_into("Return", &format!("{back:.1}"));
            });
        };
        read(supply, supply - drop);
        page.wait_for_text("As it should be");
        read(supply, supply - 1.8 * drop);
        page.wait_for_text("Low flow");
        let low = page.text_of(&judged);
        assert!(low.contains("of the flow that is meant, by its drop of"), "{low}");

        page.type_into("Fill pressure, cold", "2");
        page.wait_for_text("too little to keep air out");
        let load = page.text_of("[data-figure='plate.load']");
        page.type_into("Outdoors meanwhile", "5x");
        page.leave();
        let error = page.text_of("[id='measured.outdoors-error']");
        assert!(error.contains("“5x” cannot be read"), "{error}");
        // The house stands, and what can be read is judged.
        assert_eq!(page.text_of("[data-figure='plate.load']"), load);
        assert!(!page.text_of("body").contains(text::last_good()));
        assert_eq!(page.text_of(&judged), low);
        page.wait_until_saved();

        page.reload();
        page.wait_for_text("Low flow");
        assert_eq!(page.text_of(&judged), low);
        assert_eq!(page.value_of("Outdoors meanwhile"), "5x");
        page.go(Place::Loop);
        page.wait_for_text("4 readings");
    });
}

/// The words of a print, page by page.
fn printed(page: &Page, name: &str) -> Vec<String> {
    let pdf = page.print_pdf(name);
    let text = Command::new("pdftotext").arg("-layout").arg(&pdf).arg("-").output();
    let text = page.asked("pdftotext", text).stdout;
    let text = String::from_utf8_lossy(&text).into_owned();
    let pages = text.split('\u{c}').map(str::to_owned);
    pages.filter(|page| !page.trim().is_empty()).collect()
}

#[test]
fn the_list_and_the_sheet_print_whole() {
    let job = whole();
    visit(View::Desk, |page| {
        page.open_job(&job.text, Place::Install);
        page.wait_for(".steps");
        page.press("Have old materials tested");
        let list = printed(page, "install-list");
        assert!((1..9).contains(&list.len()), "{} pages", list.len());
        let all = list.join("\n");
        for heading in
            ["Prepare and protect", "Soldering", "Pressure test", "First heat and hand-over"]
        {
            assert!(all.contains(heading), "{heading} is not in\n{all}");
        }
        // Boxes to open do not print, nor does what surrounds the list.
        assert!(!all.contains(text::step_more()) && !all.contains("Back to"), "{all}");

        page.go(Place::Commission);
        page.wait_for(".handed");
        let sheet = printed(page, "commission-sheet");
        assert!((2..7).contains(&sheet.len()), "{} pages", sheet.len());
        let last = sheet.last().cloned().unwrap_or_default();
        for line in [text::signed_by_installer(), text::signed_by_owner(), text::hand_over()] {
            assert!(last.contains(line), "{line} is not on the last page\n{last}");
        }
    });
}
