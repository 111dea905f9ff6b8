//! The same for zones, valves, circulators and mains.

use super::cases::Case;
use super::{FIRST, SECOND, described, sound, tag};
use crate::support::{job_of, room, set};
use finrun_engine::building::ZoneId;
use finrun_engine::design::design;
use finrun_engine::job::{
    Arrangement, CircuitField, Draft, Field, FlowBasis, PumpKind, RoomField, ShutOff, Zoning,
};
use finrun_engine::network::TypicalPump;
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::Length;

/// The second room on a zone of its own.
fn two_zones(draft: &mut Draft) {
    let zone = draft.add_zone();
    draft.room_mut(SECOND).expect("the room").zone = zone;
}

fn from_pump(draft: &mut Draft, pump: TypicalPump) {
    draft.flow_basis = FlowBasis::FromPump;
    draft.pump.kind = PumpKind::Typical(pump);
}

fn arrange(draft: &mut Draft, arrangement: Arrangement) {
    draft.arrange(ZoneId(0), arrangement);
}

pub(super) const PIPING: &[Case] = &[
    Case {
        change: |draft| {
            draft.add_zone();
        },
        brings: &["watch zone empty-zone: add-rooms"],
        takes: &[],
    },
    // 4 gpm of trunk in half-inch tube, which is fast too.
    Case {
        change: |draft| {
            arrange(draft, Arrangement::Split);
            draft.zone_mut(ZoneId(0)).expect("the zone").main = Tube::CopperMHalf;
        },
        brings: &[
            "watch zone main-smaller: other-tube",
            "watch loop velocity: less-flow, other-tube, second-circuit",
            "holds circuit tube-carries",
            "holds circuit tube-carries",
        ],
        takes: &["holds loop velocity", "holds loop tube-carries"],
    },
    // Eighty feet of head at 4 gpm are more than a small circulator has.
    Case {
        change: |draft| {
            from_pump(draft, TypicalPump::Small);
            set(draft, Field::Circuit(CircuitField::Drop), "5");
            set(draft, Field::Circuit(CircuitField::EquipmentHead), "40");
        },
        brings: &[
            "watch circulator pump-short: larger-pump, larger-drop",
            "watch loop drop: more-flow, second-circuit",
            "watch loop velocity: more-flow, other-tube, purge-at-high-flow",
        ],
        takes: &["holds loop drop", "holds loop velocity"],
    },
    // The second room is two hundred feet farther, and no valve holds the first back.
    Case {
        change: |draft| {
            arrange(draft, Arrangement::ReverseReturn);
            arrange(draft, Arrangement::HomeRun);
            draft.zone_mut(ZoneId(0)).expect("the zone").balancing = Default::default();
            room(draft, SECOND, RoomField::PipeTo, "100");
        },
        brings: &[
            "watch circuit uneven: balancing-valves",
            "watch circuit uneven: balancing-valves",
            // 4 gpm that were meant for two loops of half-inch PEX.
            "watch loop velocity: less-flow, other-tube, second-circuit",
        ],
        takes: &["holds loop velocity", "holds loop tube-carries"],
    },
    // A small circulator beside a strong one, both through a narrow boiler: its check stays shut.
    Case {
        change: |draft| {
            two_zones(draft);
            draft.zoning = Zoning::Circulators;
            from_pump(draft, TypicalPump::Small);
            draft.zones[0].pump = PumpKind::Typical(TypicalPump::HighHead);
            set(draft, Field::Circuit(CircuitField::EquipmentHead), "8");
        },
        brings: &[
            "stop room-3 water-too-cool: second-circuit, reduce-loss",
            "watch zone pump-short: larger-pump, larger-drop",
            "stop circuit no-flow: open-valve, larger-pump",
            "holds zone drop",
            "watch zone velocity: more-flow, other-tube, purge-at-high-flow",
            "holds zone tube-carries",
        ],
        takes: &[
            "holds house rooms-heated",
            "holds loop drop",
            "holds loop velocity",
            "holds loop tube-carries",
        ],
    },
    // One circulator for two zones of half-inch tube: each is heard when it runs alone.
    Case {
        change: |draft| {
            two_zones(draft);
            draft.set_tube(Tube::CopperMHalf);
            from_pump(draft, TypicalPump::Medium);
            set(draft, Field::Circuit(CircuitField::EquipmentHead), "3");
            set(draft, Field::Circuit(CircuitField::Drop), "5");
        },
        brings: &[
            "holds zone drop",
            "holds zone drop",
            "holds zone velocity",
            "holds zone velocity",
            "holds zone tube-carries",
            "holds zone tube-carries",
            "watch zone fast-alone: variable-pump, smaller-pump",
            "watch zone fast-alone: variable-pump, smaller-pump",
        ],
        takes: &["holds loop drop", "holds loop velocity", "holds loop tube-carries"],
    },
    Case {
        change: |draft| {
            arrange(draft, Arrangement::HomeRun);
            draft.room_mut(FIRST).expect("the room").shut_off = ShutOff::Shut;
        },
        brings: &[
            "watch room-1 shut-off: open-valve",
            "watch loop velocity: less-flow, other-tube, second-circuit",
        ],
        takes: &["holds house rooms-heated", "holds loop velocity", "holds loop tube-carries"],
    },
];

/// No typed job leads there; one built in code does: a trunk whose length is no number.
#[test]
fn flows_that_are_not_found_are_named_with_the_reason() {
    let mut draft = sound();
    draft.arrange(ZoneId(0), Arrangement::Split);
    let mut job = job_of(&draft);
    job.zones[0].trunk.length = Length::from_si(f64::NAN);
    let design = design(&job);
    assert!(design.piping.not_solved.is_some());
    let found: Vec<String> = design.checks.iter().map(|check| tag(check.finding)).collect();
    assert!(found.contains(&"not-solved".to_string()), "{found:?}");
    for claim in ["drop", "velocity", "tube-carries", "rooms-heated", "does-not-fit"] {
        assert!(!found.contains(&claim.to_string()), "{claim} of flows that are not known");
    }
    assert!(!described(&draft).iter().any(|line| line.contains("not-solved")));
}
