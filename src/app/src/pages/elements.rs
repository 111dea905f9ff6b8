//! The element: its rating, its table, its stock lengths.

use crate::parts::{Choice, NumberField};
use crate::state::{EditKey, use_app};
use finrun_engine::emitter::HeatingEffect;
use finrun_engine::job::{Draft, ElementField, Field, PointField, RatingBasis};
use finrun_text as text;
use leptos::prelude::*;

#[component]
pub(crate) fn ElementSettings() -> impl IntoView {
    let app = use_app();
    let basis = Memo::new(move |_| app.draft.with(|draft| draft.element.rating_basis));
    view! {
        <section class="settings">
            <h2>{text::element()}</h2>
            <p class="note">{text::element_note()}</p>
            <Pick
                id="rating-basis"
                label=text::rating()
                all=vec![RatingBasis::Single, RatingBasis::Table]
                name=text::rating_basis
                get=|draft| draft.element.rating_basis
                set=|draft, basis| {
                    draft.element.rating_basis = basis;
                    // A table starts with rows to fill in.
                    while basis == RatingBasis::Table && draft.element.points.len() < 3 {
                        draft.element.points.push(Default::default());
                    }
                }
            />
            {move || match basis.get() {
                RatingBasis::Single => view! {
                    <NumberField field=Field::Element(ElementField::Output)/>
                    <NumberField field=Field::Element(ElementField::Water)/>
                    <NumberField field=Field::Element(ElementField::Exponent)/>
                }
                .into_any(),
                RatingBasis::Table => view! { <Table/> }.into_any(),
            }}
            <NumberField field=Field::Element(ElementField::Air)/>
            <NumberField field=Field::Element(ElementField::RatingFlow)/>
            <Pick
                id="heating-effect"
                label=text::heating_effect_question()
                all=vec![
                    HeatingEffect::Unknown,
                    HeatingEffect::AsTyped,
                    HeatingEffect::CertifiedCredited,
                    HeatingEffect::CertifiedStrict,
                ]
                name=text::heating_effect
                get=|draft| draft.element.heating_effect
                set=|draft, effect| draft.element.heating_effect = effect
            />
            <Stock/>
            <details class="more">
                <summary>{text::more_of_element()}</summary>
                <NumberField field=Field::Element(ElementField::Derate)/>
                <NumberField field=Field::Element(ElementField::BarePerPiece)/>
                <NumberField field=Field::Element(ElementField::EndAllowance)/>
            </details>
        </section>
    }
    .into_any()
}

/// A choice of one draft value among a few.
#[component]
pub(super) fn Pick<T>(
    id: &'static str,
    label: &'static str,
    all: Vec<T>,
    name: fn(T) -> &'static str,
    get: fn(&Draft) -> T,
    set: fn(&mut Draft, T),
) -> impl IntoView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let app = use_app();
    let options = all.iter().map(|value| name(*value).to_string()).collect::<Vec<_>>();
    let all = StoredValue::new(all);
    let chosen = Signal::derive(move || {
        let now = app.draft.with(get);
        all.with_value(|all| all.iter().position(|value| *value == now).unwrap_or(0))
    });
    let choose = move |index: usize| {
        if let Some(value) = all.with_value(|all| all.get(index).copied()) {
            app.edit(EditKey::Single, |draft| set(draft, value));
        }
    };
    view! { <Choice id label options=Signal::stored(options) chosen on_choose=choose/> }
}

#[component]
fn Table() -> impl IntoView {
    let app = use_app();
    let rows = Memo::new(move |_| app.draft.with(|draft| draft.element.points.len()));
    let add = move |_| {
        app.edit(EditKey::Single, |draft| draft.element.points.push(Default::default()));
    };
    let remove = move |row: usize| {
        app.edit(EditKey::Single, |draft| {
            if row < draft.element.points.len() {
                draft.element.points.remove(row);
            }
        });
    };
    view! {
        <For each=move || 0..rows.get() key=|row| *row let:row>
            <fieldset class="opening">
                <legend>{text::table_row(row + 1)}</legend>
                <div class="pair">
                    <NumberField field=Field::Point(row, PointField::Water)/>
                    <NumberField field=Field::Point(row, PointField::Output)/>
                </div>
                <button type="button" on:click=move |_| remove(row)>
                    {text::table_row_remove()} " " {row + 1}
                </button>
            </fieldset>
        </For>
        <div class="acts">
            <button type="button" on:click=add>{text::table_row_add()}</button>
        </div>
        <FitLine/>
    }
    .into_any()
}

/// What the table was fitted to.
#[component]
fn FitLine() -> impl IntoView {
    let app = use_app();
    move || {
        let system = app.system();
        app.outcome.with(|outcome| {
            let (job, _) = outcome.solved.as_ref()?;
            let rating = job.baseboard.element.rating;
            let output = text::value(rating.output, system);
            let water = text::value(rating.water, system);
            let exponent = format!("{:.3}", rating.exponent);
            Some(view! { <p class="note">{text::fitted(&output, &water, &exponent)}</p> })
        })
    }
}

#[component]
fn Stock() -> impl IntoView {
    let app = use_app();
    let boxes = (2u8..=10).map(|feet| {
        let id = format!("stock-{feet}");
        let box_id = id.clone();
        let has = move || app.draft.with(|draft| draft.element.stock_ft.contains(&feet));
        let toggle = move |_| {
            app.edit(EditKey::Single, |draft| {
                if !draft.element.stock_ft.remove(&feet) {
                    draft.element.stock_ft.insert(feet);
                }
            });
        };
        view! {
            <label class="tick" for=id>
                <input id=box_id type="checkbox" prop:checked=has on:change=toggle/>
                {format!("{feet} ft")}
            </label>
        }
    });
    let error = move || {
        app.outcome.with(|outcome| {
            let error = outcome.errors.iter().find(|error| error.field == Field::Stock)?;
            Some(text::problem(error, app.system()))
        })
    };
    view! {
        <fieldset class="stock" id=Field::Stock.to_string()>
            <legend>{text::stock()}</legend>
            <p class="error">{error}</p>
            <div class="ticks">{boxes.collect_view()}</div>
        </fieldset>
    }
    .into_any()
}
