//! Sheets of the shipped houses and of every arrangement: dimensions that add up, pieces clear of
//! doors, nothing beyond the sheet, and keys that explain what was drawn and nothing else.
//!
//! What is held against what: lengths against the wall as it was typed, caps against the count of the
//! take-off, which follows the ways and not the drawing.

use super::elevation::chains;
use super::follow::{Beyond, End, Loop, Step, follow};
use super::tests::{attribute, pieces, read_text, sheet_jobs, solve};
use super::{all, stand};
use finrun_engine::building::OpeningKind;
use finrun_engine::design::Design;
use finrun_engine::job::{Draft, Field, Job, PriceField, Side, SurfaceField, wall_shape};
use finrun_engine::quantity::{Kind, Length, System, read};
use finrun_engine::takeoff::count::count;
use finrun_engine::takeoff::item::{Amount, Class};
use finrun_text as text;
use finrun_text::Mark;

fn each(test: impl Fn(&str, &Draft, &Job, &Design)) {
    for (name, draft) in sheet_jobs() {
        let (job, design) = solve(&draft);
        test(&name, &draft, &job, &design);
    }
}

/// Every wall with baseboard, with the stretches that hold it.
fn each_wall(test: impl Fn(&str, &Draft, &finrun_engine::job::WallShape, &[&Step], bool)) {
    each(|name, draft, job, design| {
        for visit in follow(draft, job, design).iter().flat_map(|one| &one.visits) {
            let room = job.house.rooms[visit.room].id;
            for step in &visit.steps {
                let wall = step.surface;
                let shape = wall_shape(draft, room, wall).expect("a wall of a solved job");
                let steps: Vec<&Step> = visit.steps.iter().filter(|s| s.surface == wall).collect();
                let free = Field::Surface(room, wall, SurfaceField::Free);
                test(name, draft, &shape, &steps, draft.entry(free).is_some());
            }
        }
    });
}

fn figures(sheets: &str) -> Vec<&str> {
    sheets.split("<figure").skip(1).collect()
}

#[test]
fn sheets_are_written_to_be_looked_at() {
    let folder = std::env::var("FINRUN_DRAWINGS").ok();
    each(|name, draft, job, design| {
        let sheets = all::draw(draft, job, design, draft.units);
        assert!(figures(&sheets).len() > 2, "{name}");
        if let Some(folder) = &folder {
            std::fs::write(format!("{folder}/sheets-{name}.html"), &sheets).expect("a folder");
        }
    });
}

#[test]
fn chains_add_up_to_the_wall() {
    each_wall(|name, _, shape, steps, _| {
        let chains = chains(shape, steps);
        for chain in [&chains.windows, &chains.pieces, &chains.doors] {
            assert_eq!(chain.first(), Some(&Length::ZERO), "{name}");
            let sum: Length = chain.windows(2).map(|pair| pair[1] - pair[0]).sum();
            assert!((sum - shape.length).abs().si() < 0.0011, "{name}: {sum:?}");
            assert!(chain.windows(2).all(|pair| pair[0] < pair[1]), "{name}");
        }
        // Each piece stands in its chain.
        for step in steps {
            let mut at = step.start();
            for &piece in &step.pieces {
                let has =
                    |mark: Length| chains.pieces.iter().any(|m| (*m - mark).abs().si() < 0.002);
                assert!(has(at) && has(at + piece), "{name}: {at:?}");
                at += piece;
            }
        }
    });
}

#[test]
fn written_dimensions_add_up_to_the_wall_that_is_written() {
    each(|name, draft, job, design| {
        let sheets = all::draw(draft, job, design, draft.units);
        for figure in figures(&sheets).into_iter().filter(|f| f.contains("Elevation seen")) {
            // A chain is a line of its own, with its words after it.
            let chains: Vec<f64> = figure
                .split("class=\"dim\"")
                .skip(1)
                .map(|chain| {
                    let chain = chain.split("<path").next().unwrap_or("");
                    let words = pieces(&format!("<x{chain}"))
                        .filter(|piece| piece.tag == "text" && attribute(piece, "class") == "d")
                        .map(|piece| read_text(&piece))
                        .collect::<Vec<_>>();
                    words.iter().map(|word| metres(word, draft.units)).sum()
                })
                .collect();
            let wall = chains.last().expect("the wall's own");
            assert!(*wall > 0.3, "{name}: {wall}");
            for sum in &chains {
                // Each number is rounded to half an inch, or a centimetre.
                assert!((sum - wall).abs() < 0.04, "{name}: {sum} of {wall}");
            }
        }
    });
}

/// A written length; nothing for words that are none.
fn metres(word: &str, system: System) -> f64 {
    if [text::door_short(), text::window_short()].contains(&word) {
        return 0.0;
    }
    let unit = finrun_engine::quantity::display_unit(Kind::Length, system);
    read(word, unit).unwrap_or_else(|_| panic!("{word} is no length")).si
}

#[test]
fn baseboard_keeps_clear_of_doors_and_stays_on_its_wall() {
    each_wall(|name, _, shape, steps, free_typed| {
        for step in steps {
            let (from, to) = (step.start(), step.start() + step.length());
            assert!(from.si() > -1e-9 && to.si() < shape.length.si() + 1e-9, "{name}");
            for &(kind, left, width, _) in &shape.openings {
                // One free length for a whole wall has no place, and the sheet says so.
                if kind == OpeningKind::Door && !free_typed {
                    let apart =
                        to.si() < left.si() + 1e-9 || from.si() > (left + width).si() - 1e-9;
                    assert!(apart, "{name}: {from:?} to {to:?}, a door at {left:?}");
                }
            }
        }
    });
}

#[test]
fn nothing_stands_beyond_its_sheet() {
    each(|name, draft, job, design| {
        for figure in figures(&all::draw(draft, job, design, draft.units)) {
            let svg = pieces(figure).find(|piece| piece.tag == "svg").expect("a drawing");
            assert!(attribute(&svg, "aria-label").len() > 20, "{name}");
            assert_eq!(attribute(&svg, "role"), "img");
            let ends: Vec<f64> = attribute(&svg, "viewBox")
                .split(' ')
                .map(|number| number.parse().expect("a number"))
                .collect();
            let (wide, high) = (ends[2], ends[3]);
            for piece in pieces(figure) {
                let number = |name: &str| attribute(&piece, name).parse::<f64>().expect("a number");
                match piece.tag {
                    "rect" => {
                        let (x, y) = (number("x"), number("y"));
                        assert!(x >= -0.1 && x + number("width") <= wide + 0.1, "{name}: {x}");
                        assert!(y >= -0.1 && y + number("height") <= high + 0.1, "{name}: {y}");
                    }
                    "text" => {
                        let text = read_text(&piece);
                        let letter = |c: char| if c > '\u{2e7f}' { 14.0 } else { 6.0 };
                        let long: f64 = text.chars().map(letter).sum();
                        let (x, y) = (number("x"), number("y"));
                        if piece.inside.contains("rotate(-90") {
                            assert!(y + long <= high + 2.0 && x <= wide, "{name}: {text}");
                            continue;
                        }
                        let left = match attribute(&piece, "text-anchor") {
                            "start" => x,
                            "middle" => x - long / 2.0,
                            _ => x - long,
                        };
                        let inside = left >= -3.0 && left + long <= wide + 3.0;
                        assert!(inside, "{name}: {text} at {x}");
                        assert!(y >= 11.0 && y <= high - 2.0, "{name}: {text} at {y} of {high}");
                    }
                    "path" if piece.inside.contains("transform=\"translate(") => {
                        let turn = attribute(&piece, "transform");
                        let place = turn.trim_start_matches("translate(").split(')').next();
                        let at: Vec<f64> = place
                            .unwrap_or("")
                            .split(' ')
                            .map(|number| number.parse().expect("a number"))
                            .collect();
                        assert!(at[0] >= 0.0 && at[0] <= wide, "{name}: {turn}");
                        assert!(at[1] >= 0.0 && at[1] <= high, "{name}: {turn}");
                    }
                    _ => {}
                }
                assert!(!piece.inside.contains("NaN") && !piece.inside.contains("inf"), "{name}");
            }
        }
    });
}

/// The shapes that stand in a drawing, each by its path.
fn shapes(markup: &str) -> Vec<String> {
    let mut all: Vec<String> = pieces(markup)
        .filter(|piece| piece.tag == "path" && piece.inside.contains("transform"))
        .map(|piece| attribute(&piece, "d").to_string())
        .collect();
    all.sort();
    all.dedup();
    all
}

#[test]
fn keys_explain_every_symbol_and_no_other() {
    each(|name, draft, job, design| {
        for figure in figures(&all::draw(draft, job, design, draft.units)) {
            let Some((drawn, key)) = figure.split_once("<g class=\"legend-of\">") else {
                // The schematic's key stands among its symbols: each is then there twice.
                for shape in shapes(figure) {
                    assert!(figure.matches(&format!("\"{shape}\"")).count() > 1, "{name}: {shape}");
                }
                continue;
            };
            let (drawn, key) = (shapes(drawn), shapes(key));
            for shape in &drawn {
                assert!(key.contains(shape), "{name}: {shape} is not explained");
            }
            // What is drawn by a line or a box of its own is explained by a sample of it.
            let samples = [Mark::Element, Mark::Enclosure, Mark::Window, Mark::Door, Mark::Boiler];
            let samples: Vec<String> = samples.iter().flat_map(|&m| sample_of(m)).collect();
            for shape in key.iter().filter(|shape| !samples.contains(shape)) {
                assert!(drawn.contains(shape), "{name}: {shape} is explained, not drawn");
            }
        }
    });
}

fn sample_of(mark: Mark) -> Vec<String> {
    let mut marks = super::key::Marks::default();
    marks.sample(mark, (0.0, 0.0));
    shapes(&marks.svg.done())
}

#[test]
fn every_mark_has_a_look_and_a_name_of_its_own() {
    for (at, &mark) in Mark::ALL.iter().enumerate() {
        let mut marks = super::key::Marks::default();
        marks.sample(mark, (0.0, 0.0));
        assert!(marks.svg.done().contains(" d="), "{mark:?}");
        let same = Mark::ALL[..at].iter().find(|other| text::mark(**other) == text::mark(mark));
        assert_eq!(same, None, "{mark:?}");
    }
}

/// Caps that end baseboard, of one loop.
fn caps(one: &Loop) -> usize {
    let ends = one.visits.iter().flat_map(|visit| &visit.steps).flat_map(|step| step.ends);
    ends.filter(|end| {
        matches!(end, End::Capped | End::Turned | End::Stub(_) | End::Corner(_, Beyond::Cap))
    })
    .count()
}

#[test]
fn elevations_have_the_caps_that_the_take_off_counts() {
    each(|name, draft, job, design| {
        // Where a room that the enclosure passes has no element, its walls have no sheet.
        let bare = design.rooms.iter().any(|room| room.element.choice.runs.is_empty());
        if bare {
            return;
        }
        let drawn: usize = follow(draft, job, design).iter().map(caps).sum();
        let counted: u32 = count(job, design)
            .iter()
            .filter(|item| matches!(item.class, Class::Part(PriceField::EndCap)))
            .map(|item| match item.amount {
                Amount::Count(count) => count,
                Amount::Length(_) => 0,
            })
            .sum();
        assert_eq!(drawn, counted as usize, "{name}");
    });
}

#[test]
fn every_piece_of_the_design_is_drawn_once() {
    each(|name, draft, job, design| {
        let loops = follow(draft, job, design);
        let steps = loops.iter().flat_map(|one| &one.visits).flat_map(|visit| &visit.steps);
        let drawn: usize = steps.map(|step| step.pieces.len()).sum();
        assert_eq!(drawn, design.piece_count(), "{name}");
    });
}

/// Places read off the two houses' descriptions by hand: the bungalow's living room has its south wall
/// at the foot of the plan and the cottage's bath stands in the corner cut out of the great room.
#[test]
fn walls_stand_where_their_names_and_neighbours_say() {
    let jobs = sheet_jobs();
    let side = |house: &str, room: usize, wall: usize| {
        let (_, draft) = jobs.iter().find(|(name, _)| name == house).expect("a house");
        let (job, design) = solve(draft);
        let mut rooms = super::plan::placed(draft, &job, &design, draft.rooms[room].level);
        let (_, deep) = super::plan::arrange(&mut rooms);
        let id = draft.rooms[room].id;
        let placed = rooms.iter().find(|placed| placed.id == id).expect("a room");
        let stand = stand::stands(draft, &draft.rooms[room], placed, deep)[..]
            .iter()
            .find(|(wall_id, _)| *wall_id == draft.rooms[room].surfaces[wall].id)
            .and_then(|(_, stand)| *stand);
        stand.map(|stand| (stand.edge.side, (stand.from_m / 0.3048).round() as i32))
    };
    let wall = |house: &str, room: usize, name: &str| {
        let (_, draft) = jobs.iter().find(|(known, _)| known == house).expect("a house");
        let at = draft.rooms[room].surfaces.iter().position(|wall| wall.name == name);
        side(house, room, at.unwrap_or_else(|| panic!("{name}")))
    };
    assert_eq!(wall("bungalow", 0, "south"), Some((Side::Front, 0)));
    assert_eq!(wall("bungalow", 0, "west"), Some((Side::Left, 0)));
    // In the cut corner: one wall looks right at the bath, the other back at it.
    assert_eq!(wall("cottage", 0, "bath side"), Some((Side::Right, 0)));
    assert_eq!(wall("cottage", 0, "bath front"), Some((Side::Back, 0)));
    // Twelve feet of a side of twenty.
    assert_eq!(wall("cottage", 0, "north"), Some((Side::Back, 0)));
    // East of the dining room are the garage, eight feet at the front, and four feet of open wall.
    assert_eq!(wall("two-storey", 1, "garage"), Some((Side::Right, 4)));
    assert_eq!(wall("two-storey", 1, "east"), Some((Side::Right, 0)));
    assert_eq!(wall("two-storey", 7, "bath"), Some((Side::Left, 0)));
}

#[test]
fn a_name_says_a_side_only_if_it_says_one() {
    assert_eq!(text::side_said("North wall"), Some(Side::Back));
    assert_eq!(text::side_said("street-side"), Some(Side::Front));
    assert_eq!(text::side_said("left"), Some(Side::Left));
    // Names are typed in either language, whichever is spoken.
    assert_eq!(text::side_said("Pared norte"), Some(Side::Back));
    assert_eq!(text::side_said("ATRÁS"), Some(Side::Back));
    assert_eq!(text::side_said("pared sur, a la calle"), Some(Side::Front));
    assert_eq!(text::side_said("Este"), Some(Side::Right));
    assert_eq!(text::side_said("izquierda"), Some(Side::Left));
    for none in ["", "north-east", "northern", "wall 3", "between south and west"] {
        assert_eq!(text::side_said(none), None, "{none}");
    }
}
