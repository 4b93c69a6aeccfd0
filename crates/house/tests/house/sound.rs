//! Sound manuscripts, written by somebody who knew neither reader nor engine: all of each page is cooked.

use super::house;

/// Shares of what goes in that a finished dish can weigh: from a stock strained off its bones and boiled down, to a pot
/// that has taken up soaking water no line lists (a cook's bounds: common practice, no source).
const FINISHED: std::ops::RangeInclusive<f64> = 0.35..=1.05;

/// No page here asks for more than a night and a day: the longest soaks for twelve hours or sets overnight.
const LONGEST_MINUTES: f64 = 48.0 * 60.0;

#[test]
fn sound_pages_are_cooked_whole() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../proof/tests/planted/pages");
    let mut files: Vec<_> = std::fs::read_dir(folder)
        .expect("the pages are there")
        .map(|entry| entry.expect("can be listed").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "txt"))
        .collect();
    files.sort();
    assert!(files.len() >= 18, "{files:?}");
    let mut wrong = Vec::new();
    for file in files {
        let name = file.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        let page = std::fs::read_to_string(&file).expect("is text");
        let house = house(&[(&name, &page)]);
        let cooked = house.reckon(0).expect("cooks");
        let reckoned = &cooked.reckoned;
        let open = reckoned.process.open.iter().map(|point| &point.text);
        wrong.extend(
            open.filter(|text| text.ends_with("the method never uses it.") || text.ends_with("never joins the dish."))
                .map(|text| format!("{name}: {text}")),
        );
        let listed = reckoned.process.lots.iter().filter(|lot| lot.ingredient.is_some());
        let share = reckoned.dossier.yield_mass.value / listed.map(|lot| lot.mass.kilograms()).sum::<f64>();
        if !FINISHED.contains(&share) {
            wrong.push(format!("{name}: {:.0} % of what goes in", 100.0 * share));
        }
        let minutes = reckoned.dossier.elapsed.value;
        if minutes > LONGEST_MINUTES {
            wrong.push(format!("{name}: {minutes:.0} minutes"));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}
