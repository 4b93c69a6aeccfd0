//! Prints the process of each typed page that is named: lots, vessels, acts, what was assumed, what stays open; then
//! what came of cooking it. A page may use the dishes of the pages before it.
//!
//! `cargo run -p potwright-pot --example process -- PAGE…`
#![allow(clippy::print_stdout, reason = "an example that prints")]
#![allow(clippy::print_stderr, reason = "an example that prints")]

use potwright_larder::Larder;
use potwright_measure::Measures;
use potwright_pot::{Doing, Draw, Kitchen, Lot, Made, Matter, Process, Source, Trace, cook, resolve};

fn main() {
    let mut made: Vec<Made> = Vec::new();
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
            &made,
            &Kitchen::default(),
            Measures::Metric,
        );
        print(&process, &text);
        read(&recipe);
        let trace = cook(&process, &Kitchen::default(), &Draw::central());
        cooked(&process, &trace);
        made.push(as_made(&process, &trace));
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

/// What came of it: after each act the time, the temperature and the mass in its vessel.
fn cooked(process: &Process, trace: &Trace) {
    for (index, (act, times)) in process.acts.iter().zip(&trace.acts).enumerate() {
        let last = trace
            .samples
            .iter()
            .rev()
            .find(|sample| sample.time_s <= times.end_s + 1e-6);
        let state = last.and_then(|sample| sample.vessels.iter().find(|vessel| vessel.vessel == act.vessel));
        let state = state.map_or("empty".to_owned(), |v| {
            format!("{:.1} °C {:.0} g", v.temp_c, v.mass_kg * 1000.0)
        });
        println!(
            "  cooked {index}: {:.1}–{:.1} min [{}] {state}",
            times.start_s / 60.0,
            times.end_s / 60.0,
            act.vessel
        );
    }
    for event in &trace.events {
        println!(
            "  event {:.1} min [{}] {:?}",
            event.time_s / 60.0,
            event.vessel,
            event.what
        );
    }
    for piece in &trace.pieces {
        let name = &process.lots[piece.lot].name;
        println!(
            "  piece {name}: centre {:.1} °C, tender {:?}, {:.0} → {:.0} g",
            piece.hottest_centre_c,
            piece.tender,
            piece.raw_kg * 1e3,
            piece.cooked_kg * 1e3
        );
    }
    let solids: f64 = trace
        .served_pieces
        .iter()
        .map(|piece| piece.matter.total_kg() + piece.inedible_kg)
        .sum();
    println!(
        "  served: liquid {:.0} g, pieces {:.0} g, {:.2} l, {:.1} °C; vapour {:.0} g; elapsed {:.0} min, hands {:.0} min",
        trace.served_liquid.total_kg() * 1e3,
        solids * 1e3,
        trace.served_volume_l,
        trace.served_c,
        trace.ledger.vapour.total_kg() * 1e3,
        trace.elapsed.minutes(),
        trace.hands_on.minutes()
    );
}

/// The dish as another may use it, without allergens and cost.
fn as_made(process: &Process, trace: &Trace) -> Made {
    let mut matter: Matter = trace.served_liquid;
    for piece in &trace.served_pieces {
        matter.add(&piece.matter);
    }
    Made {
        names: vec![process.title.clone()],
        matter,
        density_g_ml: (matter.total_kg() / trace.served_volume_l.max(1e-6)).clamp(0.5, 1.5),
        allergens: Vec::new(),
        animal: false,
        sulphite_mg: 0.0,
        cost: None,
    }
}

/// What the reader made of the method.
fn read(recipe: &potwright_manuscript::Recipe) {
    for (index, operation) in recipe.operations.iter().enumerate() {
        let foods: Vec<String> = operation
            .foods
            .iter()
            .map(|food| format!("{:?}={:?}/{:?}", food.words.text, food.target, food.share))
            .collect();
        println!(
            "  read {index}: {} {foods:?} into {:?} heat {:?} {:?} min {:?} cue {:?} lid {:?} discard {:?} keep {:?} repeat {:?}{}{}",
            operation.verb.name(),
            operation.into.as_ref().map(|into| (&into.words.text, into.inferred)),
            operation.heat,
            operation.temperature,
            operation.minutes.as_ref().map(|m| (m.low, m.high, m.from_end)),
            operation.cue.as_ref().map(|cue| &cue.text),
            operation.cover,
            operation
                .discard
                .iter()
                .map(|food| &food.words.text)
                .collect::<Vec<_>>(),
            operation.keep.iter().map(|food| &food.words.text).collect::<Vec<_>>(),
            operation
                .repeat
                .as_ref()
                .map(|repeat| (&repeat.words.text, repeat.times)),
            if operation.meanwhile { " meanwhile" } else { "" },
            if operation.optional { " optional" } else { "" },
        );
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
