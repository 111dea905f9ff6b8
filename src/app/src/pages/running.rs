//! What the system does as it is set: zones together and alone, balancing, other circulators, and
//! common practice beside it all.

use super::piping::several;
use crate::markup::{Row, figures, scrolled};
use crate::parts::{each, in_system, live, when, yes};
use crate::state::{App, use_app};
use finrun_engine::arrangement::{self, CircuitDesign, PumpDesign, RunDesign};
use finrun_engine::building::ZoneId;
use finrun_engine::design::Design;
use finrun_engine::job::{Balancing, Draft, Job};
use finrun_engine::quantity::{Kind, Length, MassFlow, System, Value};
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn results() -> AnyView {
    let app = use_app();
    let balanced = move |test: fn(&[CircuitDesign]) -> bool| {
        move || {
            app.design(|solved| {
                solved.as_ref().is_some_and(|(_, design)| test(&design.piping.circuits))
            })
        }
    };
    let alone = when(balanced(|circuits| circuits.len() < 2), || {
        view! { <p>{text::one_circuit()}</p> }.into_any()
    });
    let several = when(balanced(|circuits| circuits.len() > 1), move || {
        let fitted = |all: &[CircuitDesign]| {
            all.iter().any(|circuit| circuit.valve.fitted == Balancing::Valves)
        };
        let fitted = yes(balanced(fitted));
        let how = live(move || match fitted.get() {
            true => text::balancing_how().to_string(),
            false => text::not_fitted().to_string(),
        });
        view! {
            <p>{how}</p>
            {table(text::balancing(), balancing_table)}
        }
        .into_any()
    });
    view! {
        <h2>{text::zones_running()}</h2>
        {runs()}
        <h2>{text::balancing()}</h2>
        {alone}
        {several}
        {others()}
        <h2>{text::practice_title()}</h2>
        <p class="note">{text::practice_note()}</p>
        {table(text::practice_title(), practice_table)}
    }
    .into_any()
}

/// What a table says of a system, in the units of now.
struct Seen<'a> {
    draft: &'a Draft,
    job: &'a Job,
    design: &'a Design,
    system: System,
}

impl Seen<'_> {
    fn flow(&self, flow: MassFlow) -> String {
        in_system(flow / self.job.circuit.fluid.density(self.job.circuit.supply), self.system)
    }

    fn head(&self, head: Length) -> String {
        in_system(Value::new(Kind::Head, head.si()), self.system)
    }
}

impl App {
    /// Something said of the system as it is solved; nothing while it is not.
    fn of_system(self, say: impl FnOnce(&Seen<'_>) -> String) -> String {
        let system = self.system();
        self.design(|solved| match solved {
            Some((job, design)) => self.typed(|draft| say(&Seen { draft, job, design, system })),
            None => String::new(),
        })
    }
}

/// What others would do takes as long as many designs, so that it is worked out only while it is open.
fn others() -> AnyView {
    let app = use_app();
    while_open(text::other_circulators(), move || app.of_system(alternatives_table))
}

/// A table that is worked out only while it is looked at.
pub(super) fn while_open(
    title: &'static str,
    table: impl Fn() -> String + Send + Sync + 'static,
) -> AnyView {
    let open = RwSignal::new(false);
    let table = scrolled(title, move || match open.get() {
        true => table(),
        false => String::new(),
    });
    view! {
        <details
            class="more"
            on:toggle=move |event| {
                let details: web_sys::Element = event_target(&event);
                open.set(details.has_attribute("open"));
            }
        >
            <summary>{title}</summary>
            {table}
        </details>
    }
    .into_any()
}

fn table(label: &'static str, make: fn(&Seen<'_>) -> String) -> AnyView {
    let app = use_app();
    scrolled(label, move || app.of_system(make))
}

/// All zones and each alone; and, where there are several, any of them together. Which is only
/// looked at, and not stored.
fn runs() -> AnyView {
    let app = use_app();
    let off = RwSignal::new(Vec::<u32>::new());
    let ticks = when(several, move || {
        let ids = move || app.typed(|draft| draft.zones.iter().map(|zone| zone.id.0).collect());
        let tick = move |id: u32| {
            let on = yes(move || off.with(|off| !off.contains(&id)));
            let toggle = move |_| {
                off.update(|off| match off.iter().position(|other| *other == id) {
                    Some(at) => {
                        off.remove(at);
                    }
                    None => off.push(id),
                });
            };
            let name = live(move || app.typed(|draft| text::zone_name(draft, ZoneId(id))));
            let tick_id = format!("try-{id}");
            let box_id = tick_id.clone();
            view! {
                <label class="tick" for=tick_id>
                    <input id=box_id type="checkbox" prop:checked=on on:change=toggle/>
                    {name}
                </label>
            }
            .into_any()
        };
        view! {
            <fieldset>
                <legend>{text::try_zones()}</legend>
                <div class="ticks">{each(ids, tick)}</div>
            </fieldset>
        }
        .into_any()
    });
    let table = scrolled(text::zones_running(), move || {
        app.of_system(|seen| off.with(|off| runs_table(seen, off)))
    });
    view! { {ticks} {table} }.into_any()
}

fn runs_table(seen: &Seen<'_>, off: &[u32]) -> String {
    let Seen { draft, job, design, system } = *seen;
    let piping = &design.piping;
    let row = |name: String, key: String, run: &RunDesign| Row {
        name,
        key,
        cells: match run.not_solved {
            Some(_) => vec![("flow", text::no_rest().to_string())],
            None => vec![
                ("flow", in_system(run.flow, system)),
                ("head", seen.head(run.head)),
                ("velocity", in_system(run.velocity, system)),
                ("back", in_system(run.back, system)),
                ("heat", in_system(run.heat, system)),
                ("watts", text::watts(run.electric)),
            ],
        },
    };
    let all = RunDesign {
        zones: Vec::new(),
        mass_flow: piping.mass_flow,
        flow: piping.flow,
        head: piping.head,
        velocity: piping.velocity,
        back: piping.back,
        heat: piping.heat,
        electric: piping.pumps.iter().map(|pump| pump.electric).sum(),
        passages: Vec::new(),
        not_solved: piping.not_solved,
    };
    let names = |zones: &[ZoneId]| {
        let names: Vec<String> = zones.iter().map(|zone| text::zone_name(draft, *zone)).collect();
        names.join(" + ")
    };
    let whole = match piping.alone.is_empty() {
        true => text::whole_system(),
        false => text::all_zones(),
    };
    let mut rows = vec![row(whole.to_string(), "run-all".to_string(), &all)];
    for run in &piping.alone {
        let id = run.zones.first().map_or(0, |zone| zone.0);
        rows.push(row(names(&run.zones), format!("run-{id}"), run));
    }
    let on: Vec<ZoneId> =
        job.zones.iter().map(|zone| zone.id).filter(|zone| !off.contains(&zone.0)).collect();
    // All together, and each alone, stand there already.
    if on.len() > 1 && on.len() < job.zones.len() {
        let tried = arrangement::run(job, design, &on);
        rows.push(row(names(&on), "run-tried".to_string(), &tried));
    }
    let heads = [
        text::calling(),
        text::flow(),
        text::head_short(),
        text::fastest(),
        text::return_word(),
        text::heat(),
        text::draws(),
    ];
    figures(&heads, &rows)
}

fn balancing_table(seen: &Seen<'_>) -> String {
    let Seen { draft, job, design, system } = *seen;
    let circuits = design.piping.circuits.iter().enumerate();
    let rows: Vec<Row> = circuits
        .map(|(at, circuit)| {
            let valve = &circuit.valve;
            let open = match valve.cv {
                None => true,
                Some(cv) => valve.fitted == Balancing::Valves && is_open(job, cv),
            };
            let cv = valve.cv.map(|cv| in_system(Value::number(cv), system));
            Row {
                name: text::circuit_name(draft, circuit.zone, &circuit.rooms),
                key: format!("circuit-{at}"),
                cells: vec![
                    ("meant", seen.flow(circuit.target)),
                    ("now", seen.flow(circuit.mass_flow)),
                    ("valve", in_system(valve.pressure, system)),
                    ("cv", cv.unwrap_or_default()),
                    ("order", text::valve_order(valve.order, open)),
                    ("back", in_system(circuit.back, system)),
                ],
            }
        })
        .collect();
    let heads = [
        text::circuit_word(),
        text::meant(),
        text::now(),
        text::valve_takes(),
        text::flow_coefficient(),
        text::valve_order_word(),
        text::return_reads(),
    ];
    figures(&heads, &rows)
}

/// Whether a valve of this flow coefficient is fully open, but for rounding.
fn is_open(job: &Job, cv: f64) -> bool {
    cv > job.circuit.parts.balancing.gallons_per_minute() * (1.0 - 1e-6)
}

fn alternatives_table(seen: &Seen<'_>) -> String {
    let Seen { draft, job, design, system } = *seen;
    let row = |name: String, key: String, does: Option<&PumpDesign>| Row {
        name,
        key,
        cells: match does {
            Some(does) => vec![
                ("flow", in_system(does.flow, system)),
                ("head", seen.head(does.head)),
                ("watts", text::watts(does.electric)),
            ],
            None => vec![("flow", text::no_rest().to_string())],
        },
    };
    let mut rows = Vec::new();
    for (index, pump) in design.piping.pumps.iter().enumerate() {
        let whose = |name: String| match pump.zone {
            Some(zone) => format!("{}: {name}", text::zone_name(draft, zone)),
            None => name,
        };
        let now = whose(text::as_set_now().to_string());
        rows.push(row(now, format!("pump-{index}"), Some(pump)));
        for (nth, other) in arrangement::alternatives(job, design, index).iter().enumerate() {
            let name = whose(text::other_pump(other.pump, system));
            rows.push(row(name, format!("pump-{index}-{nth}"), other.does.as_ref()));
        }
    }
    figures(&[text::circulator(), text::flow(), text::head_short(), text::draws()], &rows)
}

fn practice_table(seen: &Seen<'_>) -> String {
    let Seen { draft, job, design, system } = *seen;
    let rules = arrangement::practice(job, design);
    let rows: Vec<Row> = rules
        .iter()
        .enumerate()
        .map(|(at, practice)| Row {
            name: text::rule(draft, practice.rule),
            key: format!("rule-{at}"),
            cells: vec![
                ("usual", in_system(practice.usual, system)),
                ("here", in_system(practice.here, system)),
            ],
        })
        .collect();
    figures(&[text::rule_word(), text::practice_word(), text::this_system()], &rows)
}
