//! Lists to choose from: what they offer, and that a choice is what was chosen.

use crate::support::{
    V1_FIXTURE, V2_FIXTURE, V3_FIXTURE, V4_FIXTURE, V5_FIXTURE, V6_FIXTURE, choices, open,
};
use finrun_engine::building::{Assembly, OpeningId, RoomId, RoomUse, SurfaceId, SurfaceKind, Used};
use finrun_engine::job::{Behind, Choice, Draft, Pick, UValue};
use std::collections::BTreeSet;

/// Each list has what is chosen on it, takes each of its own, and nothing of another list.
#[test]
fn what_is_picked_is_what_is_chosen() {
    let mut count = 0;
    for text in [V1_FIXTURE, V2_FIXTURE, V3_FIXTURE, V4_FIXTURE, V5_FIXTURE, V6_FIXTURE] {
        let draft = open(text);
        let all = choices(&draft);
        let foreign: Vec<Pick> =
            all.iter().filter_map(|&choice| draft.picks(choice).first().copied()).collect();
        for &choice in &all {
            let picks = draft.picks(choice);
            let now = draft.picked(choice).expect("a choice");
            assert!(picks.contains(&now), "{choice:?} has no {now:?}");
            for &pick in &picks {
                let mut chosen = draft.clone();
                chosen.pick(choice, pick);
                assert_eq!(chosen.picked(choice), Some(pick), "{choice:?}");
                assert_eq!(pick == now, chosen == draft, "{choice:?} {pick:?}");
                count += 1;
            }
            let kind = std::mem::discriminant(&now);
            for &pick in foreign.iter().filter(|pick| std::mem::discriminant(*pick) != kind) {
                let mut chosen = draft.clone();
                chosen.pick(choice, pick);
                assert_eq!(chosen, draft, "{choice:?} took {pick:?}");
            }
        }
        let ids: BTreeSet<String> = all.iter().map(ToString::to_string).collect();
        assert_eq!(ids.len(), all.len(), "two lists with one id");
    }
    assert!(count > 1000, "{count}");
}

#[test]
fn things_that_are_gone_offer_nothing() {
    let whole = open(V3_FIXTURE);
    let mut empty = Draft::new("", whole.units);
    let before = empty.clone();
    // All but those of the house and of its first zone, which every job has.
    let always = choices(&empty);
    for choice in choices(&whole).into_iter().filter(|choice| !always.contains(choice)) {
        let pick = whole.picked(choice).expect("a choice");
        assert_eq!(empty.picked(choice), None, "{choice:?}");
        empty.pick(choice, pick);
    }
    assert_eq!(empty, before);
    let gone = (RoomId(900), SurfaceId(901), OpeningId(902));
    assert_eq!(whole.picks(Choice::OpeningBuild(gone.0, gone.1, gone.2)), []);
    assert_eq!(whole.picks(Choice::SurfaceBuild(gone.0, gone.1)), []);
}

/// Behind a surface lies anything but its own room; only over a ceiling is there no ground.
#[test]
fn what_may_lie_behind_a_surface() {
    let draft = open(V2_FIXTURE);
    for room in draft.all_rooms() {
        for surface in &room.surfaces {
            let picks = draft.picks(Choice::Behind(room.id, surface.id));
            let offers = |behind| picks.contains(&Pick::Behind(behind));
            for other in draft.all_rooms() {
                assert_eq!(offers(Behind::Room(other.id)), other.id != room.id);
            }
            assert_eq!(offers(Behind::Ground), surface.kind != SurfaceKind::Ceiling);
            for behind in [Behind::Outdoors, Behind::Unheated, Behind::SameTemperature] {
                assert!(offers(behind));
            }
        }
    }
}

/// The assemblies on a list by their place, without the two ways to type.
fn offered(draft: &Draft, choice: Choice) -> (Vec<Used>, Vec<UValue>) {
    let (mut used, mut own) = (Vec::new(), Vec::new());
    for pick in draft.picks(choice) {
        match pick {
            Pick::Build(UValue::Listed(assembly)) => used.push(assembly.used()),
            Pick::Build(built @ UValue::Own(_)) => own.push(built),
            _ => {}
        }
    }
    used.dedup();
    (used, own)
}

#[test]
fn a_surface_is_built_of_what_stands_in_its_place() {
    let mut draft = open(V2_FIXTURE);
    let own = |index: usize| UValue::Own(draft.assemblies[index].id);
    let (wall, roof, slab, ground_wall) = (own(0), own(1), own(2), own(3));
    let cases = [
        // The family room's wall in the earth, its inside wall, its slab.
        (101, 6, Used::BasementWall, Some(ground_wall)),
        (101, 9, Used::Wall, Some(wall)),
        (101, 10, Used::Slab, Some(slab)),
        // A floor over the crawl space, a ceiling to outdoors, and the attic's roof.
        (102, 17, Used::Floor, None),
        (103, 22, Used::Ceiling, Some(roof)),
        (105, 29, Used::Roof, Some(roof)),
    ];
    for (room, surface, used, own) in cases {
        let choice = Choice::SurfaceBuild(RoomId(room), SurfaceId(surface));
        let expected: Vec<UValue> = own.into_iter().collect();
        assert_eq!(offered(&draft, choice), (vec![used], expected), "{choice:?}");
    }
    // One that is gone stays on the list of what was built of it, until another is chosen; so does
    // one that was meant for another place.
    let choice = Choice::SurfaceBuild(RoomId(103), SurfaceId(22));
    let UValue::Own(id) = roof else { unreachable!() };
    draft.remove_assembly(id);
    assert_eq!(offered(&draft, choice), (vec![Used::Ceiling], vec![roof]));
    draft.pick(choice, Pick::Build(slab));
    assert_eq!(offered(&draft, choice), (vec![Used::Ceiling], vec![slab]));
    draft.pick(choice, Pick::Build(UValue::Listed(Assembly::CathedralR30)));
    assert_eq!(offered(&draft, choice), (vec![Used::Ceiling], vec![]));
}

#[test]
fn a_garage_has_garage_doors() {
    let draft = open(V2_FIXTURE);
    let door = |room, wall, id| {
        offered(&draft, Choice::OpeningBuild(RoomId(room), SurfaceId(wall), OpeningId(id))).0
    };
    assert_eq!(draft.room(RoomId(106)).expect("the garage").used, RoomUse::Garage);
    assert_eq!(door(106, 32, 31), [Used::GarageDoor, Used::Door]);
    assert_eq!(door(102, 16, 15), [Used::Door]);
    assert_eq!(door(102, 13, 11), [Used::Window]);
}
