//! Drawings of every arrangement: every room once, sound markup, nothing beyond the sheet.

use super::{pump, schematic, temperature};
use finrun_engine::building::ZoneId;
use finrun_engine::design::{Design, design};
use finrun_engine::job::{
    Arrangement, BackPath, Diverters, Draft, File, FlowBasis, Job, ShutOff, Zoning, read,
};
use finrun_engine::named::Named;
use finrun_engine::quantity::System;

fn open(text: &str) -> Draft {
    let file: File = serde_json::from_str(text).expect("a job file");
    file.open().expect("a sound job")
}

fn bungalow() -> Draft {
    open(include_str!("../../../../public/demo/bungalow.json"))
}

fn two_storey() -> Draft {
    open(include_str!("../../../../public/demo/two-storey.json"))
}

fn solve(draft: &Draft) -> (Job, Design) {
    let job = read(draft).job.expect("a whole job");
    let design = design(&job);
    (job, design)
}

/// Every arrangement by itself, and some of the ways in which they mix.
fn jobs() -> Vec<(String, Draft)> {
    let mut all = Vec::new();
    for &arrangement in Arrangement::ALL {
        let mut draft = bungalow();
        draft.arrange(ZoneId(0), arrangement);
        draft.flow_basis = FlowBasis::FromPump;
        all.push((arrangement.name().to_string(), draft));
    }
    let mut draft = bungalow();
    draft.zones[0].back = BackPath::InEnclosure;
    draft.rooms[1].name =
        "<b>The \"very\" long room & its name that goes on and on</b>".to_string();
    draft.rooms[2].name = "居間居間居間居間居間居間居間居間居間居間居間居間".to_string();
    all.push(("in-enclosure".to_string(), draft));
    for zoning in [Zoning::Valves, Zoning::Circulators] {
        let mut draft = two_storey();
        draft.zoning = zoning;
        draft.flow_basis = FlowBasis::FromPump;
        let kinds = [
            Arrangement::DirectReturn,
            Arrangement::Split,
            Arrangement::DiverterTees,
            Arrangement::HomeRun,
        ];
        let zones: Vec<ZoneId> =
            std::iter::once(ZoneId(0)).chain((1..4).map(|_| draft.add_zone())).collect();
        let count = draft.rooms.len();
        for (at, room) in draft.rooms.iter_mut().enumerate() {
            room.zone = zones[at * 4 / count];
        }
        draft.rooms[1].shut_off = ShutOff::Shut;
        draft.rooms[5].diverters = Diverters::Two;
        for (zone, kind) in zones.into_iter().zip(kinds) {
            draft.arrange(zone, kind);
        }
        draft.zones[1].name = "Upstairs, the side of the long name that will not fit".to_string();
        all.push((format!("mixed-{}", zoning.name()), draft));
    }
    let mut draft = two_storey();
    draft.units = System::Si;
    draft.arrange(ZoneId(0), Arrangement::ReverseReturn);
    all.push(("nine-reverse-si".to_string(), draft));
    let mut draft = two_storey();
    draft.arrange(ZoneId(0), Arrangement::HomeRun);
    all.push(("nine-home-run".to_string(), draft));
    all
}

/// Writes every drawing where it can be looked at.
#[test]
fn pictures() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../target/drawings");
    std::fs::create_dir_all(folder).expect("a folder");
    for (name, draft) in jobs() {
        let (job, design) = solve(&draft);
        let draws = [schematic::draw, temperature::draw, pump::draw];
        let all: String =
            draws.iter().map(|draw| draw(&draft, &job, &design, draft.units)).collect();
        std::fs::write(format!("{folder}/{name}.svg.html"), all).expect("a file");
    }
}
