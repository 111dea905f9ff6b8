//! A figure that opens to its working: formula, the same with numbers, result, source.

use crate::markup::{Markup, live_markup};
use crate::state::use_app;
use finrun_engine::quantity::{Shown, System, Value, display_unit, show_precise};
use finrun_engine::trace::{self, Step, Topic};
use finrun_text as text;
use finrun_text::Piece;
use leptos::prelude::*;

/// A line that opens; `summary` holds the figure itself.
pub(crate) fn working(topic: Topic, summary: AnyView) -> AnyView {
    let app = use_app();
    let steps = move || {
        app.design(|solved| {
            let (job, design) = solved.as_ref()?;
            Some(trace::working(job, design, topic))
        })
        .unwrap_or_default()
    };
    working_of(steps, summary)
}

/// The same for a number that follows from the draft alone.
pub(crate) fn working_of(
    steps: impl Fn() -> Vec<Step> + Send + Sync + 'static,
    summary: AnyView,
) -> AnyView {
    let app = use_app();
    let open = RwSignal::new(false);
    // Worked out only while it is open: a house has hundreds of these.
    let steps = live_markup("steps", move || {
        if !open.get() {
            return String::new();
        }
        let system = app.system();
        let mut markup = Markup::new();
        for step in steps() {
            show_step(&mut markup, &step, system);
        }
        markup.done()
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

/// A step written out.
pub(crate) fn show_step(markup: &mut Markup, step: &Step, system: System) {
    let system = if step.formula.needs_si() { System::Si } else { system };
    let formula = text::formula_text(step);
    let by_number = |symbol: &str| -> Vec<Piece> {
        let term = step.terms.iter().find(|term| term.symbol == symbol);
        vec![Piece::Plain(term.map_or(symbol.to_string(), |term| number(term.value, system)))]
    };
    // The terms of a sum may share a symbol, so its numbers are taken in turn.
    let numbers = match step.formula.is_spread() {
        true => {
            let numbers: Vec<String> =
                step.terms.iter().map(|term| number(term.value, system)).collect();
            let plain = |word: &str| vec![Piece::Plain(word.to_string())];
            text::set_formula(&text::spread_text(step.formula, &numbers), &plain)
        }
        false => text::set_formula(&formula, &by_number),
    };
    markup.open("div", &[("class", "step")]);
    markup.open("p", &[("class", "formula")]);
    set(markup, text::set_symbol(step.result.symbol));
    markup.text(" = ");
    set(markup, text::set_formula(&formula, &text::set_symbol));
    markup.close("p");
    markup.open("p", &[("class", "numbers")]);
    markup.text("= ");
    set(markup, numbers);
    if let Some(factor) = unit_factor(step, system) {
        markup.text(&format!(" × {} {}", short_number(factor), text::unit_factor()));
    }
    markup.close("p");
    let result = format!("= {}", text::unbroken(&precise(step.result.value, system)));
    markup.leaf("p", &[("class", "result")], &result);
    markup.open("ul", &[("class", "legend")]);
    for term in &step.terms {
        markup.open("li", &[]);
        set(markup, text::set_symbol(term.symbol));
        let value = text::unbroken(&precise(term.value, system));
        markup.text(&format!(" = {value}, {}", text::symbol_meaning(term.symbol)));
        markup.close("li");
    }
    markup.close("ul");
    markup.leaf("p", &[("class", "source")], text::source(step.formula.source()));
    markup.close("div");
}

fn set(markup: &mut Markup, pieces: Vec<Piece>) {
    for piece in pieces {
        match piece {
            Piece::Plain(text) => markup.text(&text),
            Piece::Lowered(text) => markup.leaf("sub", &[], &text),
            Piece::Raised(inner) => {
                markup.open("sup", &[]);
                set(markup, inner);
                markup.close("sup");
            }
        }
    }
}

fn precise(value: Value, system: System) -> Shown {
    show_precise(value, display_unit(value.kind, system))
}

/// A number inside a formula; a negative one in brackets, so that signs do not collide.
fn number(value: Value, system: System) -> String {
    let shown = text::in_units(&precise(value, system).number);
    if shown.starts_with('−') { format!("({shown})") } else { shown }
}

fn short_number(factor: f64) -> String {
    text::in_units(&show_precise(Value::number(factor), finrun_engine::quantity::Unit::One).number)
}

/// The factor that the units shown leave over: the true result over the formula with shown numbers.
fn unit_factor(step: &Step, system: System) -> Option<f64> {
    let shown = |value: Value| display_unit(value.kind, system).from_si(value.si);
    let numbers: Vec<f64> = step.terms.iter().map(|term| shown(term.value)).collect();
    let factor = shown(step.result.value) / step.formula.evaluate(&numbers);
    ((factor - 1.0).abs() > 1e-5 && factor.is_finite()).then_some(factor)
}
