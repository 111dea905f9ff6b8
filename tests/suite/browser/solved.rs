//! What `cargo xtask solve` makes of the job that the page stored, by the names of the page's figures.

use std::collections::BTreeMap;
use std::fs;
use std::process::Command;

use finrun_engine::check::Finding;
use finrun_engine::design::{Design, design};
use finrun_engine::job::{Draft, File, Job, own_transmittance, read};
use finrun_engine::quantity::{Kind, System, Value, show};
use finrun_text as text;
use serde_json::Value as Json;

use super::compare;
use super::existing;
use super::materials;
use super::page::Page;
use super::path_from;
use super::piping;
use super::place::Place;
use super::remedies;
use super::report;
use super::site;
use super::what_if;
use super::year;

/// The stored job, and what `solve` prints for it.
pub(super) struct Solved {
    pub(super) draft: Draft,
    pub(super) job: Job,
    pub(super) design: Json,
    /// The same with its types, for what the page says in sentences.
    pub(super) typed: Design,
}

/// What should stand at a figure.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Figure {
    Number(Value),
    Words(String),
}

impl Figure {
    pub(super) fn text(&self, system: System) -> String {
        match self {
            Self::Number(value) => show(*value, system).text(),
            // As the page is read: each white space as a plain one.
            Self::Words(words) => words.replace('\u{a0}', " "),
        }
    }
}

pub(super) type Figures = BTreeMap<String, Figure>;

#[track_caller]
pub(super) fn solve(page: &Page) -> Solved {
    let text = page.stored(&page.job_key());
    let folder = tempfile::tempdir().expect("the temporary folder is writable");
    let file = folder.path().join("job.json");
    fs::write(&file, &text).expect("the temporary folder is writable");
    let output = Command::new(path_from("FINRUN_XTASK")).arg("solve").arg(&file).output();
    let output = output.expect("the developer command starts");
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "solve: {said}\n{text}");
    let draft = serde_json::from_str::<File>(&text).expect("a job file").open().expect("a job");
    let job = read(&draft).job.expect("solve had no objection");
    let printed = String::from_utf8_lossy(&output.stdout);
    let typed = design(&job);
    let again = serde_json::to_string_pretty(&typed).expect("a design is JSON");
    assert_eq!(printed.trim_end(), again, "solve prints what the engine gives");
    let design = serde_json::from_str(&printed).expect("solve prints JSON");
    Solved { draft, job, design, typed }
}

impl Solved {
    pub(super) fn rooms(&self) -> &[Json] {
        self.design["rooms"].as_array().map_or(&[], Vec::as_slice)
    }

    pub(super) fn spaces(&self) -> &[Json] {
        self.design["spaces"].as_array().map_or(&[], Vec::as_slice)
    }

    /// All pages of the job.
    pub(super) fn places(&self) -> Vec<Place> {
        let rooms = self.rooms().iter().filter_map(|room| room["room"].as_u64());
        let spaces = self.spaces().iter().filter_map(|space| space["space"].as_u64());
        Place::without_rooms().chain(rooms.chain(spaces).map(Place::Room)).collect()
    }

    fn to_see(&self) -> usize {
        let checks = self.design["checks"].as_array().map_or(&[][..], Vec::as_slice);
        checks.iter().filter(|check| check["severity"] != "holds").count()
    }
}

fn si(json: &Json) -> f64 {
    json.as_f64().unwrap_or_else(|| panic!("{json} is no number"))
}

pub(super) fn number(kind: Kind, json: &Json) -> Figure {
    Figure::Number(Value::new(kind, si(json)))
}

pub(super) fn sum<'a>(numbers: impl Iterator<Item = &'a Json>) -> f64 {
    numbers.map(si).sum()
}

fn pieces(room: &Json) -> Vec<Value> {
    let runs = room["element"]["choice"]["runs"].as_array().cloned().unwrap_or_default();
    let pieces =
        runs.iter().flat_map(|run| run["pieces_m"].as_array().cloned().unwrap_or_default());
    pieces.map(|piece| Value::new(Kind::Length, si(&piece))).collect()
}

/// All that should stand on a page, by the names of the figures.
pub(super) fn expected(solved: &Solved, place: Place) -> Figures {
    let design = &solved.design;
    let nominal = sum(solved.rooms().iter().map(|room| &room["element"]["choice"]["nominal_m"]));
    let element = Figure::Number(Value::new(Kind::Length, nominal));
    let load = number(Kind::Power, &design["load_w"]);
    let checks = match (solved.to_see(), design["checks"].as_array().map_or(0, Vec::len)) {
        (0, 1) => "1 check holds".to_owned(),
        (0, all) => format!("{all} checks hold"),
        (some, _) => format!("{some} to see"),
    };
    let mut figures = vec![
        ("plate.load".to_owned(), load.clone()),
        ("plate.element".to_owned(), element.clone()),
        ("plate.checks".to_owned(), Figure::Words(checks)),
    ];
    let mut add = |name: &str, figure| figures.push((name.to_owned(), figure));
    match place {
        Place::Rooms | Place::Ground | Place::Prices | Place::Piping | Place::Circulator => {}
        Place::Drawings | Place::Share => {}
        Place::Compare => figures.extend(compare::figures(solved)),
        Place::WhatIf => figures.extend(what_if::figures(solved)),
        Place::Materials => figures.extend(materials::figures(solved)),
        Place::Season | Place::DesignDay | Place::Cooler => {
            figures.extend(year::figures(solved, place));
        }
        Place::Existing => figures.extend(existing::figures(solved)),
        Place::Air => add("air.leaked", number(Kind::AirFlow, &design["air"]["leaked_m3_s"])),
        Place::Room(id) => match solved.rooms().iter().find(|room| room["room"] == id) {
            Some(room) => {
                add(&format!("room-{id}.load"), number(Kind::Power, &room["load"]["total_w"]));
            }
            None => figures.extend(temperatures(solved).filter(|(name, _)| {
                name.strip_prefix("room-").is_some_and(|rest| rest.starts_with(&format!("{id}.")))
            })),
        },
        Place::HeatLoss => {
            add("load", load);
            figures.extend(temperatures(solved));
            figures.extend(space_losses(solved));
            figures.extend(sentences(solved, place));
        }
        Place::Climate | Place::Assemblies | Place::Certainty | Place::Bills => {
            figures.extend(sentences(solved, place));
        }
        Place::Lengths => {
            add("element", element);
            figures.extend(sentences(solved, place));
        }
        Place::Install | Place::Commission => figures.extend(site::figures(solved, place)),
        Place::Report => {
            add("load", load);
            add("element", element);
            figures.extend(report::figures(solved));
            figures.extend(materials::figures(solved));
        }
        Place::Plant => {
            let plant = &design["plant"];
            add("plant.needed", number(Kind::Power, &plant["needed"]["output_w"]));
            add("plant.volume", number(Kind::LiquidVolume, &plant["volume"]["total_m3"]));
            add("plant.fill", number(Kind::Pressure, &plant["filling"]["cold_pa"]));
            add("plant.tank", number(Kind::LiquidVolume, &plant["tank"]["volume_m3"]));
            let points = plant["reset"]["points"].as_array().map_or(&[][..], Vec::as_slice);
            for (at, point) in points.iter().enumerate() {
                let supply = number(Kind::Temperature, &point["supply_k"]);
                add(&format!("reset-{at}.supply"), supply);
            }
            figures.extend(sentences(solved, place));
        }
        Place::Loop => {
            let circuit = &design["piping"];
            let drop = si(&circuit["supply_k"]) - si(&circuit["back_k"]);
            add("flow", number(Kind::VolumeFlow, &circuit["flow_m3_s"]));
            add("drop", Figure::Number(Value::new(Kind::TemperatureDifference, drop)));
            add("velocity", number(Kind::Velocity, &circuit["velocity_m_s"]));
            add("head", number(Kind::Head, &circuit["head_m"]));
            add("boiler-heat", number(Kind::Power, &circuit["heat_w"]));
        }
    }
    figures.extend(piping::figures(solved, place));
    figures.extend(remedies::figures(solved, place));
    for (room, job) in solved.rooms().iter().zip(&solved.job.house.rooms) {
        match place {
            Place::HeatLoss => figures.extend(losses(room, job.floor_area.si())),
            Place::Lengths => figures.extend(elements(room, solved.draft.units)),
            _ => {}
        }
    }
    figures.into_iter().collect()
}

/// Each unheated space at its temperature.
fn temperatures(solved: &Solved) -> impl Iterator<Item = (String, Figure)> {
    solved.spaces().iter().map(|space| {
        let name = format!("room-{}.temperature", space["space"]);
        (name, number(Kind::Temperature, &space["temperature_k"]))
    })
}

/// Each way that heat takes out of an unheated space.
fn space_losses(solved: &Solved) -> Vec<(String, Figure)> {
    let mut figures = Vec::new();
    for space in solved.spaces() {
        for (index, path) in space["paths"].as_array().into_iter().flatten().enumerate() {
            let name = format!("room-{}.path-{index}", space["space"]);
            figures.push((name, number(Kind::Power, &path["loss_w"])));
        }
    }
    figures
}

/// What the page says in words around its numbers.
fn sentences(solved: &Solved, place: Place) -> Vec<(String, Figure)> {
    let Solved { draft, job, typed, .. } = solved;
    let system = draft.units;
    let sure = &typed.certainty;
    let mut said = Vec::new();
    let mut say = |name: &str, words: String| said.push((name.to_owned(), Figure::Words(words)));
    match place {
        Place::HeatLoss => {
            say("load.band", text::band(sure.house, system));
            let opinion =
                typed.checks.iter().find(|c| matches!(c.finding, Finding::PerArea { .. }));
            let opinion = opinion.map(|check| {
                let title = text::check_title(check, draft, system);
                format!("{title}. {}", text::check_detail(check, system))
            });
            say("second-opinion", opinion.unwrap_or_default());
            if let Some(slabs) = typed.slabs {
                say("slabs", text::slabs_compared(slabs, draft.ground.method, system));
            }
        }
        Place::Lengths => say("together", text::together(&typed.together, system)),
        Place::Climate => say(
            "station",
            draft.station.as_ref().map_or(text::no_station().to_owned(), |station| {
                let facts = text::station_facts(station, system);
                format!("{}: {facts}", text::station_name(station))
            }),
        ),
        Place::Assemblies => {
            for assembly in &draft.assemblies {
                let u = own_transmittance(draft, assembly.id).expect("a whole job");
                say(&format!("assembly-{}.u", assembly.id.0), text::own_u(u, system));
            }
        }
        Place::Certainty => {
            say("certainty.load", text::load_and_band(typed.load, sure.house, system));
            for (index, effect) in sure.effects.iter().enumerate() {
                // The page leaves out what moves the load by less than a watt.
                if effect.alone.si() >= 1.0 {
                    let subject = text::subject(draft, effect.subject, system);
                    let words = format!("{subject} {}", text::effect(effect, system));
                    say(&format!("effect-{index}"), words);
                }
            }
        }
        Place::Plant => {
            let plant = typed.plant.as_ref().expect("a job with rooms");
            let fill = &plant.filling;
            say(
                "plant.back",
                plant.back.map(|back| text::back_verdict(back, system)).unwrap_or_default(),
            );
            say("plant.pressures", text::pressures_said(fill, system));
            say(
                "plant.parts",
                plant.volume.map(|v| text::volume_parts(&v, system)).unwrap_or_default(),
            );
            say(
                "plant.expansion",
                plant.tank.map(|t| text::tank_said(&t, system)).unwrap_or_default(),
            );
            say(
                "plant.boiling",
                plant.boiling.map(|b| text::boiling_margin(&b, system)).unwrap_or_default(),
            );
            say(
                "plant.control",
                plant.control.map(|c| text::control_power(&c)).unwrap_or_default(),
            );
            if let Some(reset) = &plant.reset {
                say("plant.reset", text::reset_line(reset, job.circuit.supply, system));
            }
        }
        Place::Bills => say(
            "bills",
            match (&job.bills, &typed.bills) {
                _ if draft.station.is_none() => text::bills_need_a_station().to_owned(),
                (Some(Ok(fit)), Some(compared)) => text::against_bills(fit, compared, system),
                (Some(Err(error)), _) => text::bills_tell_nothing(*error).to_owned(),
                _ => text::no_bills_yet().to_owned(),
            },
        ),
        _ => {}
    }
    said
}

fn losses(room: &Json, floor_m2: f64) -> Vec<(String, Figure)> {
    let name = |what: &str| format!("room-{}.{what}", room["room"]);
    let load = &room["load"];
    let density = si(&load["total_w"]) / floor_m2;
    let mut figures = vec![
        (name("load"), number(Kind::Power, &load["total_w"])),
        (name("per-area"), Figure::Number(Value::new(Kind::PowerDensity, density))),
    ];
    let paths = load["paths"].as_array().cloned().unwrap_or_default();
    for (index, path) in paths.iter().enumerate() {
        figures.push((name(&format!("path-{index}")), number(Kind::Power, &path["loss_w"])));
    }
    figures
}

fn elements(room: &Json, system: System) -> Vec<(String, Figure)> {
    let name = |what: &str| format!("room-{}.{what}", room["room"]);
    let (load, element) = (&room["load"], &room["element"]);
    let other = si(&load["other_w"]);
    let needs = (si(&load["total_w"]) - other).max(0.0);
    let gets = si(&element["output_w"]);
    let shown: Vec<_> = pieces(room).iter().map(|piece| show(*piece, system).text()).collect();
    let mut figures = vec![
        (name("load"), Figure::Number(Value::new(Kind::Power, needs))),
        (name("output"), number(Kind::Power, &element["output_w"])),
        (name("pieces"), Figure::Words(shown.join(" + "))),
        (name("rule-of-thumb"), number(Kind::Length, &element["rule_of_thumb_m"])),
        (name("water-in"), number(Kind::Temperature, &element["water_in_k"])),
        (name("water-out"), number(Kind::Temperature, &element["water_out_k"])),
    ];
    // Without an element there are words instead.
    if si(&element["choice"]["nominal_m"]) > 0.0 {
        figures.push((name("nominal"), number(Kind::Length, &element["choice"]["nominal_m"])));
    }
    if !element["needed_m"].is_null() {
        figures.push((name("needed"), number(Kind::Length, &element["needed_m"])));
    }
    if other > 0.0 {
        figures.push((name("other"), Figure::Number(Value::new(Kind::Power, other))));
    }
    // A billionth of the load is rounding.
    if needs - gets > 1e-9 * needs {
        figures.push((name("short"), Figure::Number(Value::new(Kind::Power, needs - gets))));
    } else if needs > 0.0 {
        figures.push((name("over"), Figure::Number(Value::share((gets - needs) / needs))));
    }
    figures
}
