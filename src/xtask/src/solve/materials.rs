//! `cargo xtask solve JOB.json --materials`: the materials list and the cut plan.

use std::fmt::Write;

use anyhow::Result;
use finrun_engine::design::design;
use finrun_engine::job::{Draft, Group, Job};
use finrun_engine::takeoff::list::list;
use finrun_text as text;

pub(super) fn said(draft: &Draft, job: &Job) -> Result<String> {
    let mut out = String::new();
    let system = draft.units;
    let take_off = list(job, &design(job));
    writeln!(out, "{}", draft.name)?;
    let mut group: Option<Group> = None;
    for entry in &take_off.lines {
        if group != Some(entry.group) {
            writeln!(out, "\n{}", text::group(entry.group))?;
            group = Some(entry.group);
        }
        let thing = text::thing(&entry.line, system);
        let is_coil = entry.line.tube.is_some_and(text::comes_in_coils);
        let buy = text::to_buy(entry, is_coil, system);
        let (price, sum) =
            (text::line_price(&entry.line, system), text::line_sum(entry.sum, system));
        writeln!(out, "  {thing:<44} {buy:>12}  {price:>16} {sum:>10}")?;
        let spare = text::need_and_spare(entry, system);
        if !spare.is_empty() {
            writeln!(out, "      {spare}")?;
        }
        for because in &entry.reasons {
            writeln!(out, "      {}", text::because(draft, because, system))?;
        }
    }
    writeln!(out, "\n{}", text::list_sum(&take_off, system))?;
    writeln!(out, "{}", text::sum_and_need(&take_off, system))?;
    writeln!(out, "{}", text::unpriced_lines(&take_off))?;
    for note in &take_off.notes {
        writeln!(out, "{}", text::list_note(*note))?;
    }
    for cutting in &take_off.cuttings {
        writeln!(out, "\n{}", text::cut_title(cutting.tube))?;
        writeln!(out, "{}", text::cut_proof(cutting, system))?;
        let Ok(plan) = &cutting.plan else { continue };
        for (nth, stick) in plan.sticks.iter().enumerate() {
            let name = text::stick_name(nth, stick.stick_sixteenths, cutting.is_coil(), system);
            writeln!(out, "  {name}, {}", text::offcut(stick.offcut_sixteenths, system))?;
            for cut in &stick.cuts {
                let long = text::cut_length(cut.length_sixteenths, system);
                let piece = cutting.pieces.get(cut.piece);
                let what = piece.map(|piece| text::cut_for(draft, piece)).unwrap_or_default();
                writeln!(out, "    {long:>12}  {what}")?;
            }
        }
    }
    Ok(out)
}
