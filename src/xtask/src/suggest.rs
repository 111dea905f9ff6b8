//! What the page suggests for each zone, in its words.

use std::fmt::Write;

use anyhow::Result;
use finrun_engine::job::Draft;
use finrun_engine::suggest::{Verdict, suggest};

pub(crate) fn said(draft: &Draft) -> Result<String> {
    let mut out = String::new();
    for zone in draft.zones.iter().map(|zone| zone.id) {
        writeln!(out, "{}", finrun_text::zone_name(draft, zone))?;
        match suggest(draft, zone) {
            None => writeln!(out, "{}", finrun_text::no_loops())?,
            Some(Verdict::Stays(figures)) => {
                writeln!(out, "{}", finrun_text::loops_stay())?;
                list(&mut out, finrun_text::what_stays(), finrun_text::troubles(draft, &figures))?;
            }
            Some(Verdict::Changes(change)) => {
                writeln!(out, "{}", finrun_text::gain(&change))?;
                let loops = finrun_text::loop_lines(draft, &change.after, draft.units);
                list(&mut out, finrun_text::suggested(), loops)?;
                let [before, after] =
                    [&change.before, &change.after].map(|f| finrun_text::troubles(draft, f));
                list(&mut out, finrun_text::what_is_wrong(), before)?;
                list(&mut out, finrun_text::what_stays(), after)?;
                let heads = [finrun_text::today(), finrun_text::suggested()];
                let heads = heads.map(|head| format!("{head:>14}")).concat();
                writeln!(out, "{:<36}{heads}", finrun_text::this_zone())?;
                for (_, name, figures) in finrun_text::loop_figures(&change, draft.units) {
                    writeln!(
                        out,
                        "{name:<36}{}",
                        figures.map(|cell| format!("{cell:>14}")).concat()
                    )?;
                }
                writeln!(out, "{}", finrun_text::figures_note())?;
                let measure = finrun_text::to_measure(draft, &change);
                list(&mut out, finrun_text::before_piping(), measure)?;
            }
        }
        writeln!(out)?;
    }
    Ok(out)
}

fn list(out: &mut String, head: &str, lines: Vec<String>) -> Result<()> {
    if !lines.is_empty() {
        writeln!(out, "{head}")?;
    }
    lines.iter().try_for_each(|line| writeln!(out, "  - {line}"))?;
    Ok(())
}
