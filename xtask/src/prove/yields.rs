//! Yields of published dishes by simulation, from grams of ingredients to grams of the finished dish.
//!
//! The USDA's food survey publishes of each dish the grams that go in and the change of its water. Ten dishes whose
//! method anyone who cooks knows are written down as pages, with the published grams in their lists, and cooked by
//! the program's own path. No tolerance is set: every dish is shown, however far off.

mod pages;
#[cfg(test)]
mod tests;

use std::path::Path;

use anyhow::{Context, Result, bail};
use potwright_book::Book;
use potwright_house::{Cooked, House};
use potwright_pot::{Aim, Doing, Place, Process, Stretch, Trace};

use super::figures::{Figures, Table};
use super::fndds::{Dish, FOLDER, Fndds};
use pages::{PAGES, Page};

/// How far a page's grams may be from the published ones: pages are written to a tenth.
const PAGE_ROUNDS_G: f64 = 0.051;

pub(super) fn work(_: &Path) -> Result<Figures> {
    let folder = std::env::var_os(FOLDER).with_context(|| format!("{FOLDER} does not name a folder"))?;
    let fndds = Fndds::read(Path::new(&folder))?;
    let house = House::open(Book::default());
    let mut yields = Vec::new();
    for page in &PAGES {
        let dish = fndds.dishes.get(page.code);
        let dish = dish.with_context(|| format!("no dish {} is published", page.code))?;
        yields.push(Yield::of(&house, page, dish).with_context(|| format!("page {}", page.code))?);
    }
    Ok(Figures {
        title: "Yields, held to published dishes".into(),
        says: format!("{SAYS} {}", together(&yields)),
        tables: vec![summary(&yields), losses(&yields)],
    })
}

const SAYS: &str = "\
    Ten dishes of the USDA's Food and Nutrient Database for Dietary Studies 2019–2020 (At A Glance), chosen before \
    any was cooked: soups, stews and chowders whose list gives a loss of water and whose method is common \
    knowledge. The pages are our own (`xtask/src/prove/yields/`), with the published grams, which are of what is \
    eaten, in their lists; they are cooked by the program in the kitchen that it takes when none is described. \
    Published is what went in less the published loss; ours is the finished dish with its 5–95 % range. No \
    tolerance is set and no dish is left out.\n\n\
    The published loss is no weighing of a pot: it is one round percentage for all foods of a dish, the same for \
    whole families of soups, whatever goes in cooked. The times and the lid are our pages'. So a row tells whether \
    the simulation is a likely cooking of that dish, not by how much it errs. The rows together tell more.";

/// What all rows together show.
fn together(yields: &[Yield]) -> String {
    let lighter = yields.iter().filter(|dish| dish.off() < 0.0).count();
    let inside = yields.iter().filter(|dish| dish.in_range()).count();
    let off = middle(yields.iter().map(Yield::off).collect());
    let wanted = middle(yields.iter().map(Yield::simmer_wanted).collect());
    format!(
        "{lighter} of {} come out lighter than published, and of {inside} the published mass lies in our range; the \
         median is off by {:+.0} %. Were it all the simmering's, simmering would have to take {wanted:.2} of what it \
         took. Part of it is the frying's: beside raw onions (NDB 11282) the sautéed ones of USDA SR28 (NDB 11286) \
         hold 0.86 of the protein and 0.84 of the carbohydrate in 100 g, and 10.8 g of fat. So 100 g became some \
         117 g with 13 g of fat, and lost no water at all.",
        yields.len(),
        100.0 * off
    )
}

/// The median; of an even number of values the mean of the two in the middle.
fn middle(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    let at = |place: usize| values.get(place).copied().unwrap_or(0.0);
    f64::midpoint(at(values.len().saturating_sub(1) / 2), at(values.len() / 2))
}

/// A dish as published and as cooked.
struct Yield {
    name: String,
    code: &'static str,
    in_g: f64,
    published_g: f64,
    ours_g: f64,
    /// 5 % and 95 %.
    range_g: (f64, f64),
    lost: Lost,
    why: &'static str,
}

impl Yield {
    fn of(house: &House, page: &Page, dish: &Dish) -> Result<Self> {
        same_grams(page.text, dish)?;
        let cooked = house.reckon_page(page.text)?;
        all_weighed(&cooked, page.text)?;
        let made = &cooked.reckoned.dossier.yield_mass;
        let (low, high) = made.spread.unwrap_or((made.value, made.value));
        Ok(Yield {
            name: page.text.lines().next().unwrap_or("").to_owned(),
            code: page.code,
            in_g: grams(page.text).iter().sum(),
            published_g: dish.finished_g(),
            ours_g: 1000.0 * made.value,
            range_g: (1000.0 * low, 1000.0 * high),
            lost: Lost::of(&cooked.reckoned.process, &cooked.reckoned.trace),
            why: page.why,
        })
    }

    fn off(&self) -> f64 {
        self.ours_g / self.published_g - 1.0
    }

    /// What simmering would have to take for the published mass to be met, all else as it is: a share of what it took.
    fn simmer_wanted(&self) -> f64 {
        (self.lost.simmer_g + self.ours_g - self.published_g) / self.lost.simmer_g
    }

    fn in_range(&self) -> bool {
        (self.range_g.0..=self.range_g.1).contains(&self.published_g)
    }
}

/// The grams at the begin of each line of a page's list.
fn grams(text: &str) -> Vec<f64> {
    let weighed = |line: &str| line.split_once(" g ")?.0.parse::<f64>().ok();
    text.lines().filter_map(weighed).collect()
}

/// Whether the page's list is the published one, whatever the order.
fn same_grams(text: &str, dish: &Dish) -> Result<()> {
    let mut ours = grams(text);
    let mut theirs: Vec<f64> = dish.lines.iter().map(|line| line.grams).collect();
    ours.sort_by(f64::total_cmp);
    theirs.sort_by(f64::total_cmp);
    let same = |(ours, theirs): (&f64, &f64)| (ours - theirs).abs() < PAGE_ROUNDS_G;
    if ours.len() != theirs.len() || !ours.iter().zip(&theirs).all(same) {
        bail!("its grams {ours:?} are not the published ones {theirs:?}");
    }
    Ok(())
}

/// Whether all grams of the list were read, and nothing beside them.
fn all_weighed(cooked: &Cooked, text: &str) -> Result<()> {
    let listed: f64 = grams(text).iter().sum();
    let lots = cooked.reckoned.process.lots.iter();
    let read: f64 = lots.map(|lot| lot.mass.grams()).sum();
    if (read - listed).abs() > 0.001 * listed {
        bail!("{listed:.1} g stand in its list, {read:.1} g were read");
    }
    Ok(())
}

/// Grams that the vessels together lost, by what was being done.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Lost {
    pan_g: f64,
    boil_g: f64,
    simmer_g: f64,
    oven_g: f64,
    /// Between stretches, and in stretches of another kind.
    else_g: f64,
    /// What stayed in an emptied vessel.
    left_g: f64,
}

impl Lost {
    /// Read off the central run.
    fn of(process: &Process, trace: &Trace) -> Self {
        let mut lost = Lost::default();
        for (at, act) in process.acts.iter().enumerate() {
            let account = match &act.doing {
                Doing::Cook(stretch) => lost.account(stretch),
                _ => None,
            };
            if let Some(account) = account {
                *account += lost_in(trace, at);
            }
        }
        let to_the_air = 1000.0 * (trace.ledger.vapour.total_kg() + trace.ledger.spattered.total_kg());
        lost.else_g = to_the_air - lost.pan_g - lost.boil_g - lost.simmer_g - lost.oven_g;
        lost.left_g = 1000.0 * trace.ledger.left_behind.total_kg();
        lost
    }

    fn account(&mut self, stretch: &Stretch) -> Option<&mut f64> {
        match (stretch.place, stretch.aim) {
            (Place::Oven, _) => Some(&mut self.oven_g),
            (_, Aim::Fry(_)) => Some(&mut self.pan_g),
            (_, Aim::Boil) => Some(&mut self.boil_g),
            (_, Aim::Simmer) => Some(&mut self.simmer_g),
            _ => None,
        }
    }

    #[cfg(test)]
    fn sum_g(&self) -> f64 {
        self.pan_g + self.boil_g + self.simmer_g + self.oven_g + self.else_g + self.left_g
    }
}

/// Grams that all vessels together lost from an act's first sample to its last.
fn lost_in(trace: &Trace, act: usize) -> f64 {
    let mut masses = trace.samples.iter().filter(|sample| sample.act == act).map(|sample| {
        let masses = sample.vessels.iter().map(|vessel| 1000.0 * vessel.mass_kg);
        masses.sum::<f64>()
    });
    let first = masses.next().unwrap_or(0.0);
    first - masses.next_back().unwrap_or(first)
}

fn whole(grams: f64) -> String {
    format!("{:.0}", grams + 0.0)
}

fn summary(yields: &[Yield]) -> Table {
    let heads = [
        "dish",
        "grams in",
        "published loss",
        "published, g",
        "ours, g",
        "5–95 %, g",
        "our loss",
        "finished mass off by",
        "published in our range",
        "why",
    ];
    let mut table = Table::new("Finished dish", &heads);
    for dish in yields {
        let loss = |grams: f64| format!("{:.1} %", 100.0 * (1.0 - grams / dish.in_g));
        table.rows.push(vec![
            format!("{} ({})", dish.name, dish.code),
            whole(dish.in_g),
            loss(dish.published_g),
            whole(dish.published_g),
            whole(dish.ours_g),
            format!("{:.0}–{:.0}", dish.range_g.0, dish.range_g.1),
            loss(dish.ours_g),
            format!("{:+.1} %", 100.0 * dish.off()),
            if dish.in_range() { "yes" } else { "no" }.into(),
            dish.why.into(),
        ]);
    }
    table
}

/// Where the difference between what went in and what came out went.
fn losses(yields: &[Yield]) -> Table {
    let heads = [
        "dish",
        "frying",
        "coming to the boil, boiling",
        "simmering",
        "in the oven",
        "else",
        "left in emptied vessels",
        "simmering that would give the published mass",
    ];
    let mut table = Table::new("Where ours went, g", &heads);
    for dish in yields {
        let lost = &dish.lost;
        let grams = [
            lost.pan_g,
            lost.boil_g,
            lost.simmer_g,
            lost.oven_g,
            lost.else_g,
            lost.left_g,
        ];
        let mut row = vec![dish.name.clone()];
        row.extend(grams.map(whole));
        let wanted = dish.simmer_wanted();
        row.push(if wanted < 0.0 {
            "none, and less frying".into()
        } else {
            format!("{wanted:.2} of ours")
        });
        table.rows.push(row);
    }
    table
}
