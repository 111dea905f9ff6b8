//! How the house is run, read beside the job: what is wrong with it stands in no design's way.

use super::Reader;
use crate::job::control::{Control, RoomMass, Setback};
use crate::job::draft::RoomDraft;
use crate::job::field::{BillsField, ControlField, Field, RoomField};
use crate::quantity::{Money, TemperatureDifference};

/// For these rooms, which are the job's.
pub(super) fn read_control(reader: &mut Reader<'_>, rooms: &[&RoomDraft]) -> Option<Control> {
    let draft = reader.draft;
    // Also those of rooms that are left out, so that every error is listed.
    let dampers = draft.rooms.iter().map(|room| {
        let open = reader.si(Field::Room(room.id, RoomField::Damper));
        rooms.iter().any(|of| of.id == room.id).then_some(open)
    });
    let dampers: Vec<Option<f64>> = dampers.collect::<Vec<_>>().into_iter().flatten().collect();
    let masses = rooms.iter().map(|room| match room.mass {
        RoomMass::AsHouse => draft.control.mass,
        RoomMass::Own(mass) => mass,
    });
    let mut si = |field| reader.si(Field::Control(field));
    let by = si(ControlField::Setback);
    let hours = si(ControlField::SetbackHours);
    let recover = si(ControlField::Recover);
    let efficiency = reader.si(Field::Bills(BillsField::Efficiency));
    let errors = reader.errors.len();
    let price = reader.si(Field::Bills(BillsField::Price)).map(Money::from_si);
    let fuel_price = (reader.errors.len() == errors).then_some(price);
    const HOUR_S: f64 = 3600.0;
    Some(Control {
        holds: draft.zones.iter().map(|zone| (zone.id, zone.holds)).collect(),
        supply: draft.control.supply,
        dampers: dampers.into_iter().collect::<Option<Vec<f64>>>()?,
        masses: masses.collect(),
        setback: Setback {
            by: TemperatureDifference::from_si(by?),
            hours: hours? / HOUR_S,
            recover_h: recover? / HOUR_S,
        },
        fuel: draft.bills.fuel,
        efficiency: efficiency?,
        fuel_price: fuel_price?,
    })
}
