//! `cargo xtask solve JOB.json --remedies`.

use std::fmt::Write;

use anyhow::Result;
use finrun_engine::design::design;
use finrun_engine::job::{Draft, Job};
use finrun_engine::oversize::oversize;
use finrun_engine::quantity::Value;
use finrun_engine::remedy::Remedies;

/// What would help the rooms that are short, or what is built beyond the loads.
pub(super) fn said(draft: &Draft, job: &Job) -> Result<String> {
    let mut out = String::new();
    let (design, system) = (design(job), draft.units);
    for worked in Remedies::all(job, &design) {
        let room = finrun_text::room_name(draft, worked.room);
        writeln!(out, "{room}: {}", finrun_text::worked(&worked, draft, system))?;
    }
    let Some(over) = oversize(job, &design) else { return Ok(out) };
    let text = |value: Value| finrun_text::value(value, system);
    let columns =
        [finrun_text::pieces_add(), finrun_text::pieces_give(), finrun_text::margin_gives()];
    writeln!(
        out,
        "{:<42}{}",
        finrun_text::oversize_title(),
        columns.map(|c| format!("{c:>20}")).concat()
    )?;
    for room in &over.rooms {
        let name = finrun_text::room_name(draft, room.room);
        let cells = [room.length.into(), room.pieces.into(), room.margin.into()].map(text);
        writeln!(out, "{name:<42}{}", cells.map(|cell| format!("{cell:>20}")).concat())?;
    }
    writeln!(out, "{}: {}", finrun_text::return_word(), text(over.back.into()))?;
    writeln!(out, "{}: {}", finrun_text::return_exact(), text(over.back_exact.into()))?;
    writeln!(out, "{}", finrun_text::supply_enough(&over, system))?;
    writeln!(out, "{}", finrun_text::calls_at_half(&over, system))?;
    if let Some(burner) = &over.burner {
        writeln!(out, "{}", finrun_text::burner_runs(burner))?;
    }
    Ok(out)
}
