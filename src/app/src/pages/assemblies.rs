//! Assemblies of the user's own, layer by layer; used wherever a surface is built.

use super::section;
use crate::page::{JobKey, Section};
use crate::parts::{
    button, choice_field, each, kept, live, live_button, number_field, text_box, words, working_of,
};
use crate::state::{App, EditKey, use_app};
use finrun_engine::building::{AssemblyId, Position};
use finrun_engine::job::{
    AssemblyField, Choice, Field, LayerField, layer_fields, own_build, own_transmittance,
};
use finrun_engine::trace::built_u;
use finrun_text as text;
use leptos::prelude::*;

pub(super) fn assemblies(job: &JobKey) -> AnyView {
    let app = use_app();
    let ids = move || app.typed(|draft| draft.assemblies.iter().map(|a| a.id.0).collect());
    let add = move || {
        app.edit(EditKey::Single, |draft| {
            draft.add_assembly(Position::Wall, "");
        });
    };
    let inside = view! {
        <p class="note">{text::assemblies_note()}</p>
        {each(ids, move |id| card(AssemblyId(id)))}
        <div class="acts">{button("", text::add_assembly(), add)}</div>
    }
    .into_any();
    section(job, Section::Assemblies, inside)
}

fn card(id: AssemblyId) -> AnyView {
    let app = use_app();
    let title = kept(move || app.typed(|draft| text::assembly_name(draft, id)));
    let name = words(move || {
        app.typed(|draft| draft.assembly(id).map(|a| a.name.clone()).unwrap_or_default())
    });
    let rename = move |name: String| {
        app.edit(EditKey::Name(id.0), |draft| {
            if let Some(assembly) = draft.assembly_mut(id) {
                assembly.name = name;
            }
        });
    };
    let rows = move || {
        let count = app.typed(|draft| draft.assembly(id).map_or(0, |a| a.layers.len()));
        (0..count as u32).collect()
    };
    let add = move || app.edit(EditKey::Single, |draft| draft.add_layer(id));
    let remove = move || app.edit(EditKey::Single, |draft| draft.remove_assembly(id));
    let steps = move || {
        let build = app.typed(|draft| own_build(draft, id));
        build.map(|build| built_u(&build)).unwrap_or_default()
    };
    let remove_label = live(move || text::act_on(text::remove(), &title.get()));
    let newest = app.typed_now(|draft| draft.next_id == id.0 + 1);
    view! {
        <details class="surface" open=newest>
            <summary>
                <b>{live(move || title.get())}</b>
                " "
                <small data-figure=format!("assembly-{}.u", id.0)>
                    {live(move || app.own_u(id))}
                </small>
            </summary>
            {text_box(format!("assembly-{}.name", id.0), text::assembly_name_label(), name, rename)}
            <div class="pair">
                {choice_field(Choice::Position(id))}
                {choice_field(Choice::Framing(id))}
            </div>
            <p class="note">{text::layers_note()}</p>
            {each(rows, move |row| layer(id, row as usize))}
            <div class="acts">{button("", text::add_layer(), add)}</div>
            {working_of(steps, text::u_from_layers().into_any())}
            <details class="more">
                <summary>{text::or_typed()}</summary>
                {number_field(Field::Assembly(id, AssemblyField::U))}
                {number_field(Field::Assembly(id, AssemblyField::R))}
            </details>
            <div class="acts">{live_button("", remove_label, remove)}</div>
        </details>
    }
    .into_any()
}

fn layer(id: AssemblyId, row: usize) -> AnyView {
    let app = use_app();
    let asked = move || {
        app.typed(|draft| {
            let layer = draft.assembly(id).and_then(|a| a.layers.get(row));
            let fields = layer.map(layer_fields).unwrap_or_default();
            fields.into_iter().map(|field| field as u32).collect()
        })
    };
    let field = move |at: u32| {
        let field = if at == LayerField::R as u32 { LayerField::R } else { LayerField::Thickness };
        number_field(Field::Layer(id, row, field))
    };
    let remove = move || app.edit(EditKey::Single, |draft| draft.remove_layer(id, row));
    let name = text::layer_name(row);
    view! {
        <fieldset class="opening">
            <legend>{name.clone()}</legend>
            <div class="pair">
                {choice_field(Choice::LayerMaterial(id, row))}
                {choice_field(Choice::LayerPlace(id, row))}
            </div>
            {each(asked, field)}
            {button("", &text::act_on(text::remove(), &name), remove)}
        </fieldset>
    }
    .into_any()
}

impl App {
    fn own_u(self, id: AssemblyId) -> String {
        let system = self.system();
        self.typed(|draft| match own_transmittance(draft, id) {
            Some(u) => text::own_u(u, system),
            None => text::no_u_yet().to_string(),
        })
    }
}
