//! What the pages of the house in use say, from what `solve` prints of the stored job.

use std::fs;
use std::process::Command;

use finrun_engine::comfort::{Comfort, Relief, Reliefs, Step};
use finrun_engine::job::File;
use finrun_engine::quantity::{Kind, System, Value, show};
use finrun_engine::season::NoSeason;
use finrun_text as text;
use serde_json::Value as Json;

use crate::browser::path_from;
use crate::browser::place::Place;
use crate::browser::solved::{Figure, Solved, number};

pub(in crate::browser) fn figures(solved: &Solved, place: Place) -> Vec<(String, Figure)> {
    let (option, wants_station) = match place {
        Place::Season => ("--season", true),
        Place::Cooler => ("--cooler", true),
        _ => ("--design-day", false),
    };
    let lone = |words: &str| vec![("worked-out".to_owned(), Figure::Words(words.to_owned()))];
    if wants_station && solved.draft.station.is_none() {
        return lone(text::season_needs_station());
    }
    let printed = match printed(solved, option) {
        Ok(printed) => printed,
        Err(said) => {
            let all = [NoSeason::NothingHeated, NoSeason::NoFlows, NoSeason::NotSettled];
            let why = all.into_iter().find(|why| said.contains(&format!("{why:?}")));
            return lone(text::no_season(why.unwrap_or_else(|| panic!("{said}"))));
        }
    };
    match place {
        Place::Season => {
            let mut all = season(solved, &printed);
            all.extend(reliefs(solved));
            all
        }
        Place::Cooler => cooler(solved, &printed),
        _ => night(solved, &printed),
    }
}

/// What `solve` prints of the stored job, or why there is nothing.
pub(in crate::browser) fn printed(solved: &Solved, option: &str) -> Result<Json, String> {
    let folder = tempfile::tempdir().expect("the temporary folder is writable");
    let file = folder.path().join("job.json");
    let job = serde_json::to_string(&File::new(solved.draft.clone())).expect("a file");
    fs::write(&file, job).expect("the temporary folder is writable");
    let output =
        Command::new(path_from("FINRUN_XTASK")).arg("solve").arg(&file).arg(option).output();
    let output = output.expect("the developer command starts");
    if output.status.success() {
        return Ok(serde_json::from_slice(&output.stdout).expect("JSON"));
    }
    Err(String::from_utf8_lossy(&output.stderr).into_owned())
}

fn season(solved: &Solved, year: &Json) -> Vec<(String, Figure)> {
    let draft = &solved.draft;
    let mut all = Vec::new();
    let mut add = |name: String, figure: Figure| all.push((name, figure));
    let name = |id: &Json| {
        draft.rooms.iter().find(|room| si(id) == f64::from(room.id.0)).expect("a room").name.clone()
    };
    let troubled = |of: &str| {
        let some = list(year, "rooms").iter().filter(|room| si(&room[of]) > 0.5);
        let one = |room: &Json| format!("{} {} h", name(&room["room"]), whole(si(&room[of])));
        some.map(one).collect::<Vec<String>>().join(", ")
    };
    let verdict = match (troubled("cold_h"), troubled("warm_h")) {
        (cold, warm) if cold.is_empty() && warm.is_empty() => {
            "No room is cold or too warm in any weather of the year.".to_owned()
        }
        (cold, warm) if warm.is_empty() => format!("Too cold: {cold}."),
        (cold, warm) if cold.is_empty() => format!("Too warm: {warm}."),
        (cold, warm) => format!("Too cold: {cold}. Too warm: {warm}."),
    };
    add("season.verdict".to_owned(), words(verdict));
    let energy = |joules: &Json| match draft.units {
        // The Btu of the International Table.
        System::Us => words(format!("{} million Btu", whole(si(joules) / 1.05505585262e9))),
        System::Si => words(format!("{} kWh", whole(si(joules) / 3.6e6))),
    };
    add("season.heat".to_owned(), energy(&year["heat_j"]));
    add("season.lost".to_owned(), energy(&year["pipe_loss_j"]));
    add("season.running".to_owned(), hours(&year["running_h"]));
    add("season.cold-return".to_owned(), hours(&year["cold_return_h"]));
    let pumps = whole(si(&year["pump_j"]) / 3.6e6);
    add("season.pumps".to_owned(), words(format!("{pumps} kWh")));
    if !year["firing_h"].is_null() {
        add("season.firing".to_owned(), hours(&year["firing_h"]));
    }
    let bins = list(year, "bins");
    if bins.iter().all(|bin| !bin["cycles_per_h"].is_null()) {
        let starts: f64 = bins.iter().map(|bin| si(&bin["cycles_per_h"]) * si(&bin["hours"])).sum();
        add("season.starts".to_owned(), words(whole(starts)));
    }
    let fuel = text::fuel_amount(si(&year["fuel"]), draft.bills.fuel, draft.units);
    assert!(fuel.starts_with(&whole(si(&year["fuel"]))), "{fuel}");
    add("season.fuel".to_owned(), words(fuel));
    if let Some(price) = solved.job.control.as_ref().and_then(|control| control.fuel_price) {
        let cost = Value::new(Kind::Money, price.si() * si(&year["fuel"]));
        add("season.cost".to_owned(), Figure::Number(cost));
    }
    for (room, of) in list(year, "rooms").iter().zip(&solved.job.house.rooms) {
        let key = |end: &str| format!("year-{}.{end}", room["room"]);
        add(key("meant"), Figure::Number(Value::from(of.temperature)));
        add(key("cold"), hours(&room["cold_h"]));
        add(key("warm"), hours(&room["warm_h"]));
        add(key("coldest"), kelvin(&room["coldest_k"]));
        let warmest = &room["warmest_k"];
        add(key("warmest"), if warmest.is_null() { words("–") } else { kelvin(warmest) });
    }
    for (nth, bin) in bins.iter().enumerate().filter(|(_, bin)| si(&bin["runs"]) > 0.0) {
        let key = |end: &str| format!("bin-{nth}.{end}");
        add(key("hours"), hours(&bin["hours"]));
        add(key("runs"), share(&bin["runs"]));
        add(key("supply"), kelvin(&bin["supply_k"]));
        add(key("back"), kelvin(&bin["back_k"]));
        for (room, at) in list(year, "rooms").iter().zip(list(bin, "rooms_k")) {
            add(key(&format!("room-{}", room["room"])), kelvin(at));
        }
    }
    all
}

/// What would help, as the engine finds it in the stored job.
pub(super) fn found(solved: &Solved) -> (Comfort, Vec<Relief>) {
    let begun = Reliefs::begin(&solved.draft, &solved.job, &solved.typed);
    let mut search = begun.expect("the house has a year");
    let (before, mut found) = (search.before(), Vec::new());
    loop {
        match search.step() {
            Step::Working => {}
            Step::Found(relief) => found.push(*relief),
            Step::Done => return (before, found),
        }
    }
}

fn reliefs(solved: &Solved) -> Vec<(String, Figure)> {
    let (before, found) = found(solved);
    if found.is_empty() {
        return vec![("comfort".to_owned(), words(text::comfort_nothing()))];
    }
    let mut all = Vec::new();
    for (nth, relief) in found.iter().enumerate() {
        let title = text::comfort_change(&solved.draft, relief.change);
        all.push((format!("comfort-{nth}"), words(title)));
        for (end, _, [now, then]) in text::comfort_figures(&solved.draft, &before, &relief.after) {
            all.push((format!("comfort-{nth}.{end}.before"), words(now)));
            all.push((format!("comfort-{nth}.{end}.after"), words(then)));
        }
    }
    all
}

fn night(solved: &Solved, day: &Json) -> Vec<(String, Figure)> {
    let mut all = Vec::new();
    let mut add = |name: String, figure: Figure| all.push((name, figure));
    let control = solved.job.control.as_ref().expect("a control");
    let mut longest = list(day, "zones").iter().map(|zone| zone["recovered_h"].as_f64());
    let longest = longest.try_fold(0.0, |most: f64, hours| Some(most.max(hours?)));
    if control.setback.by.si() <= 0.0 {
        let never = "Nothing is turned down: every room stays as it is all day.";
        add("night.recovery".to_owned(), words(never));
        samples(solved, day, &mut add);
        return all;
    }
    let wanted = text::duration(control.setback.recover_h).replace('\u{a0}', " ");
    let recovery = match longest.map(|hours| (text::duration(hours), hours)) {
        Some((said, hours)) if hours <= control.setback.recover_h => {
            format!("Warm again {said} after turning up, within the {wanted} that are meant.")
        }
        Some((said, _)) => {
            format!(
                "Warm again only {said} after turning up, not within the {wanted} that are meant."
            )
        }
        None => {
            "On a day as cold as this the house is not warm again that day: in such weather leave \
                 the thermostat where it is."
                .to_owned()
        }
    };
    add("night.recovery".to_owned(), words(recovery));
    let watts = |json: &Json| show(Value::new(Kind::Power, si(json)), solved.draft.units).text();
    let strength = match day["strength"].as_f64() {
        Some(strength) if strength <= 1.0 => format!(
            "The elements do it as they are, if the boiler gives {} while they recover.",
            watts(&day["boiler_w"])
        ),
        Some(strength) => format!(
            "For {wanted} the elements would have to give {strength:.1} times what they do, and the \
             boiler {}.",
            watts(&day["boiler_w"])
        ),
        None => format!("No element recovers it in {wanted}, not even ten times as strong."),
    };
    add("night.strength".to_owned(), words(strength));
    let saved = 1.0 - si(&day["heat_j"]) / si(&day["steady_heat_j"]);
    let saved = show(Value::share(saved), System::Us).text();
    add("night.saved".to_owned(), words(format!("Heat of that day saved by it: {saved}.")));
    if solved.job.zones.len() > 1 {
        for zone in list(day, "zones") {
            let said = text::recovered(zone["recovered_h"].as_f64());
            add(format!("night-zone-{}.recovered", zone["zone"]), words(said));
        }
    }
    samples(solved, day, &mut add);
    all
}

/// Every two hours.
fn samples(solved: &Solved, day: &Json, add: &mut impl FnMut(String, Figure)) {
    for sample in list(day, "samples") {
        let at = si(&sample["at_h"]);
        if (at / 2.0 - (at / 2.0).round()).abs() < 1e-9 {
            for (room, kelvins) in solved.job.house.rooms.iter().zip(list(sample, "rooms_k")) {
                add(format!("night-{at:.0}.room-{}", room.id.0), kelvin(kelvins));
            }
        }
    }
}

fn cooler(solved: &Solved, found: &Json) -> Vec<(String, Figure)> {
    let mut all = Vec::new();
    let mut add = |name: String, figure: Figure| all.push((name, figure));
    let name = |id: &Json| {
        let rooms = solved.draft.rooms.iter();
        let id = si(id);
        let mut rooms = rooms.filter(|room| id == f64::from(room.id.0));
        rooms.next().expect("a room").name.clone()
    };
    for (nth, day) in list(found, "days").iter().enumerate() {
        let supply = &day["supply_k"];
        let supply = if supply.is_null() { words(text::beyond_limit()) } else { kelvin(supply) };
        add(format!("cool-{nth}.supply"), supply);
        add(format!("cool-{nth}.limiting"), words(name(&day["limiting"])));
    }
    let supply = solved.job.circuit.supply.si();
    let more = |day: &Json| day["supply_k"].as_f64().is_none_or(|of_day| of_day > supply);
    let most = match list(found, "days").iter().any(more) {
        true => solved.job.circuit.boiler_limit.si(),
        false => supply,
    };
    let line = serde_json::from_value::<Line>(found["line"].clone()).ok();
    let system = solved.draft.units;
    let shown = |kind, si| show(Value::new(kind, si), system).text();
    let line = line.map_or_else(
        || {
            "There is no line: on the coldest days the boiler\u{2019}s limit is not enough. Mend what is \
             short on the Lengths page first."
                .to_owned()
        },
        |line| {
            format!(
                "Slope {}, shift {} about a room of {}; high limit at {}. The line is above what is \
                 needed by up to {}.",
                shown(Kind::Number, line.slope),
                shown(Kind::TemperatureDifference, line.shift_k),
                shown(
                    Kind::Temperature,
                    finrun_engine::building::mean_temperature(&solved.job.house).si()
                ),
                shown(Kind::Temperature, most),
                shown(Kind::TemperatureDifference, line.excess_k),
            )
        },
    );
    add("cool.line".to_owned(), words(line));
    for (key, year) in [("cool-now", &found["now"]), ("cool-by-line", &found["by_line"])] {
        if !year.is_null() {
            add(format!("{key}.running"), hours(&year["running_h"]));
            add(format!("{key}.condensing"), hours(&year["condensing_h"]));
            add(format!("{key}.share"), share(&year["condensing_share"]));
        }
    }
    for (nth, supply) in list(found, "supplies").iter().enumerate() {
        let said = match (supply["enough_from_k"].as_f64(), si(&supply["short_h"])) {
            (Some(_), short) if short <= 0.0 => {
                "It heats every room all year as things are.".to_owned()
            }
            (Some(from), short) => format!(
                "As things are it is enough from {} outdoors on; it is not in {} h a year.",
                shown(Kind::Temperature, from),
                whole(short)
            ),
            (None, _) => "As things are it is never enough for every room.".to_owned(),
        };
        add(format!("cool-at-{nth}"), words(said));
        for room in list(supply, "rooms") {
            let key = |end: &str| format!("cool-at-{nth}.room-{}.{end}", room["room"]);
            add(key("share"), share(&room["share"]));
            let add_m = room["add_m"].as_f64();
            let length = match (add_m, room["fits"].as_bool()) {
                (Some(0.0), _) => "–".to_owned(),
                (Some(add), Some(true)) => shown(Kind::Length, add),
                (Some(add), _) => {
                    format!("{}, more than its walls take", shown(Kind::Length, add))
                }
                (None, _) => "no length does".to_owned(),
            };
            add(key("add"), words(length));
            let cut = 1.0 - si(&room["share"]);
            add(key("cut"), if cut > 0.0 { Figure::Number(Value::share(cut)) } else { words("–") });
        }
    }
    all
}

#[derive(serde::Deserialize)]
struct Line {
    slope: f64,
    shift_k: f64,
    excess_k: f64,
}

fn list<'a>(json: &'a Json, name: &str) -> &'a [Json] {
    json[name].as_array().map_or(&[], Vec::as_slice)
}

fn si(json: &Json) -> f64 {
    json.as_f64().unwrap_or_else(|| panic!("{json} is no number"))
}

fn words(words: impl Into<String>) -> Figure {
    Figure::Words(words.into())
}

fn whole(value: f64) -> String {
    show(Value::new(Kind::Count, value), System::Us).text()
}

fn hours(json: &Json) -> Figure {
    words(format!("{} h", whole(si(json))))
}

fn kelvin(json: &Json) -> Figure {
    number(Kind::Temperature, json)
}

fn share(json: &Json) -> Figure {
    number(Kind::Share, json)
}
