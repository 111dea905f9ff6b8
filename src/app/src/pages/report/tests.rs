//! The report of many jobs without a browser: sound markup, every part in its order, every default
//! among the assumptions, nothing that is no number.

use super::{Form, Paper, Seen, sheet};
use crate::markup::Markup;
use finrun_engine::design::design;
use finrun_engine::job::{self, Draft, File, InputOrigin, read};
use finrun_engine::quantity::System;
use finrun_text as text;

const JOBS: [&str; 7] = [
    include_str!("../../../../../public/demo/bungalow.json"),
    include_str!("../../../../../public/demo/two-storey.json"),
    include_str!("../../../../../public/demo/cottage.json"),
    include_str!("../../../../../tests/jobs/four-rooms.json"),
    include_str!("../../../../../tests/jobs/v2-fixture.json"),
    include_str!("../../../../../tests/jobs/v3-fixture.json"),
    include_str!("../../../../../tests/jobs/v4-fixture.json"),
];

fn drafts() -> Vec<Draft> {
    let open =
        |text: &str| serde_json::from_str::<File>(text).expect("a file").open().expect("a job");
    let both = |draft: Draft| {
        [System::Us, System::Si].map(|units| Draft { units, ..draft.clone() }).to_vec()
    };
    JOBS.into_iter().map(open).flat_map(both).collect()
}

fn print(draft: &Draft, form: Form) -> String {
    let reading = read(draft);
    let job = reading.job.expect("a whole job");
    let design = design(&job);
    let seen = Seen {
        draft,
        job: &job,
        design: &design,
        errors: &reading.errors,
        system: draft.units,
        today: "2026-03-01".to_string(),
    };
    let mut out = Markup::new();
    sheet(&mut out, &seen, form, Paper::Letter);
    out.done()
}

/// Every tag that opens closes again, in its turn.
fn is_sound(markup: &str) -> Result<(), String> {
    let mut open: Vec<&str> = Vec::new();
    for tag in markup.split('<').skip(1) {
        let (inside, _) = tag.split_once('>').ok_or_else(|| format!("no end of <{tag}"))?;
        match inside.strip_prefix('/') {
            Some(name) if open.last() == Some(&name) => drop(open.pop()),
            Some(name) => return Err(format!("</{name}> ends {:?}", open.last())),
            None => open.push(inside.split(' ').next().unwrap_or_default()),
        }
    }
    if open.is_empty() { Ok(()) } else { Err(format!("{open:?} stay open")) }
}

#[test]
fn every_report_is_sound_and_whole() {
    for draft in drafts() {
        for form in [Form::Full, Form::Short] {
            let markup = print(&draft, form);
            is_sound(&markup).unwrap_or_else(|error| panic!("{}: {error}", draft.name));
            for none in ["NaN", "inf ", ">inf", "undefined"] {
                assert!(!markup.contains(none), "{}: {none}", draft.name);
            }
            for room in &draft.rooms {
                assert!(markup.contains(&text::room_name(&draft, room.id)), "{}", room.name);
            }
        }
    }
}

#[test]
fn parts_stand_in_their_order() {
    for draft in drafts() {
        let markup = print(&draft, Form::Full);
        let mut at = 0;
        for title in [
            text::report_results(),
            text::report_inputs(),
            text::report_assumptions(),
            text::report_worked(),
            text::report_drawings(),
            text::report_checks(),
            text::report_limits(),
        ] {
            let heading = format!("<h2>{title}</h2>");
            let found = markup[at..].find(&heading);
            at += found.unwrap_or_else(|| panic!("{}: {title} after {at}", draft.name));
        }
    }
}

/// The year of each job that has a station stands among the results, as its own page has it.
#[test]
fn a_year_is_reported_where_there_is_a_station() {
    use finrun_engine::climate::Season;
    use finrun_engine::season::{Burning, Controls, season};
    let mut years = 0;
    for draft in drafts() {
        let markup = print(&draft, Form::Full);
        let (results, _) = markup.split_once(text::report_inputs()).expect("inputs");
        let heading = format!("<h3>{}</h3>", text::season_sums_title());
        let Some(station) = &draft.station else {
            assert!(!results.contains(&heading), "{}", draft.name);
            continue;
        };
        let job = read(&draft).job.expect("a whole job");
        let design = design(&job);
        let (bins, controls) = (Season::of(station).bins(), Controls::of(&job, &design));
        let run = season(&job, &design, &bins, &controls, Burning::of(&job)).expect("a year");
        let (_, year) = results.split_once(&heading).expect("the year");
        let says = |words: &str| {
            let mut escaped = Markup::new();
            escaped.text(words);
            assert!(year.contains(&escaped.done()), "{}: {words}", draft.name);
        };
        says(&text::season_verdict(&draft, &run, draft.units));
        for (_, name, shown) in text::season_sums(&run, job.control.as_ref(), draft.units) {
            says(name);
            says(&shown);
        }
        years += 1;
    }
    assert!(years > 5, "{years}");
}

/// Each default stands in one assumption, with every room that has it.
#[test]
fn every_default_is_an_assumption() {
    for draft in drafts() {
        let markup = print(&draft, Form::Full);
        let (_, rest) = markup.split_once("<ol class=\"assumptions\">").expect("assumptions");
        let (list, _) = rest.split_once("</ol>").expect("their end");
        let lines: Vec<&str> = list.split("</li>").collect();
        let mut count = 0;
        for input in job::inputs(&draft) {
            if input.origin != InputOrigin::Assumed || text::without_number(input.field).is_some() {
                continue;
            }
            count += 1;
            let label = text::whole_label(input.field);
            let shown = super::inputs::shown(input.value, draft.units);
            let mut escaped = Markup::new();
            escaped.text(&shown);
            let shown = format!(": {}", escaped.done());
            let room = match input.field {
                job::Field::Room(room, _)
                | job::Field::Leg(room, ..)
                | job::Field::Surface(room, ..)
                | job::Field::Opening(room, ..) => text::room_name(&draft, room),
                _ => String::new(),
            };
            let said =
                |line: &&str| line.contains(label) && line.contains(&shown) && line.contains(&room);
            assert!(lines.iter().any(said), "{}: {input:?}", draft.name);
        }
        assert!(count > 10, "{}: {count}", draft.name);
    }
}

/// A finding that is to be seen stands in the report with its ways out; one that holds is counted.
#[test]
fn what_is_outstanding_is_said() {
    use finrun_engine::job::{CircuitField, Entry, Field};
    use finrun_engine::quantity::Unit;
    let mut draft = drafts().remove(0);
    let cool = Entry { text: "110".to_string(), unit: Unit::Fahrenheit };
    draft.set_entry(Field::Circuit(CircuitField::Supply), cool);
    let job = read(&draft).job.expect("a whole job");
    let design = design(&job);
    let markup = print(&draft, Form::Full);
    let (_, part) = markup.split_once(text::report_checks()).expect("the part");
    let mut seen = 0;
    for check in &design.checks {
        if check.severity == finrun_engine::check::Severity::Holds {
            continue;
        }
        let mut title = Markup::new();
        title.text(&text::check_title(check, &draft, draft.units));
        assert!(part.contains(&title.done()), "{check:?}");
        seen += 1;
    }
    assert!(seen > 2, "{seen}");
    assert!(!part.contains(text::no_checks()));
}
