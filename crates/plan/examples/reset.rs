//! Re-sets a typed page: FILE PEOPLE metric|us|both|own [us]; the last word says the page is a US one.
use potwright_larder::Larder;
use potwright_measure::Measures;
use potwright_plan::{BatchSize, MeasuresWanted, Request, convert};

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let text = std::fs::read_to_string(&args[0]).expect("a page");
    let recipe = potwright_manuscript::read(&text);
    let size = match args[1].strip_prefix('x') {
        Some(times) => BatchSize::Times(times.parse().expect("a number")),
        None => BatchSize::ForServings(args[1].parse().expect("a number")),
    };
    let measures = match args[2].as_str() {
        "metric" => MeasuresWanted::Metric,
        "us" => MeasuresWanted::Us,
        "both" => MeasuresWanted::Both,
        _ => MeasuresWanted::AsWritten,
    };
    let home = if args.len() > 3 { Measures::Us } else { Measures::Metric };
    let request = Request {
        size,
        measures,
        home,
        ..Request::default()
    };
    let done = convert(&recipe, &text, &request, Larder::built_in());
    println!("{}", done.text());
}
