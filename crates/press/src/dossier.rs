//! The page of one dossier.

use potwright_larder::Contains;
use potwright_manuscript::{Recipe, Verb};
use potwright_pot::Assumption;
use potwright_proof::Query;
use potwright_reckon::{Body, Calculation, CoolingRow, Doneness, Dossier, Figure, Known, Reckoned, StepRow};

use crate::variations::variations;
use crate::words::{allergen, body, clock, line_of, minutes, spread, title};
use crate::{Column, Page, Part};

/// The dossier of a dish as a page.
#[must_use]
pub fn page(recipe: &Recipe, text: &str, reckoned: &Reckoned, queries: &[Query]) -> Page {
    let dossier = &reckoned.dossier;
    let mut parts = Vec::new();
    makes(&mut parts, dossier);
    eats(&mut parts, dossier);
    to_taste(&mut parts, dossier);
    safe(&mut parts, dossier);
    goes(&mut parts, recipe, dossier);
    label(&mut parts, dossier);
    allergens(&mut parts, dossier);
    costs(&mut parts, dossier);
    variations(&mut parts, dossier);
    notes(&mut parts, "What happened in the pot", &dossier.happenings, text);
    notes(&mut parts, "Assumed", &dossier.assumptions, text);
    open(&mut parts, recipe, dossier, text, queries);
    asked(&mut parts, text, queries);
    Page {
        title: title(&dossier.title),
        under: under(dossier),
        parts,
    }
}

/// Serves, yield and time in one line.
fn under(dossier: &Dossier) -> String {
    let serves = match (dossier.serves, &dossier.makes) {
        (Some((low, high)), _) if low == high => format!("Serves {low}"),
        (Some((low, high)), _) => format!("Serves {low} to {high}"),
        (None, Some(makes)) => makes.clone(),
        (None, None) => "Does not say how many it serves".into(),
    };
    format!(
        "{serves} · {} · {} from start to table, {} of it with hands busy",
        dossier.yield_mass.display_value(),
        minutes(dossier.elapsed.value),
        minutes(dossier.hands_on.value),
    )
}

/// A row of a table of figures: what, the figure with its spread, how it is known.
fn row(what: &str, figure: &Figure) -> Vec<String> {
    vec![
        what.into(),
        figure.display_value(),
        spread(figure),
        figure.known.words().into(),
    ]
}

/// What the figures hang on, each phrase said once for all the figures that share it.
fn reasons(figures: &[&Figure]) -> Option<String> {
    let mut said: Vec<String> = Vec::new();
    for phrase in figures
        .iter()
        .filter_map(|figure| figure.because.as_deref())
        .flat_map(|because| because.split("; "))
    {
        let sentence = sentence(phrase);
        if !said.contains(&sentence) {
            said.push(sentence);
        }
    }
    (!said.is_empty()).then(|| said.join(" "))
}

/// A phrase with a capital and a full stop.
fn sentence(phrase: &str) -> String {
    let mut letters = phrase.chars();
    let first: String = letters
        .next()
        .map(|letter| letter.to_uppercase().collect())
        .unwrap_or_default();
    format!("{first}{}.", letters.as_str().trim_end_matches('.'))
}

fn figures(rows: Vec<Vec<String>>) -> Part {
    Part::Table {
        columns: vec![Column::left(""), Column::right(""), Column::left(""), Column::quiet("")],
        rows,
    }
}

fn makes(parts: &mut Vec<Part>, dossier: &Dossier) {
    parts.push(Part::Heading("What it makes".into()));
    let mut rows = vec![
        row("finished dish", &dossier.yield_mass),
        row("", &dossier.yield_volume),
    ];
    rows.push(row("a portion", &dossier.portion_mass));
    rows.push(row("", &dossier.portion_volume));
    rows.push(row("pieces in it", &dossier.solids));
    rows.push(row("gone as steam", &dossier.evaporated));
    rows.push(row("start to table", &dossier.elapsed));
    rows.push(row("hands busy", &dossier.hands_on));
    parts.push(figures(rows));
    parts.push(Part::Paragraph(format!("Portions: {}.", dossier.portions_because)));
    let all = [
        &dossier.yield_mass,
        &dossier.portion_mass,
        &dossier.solids,
        &dossier.evaporated,
        &dossier.elapsed,
        &dossier.hands_on,
        &dossier.liquid_salinity,
        &dossier.salinity,
        &dossier.sugar,
        &dossier.boiling_point,
    ];
    parts.extend(reasons(&all).map(Part::Paragraph));
}

fn eats(parts: &mut Vec<Part>, dossier: &Dossier) {
    parts.push(Part::Heading("How it eats".into()));
    // A loaf has neither broth nor body.
    let liquid = dossier.liquid_salinity.known != Known::NotComputed;
    let mut rows = Vec::new();
    if liquid {
        rows.push(row("salt in the liquid", &dossier.liquid_salinity));
        rows.push(row("in the liquid next day", &dossier.salinity_next_day));
    }
    rows.push(row("salt in the whole dish", &dossier.salinity));
    rows.push(row("sugar", &dossier.sugar));
    rows.push(row("fat", &dossier.fat));
    rows.push(row("acid", &dossier.acid));
    if liquid {
        rows.push(body_row(&dossier.body));
    }
    if let Some(kept) = &dossier.alcohol_kept {
        rows.push(row("alcohol in a portion", &dossier.alcohol));
        rows.push(row("of what went in", kept));
    }
    if liquid {
        rows.push(row("boils at", &dossier.boiling_point));
    }
    parts.push(figures(rows));
    if liquid && dossier.body.word.is_some() {
        parts.push(Part::Paragraph(potwright_reckon::HOW_BODY_IS_READ.into()));
    }
    parts.push(Part::Paragraph(
        "Flavour, colour and fragrance are not computed.".into(),
    ));
}

fn body_row(found: &Body) -> Vec<String> {
    let word = found.word.map_or("not computed", body);
    let range = match found.range {
        Some((low, high)) if low != high => format!("({} to {})", body(low), body(high)),
        _ => String::new(),
    };
    vec!["body".into(), word.into(), range, Known::RuleOfThumb.words().into()]
}

fn to_taste(parts: &mut Vec<Part>, dossier: &Dossier) {
    if dossier.to_taste.is_empty() {
        return;
    }
    parts.push(Part::Heading("To taste".into()));
    parts.push(Part::List(
        dossier
            .to_taste
            .iter()
            .map(|one| format!("{}: {}", one.name, one.says))
            .collect(),
    ));
}

fn safe(parts: &mut Vec<Part>, dossier: &Dossier) {
    if dossier.doneness.is_empty() && dossier.cooling.is_empty() {
        return;
    }
    parts.push(Part::Heading("Done and safe".into()));
    if !dossier.doneness.is_empty() {
        let columns = vec![
            Column::left(""),
            Column::right("centre’s peak"),
            Column::left("the rule"),
            Column::left("finding"),
            Column::left("how tender"),
        ];
        parts.push(Part::Table {
            columns,
            rows: dossier.doneness.iter().map(done_row).collect(),
        });
        parts.push(Part::Paragraph(CENTRES.into()));
        parts.push(Part::List(calculations(&dossier.doneness)));
    }
    parts.push(Part::List(
        dossier
            .cooling
            .iter()
            .map(|cooling: &CoolingRow| cooling.says.clone())
            .collect(),
    ));
    if let Some(again) = &dossier.served_again {
        parts.push(Part::Paragraph(format!("Another day: {}", again.says.join(" "))));
    }
    let mut sources: Vec<&str> = dossier
        .doneness
        .iter()
        .map(|done| done.source.as_str())
        .filter(|s| !s.is_empty())
        .collect();
    sources.sort_unstable();
    sources.dedup();
    if !sources.is_empty() {
        parts.push(Part::Paragraph(format!("Rules: {}.", sources.join("; "))));
    }
    if !dossier.cautions.is_empty() {
        parts.push(Part::Paragraph(dossier.cautions.join(" ")));
    }
}

/// What the figures of the centre are.
const CENTRES: &str = "The centre’s peak is the highest temperature that the middle of the coldest piece had, with its range: the cold end decides. How tender is a rule of thumb.";

/// What a calculation makes of each, its constants marked as such.
fn calculations(doneness: &[Doneness]) -> Vec<String> {
    let with = doneness
        .iter()
        .filter_map(|done| Some((done, done.calculation.as_ref()?)));
    let says = |(done, found): (&Doneness, &Calculation)| {
        format!(
            "{}, by calculation: {}. Not a verdict; constants: {}.",
            done.name, found.says, found.constants
        )
    };
    with.map(says).collect()
}

fn done_row(done: &Doneness) -> Vec<String> {
    let tender = match (done.tenderness, done.tenderness_range) {
        (Some(word), Some((low, high))) if low != high => {
            format!("{} ({} to {})", word.words(), low.words(), high.words())
        }
        (Some(tenderness), _) => tenderness.words().to_owned(),
        (None, _) => String::new(),
    };
    let rule = if done.hazard.is_none() {
        String::new()
    } else {
        done.rule.clone()
    };
    let centre = done.centre.display();
    vec![done.name.clone(), centre, rule, done.finding.clone(), tender]
}

fn goes(parts: &mut Vec<Part>, recipe: &Recipe, dossier: &Dossier) {
    if dossier.steps.is_empty() {
        return;
    }
    parts.push(Part::Heading("How it goes".into()));
    let columns = vec![
        Column::right("from"),
        Column::right("to"),
        Column::left(""),
        Column::right("°C"),
        Column::right("in the pot"),
    ];
    let rows = dossier
        .steps
        .iter()
        .map(|step| {
            vec![
                clock(step.start_min),
                clock(step.end_min),
                in_the_pages_words(recipe, step),
                step.temp_c.map_or(String::new(), |celsius| format!("{celsius:.0}")),
                step.mass_kg.map_or(String::new(), |kg| format!("{kg:.2} kg")),
            ]
        })
        .collect();
    parts.push(Part::Table { columns, rows });
}

/// What a step does, by the page's own verb where the simulation knows one way of frying for several.
fn in_the_pages_words(recipe: &Recipe, step: &StepRow) -> String {
    let operation = recipe
        .operations
        .iter()
        .find(|operation| Some(operation.span) == step.span);
    let word = match operation.map(|operation| operation.verb) {
        Some(Verb::Sweat) => "sweat",
        Some(Verb::Brown) => "brown",
        Some(Verb::Melt) => "melt",
        Some(Verb::Toast) => "toast",
        Some(Verb::Heat) => "heat",
        _ => "fry",
    };
    let parts = step
        .what
        .split(", ")
        .map(|part| if part == "fry" { word } else { part });
    parts.collect::<Vec<_>>().join(", ")
}

fn label(parts: &mut Vec<Part>, dossier: &Dossier) {
    if dossier.nutrition.is_empty() {
        return;
    }
    parts.push(Part::Heading("Nutrition".into()));
    let columns = vec![
        Column::left(""),
        Column::right("a portion"),
        Column::left(""),
        Column::right("100 g"),
        Column::right("US label"),
        Column::right("% DV"),
        Column::left("EU label"),
    ];
    let rows = dossier
        .nutrition
        .iter()
        .map(|row| {
            vec![
                row.name.clone(),
                row.per_portion.display_value(),
                spread(&row.per_portion),
                row.per_100_g.display_value(),
                row.us_label.clone().unwrap_or_default(),
                row.us_daily_value.clone().unwrap_or_default(),
                row.eu_label.clone().unwrap_or_default(),
            ]
        })
        .collect();
    parts.push(Part::Table { columns, rows });
    parts.push(Part::Paragraph(
        "US label a portion, EU label 100 g; 100 g are 100 g eaten, without bone and shell.".into(),
    ));
}

fn allergens(parts: &mut Vec<Part>, dossier: &Dossier) {
    parts.push(Part::Heading("Allergens".into()));
    let columns = vec![Column::left(""), Column::left("declared"), Column::left("because of")];
    let mut rows = Vec::new();
    for found in dossier.allergens.iter().filter(|row| row.contains == Contains::Yes) {
        let law = match (found.declare_us, found.declare_eu) {
            (true, true) => "US, EU",
            (true, false) => "US",
            (false, true) => "EU",
            (false, false) => "below the limit",
        };
        rows.push(vec![
            allergen(found.allergen).into(),
            law.into(),
            found.causes.join(", "),
        ]);
    }
    rows.extend(packets_to_read(dossier));
    if rows.is_empty() {
        parts.push(Part::Paragraph(
            "None of the allergens of US and EU law is in what the page lists.".into(),
        ));
    } else {
        parts.push(Part::Table { columns, rows });
    }
    let causes = dossier.animal_causes.join(", ");
    let animal = match dossier.animal {
        Some(true) => format!("Contains animal products: {causes}."),
        Some(false) => "No animal products.".into(),
        None => format!("Whether it is free of animal products is not known: {causes}."),
    };
    parts.push(Part::Paragraph(animal));
}

/// What is not known, a row for each set of packets that would tell.
fn packets_to_read(dossier: &Dossier) -> Vec<Vec<String>> {
    let mut groups: Vec<(Vec<&str>, &[String])> = Vec::new();
    for row in dossier
        .allergens
        .iter()
        .filter(|row| row.contains == Contains::NotKnown)
    {
        match groups.iter_mut().find(|(_, causes)| *causes == row.causes) {
            Some((names, _)) => names.push(allergen(row.allergen)),
            None => groups.push((vec![allergen(row.allergen)], &row.causes)),
        }
    }
    let row = |(names, causes): (Vec<&str>, &[String])| {
        vec![
            names.join(", "),
            "not known".into(),
            format!("read the packet: {}", causes.join(", ")),
        ]
    };
    groups.into_iter().map(row).collect()
}

fn costs(parts: &mut Vec<Part>, dossier: &Dossier) {
    let Some(cost) = &dossier.cost else { return };
    let heading = match dossier.currency.as_str() {
        "" => "What it costs".to_owned(),
        currency => format!("What it costs, in {currency}"),
    };
    parts.push(Part::Heading(heading));
    let mut rows = vec![row("the dish", cost)];
    if let Some(portion) = &dossier.cost_per_portion {
        rows.push(row("a portion", portion));
    }
    parts.push(figures(rows));
    parts.extend(reasons(&[cost]).map(Part::Paragraph));
    if !dossier.unpriced.is_empty() {
        parts.push(Part::Paragraph(format!(
            "Without {}: no price in the book's table.",
            dossier.unpriced.join(", ")
        )));
    }
}

fn notes(parts: &mut Vec<Part>, heading: &str, notes: &[Assumption], text: &str) {
    if notes.is_empty() {
        return;
    }
    parts.push(Part::Heading(heading.into()));
    parts.push(Part::List(notes.iter().map(|note| note_line(note, text)).collect()));
}

fn note_line(note: &Assumption, text: &str) -> String {
    match note.span {
        Some(span) => format!("line {}: {}", line_of(text, span.start), note.text),
        None => note.text.clone(),
    }
}

fn open(parts: &mut Vec<Part>, recipe: &Recipe, dossier: &Dossier, text: &str, queries: &[Query]) {
    // What is asked below is not said here as well.
    let asked = |note: &&Assumption| {
        let same = |query: &Query| query.code == "L11" && Some(query.span) == note.span;
        queries.iter().any(same)
    };
    let left = dossier.open.iter().filter(|note| !asked(note));
    let mut items: Vec<String> = left.map(|note| note_line(note, text)).collect();
    for unsure in &recipe.unsure {
        let taken = unsure
            .taken_as
            .as_ref()
            .map_or(String::new(), |taken| format!(" Taken as {taken}."));
        items.push(format!(
            "line {}: {}{taken}",
            line_of(text, unsure.span.start),
            unsure.what
        ));
    }
    if items.is_empty() {
        return;
    }
    parts.push(Part::Heading("Left open".into()));
    parts.push(Part::List(items));
}

fn asked(parts: &mut Vec<Part>, text: &str, queries: &[Query]) {
    parts.push(Part::Heading("Author queries".into()));
    if queries.is_empty() {
        parts.push(Part::Paragraph("None.".into()));
        return;
    }
    let items = queries.iter().map(|query| {
        format!(
            "line {}, {} ({}): {} Because {}.",
            line_of(text, query.span.start),
            query.weight.words(),
            query.code,
            query.asks,
            query.because,
        )
    });
    parts.push(Part::List(items.collect()));
}
