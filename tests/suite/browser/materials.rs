//! The materials list with its cut plan.

use finrun_engine::takeoff::list::list;
use finrun_text as text;

use super::solved::{Figure, Solved};

/// What the list says, worked out from the stored job.
pub(super) fn figures(solved: &Solved) -> Vec<(String, Figure)> {
    let (draft, system) = (&solved.draft, solved.draft.units);
    let design = finrun_engine::design::design(&solved.job);
    let take_off = list(&solved.job, &design);
    let mut figures = vec![
        ("materials.sum".to_owned(), text::list_sum(&take_off, system)),
        ("materials.needed".to_owned(), text::sum_and_need(&take_off, system)),
        ("materials.unpriced".to_owned(), text::unpriced_lines(&take_off)),
    ];
    figures.retain(|(_, said)| !said.is_empty());
    for (nth, entry) in take_off.lines.iter().enumerate() {
        let is_coil = entry.line.tube.is_some_and(text::comes_in_coils);
        let buy = text::to_buy(entry, is_coil, system);
        figures.push((format!("materials-{nth}.buy"), buy));
        figures.push((format!("materials-{nth}.sum"), text::line_sum(entry.sum, system)));
    }
    assert!(figures.len() > 20, "{} of {}", figures.len(), draft.name);
    figures.into_iter().map(|(name, said)| (name, Figure::Words(said))).collect()
}
