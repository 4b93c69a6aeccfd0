//! Prints the dossiers of typed pages, to be read as a cook reads them.
//!
//! `cargo run -p potwright-reckon --example read_dossiers -- FILE…`: each page may use what the pages before it make.

#![expect(clippy::print_stdout, clippy::print_stderr, reason = "a program for the terminal")]

use std::time::Instant;

use potwright_larder::Larder;
use potwright_measure::Measures;
use potwright_pot::{Kitchen, Made};
use potwright_reckon::{Dossier, Figure, Prices, Target, reckon};

fn main() {
    let larder = Larder::built_in();
    let kitchen = Kitchen::default();
    let mut made: Vec<Made> = Vec::new();
    for path in std::env::args().skip(1) {
        let text = match std::fs::read_to_string(&path) {
            Ok(text) => text,
            Err(error) => {
                eprintln!("{path}: {error}");
                continue;
            }
        };
        let recipe = potwright_manuscript::read(&text);
        let process = potwright_pot::resolve(&recipe, &text, larder, &made, &kitchen, Measures::Metric);
        let start = Instant::now();
        let found = reckon(
            process,
            &kitchen,
            larder,
            &made,
            &Prices::default(),
            &Target::default(),
            64,
            1,
        );
        println!("{}", "=".repeat(100));
        for lot in &found.process.lots {
            println!(
                "  {:>8.1} g  {:<28} {:?} {} {}",
                lot.mass.grams(),
                lot.name,
                lot.kind,
                if lot.pieces.is_some() { "pieces" } else { "" },
                lot.how
            );
        }
        print(&found.dossier);
        println!("  made: {:?}; 65 runs in {:?}", found.made.names, start.elapsed());
        made.push(found.made);
    }
}

fn print(dossier: &Dossier) {
    println!(
        "{}  ({}: {})",
        dossier.title, dossier.portions, dossier.portions_because
    );
    let rows: [(&str, &Figure); 17] = [
        ("yield", &dossier.yield_mass),
        ("volume", &dossier.yield_volume),
        ("portion", &dossier.portion_mass),
        ("portion volume", &dossier.portion_volume),
        ("pieces", &dossier.solids),
        ("elapsed", &dossier.elapsed),
        ("hands on", &dossier.hands_on),
        ("salt in liquid", &dossier.liquid_salinity),
        ("salt", &dossier.salinity),
        ("salt next day", &dossier.salinity_next_day),
        ("sugar", &dossier.sugar),
        ("fat", &dossier.fat),
        ("acid", &dossier.acid),
        ("alcohol", &dossier.alcohol),
        ("boils at", &dossier.boiling_point),
        ("evaporated", &dossier.evaporated),
        ("thickener", &dossier.body.thickener),
    ];
    for (name, figure) in rows {
        println!(
            "  {name:<16} {:<34} {} {}",
            figure.display(),
            figure.known.words(),
            figure.because.as_deref().unwrap_or("")
        );
    }
    for (name, figure) in [("alcohol kept", &dossier.alcohol_kept), ("cost", &dossier.cost)] {
        if let Some(figure) = figure {
            println!(
                "  {name:<16} {:<34} {}",
                figure.display(),
                figure.because.as_deref().unwrap_or("")
            );
        }
    }
    println!("  body {:?} {:?}", dossier.body.word, dossier.body.range);
    for row in &dossier.doneness {
        let tender = row.tender.as_ref().map_or(String::new(), Figure::display);
        println!(
            "  {:<24} {:?} {:?} {} tender {tender} [{}]",
            row.name,
            row.hazard,
            row.verdict,
            row.centre.display(),
            row.rule
        );
    }
    for row in &dossier.cooling {
        println!("  cooling {:?} {}", row.verdict, row.says);
    }
    for row in &dossier.nutrition {
        println!(
            "  {:<24} {:<28} {:<28} | {:<16} {:<6} | {}",
            row.name,
            row.per_portion.display(),
            row.per_100_g.display(),
            row.us_label.as_deref().unwrap_or(""),
            row.us_daily_value.as_deref().unwrap_or(""),
            row.eu_label.as_deref().unwrap_or("")
        );
    }
    for row in &dossier.allergens {
        println!(
            "  {:?} {:?} {} us {} eu {}",
            row.allergen,
            row.contains,
            row.causes.join(", "),
            row.declare_us,
            row.declare_eu
        );
    }
    println!("  animal {:?}; unpriced {:?}", dossier.animal, dossier.unpriced);
    for row in &dossier.to_taste {
        println!("  to taste: {}: {}", row.name, row.says);
    }
    for row in &dossier.steps {
        println!(
            "  {:>6.0} – {:>6.0} min  {:<60} {:>4.0} °C {:>6.2} kg",
            row.start_min,
            row.end_min,
            row.what,
            row.temp_c.unwrap_or(f64::NAN),
            row.mass_kg.unwrap_or(f64::NAN)
        );
    }
    for (what, list) in [
        ("happened", &dossier.happenings),
        ("assumed", &dossier.assumptions),
        ("open", &dossier.open),
    ] {
        for note in list {
            println!("  {what}: {}", note.text);
        }
    }
    for caution in &dossier.cautions {
        println!("  ! {caution}");
    }
}
