//! What is still to be done about the plan, and what stands above it.

use super::Seen;
use crate::markup::Markup;
use finrun_engine::check::{Check, Severity};
use finrun_text as text;

pub(super) fn outstanding(out: &mut Markup, seen: &Seen<'_>) {
    let Seen { draft, design, system, errors, .. } = *seen;
    out.leaf("h2", &[], text::report_checks());
    let to_see: Vec<&Check> =
        design.checks.iter().filter(|c| c.severity != Severity::Holds).collect();
    let complete = |id| design.rooms.iter().any(|room| room.room == id);
    let left_out: Vec<String> = draft
        .rooms
        .iter()
        .filter(|room| !complete(room.id))
        .map(|room| text::room_name(draft, room.id))
        .collect();
    if !left_out.is_empty() {
        out.leaf("p", &[], &text::left_out(&left_out));
    }
    if to_see.is_empty() && errors.is_empty() {
        out.leaf("p", &[], text::no_checks());
    }
    out.open("ul", &[("class", "outstanding")]);
    for check in &to_see {
        one(out, seen, check);
    }
    for error in errors {
        out.leaf("li", &[], &text::problem_at(draft, error, system));
    }
    out.close("ul");
    let holds = design.checks.len() - to_see.len();
    if holds > 0 {
        out.leaf("p", &[], &text::checks_hold_beside(holds));
    }
}

fn one(out: &mut Markup, seen: &Seen<'_>, check: &Check) {
    let Seen { draft, system, .. } = *seen;
    out.open("li", &[]);
    out.leaf(
        "b",
        &[],
        &text::check_headed(
            text::severity(check.severity),
            &text::check_title(check, draft, system),
        ),
    );
    out.leaf("p", &[], &text::check_detail(check, system));
    if !check.remedies.is_empty() {
        let ways: Vec<String> =
            check.remedies.iter().map(|remedy| text::remedy(*remedy, system)).collect();
        out.leaf("p", &[], &text::ways_out(&ways));
    }
    out.close("li");
}

pub(super) fn limits(out: &mut Markup) {
    out.leaf("h2", &[], text::report_limits());
    out.open("dl", &[("class", "cautions")]);
    for caution in text::CAUTIONS {
        out.leaf("dt", &[], caution.title());
        out.leaf("dd", &[], caution.text());
    }
    out.close("dl");
    out.leaf("h3", &[], text::limits_methods());
    out.open("div", &[("class", "rests")]);
    // The first paragraph says what Finrun is, the last which letters it is set in.
    let about = text::about_paragraphs();
    let methods = about.get(1..about.len() - 1).unwrap_or_default();
    for paragraph in methods {
        out.leaf("p", &[], paragraph);
    }
    out.close("div");
}
