//! Kidney beans that are not soaked, drained and boiled hard.

use potwright_larder::Hazard;
use potwright_reckon::{Doneness, Verdict};

use crate::placed::{cooking_of, line_of};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "S03",
    name: "raw kidney beans, or in a slow cooker",
    finds: "Dried kidney beans that are not soaked for 5 hours, drained and boiled for 30 minutes in fresh water; or that go from raw into a slow cooker.",
    why: "They hold phytohaemagglutinin: a few raw beans make ill, and gentle heat makes it worse.",
    fires: "Bean pot\n\n400 g dried red kidney beans\n2 litres water\n\nPut the beans and water in a slow cooker and cook on low for 8 hours until tender.\n",
    silent: "Bean pot\n\n400 g dried red kidney beans\n2 litres water\n\nSoak the beans in plenty of cold water for 12 hours. Drain and throw the soaking water away. Put the beans and the water in a pot, bring to the boil and boil hard for 45 minutes, then simmer for 1 hour until tender.\n",
    instead: "Soak for at least 5 hours, throw the water away, boil for 30 minutes in fresh water, then go on.",
    source: "FDA Bad Bug Book, phytohaemagglutinin: soak at least 5 h, boil at least 30 min (10 min is the least spoken of)",
    check,
};

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let rows = manuscript.reckoned.dossier.doneness.iter();
    let beans = rows
        .filter(|row| row.hazard == Some(Hazard::KidneyBean) && matches!(row.verdict, Verdict::Fails | Verdict::Near));
    // A failing is always asked about. Of a near one the page is asked where it falls short, which the finding then names;
    // else only the margin of a household thermometer is in question.
    let beans = beans.filter(|row| row.verdict == Verdict::Fails || row.finding.contains("the page has"));
    beans.filter_map(|row| of_row(manuscript, row)).collect()
}

fn of_row(manuscript: &Manuscript<'_>, row: &Doneness) -> Option<Query> {
    let line = line_of(manuscript, row.lot);
    let heat = cooking_of(manuscript, row.lot).map(|operation| operation.span);
    let weight = if row.verdict == Verdict::Fails {
        Weight::MustSettle
    } else {
        Weight::WorthALook
    };
    let asks = format!("Are the {} soaked, drained and boiled hard for long enough?", row.name);
    let mut query = RULE.query(
        weight,
        heat.or(line)?,
        asks,
        format!("{}; the rule is {} ({})", row.finding, row.rule, row.source),
    );
    query.see.extend(line.map(|line| (line, "on the list".into())));
    Some(query)
}
