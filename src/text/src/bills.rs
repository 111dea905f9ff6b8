//! What fuel bills say of a house.

use crate::language::{either, say};
use crate::value;
use finrun_engine::bills::{BillsError, Compared, Fit, Verdict};
use finrun_engine::quantity::{System, Value};

/// The house of the bills beside the calculated one, and what may lie between.
pub fn against_bills(fit: &Fit, compared: &Compared, system: System) -> String {
    let verdict = either(match compared.verdict {
        Verdict::Agrees => (
            "The two agree as well as a careful calculation and a guessed efficiency can.",
            "Las dos coinciden tan bien como pueden un cálculo cuidadoso y una eficiencia supuesta.",
        ),
        Verdict::BillsLower => (
            "The house burns less than was calculated: it may be tighter, or its walls and ceiling \
             better insulated than entered; or rooms were kept cooler, or closed.",
            "La casa gasta menos que lo calculado: puede ser más hermética, o sus paredes y techo \
             mejor aislados que lo anotado; o hubo habitaciones más frías, o cerradas.",
        ),
        Verdict::BillsHigher => (
            "The house burns more than was calculated: it may be leakier, or insulated less than \
             entered; or the heating gives less out of its fuel, or windows stood open.",
            "La casa gasta más que lo calculado: puede tener más fugas, o menos aislamiento que lo \
             anotado; o la calefacción saca menos de su combustible, o hubo ventanas abiertas.",
        ),
    });
    let ratio = (compared.ratio - 1.0).abs();
    let apart = value(Value::share(ratio), system);
    let which = either(if compared.ratio < 1.0 { ("less", "menos") } else { ("more", "más") });
    let balance = match fit.fitted.balance() {
        true => say!(
            "heated from {} outdoors on down",
            "se calienta desde {} exteriores hacia abajo";
            value(fit.balance, system)
        ),
        false => say!(
            "taken as heated from {} outdoors on down",
            "se supone que se calienta desde {} exteriores hacia abajo";
            value(fit.balance, system)
        ),
    };
    let other = match fit.fitted.other_use() {
        true => say!(
            ", {} for other things",
            ", {} para otras cosas";
            value(fit.other_use, system)
        ),
        false => String::new(),
    };
    say!(
        "By its bills the house loses {}, {apart} {which} than the calculated {}: \
         {balance}{other}. {verdict}",
        "Según sus facturas la casa pierde {}, {apart} {which} que los {} calculados: \
         {balance}{other}. {verdict}";
        value(compared.from_bills, system), value(compared.calculated, system)
    )
}

/// Why the bills as a whole tell nothing.
pub fn bills_tell_nothing(error: BillsError) -> &'static str {
    either(match error {
        BillsError::NoHeating => (
            "These months are too mild to tell the house's loss. Add a bill of the cold season.",
            "Estos meses son demasiado templados para mostrar la pérdida de la casa. Agregue una \
             factura de la temporada fría.",
        ),
        BillsError::NotWithTheCold => (
            "What was burnt does not grow with the cold. Look for bills in the wrong order, or of \
             another fuel.",
            "Lo que se gastó no crece con el frío. Busque facturas en mal orden, o de otro \
             combustible.",
        ),
        _ => (
            "The bills cannot be used as they stand. Correct what is marked.",
            "Las facturas no se pueden usar como están. Corrija lo marcado.",
        ),
    })
}
