//! Every word that people read, one typed function a message.
//!
//! A crate of its own, so that the page and the developer commands say the same thing, a second
//! language is checked by the compiler, and the tests read every message without a browser.

mod bills;
mod certainty;
mod checks;
mod choices;
mod climate;
mod comfort;
mod commission;
mod compare;
mod control;
mod cooler;
mod demo;
mod drawings;
mod existing;
mod fields;
pub mod glossary;
mod install;
mod language;
mod loops;
mod materials;
mod night;
mod page;
mod picks;
mod piping;
mod plant;
mod price_list;
mod problems;
mod remedies;
mod report;
mod safety;
mod season;
mod shop;
mod what_if;
mod working;

pub use bills::{against_bills, bills_tell_nothing};
pub use certainty::{effect, load_and_band, subject};
pub use checks::{check_detail, check_title, remedy, severity};
pub use choices::{
    air_class, assembly, behind, flow_basis, framing, heating_effect, listed_u, material,
    open_flue, opening_kind, origin, own_u, part, position, rating_basis, shelter, storeys,
    surface_kind, tube, u_value_basis,
};
pub use climate::{
    more_stations, no_such_zip, not_a_zip, station_away, station_facts, station_name,
    station_taken, stations_failed, zip_spread,
};
pub use comfort::*;
pub use commission::{
    care_items, circuit_finding, circuit_verdict, expected_back, filling_finding, readings,
    room_finding, room_verdict,
};
pub use compare::{
    best, best_cell, cell, column, kept_difference, laid_out, layout, sorted_by, working_on,
};
pub use cooler::*;
pub use demo::demo_name;
pub use drawings::*;
pub use existing::*;
pub use fields::{
    assembly_name, bounds_hint, field_label, field_note, field_owner, opening_name, room_name,
    surface_name,
};
pub use install::{
    circuit_at, phase, photo_number, step_how, step_numbers, step_title, steps_done,
};
pub use language::{DecimalMark, Language, in_units, language, speak};
pub use loops::*;
pub use materials::*;
pub use night::*;
pub use page::*;
pub use picks::{choice_label, fuel, level, pick, room_use, slab_edge, soil};
pub use piping::{
    arrangement, arrangement_note, circuit_name, element_of_usual, hung_line, leg_kind, loop_name,
    not_solved, other_pump, piping_fact, place, rule, step_name, typical_pump, valve_order, watts,
    way, zone_name,
};
pub use plant::{
    back_verdict, boiler_judged, boiling_margin, burner_alone, control_power, glycol_charge,
    no_tank, plant_cautions, pressures_said, reset_line, tank_said, volume_parts,
};
pub use price_list::{
    cannot_keep_prices, kept_prices, kept_prices_damaged, kinds_unpriced, list_fault, more_rows,
    price_item, price_otherwise, prices_filled, prices_kept, prices_otherwise, row_problem,
    rows_not_taken,
};
pub use problems::{file_problem, problem, problem_at};
pub use remedies::{burner_runs, calls_at_half, supply_enough, worked};
pub use report::*;
pub use safety::{CAUTIONS, Caution, danger};
pub use season::*;
pub use shop::{
    group, kept_pieces, objective, objective_note, prices_fact, stretch_holds, together,
    wall_stretch, wall_use,
};
pub use what_if::*;
pub use working::{
    Piece, formula_text, set_formula, set_symbol, source, spread_text, symbol_meaning, symbols,
};

use finrun_engine::quantity::{Shown, System, Value, show};

/// A value with its unit, as the page shows it.
pub fn value(value: impl Into<Value>, system: System) -> String {
    unbroken(&show(value.into(), system))
}

/// A number that no line's end parts from its unit.
pub fn unbroken(shown: &Shown) -> String {
    in_units(&shown.text()).replace(' ', "\u{a0}")
}
