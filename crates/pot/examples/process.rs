//! Prints the process of each typed page that is named: lots, vessels, acts, what was assumed, what stays open.
//!
//! `cargo run -p potwright-pot --example process -- PAGE…`
#![allow(clippy::print_stdout, reason = "an example that prints")]
#![allow(clippy::print_stderr, reason = "an example that prints")]

use potwright_larder::Larder;
use potwright_measure::Measures;
use potwright_pot::{Doing, Kitchen, Lot, Process, Source, resolve};

fn main() {
    for path in std::env::args().skip(1) {
        let text = match std::fs::read_to_string(&path) {
            Ok(text) => text,
            Err(error) => {
                eprintln!("{path}: {error}");
                std::process::exit(2);
            }
        };
        let recipe = potwright_manuscript::read(&text);
        let process = resolve(
            &recipe,
            &text,
            Larder::built_in(),
            &[],
            &Kitchen::default(),
            Measures::Metric,
        );
        print(&process, &text);
    }
}

fn print(process: &Process, text: &str) {
    println!("=== {} (serves {:?})", process.title, process.servings);
    for (index, lot) in process.lots.iter().enumerate() {
        println!("{}", lot_line(index, lot, process.to_taste.contains(&index)));
    }
    for (index, vessel) in process.vessels.iter().enumerate() {
        let pot = vessel.pot.as_ref().map_or("holds only".to_owned(), |pot| {
            format!("{} ({:.1} l)", pot.name, pot.litres())
        });
        println!("  vessel {index}: {} = {pot}", vessel.name);
    }
    for act in &process.acts {
        let words = act
            .span
            .map_or("", |span| span.of(text))
            .split_whitespace()
            .collect::<Vec<_>>()
            .join(" ");
        let meanwhile = if act.meanwhile { " meanwhile" } else { "" };
        println!(
            "  [{}]{meanwhile} {}   ‘{words}’",
            act.vessel,
            doing(&act.doing, process)
        );
    }
    println!("  dish in vessel {}", process.dish_vessel);
    for note in &process.assumptions {
        println!("  assumed: {}", note.text);
    }
    for note in &process.open {
        println!("  OPEN: {}", note.text);
    }
}

fn lot_line(index: usize, lot: &Lot, to_taste: bool) -> String {
    let source = match lot.source {
        Source::Larder(id) => Larder::built_in()
            .get(id)
            .map_or("?", |food| food.key.as_str())
            .to_owned(),
        Source::Made(index) => format!("made {index}"),
        Source::Unknown => "unknown".to_owned(),
    };
    let flags = [
        (to_taste, " to-taste"),
        (lot.for_serving, " for-serving"),
        (lot.optional, " optional"),
    ];
    let flags: String = flags.iter().filter(|(set, _)| *set).map(|(_, word)| *word).collect();
    format!(
        "  {index:2} {:26} {source:22} {:7.1} g (bought {:7.1}; {:.2}–{:.2}) {:4.0} °C bone {:5.1} {:?} hands {:.1} min  {}{flags}",
        lot.name,
        lot.mass.grams(),
        lot.purchased.grams(),
        lot.spread.low,
        lot.spread.high,
        lot.temperature.celsius(),
        lot.inedible.grams(),
        lot.pieces.map(|pieces| pieces.shape),
        lot.preparation.minutes(),
        lot.how,
    )
}

fn doing(doing: &Doing, process: &Process) -> String {
    match doing {
        Doing::Add(portions) => {
            let each = |portion: &potwright_pot::Portion| {
                let lot = &process.lots[portion.lot];
                format!("{} {:.0} g", lot.name, lot.mass.grams() * portion.share)
            };
            format!("add {}", portions.iter().map(each).collect::<Vec<_>>().join(", "))
        }
        Doing::Cook(stretch) => format!(
            "cook {:?} {:?} {:?} {:?} lid {:?} ×{}",
            stretch.place,
            stretch.aim,
            stretch.lasts.minutes.map(|m| (m.low, m.mid, m.high)),
            stretch.lasts.cue,
            stretch.cover,
            stretch.batches
        ),
        other => format!("{other:?}"),
    }
}
