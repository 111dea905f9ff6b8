//! Where a thing stands and in which size: what a count alone does not tell.

use super::{counted, part, row, sum};
use crate::support::{set, solve};
use finrun_engine::building::{Level, RoomId};
use finrun_engine::job::{
    Antifreeze, Arrangement, CircuitField, Draft, Field, PlantField, PriceField, RoomField,
};
use finrun_engine::pipe::Tube;
use finrun_engine::takeoff::item::{Class, Form, Item, Reason, Whose};

fn vents(draft: &Draft) -> Vec<Whose> {
    let items = counted(draft);
    let vents = items.iter().filter(|item| item.class == Class::Part(PriceField::AirVent));
    vents.map(|item| item.whose).collect()
}

/// Air rises: the vent of a loop is upstairs, wherever on the loop that is; but only at an element, as it
/// sits on its end.
#[test]
fn a_loop_is_vented_at_its_highest_element() {
    for high in 0..3 {
        let (mut draft, rooms) = row();
        let all: Vec<RoomId> = rooms.iter().map(|(room, _)| *room).collect();
        draft.room_mut(all[high]).expect("it").level = Level::Second;
        assert_eq!(vents(&draft), [Whose::Room(all[high])]);
        // Without an element up there, the last of those below that have one.
        set(&mut draft, Field::Room(all[high], RoomField::OtherHeat), "99999");
        let last = if high == 2 { all[1] } else { all[2] };
        assert_eq!(vents(&draft), [Whose::Room(last)]);
    }
}

/// A reducer is sold by its larger end. Mains of 1 in, branches of 1/2 in, elements and the boiler room of
/// 3/4 in, three rooms: at each room two from the main to the branch and two from the element to the branch;
/// two where the main leaves the boiler room and comes back to it.
#[test]
fn a_reducer_goes_by_its_larger_end() {
    let (mut draft, _) = row();
    let zone = draft.zones[0].id;
    draft.arrange(zone, Arrangement::DirectReturn);
    let (large, middle, small) = (Tube::CopperMOne, Tube::CopperMThreeQuarter, Tube::CopperMHalf);
    assert_eq!(draft.tube, middle);
    (draft.zones[0].main, draft.zones[0].pipe) = (large, small);
    let items = counted(&draft);
    let reducers = |tube: Tube, to: Tube| {
        sum(&items, |item| {
            item.class == Class::Part(PriceField::Reducer)
                && item.tube == Some(tube)
                && item.form == Form::To(to)
        })
    };
    assert_eq!((reducers(large, small), reducers(middle, small)), (6.0, 6.0));
    let (_, design) = solve(&draft);
    let boiler = design.piping.passage(finrun_engine::network::Place::BoilerRoom).expect("it").tube;
    let at_boiler = if boiler == large { 0.0 } else { 2.0 };
    assert_eq!(reducers(large, boiler), at_boiler);
    assert_eq!(part(&items, PriceField::Reducer), 12.0 + at_boiler);
}

/// By hand: a return of 160 °F that is to be 165 takes (165 - 160)/(180 - 160), a quarter, of supply water,
/// by a bypass with a valve between two tees; to be 175, three quarters, by a mixing valve with one tee.
#[test]
fn a_cold_return_is_warmed_by_the_parts_for_it() {
    let parts = |least: &str| {
        let (mut draft, _) = row();
        set(&mut draft, Field::Circuit(CircuitField::Supply), "180");
        set(&mut draft, Field::Circuit(CircuitField::Drop), "20");
        set(&mut draft, Field::Plant(PlantField::LeastReturn), least);
        let items = counted(&draft);
        let of = |field| {
            let is_one =
                |item: &Item| item.class == Class::Part(field) && item.reason == Reason::ColdReturn;
            sum(&items, is_one)
        };
        [PriceField::BalancingValve, PriceField::Tee, PriceField::MixingValve].map(of)
    };
    assert_eq!(parts("130"), [0.0, 0.0, 0.0]);
    assert_eq!(parts("165"), [1.0, 2.0, 0.0]);
    assert_eq!(parts("175"), [0.0, 1.0, 1.0]);
}

/// Glycol is sold by the gallon can: three parts of it to seven of water by mass are nearly three tenths of
/// what the loop holds, rounded up to whole cans. (Pure glycol weighs 1.04 kg/L, so that it is a little less
/// by volume: from memory.)
#[test]
fn glycol_is_bought_by_the_can() {
    let (mut draft, _) = row();
    draft.plant.antifreeze = Antifreeze::PropyleneGlycol;
    set(&mut draft, Field::Plant(PlantField::GlycolShare), "30");
    set(&mut draft, Field::Plant(PlantField::BoilerVolume), "20");
    set(&mut draft, Field::Plant(PlantField::OtherVolume), "30");
    let (_, design) = solve(&draft);
    let volume = design.plant.as_ref().and_then(|plant| plant.volume).expect("a volume").total;
    let gallons = volume.si() / 0.003_785_411_784;
    let cans = part(&counted(&draft), PriceField::Glycol);
    let (least, most) = ((0.28 * gallons).ceil(), (0.31 * gallons).ceil());
    assert!((least..=most).contains(&cans), "{cans} cans for {gallons} gallons");
}
