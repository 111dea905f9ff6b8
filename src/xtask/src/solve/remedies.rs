//! `cargo xtask solve JOB.json --remedies`.

use finrun_engine::design::design;
use finrun_engine::job::{Draft, Job};
use finrun_engine::oversize::oversize;
use finrun_engine::quantity::Value;
use finrun_engine::remedy::Remedies;

/// What would help the rooms that are short, or what is built beyond the loads.
pub(super) fn print(draft: &Draft, job: &Job) {
    let (design, system) = (design(job), draft.units);
    for worked in Remedies::all(job, &design) {
        let room = finrun_text::room_name(draft, worked.room);
        println!("{room}: {}", finrun_text::worked(&worked, draft, system));
    }
    let Some(over) = oversize(job, &design) else { return };
    let text = |value: Value| finrun_text::value(value, system);
    let columns =
        [finrun_text::pieces_add(), finrun_text::pieces_give(), finrun_text::margin_gives()];
    println!(
        "{:<34}{}",
        finrun_text::oversize_title(),
        columns.map(|c| format!("{c:>14}")).concat()
    );
    for room in &over.rooms {
        let name = finrun_text::room_name(draft, room.room);
        let cells = [room.length.into(), room.pieces.into(), room.margin.into()].map(text);
        println!("{name:<34}{}", cells.map(|cell| format!("{cell:>14}")).concat());
    }
    println!("{}: {}", finrun_text::return_word(), text(over.back.into()));
    println!("{}: {}", finrun_text::return_exact(), text(over.back_exact.into()));
    println!("{}", finrun_text::supply_enough(&over, system));
    println!("{}", finrun_text::calls_at_half(&over, system));
    if let Some(burner) = &over.burner {
        println!("{}", finrun_text::burner_runs(burner));
    }
}
