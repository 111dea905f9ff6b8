//! What a year at the station comes to.

use super::Seen;
use super::table::{Of, Row, table};
use crate::markup::Markup;
use crate::pages::season;
use finrun_text as text;

/// Nothing without a station, or while it cannot be read how the house is run: both are no fault of the
/// design.
pub(super) fn year(out: &mut Markup, seen: &Seen<'_>) {
    let Seen { draft, job, design, system, .. } = *seen;
    let (Some(station), Some(control)) = (&draft.station, &job.control) else { return };
    let Ok(run) = season::year(station, job, design) else { return };
    let title = text::season_sums_title();
    out.leaf("h3", &[], title);
    out.leaf("p", &[], &text::season_verdict(draft, &run, system));
    let sums = text::season_sums(&run, Some(control), system).into_iter();
    let rows: Vec<Row> = sums.map(|(_, name, shown)| Row::plain(name, vec![shown])).collect();
    out.open("div", &[("class", "narrow")]);
    table(out, Of::Words, title, &[text::column_input_of(), text::column_value()], &rows);
    out.close("div");
    out.leaf("p", &[("class", "note")], &text::season_limits(system));
}
