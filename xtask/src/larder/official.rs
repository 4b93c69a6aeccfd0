//! The official tables from a folder: a published layout, which the larder crate reads, or one flat table, plain or
//! gzipped: `sr.tsv[.gz]` with a named column for every figure, and `sr_weights.tsv`.
//!
//! An empty cell is *not determined*, and stays so.

use std::collections::BTreeMap;
use std::fs;
use std::io::Read;
use std::path::Path;

use anyhow::{Context, Result, bail};
use flate2::read::GzDecoder;
pub(crate) use potwright_larder::official::{COLUMNS, Figures, Official};
use potwright_larder::official::{FIGURES, Household, Layout, OfficialFood, Reading};

/// The flat table's columns, in the order of our figures.
const FLAT: [&str; FIGURES] = [
    "water_g",
    "energy_kcal",
    "protein_g",
    "fat_g",
    "sat_fat_g",
    "carb_g",
    "fibre_g",
    "sugars_g",
    "starch_g",
    "ash_g",
    "alcohol_g",
    "sodium_mg",
    "potassium_mg",
    "calcium_mg",
    "iron_mg",
    "cholesterol_mg",
    "vit_a_rae_ug",
    "vit_c_mg",
    "vit_d_ug",
    "pro_factor",
    "fat_factor",
    "cho_factor",
];

/// The key of an NDB number in [`Official::foods`].
pub(crate) fn key(ndb: &str) -> String {
    format!("sr{ndb}")
}

/// Reads whichever layout the folder holds.
pub(crate) fn read(folder: &Path) -> Result<Official> {
    for layout in Layout::ALL {
        let needed = layout.files().iter().filter(|file| !file.may_lack);
        if needed.into_iter().all(|file| folder.join(file.name).is_file()) {
            return published(folder, layout);
        }
    }
    for file in ["sr.tsv", "sr.tsv.gz"] {
        if folder.join(file).is_file() {
            return flat(&text(&folder.join(file))?, &text(&folder.join("sr_weights.tsv"))?);
        }
    }
    bail!(
        "{} holds neither FOOD_DES.txt nor food.csv nor sr.tsv nor sr.tsv.gz",
        folder.display()
    )
}

/// The figures of all foods by NDB number.
pub(crate) fn figures(folder: &Path) -> Result<BTreeMap<String, Figures>> {
    let foods = read(folder)?.foods.into_iter();
    let ndb = |key: String| key.strip_prefix("sr").map(str::to_owned);
    Ok(foods
        .filter_map(|(key, food)| Some((ndb(key)?, food.figures)))
        .collect())
}

fn published(folder: &Path, layout: Layout) -> Result<Official> {
    let mut reading = Reading::new(layout);
    for file in layout.files().iter().filter(|file| folder.join(file.name).is_file()) {
        for (at, line) in text(&folder.join(file.name))?.lines().enumerate() {
            reading.line(file.name, at + 1, line)?;
        }
    }
    Ok(reading.done()?)
}

/// A text file, unpacked when it is gzipped. The release is not in UTF-8: bytes above ASCII stand in descriptions
/// only, of which none reaches a table of the project.
pub(crate) fn text(path: &Path) -> Result<String> {
    let bytes = fs::read(path).with_context(|| format!("reading {}", path.display()))?;
    if path.extension().is_some_and(|extension| extension == "gz") {
        let mut out = Vec::new();
        GzDecoder::new(bytes.as_slice())
            .read_to_end(&mut out)
            .with_context(|| format!("unpacking {}", path.display()))?;
        return Ok(String::from_utf8_lossy(&out).into_owned());
    }
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

/// A number, or nothing.
pub(crate) fn number(text: &str) -> Option<f64> {
    text.trim().parse().ok()
}

fn flat(foods: &str, weights: &str) -> Result<Official> {
    let mut official = Official::default();
    let mut lines = foods.lines();
    let header: Vec<&str> = lines.next().unwrap_or("").split('\t').collect();
    let place = |column: &str| {
        header
            .iter()
            .position(|name| *name == column)
            .with_context(|| format!("no column '{column}' in sr.tsv"))
    };
    let (id, refuse) = (place("id")?, place("refuse_pct")?);
    let places = FLAT.iter().map(|column| place(column)).collect::<Result<Vec<_>>>()?;
    for line in lines {
        let cells: Vec<&str> = line.split('\t').collect();
        let cell = |place: usize| cells.get(place).copied().unwrap_or("");
        let mut figures: Figures = [None; FIGURES];
        for (figure, place) in figures.iter_mut().zip(&places) {
            *figure = number(cell(*place));
        }
        let food = OfficialFood {
            description: String::new(),
            group: String::new(),
            figures,
            refuse_percent: number(cell(refuse)),
            weights: Vec::new(),
            source: format!("USDA SR, NDB {}", cell(id)),
        };
        official.foods.insert(key(cell(id)), food);
    }
    for line in weights.lines().skip(1) {
        let &[ndb, seq, amount, text, grams, ..] = line.split('\t').collect::<Vec<_>>().as_slice() else {
            continue;
        };
        let weights = official.foods.get_mut(&key(ndb)).map(|food| &mut food.weights);
        if let (Some(weights), Ok(seq), Some(amount), Some(grams)) =
            (weights, seq.trim().parse(), number(amount), number(grams))
            && amount > 0.0
            && grams > 0.0
        {
            weights.push(Household {
                seq,
                amount,
                text: text.to_owned(),
                grams,
            });
        }
    }
    Ok(official)
}

#[cfg(test)]
mod tests {
    use super::{FLAT, Layout, Reading, flat};

    /// A row carried over as figures: USDA SR28, NDB 11124.
    #[test]
    fn flat_and_published_layouts_give_the_same_figures() {
        let mut reading = Reading::new(Layout::Release);
        let lines = [
            (
                "FOOD_DES.txt",
                "~11124~^~1100~^~Carrots, raw~^~CARROTS,RAW~^~~^~~^~Y~^~Crown, tops~^11^~Daucus carota~^6.25^2.78^8.37^3.84",
            ),
            ("NUT_DATA.txt", "~11124~^~255~^88.29^10^0.3^~1~^~~"),
            ("NUT_DATA.txt", "~11124~^~203~^0.93^10^0.1^~1~"),
            ("WEIGHT.txt", "~11124~^2^1^~cup, grated~^110^^"),
        ];
        for (file, line) in lines {
            reading.line(file, 1, line).expect("the line is sound");
        }
        let published = reading.done().expect("the table has a food");
        let mut cells = vec![""; FLAT.len()];
        (cells[0], cells[2], cells[19], cells[20], cells[21]) = ("88.29", "0.93", "2.78", "8.37", "3.84");
        let foods = format!("id\trefuse_pct\t{}\n11124\t11\t{}\n", FLAT.join("\t"), cells.join("\t"));
        let flat = flat(&foods, "id\tseq\tamount\tunit\tgrams\n11124\t2\t1\tcup, grated\t110\n").expect("flat is read");
        let (published, flat) = (&published.foods["sr11124"], &flat.foods["sr11124"]);
        assert_eq!(published.figures[0], Some(88.29));
        assert_eq!(published.figures, flat.figures);
        assert_eq!(published.refuse_percent, flat.refuse_percent);
        assert_eq!(published.weights, flat.weights);
    }
}
