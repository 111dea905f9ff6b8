//! Words of the trade that a page uses, explained on a tap at its end.

use crate::markup::{Markup, still_markup};
use crate::page::{Page, Section, Station};
use finrun_text as text;
use finrun_text::glossary::{self as g, Term};
use leptos::prelude::*;

pub(crate) fn terms_here(page: &Page) -> AnyView {
    let terms = terms_of(page);
    if terms.is_empty() {
        return ().into_any();
    }
    view! {
        <details class="more terms">
            <summary>{text::terms_here()}</summary>
            {still_markup("", listed(terms))}
            <p><a class="act" href=Page::Terms.to_hash()>{text::all_terms()}</a></p>
        </details>
    }
    .into_any()
}

/// Words with their meanings.
pub(crate) fn listed(terms: &[Term]) -> String {
    let mut markup = Markup::new();
    markup.open("dl", &[]);
    for term in terms {
        markup.leaf("dt", &[], term.word());
        markup.leaf("dd", &[], &term.meaning());
    }
    markup.close("dl");
    markup.done()
}

fn terms_of(page: &Page) -> &'static [Term] {
    match page {
        Page::Station(_, Station::Rooms) => &[g::DESIGN_DAY, g::ZONE, g::DOWNSTREAM],
        Page::Room(..) => &[g::AIR_CHANGE, g::U_VALUE, g::R_VALUE],
        Page::Station(_, Station::HeatLoss) => &[g::DESIGN_DAY, g::U_VALUE, g::AIR_CHANGE],
        Page::Station(_, Station::Lengths) => &[
            g::ELEMENT,
            g::ENCLOSURE,
            g::FINNED_LENGTH,
            g::EXPONENT,
            g::HEATING_EFFECT,
            g::DERATING,
        ],
        Page::Station(_, Station::Loop) => {
            &[g::SERIES_LOOP, g::TEMPERATURE_DROP, g::HEAD, g::CIRCULATOR, g::DOWNSTREAM]
        }
        Page::Section(_, section) => match section {
            Section::Place => &[g::DESIGN_DAY, g::DEGREE_DAY],
            Section::Air => &[g::AIR_CHANGE, g::BLOWER_DOOR, g::LEAKAGE_AREA],
            Section::Ground => &[g::F_FACTOR, g::R_VALUE],
            Section::Assemblies => &[g::U_VALUE, g::R_VALUE],
            Section::Bills => &[g::DEGREE_DAY, g::BALANCE_TEMPERATURE],
            Section::WhatIf => &[g::U_VALUE, g::R_VALUE, g::AIR_CHANGE, g::ELEMENT],
            Section::Prices => &[g::ELEMENT, g::ENCLOSURE, g::DIVERTER_TEE, g::KERF],
            Section::Piping | Section::Compare => &[
                g::ZONE,
                g::SERIES_LOOP,
                g::SPLIT_LOOP,
                g::DIVERTER_TEE,
                g::REVERSE_RETURN,
                g::HOME_RUN,
                g::TRUNK,
                g::MAIN,
                g::BRANCH,
                g::MANIFOLD,
                g::BALANCING_VALVE,
            ],
            Section::Circulator => {
                &[g::CIRCULATOR, g::HEAD, g::CV, g::ZONE_VALVE, g::FLOW_CHECK, g::TEMPERATURE_DROP]
            }
            Section::Plant => &[
                g::CONDENSING_BOILER,
                g::RETURN_PROTECTION,
                g::OUTDOOR_RESET,
                g::EXPANSION_TANK,
                g::PRE_CHARGE,
                g::RELIEF_VALVE,
            ],
            Section::Drawings => &[g::AIR_ELIMINATOR, g::EXPANSION_TANK, g::BACKFLOW_PREVENTER],
            Section::Materials => &[g::ELEMENT, g::ENCLOSURE, g::KERF, g::PURGE],
            Section::Install => {
                &[g::OXYGEN_BARRIER, g::PURGE, g::RELIEF_VALVE, g::BACKFLOW_PREVENTER]
            }
            Section::Commission => &[g::PRE_CHARGE, g::TEMPERATURE_DROP, g::BALANCING_VALVE],
            Section::Existing => &[g::ELEMENT, g::SERIES_LOOP, g::TEMPERATURE_DROP, g::PURGE],
            Section::Season => &[g::ZONE, g::OUTDOOR_RESET, g::BALANCE_TEMPERATURE],
            Section::DesignDay => &[g::DESIGN_DAY, g::ZONE],
            Section::Cooler => &[g::CONDENSING_BOILER, g::OUTDOOR_RESET, g::DESIGN_DAY],
            Section::Certainty | Section::Report | Section::Share => &[],
        },
        Page::Jobs | Page::Safety | Page::About | Page::Terms | Page::Offered(_) => &[],
    }
}
