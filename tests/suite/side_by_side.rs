//! One job in every arrangement.

use crate::shipped::SHIPPED;
use crate::support::{FOUR_ROOMS, add_room, add_wall, cold_day, open, set, solve};
use finrun_engine::arrangement::lowest_supply;
use finrun_engine::building::RoomId;
use finrun_engine::compare::{Arranged, Comparison, Control, Layout, layouts, side_by_side};
use finrun_engine::design::Design;
use finrun_engine::job::{
    Arrangement, Balancing, CircuitField, Draft, ElementField, Field, FlowBasis, HouseField, Hung,
    Job, RoomField,
};
use finrun_engine::named::Named;
use finrun_engine::quantity::{Power, Temperature, TemperatureDifference, Unit};
use finrun_engine::takeoff::cost::cost;
use finrun_engine::takeoff::count::{count, joints};

/// Each row is the job so arranged, the rooms as they were, and the shipped houses are heated by every
/// arrangement.
#[test]
fn shipped_houses_are_heated_in_every_arrangement() {
    for text in SHIPPED {
        let draft = open(text);
        let rows = side_by_side(&draft);
        let every: Vec<Layout> = Arrangement::ALL.iter().copied().map(Layout::OneZone).collect();
        assert_eq!(rows.iter().map(|row| row.layout).collect::<Vec<_>>(), every);
        for row in &rows {
            assert!(row.solved && row.short == 0, "{}: {row:?}", draft.name);
            assert!(row.least >= 1.0 - 1e-9 && row.most < 1.5, "{}: {row:?}", draft.name);
            is_that_design(&draft, row);
        }
        // A valve for each room between mains, for each half of a split loop, none on one loop.
        let rooms = draft.rooms.len();
        let valves: Vec<usize> = rows.iter().map(|row| row.valves).collect();
        assert_eq!(valves, [0, 2, 0, rooms, rooms, rooms], "{}", draft.name);
    }
}

/// Four rooms on two zones, the second split.
fn two_zones() -> Draft {
    let mut draft = open(FOUR_ROOMS);
    let rooms: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).collect();
    let zone = draft.add_zone();
    for (room, branch) in [(rooms[0], 1), (rooms[2], 0)] {
        draft.place_room(room, Hung { zone, branch }, None);
    }
    draft.arrange(zone, Arrangement::Split);
    draft
}

fn is_that_design(draft: &Draft, row: &Arranged) {
    let mut changed = draft.clone();
    changed.lay_out(row.layout);
    assert!(changed.is_laid_out(row.layout));
    let (job, design) = solve(&changed);
    let piping = &design.piping;
    assert_eq!((row.flow, row.head, row.back), (piping.flow, piping.head, piping.back));
    assert_eq!((row.velocity, row.element), (piping.velocity, design.element_length()));
    let fitted =
        |c: &&finrun_engine::arrangement::CircuitDesign| c.valve.fitted == Balancing::Valves;
    assert_eq!(row.valves, piping.circuits.iter().filter(fitted).count());
    let electric: Power = piping.pumps.iter().map(|pump| pump.electric).sum();
    assert_eq!(row.electric, electric);
    let items = count(&job, &design);
    let cost = cost(&job, &items);
    assert_eq!((row.joints, row.cost), (joints(&items), cost.known));
    assert_eq!(row.unpriced, cost.unpriced.len());
    assert_eq!(row.lowest_supply, lowest_supply(&job, &design));
}

#[test]
fn several_zones_stand_as_drawn_beside_one_zone_in_every_arrangement() {
    let draft = two_zones();
    let rows = side_by_side(&draft);
    assert_eq!(rows.len(), 1 + Arrangement::ALL.len());
    assert_eq!(rows.iter().map(|row| row.layout).collect::<Vec<_>>(), layouts(&draft));
    assert_eq!(rows[0].layout, Layout::AsDrawn);
    for row in &rows {
        is_that_design(&draft, row);
    }
    use Control::{ByRoom, ByZone, None};
    let control: Vec<Control> = rows.iter().map(|row| row.control).collect();
    assert_eq!(control, [ByZone, None, None, ByRoom, ByRoom, ByRoom, ByRoom]);
    // All rooms hang on one loop as the water came to them: the first zone's, then the second's loops.
    let mut one = draft.clone();
    one.lay_out(Layout::OneZone(Arrangement::Series));
    assert_eq!(one.in_order(), draft.in_order());
    assert_ne!(one.in_order(), draft.rooms.iter().map(|room| room.id).collect::<Vec<_>>());
    assert_eq!((one.zones.len(), one.branches(one.zones[0].id)), (1, vec![0]));
}

/// Step by step they are the same rows, one a step; a job that cannot be read has none.
#[test]
fn steps_add_up_to_the_whole() {
    let mut draft = two_zones();
    let mut comparison = Comparison::of(&draft);
    let mut rows = Vec::new();
    while let Some(row) = comparison.step() {
        rows.push(row);
    }
    assert_eq!(rows, side_by_side(&draft));
    assert_eq!(comparison.step(), None);
    set(&mut draft, Field::House(HouseField::Indoors), "warm");
    assert_eq!(side_by_side(&draft), []);
}

/// By hand for rooms of which one has a third more to lose than another.
#[test]
fn evenness_is_the_most_over_the_least() {
    let (draft, _) = exactly(6, Arrangement::DirectReturn);
    let row = row_of(&draft, Arrangement::DirectReturn);
    let (_, design) = solve(&draft);
    let [warm, cold, between] = [0, 1, 2].map(|at: usize| {
        let room = &design.rooms[at];
        room.element.output.si() / room.load.total.si()
    });
    // Pieces and water are much alike, so that shares go about as one over the loads: 0.2 to 0.15.
    assert!((warm / cold - 0.2 / 0.15).abs() < 0.1, "{warm} {cold}");
    assert!(cold < between && between < warm);
    assert_eq!((row.most, row.least), (warm, cold));
    assert_eq!(row.evenness, Some(warm / cold));
}

fn row_of(draft: &Draft, arrangement: Arrangement) -> Arranged {
    let mut rows = side_by_side(draft).into_iter();
    rows.find(|row| row.layout == Layout::OneZone(arrangement)).expect("its row")
}

/// Rooms of one free wall each that takes one piece of the only length there is: at whatever supply, a
/// design can choose nothing else.
fn exactly(feet: u8, arrangement: Arrangement) -> (Draft, Vec<RoomId>) {
    let mut draft = cold_day();
    draft.element.stock_ft = vec![feet];
    set(&mut draft, Field::Element(ElementField::EndAllowance), "0");
    let length = feet.to_string();
    let rooms = [("Warm", "0.15"), ("Cold", "0.2"), ("Between", "0.17")].map(|(name, u)| {
        let room = add_room(&mut draft, name, "10", &length);
        add_wall(&mut draft, room, &length, u);
        // The rest of its loss, at a wall that is not for baseboard.
        let other = add_wall(&mut draft, room, "12", u);
        draft.surface_mut(room, other).expect("just added").wall_use =
            finrun_engine::building::WallUse::Never;
        room
    });
    draft.arrange(draft.zones[0].id, arrangement);
    (draft, rooms.to_vec())
}

fn short_at(draft: &Draft, supply: Temperature) -> (Job, Design, usize) {
    let mut draft = draft.clone();
    let shown = supply.to(Unit::Fahrenheit).to_string();
    set(&mut draft, Field::Circuit(CircuitField::Supply), &shown);
    let (job, design) = solve(&draft);
    let short = design.rooms.iter().filter(|room| room.short() > Power::ZERO).count();
    (job, design, short)
}

/// Half a kelvin above the lowest supply the whole job, designed at that supply, is warm; half a kelvin
/// below it is not.
#[test]
fn the_lowest_supply_is_where_the_first_room_turns_cold() {
    let half = TemperatureDifference::from_si(0.5);
    for basis in [FlowBasis::FromDrop, FlowBasis::FromPump, FlowBasis::Typed] {
        for &arrangement in Arrangement::ALL {
            let (mut draft, _) = exactly(6, arrangement);
            draft.flow_basis = basis;
            set(&mut draft, Field::Circuit(CircuitField::Flow), "2");
            let row = row_of(&draft, arrangement);
            let lowest = row.lowest_supply.unwrap_or_else(|| panic!("{basis:?} {row:?}"));
            let (_, design, short) = short_at(&draft, lowest + half);
            assert_eq!(short, 0, "{basis:?} {arrangement:?} {lowest:?}");
            assert_eq!(design.piece_count(), 3);
            let (_, design, short) = short_at(&draft, lowest - half);
            assert!(short > 0, "{basis:?} {arrangement:?} {lowest:?}");
            assert_eq!(design.piece_count(), 3);
        }
    }
}

/// It does not depend on the supply that the job has, also where that is too low; and above the boiler's
/// limit there is none.
#[test]
fn the_lowest_supply_is_sought_up_to_the_boilers_limit() {
    let (draft, rooms) = exactly(6, Arrangement::Series);
    let lowest = row_of(&draft, Arrangement::Series).lowest_supply.expect("a supply");
    let (job, design, short) = short_at(&draft, lowest - TemperatureDifference::from_si(8.0));
    assert!(short > 0);
    let again = lowest_supply(&job, &design).expect("a supply");
    assert!((again - lowest).si().abs() <= 0.5, "{again:?} {lowest:?}");

    let mut low = draft.clone();
    let limit = (lowest - TemperatureDifference::from_si(1.0)).to(Unit::Fahrenheit).to_string();
    set(&mut low, Field::Circuit(CircuitField::BoilerLimit), &limit);
    assert_eq!(row_of(&low, Arrangement::Series).lowest_supply, None);

    // A room that is shut off never gets its load.
    let mut shut = draft.clone();
    shut.arrange(shut.zones[0].id, Arrangement::HomeRun);
    shut.room_mut(rooms[1]).expect("its room").shut_off = finrun_engine::job::ShutOff::Shut;
    let row = row_of(&shut, Arrangement::HomeRun);
    assert_eq!((row.lowest_supply, row.short, row.evenness), (None, 1, None));

    // One that is heated otherwise needs none.
    let mut other = draft;
    for room in rooms {
        set(&mut other, Field::Room(room, RoomField::OtherHeat), "99999");
    }
    let row = row_of(&other, Arrangement::Series);
    assert_eq!((row.solved, row.lowest_supply), (false, None));
}

/// By what is best, and the other way round; what has no value always last.
#[test]
fn columns_order_their_rows() {
    use finrun_engine::compare::{Column, Direction};
    let mut rows = side_by_side(&open(FOUR_ROOMS));
    rows[1].solved = false;
    rows[3].lowest_supply = None;
    for &column in Column::ALL {
        for direction in [Direction::Rising, Direction::Falling] {
            let places = column.order(&rows, direction);
            let mut all = places.clone();
            all.sort_unstable();
            assert_eq!(all, (0..rows.len()).collect::<Vec<_>>());
            let values: Vec<Option<f64>> =
                places.iter().map(|&at| column.value(&rows[at]).map(|value| value.si)).collect();
            for pair in values.windows(2) {
                assert!(match (pair[0], pair[1], direction) {
                    (Some(a), Some(b), Direction::Rising) => a <= b,
                    (Some(a), Some(b), Direction::Falling) => a >= b,
                    (before, after, _) => before.is_some() || after.is_none(),
                });
            }
            assert_eq!(values[5], None);
            if column.better() == Some(direction) {
                let best = column.value(&rows[places[0]]);
                assert!(
                    column
                        .best(&rows)
                        .is_none_or(|of| (of.si - best.map_or(0.0, |b| b.si)).abs() < 1e-9)
                );
            }
        }
    }
}
