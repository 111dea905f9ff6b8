//! Words of the report: its parts, where numbers come from, what was assumed and by which method.

use crate::language::sentences;
use crate::{field_label, field_owner, flow_basis, heating_effect, objective, value};
use finrun_engine::building::SurfaceKind;
use finrun_engine::emitter::HeatingEffect;
use finrun_engine::job::{
    AirBasis, Behind, CircuitField, Draft, Field, GroundMethod, HouseField, InputOrigin,
    OpeningField, PumpKind, RatingBasis, RoomField, ZoneField, Zoning, resolve,
};
use finrun_engine::quantity::{System, Unit, Value};
use finrun_engine::trace::Topic;

/// Where a number comes from: its letter, which stands behind it in a table of many, and in a word.
pub fn input_origin(origin: InputOrigin) -> (&'static str, &'static str) {
    match origin {
        InputOrigin::Measured => ("m", "measured"),
        InputOrigin::Label => ("l", "label"),
        InputOrigin::Given => ("g", "given"),
        InputOrigin::Table => ("t", "table"),
        InputOrigin::Worked => ("w", "worked out"),
        InputOrigin::Assumed => ("a", "assumed"),
    }
}

/// A number with the letter of where it comes from.
pub fn with_origin(shown: &str, origin: InputOrigin) -> String {
    format!("{shown}\u{a0}({})", input_origin(origin).0)
}

/// What made the report: the program, and the versions of what it reads.
pub fn made_by(program: &str, file: u32, climate: &str) -> String {
    format!("Finrun {program}, job file version {file}, climate table {climate}")
}

/// Of the whole report, or of the short form.
pub fn report_title(job: &str) -> String {
    format!("Baseboard heating: {job}")
}

/// A label where the field before it does not stand beside it.
pub fn whole_label(field: Field) -> &'static str {
    match field {
        Field::Room(_, RoomField::FloorArea) => "Floor area",
        Field::Room(_, RoomField::Elbows) => "Elbows on the pipe to it",
        Field::Room(_, RoomField::AirChanges) => "Air changes at least",
        Field::Room(_, RoomField::Temperature) => "Temperature",
        Field::Room(_, RoomField::OtherHeat) => "Other heat",
        Field::Circuit(CircuitField::ReturnElbows) => "Elbows on the pipe to the boiler",
        Field::Zone(_, ZoneField::TrunkElbows) => "Elbows on the trunk, one way",
        _ => field_label(field),
    }
}

/// A field with what it belongs to.
pub fn owned_label(draft: &Draft, field: Field) -> String {
    format!("{}: {}", field_owner(draft, field), whole_label(field))
}

/// One default that stands for blanks, and where.
pub fn assumption(label: &str, shown: &str, places: &[String]) -> String {
    let what = match shown.is_empty() {
        true => label.to_string(),
        false => format!("{label}: {shown}"),
    };
    match places.is_empty() {
        true => format!("{what}."),
        false => format!("{what} ({}).", places.join(", ")),
    }
}

/// Several of the same in one room.
pub fn times_in(count: usize, room: &str) -> String {
    match count {
        1 => room.to_string(),
        count => format!("{count} in {room}"),
    }
}

/// A blank of a kind whose numbers differ from place to place.
pub fn without_number(field: Field) -> Option<&'static str> {
    match field {
        Field::Opening(_, _, _, OpeningField::FromLeft) => {
            Some("Windows and doors without a place stand evenly along their walls")
        }
        _ => None,
    }
}

/// By which methods a job was worked out: what it chose among them, in sentences.
pub fn methods(draft: &Draft, system: System) -> Vec<String> {
    let mut said = vec![
        "Heat loss is steady, on the design day: no gains from sun or people, no reheat."
            .to_string(),
    ];
    let margin = resolve(draft, Field::House(HouseField::Margin)).si().unwrap_or(0.0);
    said.push(match margin > 0.0 {
        true => format!(
            "A margin of {} is added to every room; nothing else is added.",
            value(Value::share(margin), system)
        ),
        false => "No margin is added to any room.".to_string(),
    });
    said.push(
        match draft.air.basis {
            AirBasis::Class => {
                "Air: by a class of tightness, as air changes, shared among the rooms by the area \
                 they show to outdoors and to unheated spaces."
            }
            AirBasis::BlowerDoor => {
                "Air: by a blower door test and the model of Sherman and Grimsrud, shared among the \
                 rooms by the area they show to outdoors and to unheated spaces."
            }
            AirBasis::LeakageArea => {
                "Air: by a leakage area and the model of Sherman and Grimsrud, shared among the rooms \
                 by the area they show to outdoors and to unheated spaces."
            }
        }
        .to_string(),
    );
    let mut surfaces = draft.all_rooms().flat_map(|room| &room.surfaces);
    if surfaces.any(|surface| surface.behind == Behind::Ground) {
        let floors = draft.all_rooms().flat_map(|room| &room.surfaces);
        let mut floors = floors.filter(|surface| surface.kind == SurfaceKind::Floor);
        let slab = floors.any(|surface| surface.behind == Behind::Ground);
        said.push(
            match draft.ground.method {
                GroundMethod::FFactor if slab => {
                    "Ground: slabs by the F-factor of US codes along their edge, walls by ISO 13370."
                }
                _ => "Ground: by ISO 13370, whose formulas were read in public implementations of it.",
            }
            .to_string(),
        );
    }
    if !draft.spaces.is_empty() {
        said.push(
            "Unheated spaces are at the temperature of their own balance, but where one is typed."
                .to_string(),
        );
    }
    said.push(match draft.element.rating_basis {
        RatingBasis::Single => {
            "Element: one rated output and an exponent, carried along the tube exactly as the water \
             cools."
                .to_string()
        }
        RatingBasis::Table => {
            "Element: a curve fitted to a maker's table, carried along the tube exactly as the water \
             cools."
                .to_string()
        }
    });
    said.push(match draft.element.heating_effect {
        HeatingEffect::Unknown => {
            "Whether a heating effect is in the rating is not known: it is taken as typed."
                .to_string()
        }
        effect => format!("Rating: {}.", heating_effect(effect)),
    });
    said.push(format!("Pieces are chosen for: {}.", objective(draft.element.objective)));
    said.push(format!("Flow: {}.", flow_basis(draft.flow_basis)));
    let own = draft.zones.len() > 1 && draft.zoning == Zoning::Circulators;
    let typed = match own {
        true => draft.zones.iter().all(|zone| zone.pump == PumpKind::Points),
        false => draft.pump.kind == PumpKind::Points,
    };
    said.push(match typed {
        true => "Circulator: by the points of its curve.".to_string(),
        false => {
            "Circulator: by a typical curve, which is no maker's, and is a judgement.".to_string()
        }
    });
    said.push(
        "Water: properties fitted to IAPWS; friction after Darcy, Weisbach and Colebrook; fittings in \
         the form of Crane TP-410, from memory."
            .to_string(),
    );
    said
}

/// What a working leads to, for its heading; rooms and stretches by name.
pub fn worked_title(topic: Topic, name: &str) -> String {
    match topic {
        Topic::HouseLoad => "The house's load".to_string(),
        Topic::RoomLoad(_) => format!("Load of {name}"),
        Topic::PathLoss(..) => format!("Heat through: {name}"),
        Topic::SpaceTemperature(_) => format!("Temperature of {name}"),
        Topic::HouseAir => "Air through the house".to_string(),
        Topic::Band => "How sure the load is".to_string(),
        Topic::ListedU(_) => format!("U of “{name}”"),
        Topic::PerArea(_) => format!("Load on each part of the floor, {name}"),
        Topic::Needed(_) => format!("Finned length needed, {name}"),
        Topic::Output(_) => format!("Element's output and the water that leaves it, {name}"),
        Topic::Over(_) => format!("Output beside the load, {name}"),
        Topic::Pieces(_) => format!("Pieces, {name}"),
        Topic::Element => "Element in all rooms".to_string(),
        Topic::RuleOfThumb(_) => format!("Rule of thumb, {name}"),
        Topic::Flow => "Flow".to_string(),
        Topic::Pipe(_) => crate::water_after(name),
        Topic::Drop => "Temperature drop".to_string(),
        Topic::Velocity => "Fastest water".to_string(),
        Topic::Pressure(_) => crate::pressure_lost(name),
        Topic::Head => "Head for the circulator".to_string(),
        Topic::BoilerHeat => "What the boiler puts back".to_string(),
        Topic::NeededOutput => "What the boiler must give".to_string(),
        Topic::SystemVolume => "Liquid in the system".to_string(),
        Topic::TankSize => "Least expansion tank".to_string(),
        Topic::FillPressure => "Fill pressure, cold".to_string(),
    }
}

/// Rooms that are not in any number of the report.
pub fn left_out(rooms: &[String]) -> String {
    format!("Not complete, and in no number of this report: {}.", rooms.join(", "))
}

/// So many pieces of one length.
pub fn pieces_of(count: usize, length: &str) -> String {
    format!("{count}\u{a0}×\u{a0}{length}")
}

/// The pieces on one wall.
pub fn on_wall(wall: &str, pieces: &str) -> String {
    format!("{wall}: {pieces}")
}

/// From the temperature that enters to the one that leaves.
pub fn from_into(enters: &str, leaves: &str) -> String {
    format!("{enters} → {leaves}")
}

/// A label, and which kind of thing it is about.
pub fn of_kind(label: &str, kind: &str) -> String {
    format!("{label}, {}", kind.to_ascii_lowercase())
}

/// An opening below the surface that it is in.
pub fn inside_of(opening: &str) -> String {
    format!("– {opening}")
}

/// A height above the sea and its like, which are nothing to say in inches.
pub fn rough_length(length: Value, system: System) -> String {
    let (unit, name) = match system {
        System::Us => (Unit::Foot, "ft"),
        System::Si => (Unit::Metre, "m"),
    };
    format!("{:.0}\u{a0}{name}", unit.from_si(length.si))
}

/// Stock lengths, in whole feet.
pub fn stock_feet(lengths: &str) -> String {
    format!("{lengths} ft")
}

/// A check with how grave it is.
pub fn check_headed(severity: &str, title: &str) -> String {
    format!("{title} ({severity})")
}

/// What would mend a finding.
pub fn ways_out(ways: &[String]) -> String {
    format!("{}: {}.", crate::remedies(), ways.join("; "))
}

/// Checks that hold, beside those that do not.
pub fn checks_hold_beside(count: usize) -> String {
    format!("{}.", crate::checks_hold(count))
}

/// Something chosen or measured with its name.
pub fn named(name: &str, what: &str) -> String {
    format!("{name} {what}")
}

// Fixed sentences of the report, each by its name.
sentences! { REPORT_WORDS;
    section_report: "Report";
    report_note: "For paper or a PDF: press Print, and choose a printer or “Save as PDF”. The short form \
                  holds on two pages what is needed on site.";
    report_fact: "To print or save, whole or in short";
    report_form: "What to print";
    report_full: "Full report";
    report_short: "Short form";
    report_paper: "Paper";
    paper_letter: "Letter, 8 1/2 by 11 in";
    paper_a4: "A4, 210 by 297 mm";

    for_the_van: "Short form, for the site";
    title_place: "Place";
    title_date: "Date";
    title_made: "Made by";
    prepared_by: "Prepared by";
    checked_by: "Checked by, date";

    report_results: "Results";
    results_rooms: "Rooms, in the order of the water";
    results_system: "Water, boiler and fill";
    results_circuits: "Circuits";
    report_inputs: "Inputs";
    report_inputs_note: "What is behind each number in brackets tells where it comes from: m measured or \
                         counted, l from a label or data sheet, g given as wanted or known, t from a \
                         table or list, w worked out from other numbers, a assumed for a blank.";
    inputs_house: "House and climate";
    inputs_air: "Air";
    inputs_ground: "Ground";
    inputs_element: "Element and pieces";
    inputs_water: "Water, pipes and boiler";
    inputs_ranges: "How far off each kind of input may be";
    inputs_built: "What is built like what";
    inputs_rooms: "Rooms and spaces";
    report_assumptions: "Assumptions";
    assumptions_note: "First the methods, then what stands for a blank. A measured number in place of a \
                       default makes the plan surer.";
    report_worked: "Calculations";
    worked_note: "One whole working of each kind, with its numbers and its source; tables have the same \
                  for every room and every stretch.";
    worked_rooms: "Heat loss of each room, by part";
    worked_paths: "Heat loss, path by path";
    worked_elements: "Elements";
    worked_stretches: "Stretches of pipe, in the order of the water";
    report_drawings: "Drawings";
    report_checks: "Checks outstanding";
    no_checks: "Nothing is outstanding.";
    report_limits: "Limits and cautions";
    limits_methods: "What the numbers rest on";

    column_element: "Element";
    column_needs: "Needs";
    column_water: "Water";
    column_u: "U";
    column_input_of: "Result";
    of_mains: "from the mains";
    tube_and_pieces: "Tube and pieces";
    column_what: "What";
    all_pieces: "All pieces";
    report_supply: "Supply water";
    column_input: "Input";
    column_value: "Value";
    column_origin: "Origin";
    column_picked: "picked";
    column_total: "Total";
    column_gives: "Gives";
    column_beside: "Over, or short";
    column_short: "short";
    column_pieces: "Pieces";
    column_area: "Area";
    column_height: "Height";
    column_wide: "Length, width";
    column_built: "Built like";
    column_behind: "Behind it, and more";
    column_difference: "Inside, beyond";
    column_finned: "Finned";
    column_nominal: "Nominal";
    column_needed: "Needed";
    column_wall: "Wall and pieces";
    column_assembly: "Assembly";
    column_source: "U, R and where they come from";
    column_reynolds: "Re";
    column_factor: "f";
    column_lost: "Lost";
    column_setting: "Valve, Cv";
    short_caution: "In short; the whole stands under Safety and in the full report. Local codes, permits \
                    and the makers' instructions come first.";
    pre_charge: "Tank's air, before filling";
    tank_usual: "Next usual tank";
    hot_gauge: "Gauge, hot";
    relief_at: "Relief valve set to";
}
