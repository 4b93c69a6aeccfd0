//! How often a query is right: queries on the demo book, and on a folder of pages where one is named, held against the
//! verdicts of `crates/proof/tests/planted/verdicts.tsv`.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Error, Result};
use potwright_book::{Book, SourceFile};
use potwright_house::House;
use potwright_proof::{Query, Weight};

use super::super::figures::{Table, meant};
use super::{one_line, planter, quoted};

/// Names the folder of pages and readings.
const FOLDER: &str = "POTWRIGHT_CORPUS";

/// Of a hundred queries that weigh something, so many are to be right.
const RIGHT_PERCENT: f64 = 90.0;

/// The verdicts there are.
const VERDICTS: [&str; 3] = ["right", "wrong", "taste"];

/// What stands in a row of `verdicts.tsv` before the verdict: dish, code, words.
type Key = (String, String, String);

/// A query on a page, and what an editor says of it.
struct Judged {
    dish: String,
    query: Query,
    words: String,
    /// Place in [`VERDICTS`]; none where no one has looked yet.
    verdict: Option<usize>,
}

/// The table of verdicts by weight, and the queries of the demo book that have none.
pub(super) fn tables(root: &Path) -> Result<Vec<Table>> {
    let verdicts = verdicts(root)?;
    let judged: Vec<Judged> = asked()?
        .into_iter()
        .map(|(dish, text, query)| {
            let words = one_line(query.span.of(&text));
            let key = (dish, query.code.clone(), words);
            let verdict = verdicts.get(&key).copied();
            let (dish, _, words) = key;
            Judged {
                dish,
                query,
                words,
                verdict,
            }
        })
        .collect();
    let [open, elsewhere] = [true, false].map(|demo| without_verdict(&judged, demo));
    for row in &elsewhere.rows {
        println!("no verdict yet: {}", row.join("\t"));
    }
    Ok(vec![by_weight(&judged), open])
}

fn verdicts(root: &Path) -> Result<BTreeMap<Key, usize>> {
    let rows = planter::rows(&root.join("crates/proof/tests/planted/verdicts.tsv")).map_err(Error::msg)?;
    let verdict = |row: &Vec<String>| {
        let known = VERDICTS.iter().position(|known| *known == row[3]);
        let known = known.with_context(|| format!("verdicts.tsv: '{}' is no verdict", row[3]))?;
        Ok(((row[0].clone(), row[1].clone(), row[2].clone()), known))
    };
    rows.iter().map(verdict).collect()
}

/// Every query with its dish and the text of the page.
fn asked() -> Result<Vec<(String, String, Query)>> {
    let demo = potwright_book::demo::book().context("the demo book cannot be read")?;
    let mut asked = queries("demo", demo)?;
    match std::env::var_os(FOLDER) {
        None => println!("{FOLDER} names no folder: the demo book alone is asked about"),
        Some(folder) => {
            for place in texts(Path::new(&folder))? {
                let file = place.file_name().unwrap_or_default().to_string_lossy().into_owned();
                let page = SourceFile {
                    name: format!("dishes/{file}"),
                    bytes: fs::read(&place)?,
                };
                asked.extend(queries("corpus", Book::of(vec![page])?)?);
            }
        }
    }
    Ok(asked)
}

fn texts(folder: &Path) -> Result<Vec<PathBuf>> {
    let folder = folder.join("texts");
    let entries = fs::read_dir(&folder).with_context(|| format!("cannot read {}", folder.display()))?;
    let mut texts: Vec<PathBuf> = entries.map(|entry| Ok(entry?.path())).collect::<Result<_>>()?;
    texts.retain(|place| place.extension().is_some_and(|ending| ending == "txt"));
    texts.sort();
    Ok(texts)
}

fn queries(from: &str, book: Book) -> Result<Vec<(String, String, Query)>> {
    let house = House::open(book);
    let mut asked = Vec::new();
    for (cooked, dish) in house.reckon_all().into_iter().zip(&house.book().dishes) {
        let cooked = cooked?;
        let stem = Path::new(&dish.file).file_stem().unwrap_or_default().to_string_lossy();
        let of_dish = |query: &Query| (format!("{from}/{stem}"), cooked.text.clone(), query.clone());
        asked.extend(cooked.queries.iter().map(of_dish));
    }
    Ok(asked)
}

fn by_weight(judged: &[Judged]) -> Table {
    let heads = [
        "weight",
        "queries",
        "right",
        "wrong",
        "a matter of taste",
        "no verdict yet",
        "right of right and wrong",
        "meant",
    ];
    let mut table = Table::new(
        "Verdicts on the queries of the demo book and of pages by others",
        &heads,
    );
    for weight in [Weight::MustSettle, Weight::WorthALook, Weight::HouseStyle] {
        let of: Vec<&Judged> = judged.iter().filter(|judged| judged.query.weight == weight).collect();
        let counts = [Some(0), Some(1), Some(2), None]
            .map(|verdict| of.iter().filter(|judged| judged.verdict == verdict).count());
        let decided = counts[0] + counts[1];
        let percent = 100.0 * counts[0] as f64 / decided.max(1) as f64;
        let mut row = vec![weight.words().to_owned(), of.len().to_string()];
        row.extend(counts.map(|count| count.to_string()));
        row.push(if decided == 0 {
            "–".into()
        } else {
            format!("{percent:.0} %")
        });
        row.push(match weight {
            Weight::HouseStyle => String::new(),
            _ => meant(
                "≥ 90 %, none without a verdict",
                percent >= RIGHT_PERCENT && counts[3] == 0,
            ),
        });
        table.rows.push(row);
    }
    table
}

/// Queries to be judged yet: of the demo book, or of the other pages.
fn without_verdict(judged: &[Judged], demo: bool) -> Table {
    let mut table = Table::new(
        "Queries of the demo book without a verdict",
        &["dish", "rule", "weight", "words", "asks"],
    );
    let open = judged.iter().filter(|judged| judged.verdict.is_none());
    table.rows = open
        .filter(|judged| judged.dish.starts_with("demo/") == demo)
        .map(|judged| {
            vec![
                judged.dish.clone(),
                judged.query.code.clone(),
                judged.query.weight.words().into(),
                quoted(&judged.words),
                judged.query.asks.replace('|', "\\|"),
            ]
        })
        .collect();
    table
}
