//! `cargo xtask prove spread`: whether the draws that every range is taken from are enough.
//!
//! Three dishes of the demo book that have an event inside their spread – something that happens in some kitchens and not
//! in others – are cooked 20,000 times by plain chance, and the percentiles of the even draws held against theirs.

use std::path::Path;
use std::thread;

use anyhow::{Context, Result};
use potwright_house::House;
use potwright_pot::{Happening, Kitchen, Process, resolve};
use potwright_reckon::sampling::{percentile, sorted};
use potwright_reckon::{Cooking, Cookings, DRAWS, Design, Target};

use super::figures::{Figures, Table, meant};
use super::physics::digits;

/// Cookings by plain chance.
const TRUTH: usize = 20_000;
/// Seeds under which the even draws are tried; the worst of them counts.
const SEEDS: std::ops::Range<u64> = 1..11;
/// Cookings that tell which events lie inside a spread.
const SCOUTS: usize = 512;
/// Percentiles that are held against each other, and how far off they may be, in percent of the 5–95 % width.
const PERCENTS: [f64; 3] = [5.0, 50.0, 95.0];
const WITHIN: f64 = 10.0;

/// So many times the draws of the house are tried beside them.
const MORE: usize = 4;

type Pick = fn(&Cooking) -> f64;

const FIGURES: [(&str, Pick); 6] = [
    ("yield, kg", |cooking| cooking.yield_kg),
    ("salt, %", |cooking| cooking.salt_percent),
    ("energy, kcal", |cooking| cooking.energy_kcal),
    ("start to table, min", |cooking| cooking.minutes),
    ("hottest in any vessel, °C", |cooking| cooking.hottest_c),
    ("coldest pieces at their hottest, °C", |cooking| cooking.coldest_c),
];

pub(super) fn work(_: &Path) -> Result<Figures> {
    let book = potwright_book::demo::book().context("the demo book cannot be read")?;
    let dishes = dishes(&book)?;
    let mut events: Vec<(usize, Event)> = dishes
        .iter()
        .enumerate()
        .filter_map(|(place, dish)| Some((place, most_open(&dish.cooked(Design::Even, SCOUTS, 1))?)))
        .collect();
    events.sort_by(|(_, a), (_, b)| a.off_half().total_cmp(&b.off_half()));
    let mut tables = vec![open_events(&dishes, &events)];
    let mut hangs = Table::new("What the spread hangs on", &["dish", "figure", "most", "then"]);
    for (place, _) in events.iter().take(3) {
        let dish = &dishes[*place];
        let truth = dish.cooked(Design::Independent, TRUTH, 0);
        tables.push(quantiles(dish, &truth));
        hangs.rows.extend(hangs_on(dish, &truth));
    }
    tables.push(hangs);
    Ok(Figures {
        title: "The spread, held to 20,000 cookings".into(),
        says: format!(
            "There is no fast method beside the cooking: every range of a figure is the 5th and 95th percentile of {DRAWS} \
             cookings whose unknowns are drawn evenly – those that all foods share on a lattice, the masses of the lots on \
             a Latin hypercube. Here the three dishes of the demo book whose spread holds the most open event – one that \
             happens nearest to half of all times – are cooked {TRUTH} times by plain chance, and of each of {} seeds the \
             worst of three percentiles is taken, in percent of the width from the 5th to the 95th: shown are the middle \
             seed and the worst. Beside the even draws stand as many by plain chance, and even ones {MORE} times as many: \
             what waiting longer would tell. The same seed gives the same cookings on any number of cores.",
            SEEDS.end - SEEDS.start
        ),
        tables,
    })
}

/// A dish ready to be cooked.
struct Dish {
    title: String,
    process: Process,
    kitchen: Kitchen,
    made: Vec<potwright_pot::Made>,
    target: Target,
}

impl Dish {
    fn cooked(&self, design: Design, count: usize, seed: u64) -> Cookings {
        let cores = thread::available_parallelism().map_or(1, usize::from);
        Cookings::of(
            self.process.clone(),
            &self.kitchen,
            (potwright_larder::Larder::built_in(), &self.made),
            &self.target,
            (design, count, seed),
            cores,
        )
    }
}

/// All dishes of a book; what other dishes made is known to every one.
fn dishes(book: &potwright_book::Book) -> Result<Vec<Dish>> {
    let house = House::open(book.clone()).with_draws(0);
    let cooked: Vec<_> = house.reckon_all().into_iter().collect::<Result<_, _>>()?;
    let made: Vec<_> = cooked.iter().map(|cooked| cooked.reckoned.made.clone()).collect();
    let dish = |place: usize| {
        let page = &cooked[place];
        let others = made.iter().enumerate().filter(|(other, _)| *other != place);
        let made: Vec<_> = others.map(|(_, made)| made.clone()).collect();
        let process = resolve(
            &page.recipe,
            &page.text,
            house.larder(),
            &made,
            &book.kitchen,
            book.settings.measures,
        );
        Dish {
            title: process.title.clone(),
            process,
            kitchen: book.kitchen.clone(),
            made,
            target: book.settings.target,
        }
    };
    Ok((0..cooked.len()).map(dish).collect())
}

/// What happens in a share of all cookings.
struct Event {
    name: &'static str,
    share: f64,
}

impl Event {
    fn off_half(&self) -> f64 {
        (self.share - 0.5).abs()
    }
}

const fn name(what: &Happening) -> &'static str {
    match what {
        Happening::Boiled => "comes to the boil",
        Happening::BoiledDry => "boils dry",
        Happening::TooFull(_) => "is too full",
        Happening::CueNotReached => "the sign to stop does not come",
        Happening::BoiledThoughForbidden => "boils though it must not",
        Happening::CrowdedPan { .. } => "the pan is crowded",
        Happening::NotEnoughHeat => "the burner is too weak",
        Happening::DairyHot(_) => "milk or cream gets too hot",
        Happening::TooMuchForThePan { .. } => "it is too much for the pan",
        Happening::Clings(_) => "liquid clings to what is strained",
        Happening::Curdles { .. } => "it curdles",
        _ => "something else",
    }
}

/// The event nearest to happening half of all times; none that happens in 5 to 95 % of them, none at all.
fn most_open(cookings: &Cookings) -> Option<Event> {
    let all = cookings
        .cooked
        .iter()
        .flat_map(|cooking| cooking.happened.iter().map(name));
    let mut names: Vec<&'static str> = all.collect();
    names.sort_unstable();
    names.dedup();
    let event = |event: &'static str| {
        let with = |cooking: &&Cooking| cooking.happened.iter().any(|what| name(what) == event);
        let count = cookings.cooked.iter().filter(with).count();
        Event {
            name: event,
            share: count as f64 / cookings.cooked.len().max(1) as f64,
        }
    };
    names
        .into_iter()
        .map(event)
        .filter(|event| (0.05..=0.95).contains(&event.share))
        .min_by(|a, b| a.off_half().total_cmp(&b.off_half()))
}

fn open_events(dishes: &[Dish], events: &[(usize, Event)]) -> Table {
    let mut table = Table::new(
        "Events inside a spread",
        &["dish", "what happens", "in so many of 100 kitchens"],
    );
    table.rows = events
        .iter()
        .map(|(place, event)| {
            vec![
                dishes[*place].title.clone(),
                event.name.into(),
                format!("{:.0}", 100.0 * event.share),
            ]
        })
        .collect();
    table
}

/// Percentiles of a figure; none where it is no number or hardly changes.
fn percentiles(cookings: &Cookings, pick: Pick) -> Option<[f64; 3]> {
    let sorted = sorted(cookings.cooked.iter().map(pick));
    let [low, middle, high] = PERCENTS.map(|percent| percentile(&sorted, percent));
    Some([low?, middle?, high?])
}

/// How far percentiles are off at their worst, percent of the width, seed by seed, the least first.
fn off(truth: [f64; 3], tried: &[Cookings], pick: Pick) -> Vec<f64> {
    let width = truth[2] - truth[0];
    let of = |cookings: &Cookings| {
        let found = percentiles(cookings, pick).unwrap_or([f64::NAN; 3]);
        let apart = found.iter().zip(truth).map(|(found, truth)| (found - truth).abs());
        100.0 * apart.fold(0.0, f64::max) / width
    };
    sorted(tried.iter().map(of))
}

/// What is off for the middle seed, and for the worst.
fn middle_and_worst(off: &[f64]) -> (f64, f64) {
    let at = |percent| percentile(off, percent).unwrap_or(f64::NAN);
    (at(50.0), at(100.0))
}

fn quantiles(dish: &Dish, truth: &Cookings) -> Table {
    let (even, chance, more) = ("even", "by chance", format!("even, {}", MORE * DRAWS));
    let heads = [
        "figure",
        "5 %",
        "50 %",
        "95 %",
        even,
        chance,
        &more,
        "even, meant to be",
    ];
    let mut table = Table::new(&dish.title, &heads);
    let tried = |design: Design, count: usize| -> Vec<Cookings> {
        SEEDS.map(|seed| dish.cooked(design, count, seed)).collect()
    };
    let tries = [
        tried(Design::Even, DRAWS),
        tried(Design::Independent, DRAWS),
        tried(Design::Even, MORE * DRAWS),
    ];
    for (figure, pick) in FIGURES {
        let Some(of_truth) = percentiles(truth, pick) else {
            continue;
        };
        let mut cells = vec![figure.to_owned()];
        cells.extend(of_truth.map(digits));
        // Less than a thousandth of the figure is no spread that anybody prints.
        if of_truth[2] - of_truth[0] <= 1e-3 * of_truth[1].abs() {
            cells.extend(["hardly changes".into(), String::new(), String::new(), String::new()]);
        } else {
            let offs = tries
                .each_ref()
                .map(|tried| middle_and_worst(&off(of_truth, tried, pick)));
            cells.extend(offs.map(|(middle, worst)| format!("{middle:.1} %, {worst:.1} %")));
            cells.push(meant(&format!("≤ {WITHIN:.0} %"), offs[0].0 <= WITHIN));
        }
        table.rows.push(cells);
    }
    table
}

fn hangs_on(dish: &Dish, truth: &Cookings) -> Vec<Vec<String>> {
    let share =
        |(unknown, share): &(potwright_reckon::Unknown, f64)| format!("{} ({:.0} %)", unknown.words(), 100.0 * share);
    let row = |(figure, pick): (&str, Pick)| {
        let shares = truth.hangs_on(pick);
        let [most, then, ..] = shares.as_slice() else {
            return None;
        };
        Some(vec![dish.title.clone(), figure.into(), share(most), share(then)])
    };
    FIGURES.into_iter().filter_map(row).collect()
}
