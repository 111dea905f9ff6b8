//! The element: its rating, its table, its stock lengths.

use super::rooms::section_links;
use crate::page::{JobKey, Section};
use crate::parts::{button, choice, each, live, live_view, number_field, yes};
use crate::state::{EditKey, use_app};
use finrun_engine::emitter::HeatingEffect;
use finrun_engine::job::{Draft, ElementField, Field, PointField, RatingBasis, StockField};
use finrun_engine::quantity::LinearPower;
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn element_settings(job: &JobKey) -> AnyView {
    let app = use_app();
    let field = |field| number_field(Field::Element(field));
    let single = yes(move || app.typed(|draft| draft.element.rating_basis == RatingBasis::Single));
    let rating = live_view(move || match single.get() {
        true => view! {
            {field(ElementField::Output)}
            {field(ElementField::Water)}
            {field(ElementField::Exponent)}
        }
        .into_any(),
        false => table(),
    });
    view! {
        <section class="settings">
            <h2>{text::element()}</h2>
            <p class="note">{text::element_note()}</p>
            {pick(
                "rating-basis",
                text::rating(),
                &[RatingBasis::Single, RatingBasis::Table],
                text::rating_basis,
                |draft| draft.element.rating_basis,
                |draft, basis| {
                    draft.element.rating_basis = basis;
                    // A table starts with rows to fill in.
                    while basis == RatingBasis::Table && draft.element.points.len() < 3 {
                        draft.element.points.push(Default::default());
                    }
                },
            )}
            {rating}
            {field(ElementField::Air)}
            {field(ElementField::RatingFlow)}
            {pick(
                "heating-effect",
                text::heating_effect_question(),
                &[
                    HeatingEffect::Unknown,
                    HeatingEffect::AsTyped,
                    HeatingEffect::CertifiedCredited,
                    HeatingEffect::CertifiedStrict,
                ],
                text::heating_effect,
                |draft| draft.element.heating_effect,
                |draft, effect| draft.element.heating_effect = effect,
            )}
            {stock()}
            {prices_and_counts()}
            {section_links(job, &[Section::Prices, Section::Materials])}
            <details class="more">
                <summary>{text::more_of_element()}</summary>
                {field(ElementField::Derate)}
                {field(ElementField::BarePerPiece)}
                {field(ElementField::EndAllowance)}
            </details>
        </section>
    }
    .into_any()
}

/// A choice of one draft value among a few.
pub(super) fn pick<T>(
    id: &'static str,
    label: &'static str,
    all: &'static [T],
    name: fn(T) -> &'static str,
    get: fn(&Draft) -> T,
    set: fn(&mut Draft, T),
) -> AnyView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let app = use_app();
    let options = all.iter().map(|value| name(*value).to_string()).collect::<Vec<_>>();
    let chosen = Signal::derive(move || {
        let now = app.typed(get);
        all.iter().position(|value| *value == now).unwrap_or(0)
    });
    let choose = move |index: usize| {
        if let Some(value) = all.get(index).copied() {
            app.edit(EditKey::Single, |draft| set(draft, value));
        }
    };
    choice(id.to_string(), label, Signal::stored(options), chosen, choose)
}

fn table() -> AnyView {
    let app = use_app();
    let rows = move || app.typed(|draft| (0..draft.element.points.len() as u32).collect());
    let add = move || {
        app.edit(EditKey::Single, |draft| draft.element.points.push(Default::default()));
    };
    let remove = move |row: usize| {
        app.edit(EditKey::Single, |draft| {
            if row < draft.element.points.len() {
                draft.element.points.remove(row);
            }
        });
    };
    let row = move |row: u32| {
        let row = row as usize;
        view! {
            <fieldset class="opening">
                <legend>{text::table_row(row + 1)}</legend>
                <div class="pair">
                    {number_field(Field::Point(row, PointField::Water))}
                    {number_field(Field::Point(row, PointField::Output))}
                </div>
                {button("", &text::table_row_remove(row + 1), move || remove(row))}
            </fieldset>
        }
        .into_any()
    };
    view! {
        {each(rows, row)}
        <div class="acts">{button("", text::table_row_add(), add)}</div>
        <p class="note">{live(fit_line)}</p>
    }
    .into_any()
}

/// What the table was fitted to.
fn fit_line() -> String {
    let app = use_app();
    let system = app.system();
    app.design(|solved| match solved {
        Some((job, _)) => {
            let rating = job.baseboard.element.rating;
            let output = text::value(rating.output, system);
            let water = text::value(rating.water, system);
            let worst = job.baseboard.worst_residual.unwrap_or(LinearPower::ZERO);
            let worst = text::value(worst, system);
            text::fitted(
                &output,
                &water,
                &text::in_units(&format!("{:.3}", rating.exponent)),
                &worst,
            )
        }
        None => String::new(),
    })
}

fn stock() -> AnyView {
    let app = use_app();
    let boxes = (2u8..=10).map(|feet| {
        let id = format!("stock-{feet}");
        let box_id = id.clone();
        let has = yes(move || app.typed(|draft| draft.element.stock_ft.contains(&feet)));
        let toggle = move |_| {
            app.edit(EditKey::Single, |draft| {
                draft.element.toggle_stock(feet);
            });
        };
        view! {
            <label class="tick" for=id>
                <input id=box_id type="checkbox" prop:checked=has on:change=toggle/>
                {text::in_units(&format!("{feet} ft"))}
            </label>
        }
        .into_any()
    });
    let error = live(move || {
        app.follows(|outcome| {
            let error = outcome.errors.iter().find(|error| error.field == Field::Stock);
            error.map(|error| text::problem(error, app.system())).unwrap_or_default()
        })
    });
    view! {
        <fieldset class="stock" id=Field::Stock.to_string()>
            <legend>{text::stock()}</legend>
            <p class="error">{error}</p>
            <div class="ticks">{boxes.collect_view()}</div>
        </fieldset>
    }
    .into_any()
}

/// A row for each length on the list.
fn prices_and_counts() -> AnyView {
    let app = use_app();
    let lengths =
        move || app.typed(|draft| draft.element.stock_ft.iter().copied().map(u32::from).collect());
    let row = |feet: u32| {
        let field = |field| number_field(Field::Stocked(feet as u8, field));
        view! {
            <fieldset class="stocked">
                <legend>{text::in_units(&format!("{feet} ft"))}</legend>
                {field(StockField::Price)}
                {field(StockField::Available)}
                {field(StockField::Have)}
            </fieldset>
        }
        .into_any()
    };
    view! {
        <details class="more">
            <summary>{text::prices_and_counts()}</summary>
            <p class="note">{text::prices_and_counts_note()}</p>
            {each(lengths, row)}
        </details>
    }
    .into_any()
}
