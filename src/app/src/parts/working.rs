//! A figure that opens to its working: formula, the same with numbers, result, source.

use super::live_view;
use crate::state::use_app;
use finrun_engine::quantity::{Shown, System, Value, display_unit, show_precise};
use finrun_engine::trace::{self, Formula, Step, Topic};
use finrun_text as text;
use finrun_text::Piece;
use leptos::prelude::*;

/// A line that opens; `summary` holds the figure itself.
pub(crate) fn working(topic: Topic, summary: AnyView) -> AnyView {
    let app = use_app();
    let open = RwSignal::new(false);
    // Worked out only while it is open: a house has hundreds of these.
    let steps = live_view(move || {
        if !open.get() {
            return ().into_any();
        }
        let system = app.system();
        let steps = app.outcome.with(|outcome| {
            outcome.solved.as_ref().map(|(job, design)| trace::working(job, design, topic))
        });
        let show = |step: Step| show_step(&step, system);
        steps.unwrap_or_default().into_iter().map(show).collect_view().into_any()
    });
    view! {
        <details
            class="working"
            on:toggle=move |event| {
                let details: web_sys::Element = event_target(&event);
                open.set(details.has_attribute("open"));
            }
        >
            <summary>{summary}</summary>
            {steps}
        </details>
    }
    .into_any()
}

fn show_step(step: &Step, system: System) -> AnyView {
    let system = if step.formula.needs_si() { System::Si } else { system };
    let formula = text::formula_text(step);
    let symbols = set(text::set_formula(&formula, &text::set_symbol));
    let by_number = |symbol: &str| -> Vec<Piece> {
        let term = step.terms.iter().find(|term| term.symbol == symbol);
        vec![Piece::Plain(term.map_or(symbol.to_string(), |term| number(term.value, system)))]
    };
    let numbers = match step.formula {
        Formula::Sum => step
            .terms
            .iter()
            .map(|term| number(term.value, system))
            .collect::<Vec<_>>()
            .join(" + ")
            .into_any(),
        _ => set(text::set_formula(&formula, &by_number)),
    };
    let result = precise(step.result.value, system);
    let factor = unit_factor(step, system).map(|factor| {
        view! { <span class="factor">" × " {short_number(factor)} " " {text::unit_factor()}</span> }
    });
    let legend = step
        .terms
        .iter()
        .filter(|term| step.formula != Formula::Sum || term.symbol.contains('_'))
        .map(|term| {
            view! {
                <li>
                    {set(text::set_symbol(term.symbol))} " = "
                    {precise(term.value, system).text()} ", "
                    {text::symbol_meaning(term.symbol)}
                </li>
            }
        })
        .collect_view();
    view! {
        <div class="step">
            <p class="formula">{set(text::set_symbol(step.result.symbol))} " = " {symbols}</p>
            <p class="numbers">"= " {numbers} {factor}</p>
            <p class="result">"= " {result.text()}</p>
            <ul class="legend">{legend}</ul>
            <p class="source">{text::source(step.formula.source())}</p>
        </div>
    }
    .into_any()
}

fn set(pieces: Vec<Piece>) -> AnyView {
    pieces
        .into_iter()
        .map(|piece| match piece {
            Piece::Plain(text) => text.into_any(),
            Piece::Lowered(text) => view! { <sub>{text}</sub> }.into_any(),
            Piece::Raised(inner) => view! { <sup>{set(inner)}</sup> }.into_any(),
        })
        .collect_view()
        .into_any()
}

fn precise(value: Value, system: System) -> Shown {
    show_precise(value, display_unit(value.kind, system))
}

/// A number inside a formula; a negative one in brackets, so that signs do not collide.
fn number(value: Value, system: System) -> String {
    let shown = precise(value, system).number;
    if shown.starts_with('−') { format!("({shown})") } else { shown }
}

fn short_number(factor: f64) -> String {
    show_precise(Value::number(factor), finrun_engine::quantity::Unit::One).number
}

/// The factor that the units shown leave over: the true result over the formula with shown numbers.
fn unit_factor(step: &Step, system: System) -> Option<f64> {
    let shown = |value: Value| display_unit(value.kind, system).from_si(value.si);
    let numbers: Vec<f64> = step.terms.iter().map(|term| shown(term.value)).collect();
    let factor = shown(step.result.value) / step.formula.evaluate(&numbers);
    ((factor - 1.0).abs() > 1e-5 && factor.is_finite()).then_some(factor)
}
