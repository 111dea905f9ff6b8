//! The user's own assemblies: a U from a typed value, or from layers.

use super::draft::{Draft, LayerDraft, LayerMaterial};
use super::field::{AssemblyField, Field, LayerField};
use super::resolve::resolve;
use crate::building::assembly::{Build, BuildLayer, Fill};
use crate::building::material::Heat;
use crate::building::{AssemblyId, Place};
use crate::quantity::{Length, Resistance, Transmittance};

/// The U of an assembly of the user's own: a typed U wins, then a typed R, then the layers.
///
/// `None` when it is gone, has no layers, or has a layer without a value.
pub fn own_transmittance(draft: &Draft, id: AssemblyId) -> Option<Transmittance> {
    let assembly = draft.assembly(id)?;
    let typed = |field| assembly.entries.get(field).is_some();
    let si = |field| resolve(draft, Field::Assembly(id, field)).si();
    if typed(AssemblyField::U) {
        return si(AssemblyField::U).map(Transmittance::from_si);
    }
    if typed(AssemblyField::R) {
        return si(AssemblyField::R).map(|si| Resistance::from_si(si).transmittance());
    }
    own_build(draft, id).map(|build| build.transmittance())
}

/// The layers of an assembly of the user's own; `None` as above.
pub fn own_build(draft: &Draft, id: AssemblyId) -> Option<Build> {
    let assembly = draft.assembly(id)?;
    if assembly.layers.is_empty() {
        return None;
    }
    let layers = assembly
        .layers
        .iter()
        .enumerate()
        .map(|(row, layer)| build_layer(draft, assembly.id, row, layer))
        .collect::<Option<Vec<_>>>()?;
    let framing = assembly.framing.share();
    Some(Build { position: assembly.position, layers, framing })
}

fn build_layer(
    draft: &Draft,
    id: AssemblyId,
    row: usize,
    layer: &LayerDraft,
) -> Option<BuildLayer> {
    let asked = layer_fields(layer);
    let si = |field| match asked.contains(&field) {
        true => resolve(draft, Field::Layer(id, row, field)).si(),
        false => Some(0.0),
    };
    let resistance = Resistance::from_si(si(LayerField::R)?);
    Some(BuildLayer {
        fill: match layer.material {
            LayerMaterial::Listed(material) => Fill::Material(material),
            LayerMaterial::TypedR => Fill::Typed(resistance),
        },
        thickness: Length::from_si(si(LayerField::Thickness)?),
        place: layer.place,
    })
}

/// The fields that a layer needs: its R where that is typed, and its thickness where that counts.
pub fn layer_fields(layer: &LayerDraft) -> Vec<LayerField> {
    let mut fields = Vec::new();
    let thick = match layer.material {
        LayerMaterial::TypedR => {
            fields.push(LayerField::R);
            false
        }
        LayerMaterial::Listed(material) => {
            matches!(
                material.heat(crate::building::assembly::HeatFlow::Horizontal),
                Heat::Conductivity(_)
            )
        }
    };
    // Between framing it is also the depth of the wood.
    if thick || layer.place == Place::BetweenFraming {
        fields.push(LayerField::Thickness);
    }
    fields
}
