//! The official tables, in the two layouts they come in.
//!
//! * The release itself: `FOOD_DES.txt`, `NUT_DATA.txt`, `WEIGHT.txt`; cells parted by `^`, texts between `~`
//!   (column order as in the documentation of USDA National Nutrient Database for Standard Reference, Release 28).
//! * One flat table, plain or gzipped: `sr.tsv[.gz]` with a named column for every nutrient, and `sr_weights.tsv`.
//!
//! An empty cell is *not determined*, and stays so.

use std::collections::BTreeMap;
use std::fs;
use std::io::Read;
use std::path::Path;

use anyhow::{Context, Result, bail};
use flate2::read::GzDecoder;

/// How many figures a food has in our composition table.
pub(crate) const FIGURES: usize = 22;

/// Our composition columns, the flat table's column and the release's nutrient number (0: in `FOOD_DES`).
pub(crate) const COLUMNS: [(&str, &str, u16); FIGURES] = [
    ("water_g", "water_g", 255),
    ("energy_kcal", "energy_kcal", 208),
    ("protein_g", "protein_g", 203),
    ("fat_g", "fat_g", 204),
    ("saturated_g", "sat_fat_g", 606),
    ("carbohydrate_g", "carb_g", 205),
    ("fibre_g", "fibre_g", 291),
    ("sugars_g", "sugars_g", 269),
    ("starch_g", "starch_g", 209),
    ("ash_g", "ash_g", 207),
    ("alcohol_g", "alcohol_g", 221),
    ("sodium_mg", "sodium_mg", 307),
    ("potassium_mg", "potassium_mg", 306),
    ("calcium_mg", "calcium_mg", 301),
    ("iron_mg", "iron_mg", 303),
    ("cholesterol_mg", "cholesterol_mg", 601),
    ("vitamin_a_ug", "vit_a_rae_ug", 320),
    ("vitamin_c_mg", "vit_c_mg", 401),
    ("vitamin_d_ug", "vit_d_ug", 328),
    ("protein_factor", "pro_factor", 0),
    ("fat_factor", "fat_factor", 0),
    ("carbohydrate_factor", "cho_factor", 0),
];

/// The figures of a food per 100 g, in the order of [`COLUMNS`].
pub(crate) type Figures = [Option<f64>; FIGURES];

/// A household weight as the official table words it.
pub(crate) struct Household {
    pub(crate) seq: u32,
    pub(crate) amount: f64,
    pub(crate) text: String,
    pub(crate) grams: f64,
}

/// The official tables by NDB number.
#[derive(Default)]
pub(crate) struct Official {
    pub(crate) figures: BTreeMap<String, Figures>,
    pub(crate) refuse_percent: BTreeMap<String, f64>,
    pub(crate) weights: BTreeMap<String, Vec<Household>>,
}

impl Official {
    /// Reads whichever layout the folder holds.
    pub(crate) fn read(folder: &Path) -> Result<Official> {
        if folder.join("FOOD_DES.txt").is_file() {
            return release(folder);
        }
        for file in ["sr.tsv", "sr.tsv.gz"] {
            if folder.join(file).is_file() {
                return flat(&text(&folder.join(file))?, &text(&folder.join("sr_weights.tsv"))?);
            }
        }
        bail!(
            "{} holds neither FOOD_DES.txt nor sr.tsv nor sr.tsv.gz",
            folder.display()
        )
    }

    fn weigh(&mut self, ndb: &str, seq: &str, amount: &str, text: &str, grams: &str) {
        let numbers = (
            seq.trim().parse(),
            amount.trim().parse::<f64>(),
            grams.trim().parse::<f64>(),
        );
        if let (Ok(seq), Ok(amount), Ok(grams)) = numbers
            && amount > 0.0
            && grams > 0.0
        {
            let weight = Household {
                seq,
                amount,
                text: text.to_owned(),
                grams,
            };
            self.weights.entry(ndb.to_owned()).or_default().push(weight);
        }
    }
}

/// A text file, unpacked when it is gzipped. The release is not in UTF-8: bytes above ASCII stand in descriptions
/// only, and are passed over.
fn text(path: &Path) -> Result<String> {
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

fn number(text: &str) -> Option<f64> {
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
    let places = COLUMNS
        .iter()
        .map(|(_, column, _)| place(column))
        .collect::<Result<Vec<_>>>()?;
    for line in lines {
        let cells: Vec<&str> = line.split('\t').collect();
        let cell = |place: usize| cells.get(place).copied().unwrap_or("");
        let mut figures: Figures = [None; FIGURES];
        for (figure, place) in figures.iter_mut().zip(&places) {
            *figure = number(cell(*place));
        }
        official.figures.insert(cell(id).to_owned(), figures);
        if let Some(percent) = number(cell(refuse)) {
            official.refuse_percent.insert(cell(id).to_owned(), percent);
        }
    }
    for line in weights.lines().skip(1) {
        if let [ndb, seq, amount, text, grams, ..] = line.split('\t').collect::<Vec<_>>().as_slice() {
            official.weigh(ndb, seq, amount, text, grams);
        }
    }
    Ok(official)
}

fn release(folder: &Path) -> Result<Official> {
    let mut official = Official::default();
    let cells = |line: &str| -> Vec<String> { line.split('^').map(|cell| cell.trim_matches('~').to_owned()).collect() };
    for line in text(&folder.join("FOOD_DES.txt"))?.lines() {
        let cells = cells(line);
        let Some(ndb) = cells.first() else { continue };
        let mut figures: Figures = [None; FIGURES];
        for (figure, place) in figures.iter_mut().skip(FIGURES - 3).zip(11..14) {
            *figure = cells.get(place).and_then(|cell| number(cell));
        }
        official.figures.insert(ndb.clone(), figures);
        if let Some(percent) = cells.get(8).and_then(|cell| number(cell)) {
            official.refuse_percent.insert(ndb.clone(), percent);
        }
    }
    for line in text(&folder.join("NUT_DATA.txt"))?.lines() {
        let cells = cells(line);
        let [ndb, nutrient, value, ..] = cells.as_slice() else {
            continue;
        };
        let place = COLUMNS
            .iter()
            .position(|(_, _, number)| *number != 0 && nutrient.parse() == Ok(*number));
        if let (Some(place), Some(figures)) = (place, official.figures.get_mut(ndb))
            && let Some(figure) = figures.get_mut(place)
        {
            *figure = number(value);
        }
    }
    for line in text(&folder.join("WEIGHT.txt"))?.lines() {
        if let [ndb, seq, amount, text, grams, ..] = cells(line).as_slice() {
            official.weigh(ndb, seq, amount, text, grams);
        }
    }
    Ok(official)
}

#[cfg(test)]
mod tests {
    use super::{COLUMNS, Official, flat, release};
    use std::fs;

    fn water(official: &Official, ndb: &str) -> Option<f64> {
        let place = COLUMNS.iter().position(|(ours, _, _)| *ours == "water_g")?;
        official.figures.get(ndb)?[place]
    }

    #[test]
    fn both_layouts_give_the_same_figures() {
        let folder = std::env::temp_dir().join(format!("potwright-larder-{}", std::process::id()));
        fs::create_dir_all(&folder).expect("a temporary folder can be made");
        let files = [
            (
                "FOOD_DES.txt",
                "~11124~^~1100~^~Carrots, raw~^~CARROTS,RAW~^~~^~~^~Y~^~Crown, tops~^11^~Daucus carota~^6.25^2.78^8.37^3.84\r\n",
            ),
            (
                "NUT_DATA.txt",
                "~11124~^~255~^88.29^10^0.3^~1~^~~\r\n~11124~^~203~^0.93^10^0.1^~1~\r\n",
            ),
            ("WEIGHT.txt", "~11124~^2^1^~cup, grated~^110^^\r\n"),
        ];
        for (file, text) in files {
            fs::write(folder.join(file), text).expect("the temporary folder can be written");
        }
        let released = Official::read(&folder);
        fs::remove_dir_all(&folder).expect("the temporary folder can be removed");
        let released = released.expect("the release is read");
        let names: Vec<&str> = COLUMNS.iter().map(|(_, flat, _)| *flat).collect();
        let mut cells = vec![""; COLUMNS.len()];
        (cells[0], cells[2], cells[19], cells[20], cells[21]) = ("88.29", "0.93", "2.78", "8.37", "3.84");
        let foods = format!(
            "id\trefuse_pct\t{}\n11124\t11\t{}\n",
            names.join("\t"),
            cells.join("\t")
        );
        let flat = flat(&foods, "id\tseq\tamount\tunit\tgrams\n11124\t2\t1\tcup, grated\t110\n").expect("flat is read");
        assert_eq!(water(&flat, "11124"), Some(88.29));
        assert_eq!(flat.figures, released.figures);
        assert_eq!(flat.refuse_percent, released.refuse_percent);
        let weights = |official: &Official| {
            official.weights["11124"]
                .iter()
                .map(|w| (w.seq, w.text.clone(), w.grams))
                .collect::<Vec<_>>()
        };
        assert_eq!(weights(&flat), weights(&released));
        assert!(
            release(&folder).is_err(),
            "a folder that is gone is an error, not an empty larder"
        );
    }
}
