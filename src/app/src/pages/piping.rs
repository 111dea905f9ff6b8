//! Zones, and how the rooms of each are piped.

use super::hung::{Drag, rooms_of_loop};
use super::rooms::section_links;
use super::section;
use super::suggested::{Watched, moved_line, suggestion, watch_moves};
use crate::markup::{Markup, live_markup};
use crate::page::{JobKey, Section};
use crate::parts::{
    button, choice_field, each, in_system, kept, live, live_button, number_field, text_box, when,
    words,
};
use crate::state::{App, EditKey, use_app};
use finrun_engine::arrangement::{CircuitDesign, zone_head};
use finrun_engine::building::ZoneId;
use finrun_engine::check::practice_length;
use finrun_engine::design::Design;
use finrun_engine::job::{
    Arrangement, Choice, CircuitField, Draft, Field, Hung, Job, ZoneDraft, ZoneField, Zoning,
};
use finrun_engine::quantity::{Kind, MassFlow, System, Value};
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn piping(job: &JobKey) -> AnyView {
    let app = use_app();
    let drag = Drag::new();
    let moves = watch_moves();
    let ids = move || app.typed(|draft| draft.zones.iter().map(|zone| zone.id.0).collect());
    let cards = {
        let job = job.clone();
        each(ids, move |id| card(&job, ZoneId(id), drag, moves))
    };
    let add = move || {
        app.edit(EditKey::Single, |draft| {
            draft.add_zone();
        });
    };
    let inside = view! {
        <div class="pair">
            {choice_field(Choice::Tube)}
            {when(several, || choice_field(Choice::Zoning))}
        </div>
        {cards}
        <div class="acts">{button("", text::add_zone(), add)}</div>
        {section_links(job, &[Section::Compare])}
        <details class="more">
            <summary>{text::back_pipe()}</summary>
            <p class="note">{text::return_default()}</p>
            <div class="pair">
                {number_field(Field::Circuit(CircuitField::ReturnPipe))}
                {number_field(Field::Circuit(CircuitField::ReturnElbows))}
            </div>
        </details>
    }
    .into_any();
    section(job, Section::Piping, inside)
}

/// Whether there are several zones.
pub(super) fn several() -> bool {
    use_app().typed(|draft| draft.zones.len() > 1)
}

/// What is asked of a zone depends on its arrangement, and on whether it is alone.
pub(super) fn asked(zone: ZoneId, test: fn(&Draft, &ZoneDraft) -> bool) -> impl Fn() -> bool {
    let app = use_app();
    move || app.typed(|draft| draft.zone(zone).is_some_and(|of| test(draft, of)))
}

fn card(job: &JobKey, zone: ZoneId, drag: Drag, moves: Memo<Watched>) -> AnyView {
    let app = use_app();
    let title = kept(move || app.typed(|draft| text::zone_name(draft, zone)));
    let name = words(move || {
        app.typed(|draft| draft.zone(zone).map(|of| of.name.clone()).unwrap_or_default())
    });
    let rename = move |name: String| {
        app.edit(EditKey::Name(zone.0), |draft| {
            if let Some(zone) = draft.zone_mut(zone) {
                zone.name = name;
            }
        });
    };
    let note = live(move || {
        app.typed(|draft| {
            let arrangement = draft.zone(zone).map(|of| of.arrangement).unwrap_or_default();
            text::arrangement_note(arrangement).to_string()
        })
    });
    let name_box = when(several, move || {
        text_box(format!("zone-{}.name", zone.0), text::zone_name_label(), name, rename)
    });
    let has_main = when(asked(zone, |_, of| of.arrangement.has_main()), move || {
        choice_field(Choice::Main(zone))
    });
    // One loop alone has nothing to share its flow with.
    let shares = |draft: &Draft, of: &ZoneDraft| {
        draft.zones.len() > 1
            || !matches!(of.arrangement, Arrangement::Series | Arrangement::DiverterTees)
    };
    let balancing = when(asked(zone, shares), move || choice_field(Choice::Balancing(zone)));
    let back = when(
        asked(zone, |_, of| matches!(of.arrangement, Arrangement::Series | Arrangement::Split)),
        move || choice_field(Choice::BackPath(zone)),
    );
    let pump = when(
        asked(zone, |draft, _| draft.zones.len() > 1 && draft.zoning == Zoning::Circulators),
        move || choice_field(Choice::ZonePump(zone)),
    );
    let loops = {
        let job = job.clone();
        let branches = move || app.typed(|draft| draft.branches(zone));
        each(branches, move |branch| one_loop(&job, Hung { zone, branch }, drag))
    };
    let remove = when(several, move || {
        let label = live(move || text::act_on(text::remove(), &title.get()));
        let remove = move || app.edit(EditKey::Single, |draft| draft.remove_zone(zone));
        view! { <div class="acts">{live_button("", label, remove)}</div> }.into_any()
    });
    let field = |field| number_field(Field::Zone(zone, field));
    view! {
        <section class="zone">
            <h2>{live(move || title.get())}</h2>
            {live_markup("parts", move || zone_facts(app, zone))}
            {name_box}
            {choice_field(Choice::Arrangement(zone))}
            <p class="note">{note}</p>
            <div class="pair">
                {has_main}
                {choice_field(Choice::Pipe(zone))}
                {balancing}
                {back}
                {pump}
            </div>
            <details class="more">
                <summary>{text::trunk()}</summary>
                <div class="pair">
                    {field(ZoneField::Trunk)}
                    {field(ZoneField::TrunkElbows)}
                    {field(ZoneField::Wire)}
                </div>
            </details>
            <h3>{text::zone_rooms()}</h3>
            <p class="note">{text::zone_rooms_note()}</p>
            {moved_line(zone, moves)}
            {loops}
            {suggestion(zone)}
            {remove}
        </section>
    }
    .into_any()
}

/// A loop of a split zone by its number; of any other, just its rooms.
fn one_loop(job: &JobKey, hung: Hung, drag: Drag) -> AnyView {
    let app = use_app();
    let split = asked(hung.zone, |_, of| of.arrangement == Arrangement::Split);
    let head = when(split, move || {
        view! {
            <h4>{text::loop_name(hung.branch)}</h4>
            {live_markup("parts", move || loop_facts(app, hung))}
        }
        .into_any()
    });
    view! {
        {head}
        {rooms_of_loop(job, hung, drag)}
    }
    .into_any()
}

/// A figure with its name before it; without one, the figure says what it is.
fn fact(markup: &mut Markup, key: String, name: &str, figure: &str) {
    markup.open("span", &[]);
    markup.text(name);
    markup.leaf("b", &[("data-figure", &key)], figure);
    markup.close("span");
}

/// Flow at the supply temperature, as the page shows every flow.
fn flow(job: &Job, flow: MassFlow, system: System) -> String {
    in_system(flow / job.circuit.fluid.density(job.circuit.supply), system)
}

fn zone_facts(app: App, zone: ZoneId) -> String {
    let system = app.system();
    let mut markup = Markup::new();
    app.design(|solved| {
        let Some((job, design)) = solved else { return };
        let (Some(of), Some(does)) = (
            job.zones.iter().find(|of| of.id == zone),
            design.piping.zones.iter().find(|of| of.zone == zone),
        ) else {
            return;
        };
        let key = |end: &str| format!("zone-{}.{end}", zone.0);
        let mut add = |end: &str, name: &str, figure: String| {
            fact(&mut markup, key(end), name, &figure);
        };
        let drop = job.circuit.supply - does.back;
        let head = Value::new(Kind::Head, zone_head(job, design, zone).si());
        add("flow", text::flow(), flow(job, does.mass_flow, system));
        add("drop", text::drop(), in_system(drop, system));
        add("head", text::head_short(), in_system(head, system));
        add("velocity", text::fastest(), in_system(does.velocity, system));
        // Each loop of a split zone has a limit of its own.
        let most =
            (of.arrangement == Arrangement::Series).then(|| practice_length(job.circuit.tube));
        add("element", "", text::element_of_usual(does.element, most, system));
    });
    markup.done()
}

fn loop_facts(app: App, hung: Hung) -> String {
    let system = app.system();
    let mut markup = Markup::new();
    app.design(|solved| {
        let Some((job, design)) = solved else { return };
        let Some(circuit) = app.typed(|draft| circuit_of(draft, design, hung)) else { return };
        let key = |end: &str| format!("zone-{}-{}.{end}", hung.zone.0, hung.branch);
        fact(&mut markup, key("flow"), text::flow(), &flow(job, circuit.mass_flow, system));
        let drop = in_system(job.circuit.supply - circuit.back, system);
        fact(&mut markup, key("drop"), text::drop(), &drop);
        let most = Some(practice_length(job.circuit.tube));
        let element = design.element_in(&circuit.rooms);
        fact(&mut markup, key("element"), "", &text::element_of_usual(element, most, system));
    });
    markup.done()
}

fn circuit_of<'a>(draft: &Draft, design: &'a Design, hung: Hung) -> Option<&'a CircuitDesign> {
    design.piping.circuits.iter().find(|circuit| {
        let first = circuit.rooms.first();
        draft.rooms.iter().any(|room| Some(&room.id) == first && draft.hung(room) == hung)
    })
}
