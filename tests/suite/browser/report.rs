//! The report as it prints: on its paper, whole, with the numbers of `solve`, which fit each other.

mod paper;

use finrun_engine::numeric::pow;
use finrun_engine::quantity::{Kind, Value, show};
use finrun_text as text;

use super::page::View;
use super::pdf::Sheet;
use super::place::Place;
use super::solved::{Figure, Solved, number, solve, sum};
use super::visit;
use paper::{
    A4, LETTER, headings_in_order, heads_repeat_and_rows_stay_whole, is_whole, lies_on_paper,
    nothing_is_dark,
};

/// A house, its system, and the most pages that its report may take on either paper.
const HOUSES: [(&str, &str, usize); 3] = [
    ("bungalow", include_str!("../../../public/demo/bungalow.json"), 24),
    ("two-storey", include_str!("../../../public/demo/two-storey.json"), 34),
    ("cottage", include_str!("../../../public/demo/cottage.json"), 26),
];

#[test]
fn reports_print_whole_with_the_numbers_of_solve() {
    visit(View::Desk, |page| {
        page.emulate(super::looks::Theme::Dark);
        for (name, job, most_pages) in HOUSES {
            // One of them in the other units, whose paper is the other one.
            let si = name == "cottage";
            let job = if si { job.replace("\"us\"", "\"si\"") } else { job.to_string() };
            page.open_job(&job, Place::Report);
            page.wait_for(".report h2");
            let paper = if si { text::paper_a4() } else { text::paper_letter() };
            assert_eq!(page.value_of("Paper"), paper, "{name}");
            let solved = solve(page);
            nothing_is_dark(page);
            for (paper, size) in [(text::paper_letter(), LETTER), (text::paper_a4(), A4)] {
                page.choose("Paper", paper);
                page.choose("What to print", text::report_full());
                page.wait_for(".report:not(.brief)");
                let of = format!("report-{name}-{}", size.1 as u32);
                let sheets = page.printed(&of);
                lies_on_paper(&of, &sheets, size);
                assert!(sheets.len() <= most_pages, "{of} takes {} pages", sheets.len());
                is_whole(page, &of, &sheets);
                headings_in_order(&of, &sheets);
                heads_repeat_and_rows_stay_whole(&of, &sheets);
                results_are_those_of_solve(&of, &sheets, &solved);
                page.choose("What to print", text::report_short());
                page.wait_for(".report.brief");
                let of = format!("{of}-short");
                let sheets = page.printed(&of);
                lies_on_paper(&of, &sheets, size);
                assert_eq!(sheets.len(), 2, "{of}");
                is_whole(page, &of, &sheets);
                short_form_says_what_is_built(&of, &sheets, &solved);
            }
        }
    });
}

/// A number on paper, in SI.
fn read(number: &str, unit: &str) -> f64 {
    let number: f64 = number.replace(',', "").replace('−', "-").parse().expect(number);
    // Factors of NIST SP 811.
    match unit {
        "Btu/h" => number * 0.293_071_07,
        "W" | "m" => number,
        "ft" => number * 0.3048,
        "°F" => (number + 459.67) / 1.8,
        "°C" => number + 273.15,
        "gpm" => number * 6.309_02e-5,
        "L/min" => number / 60_000.0,
        "L/s" => number / 1000.0,
        unit => panic!("{number} {unit}"),
    }
}

/// What a room's line says: load, water that enters and leaves, length, and heat given.
struct Printed {
    load_w: f64,
    water_in_k: f64,
    water_out_k: f64,
    length_m: f64,
    gives_w: f64,
}

/// Half of the last digit, of heat in this unit.
fn half_digit(line: &str) -> f64 {
    if line.contains("Btu/h") { 0.5 * 0.293_071_07 } else { 0.5 }
}

fn printed(line: &str, name: &str) -> Printed {
    let rest = line.strip_prefix(name).expect("its name").trim();
    let words: Vec<&str> = rest.split(' ').collect();
    let pair = |at: usize| read(words[at], words[at + 1]);
    let over = words.iter().rposition(|word| *word == "Btu/h" || *word == "W").expect("heat");
    Printed {
        load_w: pair(0),
        water_in_k: pair(2),
        water_out_k: pair(4),
        length_m: pair(6),
        gives_w: pair(over - 1),
    }
}

/// The table of the rooms is `solve`'s to the last digit, and adds up by itself; the elements give
/// what their rating says at the printed water.
fn results_are_those_of_solve(of: &str, sheets: &[Sheet], solved: &Solved) {
    let system = solved.draft.units;
    let lines: Vec<String> = sheets.iter().take(2).flat_map(Sheet::lines).collect();
    let has = |line: &str| lines.iter().any(|known| known == line);
    let expected = figures(solved);
    for (name, label) in system_labels() {
        let figure = expected.iter().find(|(known, _)| known == name);
        let (_, figure) = figure.unwrap_or_else(|| panic!("{of}: {name}"));
        let line = format!("{label} {}", figure.text(system));
        assert!(has(&line), "{of}: {line} is not among {lines:#?}");
    }
    let design = &solved.design;
    let flow = number(Kind::VolumeFlow, &design["piping"]["flow_m3_s"]).text(system);
    let (flow, unit) = flow.split_once(' ').expect("a unit");
    // Rating practice counts 500 lb/h as a gallon a minute.
    let flow_kg_s = read(flow, unit) / 6.309_02e-5 * 500.0 * 0.453_592_37 / 3600.0;
    let rating = solved.job.baseboard.element.rating;
    let derate = solved.job.baseboard.element.derate;
    let (mut loads, mut lengths, mut slack) = (0.0, 0.0, 0.0);
    for room in solved.rooms() {
        let id = room["room"].as_u64().expect("an id");
        let at = solved.job.house.rooms.iter().position(|r| u64::from(r.id.0) == id);
        let of_job = &solved.job.house.rooms[at.expect("a room of the job")];
        let name = text::room_name(&solved.draft, of_job.id);
        let part = |what: &str| {
            let key = format!("room-{id}.{what}");
            let figure = expected.iter().find(|(known, _)| *known == key);
            figure.unwrap_or_else(|| panic!("{of}: {key}")).1.text(system)
        };
        let verdict = match expected.iter().any(|(key, _)| *key == format!("room-{id}.over")) {
            true => part("over"),
            false => part("short"),
        };
        let whats = ["load", "water-in", "water-out", "nominal", "pieces", "output"];
        let line = format!("{name} {} {verdict}", whats.map(part).join(" "));
        assert!(has(&line), "{of}: {line} is not among {lines:#?}");
        let printed = printed(&line, &name);
        let half = half_digit(&line);
        loads += printed.load_w;
        lengths += printed.length_m;
        slack += half;
        // The rating at the mean of the printed temperatures: no more than rounding off the length
        // of a degree, which is under one percent of the heat.
        let mean = (printed.water_in_k + printed.water_out_k) / 2.0;
        let excess = (mean - of_job.temperature.si()) / (rating.water.si() - rating.air.si());
        let flow = pow(flow_kg_s / rating.flow.si(), 0.04);
        let gives =
            rating.output.si() * pow(excess, rating.exponent) * flow * derate * printed.length_m;
        let off = (gives - printed.gives_w).abs() / printed.gives_w;
        assert!(off < 0.012, "{of}, {name}: {gives} W by hand, {} W printed", printed.gives_w);
        assert!(printed.gives_w >= printed.load_w - 2.0 * half, "{of}, {name} is short: {line}");
        assert!(printed.water_out_k <= printed.water_in_k, "{of}: {line}");
    }
    let total = number(Kind::Power, &design["load_w"]).text(system);
    let element = show(Value::new(Kind::Length, nominal(solved)), system).text();
    let pieces = solved.typed.piece_count();
    let line = format!("{} {total} {element} {}", text::column_total(), text::pieces(pieces));
    assert!(has(&line), "{of}: {line} is not among {lines:#?}");
    let words: Vec<&str> = line.split(' ').collect();
    let (sum_w, sum_m) = (read(words[1], words[2]), read(words[3], words[4]));
    assert!((sum_w - loads).abs() <= slack + half_digit(&line), "{of}: {loads} W, printed {sum_w}");
    // Hundredths of a metre, of each room and of the sum.
    let digits = 0.005 * (solved.rooms().len() + 1) as f64;
    assert!((sum_m - lengths).abs() <= digits, "{of}: {lengths} m, printed {sum_m}");
}

fn short_form_says_what_is_built(of: &str, sheets: &[Sheet], solved: &Solved) {
    let system = solved.draft.units;
    let all: Vec<String> = sheets.iter().map(|sheet| sheet.lines().join("\n")).collect();
    let mut order = 0;
    for room in solved.job.zones.iter().flat_map(|zone| zone.loops.iter().flatten()) {
        let of_design = &solved.typed.rooms[*room];
        let name = text::room_name(&solved.draft, of_design.room);
        let at = all[0][order..].find(&format!(". {name} "));
        order += at.unwrap_or_else(|| panic!("{of}: {name} behind {order} of {}", all[0]));
        let line = all[0][order..].lines().next().unwrap_or_default();
        for run in &of_design.element.choice.runs {
            let wall = text::surface_name(&solved.draft, of_design.room, run.surface);
            let pieces = run.pieces.iter().map(|&piece| show(piece.into(), system).text());
            let pieces = pieces.collect::<Vec<_>>().join(" + ");
            let built = format!("{wall}: {pieces}");
            assert!(line.contains(&built), "{of}: {built} is not in {line}");
        }
    }
    let plant = solved.typed.plant.as_ref().expect("a plant");
    let charge = plant.tank.map(|tank| show(tank.pre_charge.into(), system).text());
    for (label, shown) in [
        (text::report_supply(), show(solved.typed.piping.supply.into(), system).text()),
        (text::fill_cold(), show(plant.filling.cold.into(), system).text()),
        (text::pre_charge(), charge.expect("a tank")),
        (text::flow(), show(solved.typed.piping.flow.into(), system).text()),
    ] {
        let line = format!("{label} {shown}");
        assert!(all[0].contains(&line), "{of}: {line} is not in {}", all[0]);
    }
    assert!(all[1].contains(text::schematic_title()), "{of}: {}", all[1]);
    assert!(all[1].contains(text::to_heed()), "{of}");
}

/// Figures of the whole system, with what stands before them.
fn system_labels() -> [(&'static str, &'static str); 9] {
    [
        ("flow", text::flow()),
        ("drop", text::drop()),
        ("velocity", text::velocity()),
        ("head", text::head()),
        ("boiler-heat", text::boiler_gives()),
        ("plant.needed", text::needed_output()),
        ("plant.volume", text::system_holds()),
        ("plant.fill", text::fill_cold()),
        ("plant.tank", text::tank_least()),
    ]
}

fn nominal(solved: &Solved) -> f64 {
    sum(solved.rooms().iter().map(|room| &room["element"]["choice"]["nominal_m"]))
}

/// All figures of the report but the sums, by their names.
pub(super) fn figures(solved: &Solved) -> Vec<(String, Figure)> {
    let (circuit, plant) = (&solved.design["piping"], &solved.design["plant"]);
    let drop = sum([&circuit["supply_k"]].into_iter()) - sum([&circuit["back_k"]].into_iter());
    let mut figures = vec![
        ("flow", number(Kind::VolumeFlow, &circuit["flow_m3_s"])),
        ("drop", Figure::Number(Value::new(Kind::TemperatureDifference, drop))),
        ("velocity", number(Kind::Velocity, &circuit["velocity_m_s"])),
        ("head", number(Kind::Head, &circuit["head_m"])),
        ("boiler-heat", number(Kind::Power, &circuit["heat_w"])),
        ("plant.fill", number(Kind::Pressure, &plant["filling"]["cold_pa"])),
    ];
    // What cannot be worked out is not printed.
    for (name, kind, json) in [
        ("plant.needed", Kind::Power, &plant["needed"]["output_w"]),
        ("plant.volume", Kind::LiquidVolume, &plant["volume"]["total_m3"]),
        ("plant.tank", Kind::LiquidVolume, &plant["tank"]["volume_m3"]),
    ] {
        if !json.is_null() {
            figures.push((name, number(kind, json)));
        }
    }
    let mut all: Vec<(String, Figure)> =
        figures.into_iter().map(|(name, figure)| (name.to_owned(), figure)).collect();
    for room in solved.rooms() {
        all.extend(of_room(room, solved));
    }
    all
}

fn of_room(room: &serde_json::Value, solved: &Solved) -> Vec<(String, Figure)> {
    let (load, element) = (&room["load"], &room["element"]);
    let si = |json: &serde_json::Value| json.as_f64().expect("a number");
    let name = |what: &str| format!("room-{}.{what}", room["room"]);
    let mut all = vec![(name("load"), number(Kind::Power, &load["total_w"]))];
    let needs = (si(&load["total_w"]) - si(&load["other_w"])).max(0.0);
    let gets = si(&element["output_w"]);
    if si(&element["choice"]["nominal_m"]) > 0.0 {
        let runs = element["choice"]["runs"].as_array().cloned().unwrap_or_default();
        let pieces: Vec<String> = runs
            .iter()
            .flat_map(|run| run["pieces_m"].as_array().cloned().unwrap_or_default())
            .map(|piece| show(Value::new(Kind::Length, si(&piece)), solved.draft.units).text())
            .collect();
        all.extend([
            (name("water-in"), number(Kind::Temperature, &element["water_in_k"])),
            (name("water-out"), number(Kind::Temperature, &element["water_out_k"])),
            (name("nominal"), number(Kind::Length, &element["choice"]["nominal_m"])),
            (name("pieces"), Figure::Words(pieces.join(" + "))),
            (name("output"), number(Kind::Power, &element["output_w"])),
        ]);
    }
    let shown = |value: Value| show(value, solved.draft.units).text();
    // A billionth of the load is rounding.
    if needs - gets > 1e-9 * si(&load["total_w"]).abs() {
        let short = shown(Value::new(Kind::Power, needs - gets));
        all.push((name("short"), Figure::Words(format!("{} {short}", text::column_short()))));
    } else if needs > 0.0 {
        let over = shown(Value::share((gets - needs) / needs));
        all.push((name("over"), Figure::Words(format!("+{over}"))));
    }
    all
}
