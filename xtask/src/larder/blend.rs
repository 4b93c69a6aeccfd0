//! Foods the official tables have no row for, computed from rows they have: `blends.tsv`, shares by mass.

use std::collections::BTreeMap;

use anyhow::{Context, Result, bail};

use potwright_larder::official::{COLUMNS, FIGURES, Figures, Official, value};

use super::official::key;
use super::rows;

/// The parts of a blend: NDB number and share by mass; shares make one together.
pub(crate) type Parts = Vec<(String, f64)>;

/// Reads `blends.tsv`.
pub(crate) fn read(text: &str) -> Result<BTreeMap<String, Parts>> {
    let mut blends: BTreeMap<String, Parts> = BTreeMap::new();
    for cells in rows(text) {
        let &[key, ndb, share, _source] = cells.as_slice() else {
            bail!("blends.tsv: a row must have four cells: '{}'", cells.join(" "));
        };
        let share: f64 = share
            .parse()
            .with_context(|| format!("blends.tsv: the share of '{key}'"))?;
        blends.entry(key.to_owned()).or_default().push((ndb.to_owned(), share));
    }
    for (key, parts) in &blends {
        let whole: f64 = parts.iter().map(|(_, share)| share).sum();
        if (whole - 1.0).abs() > 1e-9 {
            bail!("blends.tsv: the shares of '{key}' make {whole}, not 1");
        }
    }
    Ok(blends)
}

/// Composition by balance. A figure one part lacks is lacking, but for alcohol, which the tables leave out where
/// there is none. A factor is weighted by what it is a factor of.
pub(crate) fn mix(parts: &Parts, official: &Official) -> Result<Figures> {
    let mut rows = Vec::new();
    for (ndb, share) in parts {
        let food = official.foods.get(&key(ndb));
        let food = food.with_context(|| format!("blends.tsv: no NDB {ndb}"))?;
        rows.push((&food.figures, *share));
    }
    let mut mixed: Figures = [None; FIGURES];
    for (place, (column, _)) in COLUMNS.iter().enumerate() {
        let weigher = match *column {
            "protein_factor" => Some("protein_g"),
            "fat_factor" => Some("fat_g"),
            "carbohydrate_factor" => Some("carbohydrate_g"),
            _ => None,
        };
        let terms = rows.iter().map(|(figures, share)| {
            let figure = figures.get(place).copied().flatten();
            let weight = weigher
                .map_or(Some(1.0), |column| value(figures, column))
                .map(|weight| weight * share);
            match (figure, weight) {
                (_, Some(0.0)) => Some((0.0, 0.0)),
                (Some(figure), Some(weight)) => Some((figure * weight, weight)),
                (None, _) if *column == "alcohol_g" => Some((0.0, *share)),
                _ => None,
            }
        });
        let sums: Option<Vec<(f64, f64)>> = terms.collect();
        let sums = sums.map(|terms| terms.iter().fold((0.0, 0.0), |(a, b), (x, y)| (a + x, b + y)));
        if let (Some((sum, weight)), Some(figure)) = (sums, mixed.get_mut(place)) {
            *figure = if weigher.is_none() {
                Some(sum)
            } else {
                (weight > 0.0).then(|| sum / weight)
            };
        }
    }
    Ok(mixed)
}
