//! Drawings of every arrangement: every room once, sound markup, nothing beyond the sheet, and the
//! numbers where they belong.
//!
//! With a folder in `FINRUN_DRAWINGS` they are written there too, to be looked at with the page's
//! style.

use super::pen::fit;
use super::{pump, schematic, temperature};
use finrun_engine::arrangement::PumpDesign;
use finrun_engine::building::ZoneId;
use finrun_engine::design::{Design, design};
use finrun_engine::job::{
    Arrangement, BackPath, Diverters, Draft, Entries, File, Flow, FlowBasis, Job, LegDraft,
    LegKind, PumpSet, ShutOff, Zoning, read,
};
use finrun_engine::named::Named;
use finrun_engine::quantity::{Kind, Length, Power, System, Value, VolumeFlow};
use finrun_text as text;

fn open(text: &str) -> Draft {
    let file: File = serde_json::from_str(text).expect("a job file");
    file.open().expect("a sound job")
}

fn bungalow() -> Draft {
    open(include_str!("../../../../public/demo/bungalow.json"))
}

fn two_storey() -> Draft {
    open(include_str!("../../../../public/demo/two-storey.json"))
}

pub(super) fn solve(draft: &Draft) -> (Job, Design) {
    let job = read(draft).job.expect("a whole job");
    let design = design(&job);
    (job, design)
}

fn cottage() -> Draft {
    open(include_str!("../../../../public/demo/cottage.json"))
}

/// Jobs whose sheets are drawn: the shipped houses, and every mix of the piping.
pub(super) fn sheet_jobs() -> Vec<(String, Draft)> {
    let mut all = vec![
        ("bungalow".to_string(), bungalow()),
        ("two-storey".to_string(), two_storey()),
        ("cottage".to_string(), cottage()),
    ];
    let mut draft = bungalow();
    use LegKind::*;
    let legs: [&[LegKind]; 5] = [
        &[Below],
        &[Along, InsideCorner],
        &[Along, OutsideCorner, Along, Doorway],
        &[Doorway, Along],
        &[Along],
    ];
    for (room, legs) in draft.rooms.iter_mut().zip(legs) {
        room.route =
            legs.iter().map(|&kind| LegDraft { kind, entries: Entries::default() }).collect();
    }
    all.push(("routed".to_string(), draft));
    all.extend(jobs());
    all
}

/// Every arrangement by itself, and some of the ways in which they mix.
fn jobs() -> Vec<(String, Draft)> {
    let mut all = Vec::new();
    for &arrangement in Arrangement::ALL {
        let mut draft = bungalow();
        draft.arrange(ZoneId(0), arrangement);
        draft.flow_basis = FlowBasis::FromPump;
        all.push((arrangement.name().to_string(), draft));
    }
    let mut draft = bungalow();
    draft.zones[0].back = BackPath::InEnclosure;
    draft.rooms[1].name =
        "<b>The \"very\" long room & its name that goes on and on</b>".to_string();
    draft.rooms[2].name = "居間居間居間居間居間居間居間居間居間居間居間居間".to_string();
    all.push(("in-enclosure".to_string(), draft));
    for zoning in [Zoning::Valves, Zoning::Circulators] {
        let mut draft = two_storey();
        draft.zoning = zoning;
        draft.flow_basis = FlowBasis::FromPump;
        let kinds = [
            Arrangement::DirectReturn,
            Arrangement::Split,
            Arrangement::DiverterTees,
            Arrangement::HomeRun,
        ];
        let zones: Vec<ZoneId> =
            std::iter::once(ZoneId(0)).chain((1..4).map(|_| draft.add_zone())).collect();
        let count = draft.rooms.len();
        for (at, room) in draft.rooms.iter_mut().enumerate() {
            room.zone = zones[at * 4 / count];
        }
        draft.rooms[1].shut_off = ShutOff::Shut;
        draft.rooms[5].diverters = Diverters::Two;
        for (zone, kind) in zones.into_iter().zip(kinds) {
            draft.arrange(zone, kind);
        }
        draft.zones[1].name = "Upstairs, the side of the long name that will not fit".to_string();
        all.push((format!("mixed-{}", zoning.name()), draft));
    }
    let mut draft = two_storey();
    draft.units = System::Si;
    draft.arrange(ZoneId(0), Arrangement::ReverseReturn);
    all.push(("nine-reverse-si".to_string(), draft));
    let mut draft = two_storey();
    draft.arrange(ZoneId(0), Arrangement::HomeRun);
    all.push(("nine-home-run".to_string(), draft));
    for set in [PumpSet::TwoInSeries, PumpSet::TwoInParallel] {
        let mut draft = bungalow();
        draft.pump.set = set;
        draft.flow_basis = FlowBasis::FromPump;
        all.push((set.name().to_string(), draft));
    }
    let mut draft = bungalow();
    draft.arrange(ZoneId(0), Arrangement::DirectReturn);
    draft.rooms.iter_mut().for_each(|room| room.shut_off = ShutOff::Shut);
    draft.flow_basis = FlowBasis::FromPump;
    all.push(("all-shut".to_string(), draft));
    all
}

pub(super) fn drawings_of(draft: &Draft, job: &Job, design: &Design) -> [String; 3] {
    let draws = [schematic::draw, temperature::draw, pump::draw];
    draws.map(|draw| draw(draft, job, design, draft.units))
}

/// The three drawings of each job, with what they were drawn from.
fn drawn() -> Vec<(String, Draft, Job, Design, [String; 3])> {
    let folder = std::env::var("FINRUN_DRAWINGS").ok();
    let one = |(name, draft): (String, Draft)| {
        let (job, design) = solve(&draft);
        let drawings = drawings_of(&draft, &job, &design);
        if let Some(folder) = &folder {
            let file = format!("{folder}/{name}.svg.html");
            std::fs::write(file, drawings.concat()).expect("a folder to write to");
        }
        (name, draft, job, design, drawings)
    };
    jobs().into_iter().map(one).collect()
}

/// A tag with its attributes, and the text up to the next.
pub(super) struct Piece<'a> {
    pub(super) tag: &'a str,
    pub(super) inside: &'a str,
    pub(super) text: &'a str,
}

pub(super) fn pieces(markup: &str) -> impl Iterator<Item = Piece<'_>> {
    markup.split('<').skip(1).map(|piece| {
        let (inside, text) = piece.split_once('>').expect("a tag ends");
        Piece { tag: inside.split(' ').next().unwrap_or(""), inside, text }
    })
}

pub(super) fn attribute<'a>(piece: &Piece<'a>, name: &str) -> &'a str {
    let start = format!(" {name}=\"");
    let (_, rest) = piece.inside.split_once(&start).expect(name);
    rest.split('"').next().unwrap_or("")
}

fn number(piece: &Piece<'_>, name: &str) -> f64 {
    attribute(piece, name).parse().expect("a number")
}

/// The text of a text element, as it is read.
pub(super) fn read_text(piece: &Piece<'_>) -> String {
    let text = piece.text.replace("&lt;", "<").replace("&gt;", ">");
    text.replace("&quot;", "\"").replace("&amp;", "&").replace('\u{a0}', " ")
}

fn texts(markup: &str) -> Vec<String> {
    pieces(markup).filter(|piece| piece.tag == "text").map(|piece| read_text(&piece)).collect()
}

/// The points of a path of straight lines to places.
fn points(d: &str) -> Vec<(f64, f64)> {
    let numbers: Vec<f64> =
        d.split(['M', 'L', ' ']).filter_map(|number| number.parse().ok()).collect();
    numbers.chunks_exact(2).map(|pair| (pair[0], pair[1])).collect()
}

/// How far a line passes from a point, upright.
fn above(line: &[(f64, f64)], (x, y): (f64, f64)) -> f64 {
    let pair = line.windows(2).find(|pair| pair[0].0 <= x && x <= pair[1].0).expect("within");
    let share = (x - pair[0].0) / (pair[1].0 - pair[0].0);
    pair[0].1 + share * (pair[1].1 - pair[0].1) - y
}

#[test]
fn drawings_are_sound_markup_within_their_sheets() {
    for (name, _, _, _, drawings) in drawn() {
        for drawing in drawings {
            let mut open = Vec::new();
            let (mut wide, mut high) = (0.0, 0.0);
            for piece in pieces(&drawing) {
                if let Some(closed) = piece.tag.strip_prefix('/') {
                    assert_eq!(open.pop(), Some(closed), "{name}");
                    continue;
                }
                open.push(piece.tag);
                if piece.tag == "svg" {
                    assert!(piece.inside.contains("role=\"img\""), "{name}");
                    assert!(attribute(&piece, "aria-label").len() > 10, "{name}");
                    let ends: Vec<f64> = attribute(&piece, "viewBox")
                        .split(' ')
                        .map(|number| number.parse().expect("a number"))
                        .collect();
                    (wide, high) = (ends[2], ends[3]);
                }
                if piece.tag == "text" {
                    let text = read_text(&piece);
                    // A letter of our typeface is at most 6 wide by and large, an ideograph 14.
                    let letter = |c: char| if c > '\u{2e7f}' { 14.0 } else { 6.0 };
                    let length: f64 = text.chars().map(letter).sum();
                    let x = number(&piece, "x");
                    let left = match attribute(&piece, "text-anchor") {
                        "start" => x,
                        "middle" => x - length / 2.0,
                        _ => x - length,
                    };
                    let y = number(&piece, "y");
                    assert!(left >= -2.0 && left + length <= wide + 2.0, "{name}: {text} at {x}");
                    assert!(y >= 12.0 && y <= high - 2.0, "{name}: {text} at {y} of {high}");
                }
            }
            assert!(open.is_empty(), "{name}: {open:?}");
            let strange = ["NaN", "inf", "<b>", "\"very\""];
            for strange in strange {
                assert!(!drawing.contains(strange), "{name}: {strange}");
            }
        }
    }
}

#[test]
fn a_schematic_shows_every_room_once_with_its_numbers() {
    for (name, draft, job, design, [schematic, ..]) in drawn() {
        let texts = texts(&schematic);
        let shown = |value: Value| text::value(value, draft.units).replace('\u{a0}', " ");
        assert_eq!(design.rooms.len(), draft.rooms.len(), "{name}");
        for room in &design.rooms {
            let called = text::room_name(&draft, room.room);
            let cut: String = called.chars().take(8).collect();
            let at: Vec<usize> =
                (0..texts.len()).filter(|&at| texts[at].starts_with(&cut)).collect();
            assert_eq!(at.len(), 1, "{name}: {called} in {texts:?}");
            let element = &room.element;
            let after = &texts[at[0]..(at[0] + 5).min(texts.len())];
            if element.choice.nominal == Length::ZERO {
                assert!(after.contains(&text::no_element().to_string()), "{name}: {after:?}");
                continue;
            }
            let line = format!(
                "{} · {}",
                shown(element.choice.nominal.into()),
                shown(element.output.into())
            );
            for number in [line, shown(element.water_in.into()), shown(element.water_out.into())] {
                assert!(after.contains(&number), "{name}: {number} is not in {after:?}");
            }
            let short = after.iter().any(|line| line.ends_with("short"));
            assert_eq!(short, room.short() > Power::ZERO, "{name}: {after:?}");
        }
        // The tank stands at the circulator's inlet, so that its outlet is as much above the tank
        // as the head says: a weight of water.
        if design.piping.pumps.len() == 1 && design.piping.not_solved.is_none() {
            let density = job.circuit.fluid.density(job.circuit.supply).si();
            let pressure_pa = design.piping.pumps[0].head.si() * density * 9.80665;
            let outlet = text::above_tank(&shown(Value::new(Kind::Pressure, pressure_pa)));
            assert!(texts.contains(&outlet), "{name}: {outlet} is not in {texts:?}");
        }
    }
}

#[test]
fn a_one_pipe_main_marks_its_diverter_tees() {
    let tees = |draft: &Draft| {
        let (job, design) = solve(draft);
        let (_, scoop) = super::pen::DIVERTER_TEE;
        // One of them explains what it is.
        schematic::draw(draft, &job, &design, System::Us).matches(scoop).count() - 1
    };
    let mut draft = bungalow();
    draft.arrange(ZoneId(0), Arrangement::DiverterTees);
    assert_eq!(tees(&draft), draft.rooms.len());
    draft.rooms[0].diverters = Diverters::Two;
    assert_eq!(tees(&draft), draft.rooms.len() + 1);
}

#[test]
fn a_temperature_line_runs_from_the_supply_to_where_the_circuit_ends() {
    for (name, _, job, design, [_, chart, _]) in drawn() {
        let piping = &design.piping;
        if piping.not_solved.is_some() || piping.circuits.is_empty() {
            assert_eq!(chart, "", "{name}");
            continue;
        }
        let lines: Vec<Vec<(f64, f64)>> = pieces(&chart)
            .filter(|piece| piece.tag == "path" && piece.inside.contains(" class=\"line-"))
            .filter(|piece| !piece.inside.contains("aside") && !attribute(piece, "d").contains('h'))
            .map(|piece| points(attribute(&piece, "d")))
            .collect();
        assert_eq!(lines.len(), piping.circuits.len(), "{name}");
        // All begin at the supply; water only cools, and mixes on the way back.
        let supply = lines[0][0].1;
        let coldest = piping.circuits.iter().map(|circuit| circuit.back.si());
        let coldest = coldest.fold(f64::MAX, f64::min);
        let lowest = lines.iter().flatten().fold(0.0, |low: f64, point| low.max(point.1));
        for (line, circuit) in lines.iter().zip(&piping.circuits) {
            assert!((line[0].1 - supply).abs() < 1e-9, "{name}");
            assert!(line.windows(2).all(|pair| pair[0].0 <= pair[1].0), "{name}");
            // As far down as its water has cooled, by the same scale for all.
            let share = (piping.supply.si() - circuit.back.si()) / (piping.supply.si() - coldest);
            let end = line[line.len() - 1].1;
            if !job.zones.iter().any(|zone| zone.arrangement == Arrangement::DiverterTees) {
                assert!((end - supply - share * (lowest - supply)).abs() < 0.3, "{name}: {end}");
            }
        }
        let bars = pieces(&chart).filter(|piece| piece.tag == "rect").count();
        let fitted = design.rooms.iter().filter(|room| room.element.choice.nominal > Length::ZERO);
        assert_eq!(bars, fitted.count(), "{name}");
    }
}

#[test]
fn a_circulator_stands_where_its_curve_meets_the_system() {
    let mut seen = 0;
    for (name, _, job, design, [.., charts]) in drawn() {
        if design.piping.not_solved.is_some() {
            assert_eq!(charts, "", "{name}");
            continue;
        }
        // One at rest has nothing to show.
        let turns = |pump: &&PumpDesign| pump.flow > VolumeFlow::ZERO;
        let count = design.piping.pumps.iter().filter(turns).count();
        assert_eq!(charts.matches("<svg").count(), count, "{name}");
        for chart in charts.split("</svg>").take(count) {
            let dots: Vec<(f64, f64)> = pieces(chart)
                .filter(|piece| piece.tag == "circle")
                .map(|piece| (number(&piece, "cx"), number(&piece, "cy")))
                // Those of the key stand at the left edge.
                .filter(|dot| dot.0 > 20.0)
                .collect();
            let lines = |class: &str| -> Vec<Vec<(f64, f64)>> {
                pieces(chart)
                    .filter(|piece| piece.inside.contains(&format!("class=\"{class}")))
                    .map(|piece| points(attribute(&piece, "d")))
                    .filter(|points| points.len() > 2)
                    .collect()
            };
            let (curve, systems) = (lines("curve"), lines("line-"));
            assert_eq!(curve.len(), 1, "{name}");
            if matches!(job.circuit.flow, Flow::FromPump) {
                for &dot in &dots {
                    assert!(above(&curve[0], dot).abs() < 2.0, "{name}: {dot:?}");
                    seen += 1;
                }
            } else {
                assert!(chart.contains("planned"), "{name}");
            }
            // Each line passes its own point; the lines' points are the last ones.
            let own = &dots[dots.len() - systems.len()..];
            for (line, &dot) in systems.iter().zip(own) {
                assert!(above(line, dot).abs() < 3.0, "{name}: {dot:?} off {line:?}");
            }
        }
    }
    assert!(seen > 10, "{seen}");
}

#[test]
fn long_names_are_cut_to_their_room() {
    assert_eq!(fit("Kitchen", 60.0), "Kitchen");
    assert_eq!(fit("A room of one's own", 60.0), "A room…");
    assert_eq!(fit("Kitchen", 0.0), "…");
}
