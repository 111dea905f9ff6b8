//! What the page suggests for each zone, in its words.

use finrun_engine::job::Draft;
use finrun_engine::suggest::{Verdict, suggest};

pub(crate) fn print(draft: &Draft) {
    let list = |head: &str, lines: Vec<String>| {
        if !lines.is_empty() {
            println!("{head}");
        }
        lines.iter().for_each(|line| println!("  - {line}"));
    };
    for zone in draft.zones.iter().map(|zone| zone.id) {
        println!("{}", finrun_text::zone_name(draft, zone));
        match suggest(draft, zone) {
            None => println!("{}", finrun_text::no_loops()),
            Some(Verdict::Stays(figures)) => {
                println!("{}", finrun_text::loops_stay());
                list(finrun_text::what_stays(), finrun_text::troubles(draft, &figures));
            }
            Some(Verdict::Changes(change)) => {
                println!("{}", finrun_text::gain(&change));
                let loops = finrun_text::loop_lines(draft, &change.after, draft.units);
                list(finrun_text::suggested(), loops);
                let [before, after] =
                    [&change.before, &change.after].map(|f| finrun_text::troubles(draft, f));
                list(finrun_text::what_is_wrong(), before);
                list(finrun_text::what_stays(), after);
                let heads = [finrun_text::today(), finrun_text::suggested()];
                let heads = heads.map(|head| format!("{head:>14}")).concat();
                println!("{:<36}{heads}", finrun_text::this_zone());
                for (_, name, figures) in finrun_text::loop_figures(&change, draft.units) {
                    println!("{name:<36}{}", figures.map(|cell| format!("{cell:>14}")).concat());
                }
                println!("{}", finrun_text::figures_note());
                let measure = finrun_text::to_measure(draft, &change);
                list(finrun_text::before_piping(), measure);
            }
        }
        println!();
    }
}
