//! How long a dish takes and how much memory: the benchmarks, and the program as a user starts it.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail};

use super::figures::{Figures, Table, meant};
use crate::run;

/// The program's file name.
pub(super) const PROGRAM: &str = if cfg!(windows) { "potwright.exe" } else { "potwright" };

/// Starts of the program that are timed, for one figure.
const STARTS: usize = 25;

pub(super) fn work(root: &Path) -> Result<Figures> {
    Ok(Figures {
        title: "Speed and memory".into(),
        says: "Medians. Stages are timed inside one process by the benchmarks (`cargo bench -p potwright-benches`); \
               the program is timed from its start to its end, with its output thrown away. Memory is the peak \
               resident size that the system reports, read until the program ends. Other work on the machine is in \
               the figures: trust factors of two."
            .into(),
        tables: vec![benchmarks(root)?, program(root)?, super::reading::table(root)?],
    })
}

/// The medians of all benchmarks.
fn benchmarks(root: &Path) -> Result<Table> {
    let mut command = run::cargo(root);
    command.args(["bench", "--package", "potwright-benches"]);
    let (passed, lines) = run::lines(command)?;
    if !passed {
        bail!("the benchmarks failed");
    }
    let mut table = Table::new("Stages", &["benchmark", "median", "fastest", "slowest", "meant to be"]);
    let mut above: Vec<(usize, String)> = Vec::new();
    for line in &lines {
        let Some((depth, name, rest)) = branch(line) else {
            continue;
        };
        above.retain(|(their, _)| *their < depth);
        let cells: Vec<&str> = rest.split('│').map(str::trim).collect();
        if let [fastest, slowest, median, ..] = cells.as_slice()
            && fastest.contains(char::is_numeric)
        {
            let names: Vec<&str> = above
                .iter()
                .map(|(_, name)| name.as_str())
                .chain([name.as_str()])
                .collect();
            table.rows.push(vec![
                names.join(" · "),
                (*median).into(),
                (*fastest).into(),
                (*slowest).into(),
                budget(&names, median),
            ]);
        }
        above.push((depth, name));
    }
    if table.rows.is_empty() {
        bail!("the benchmarks printed no figures");
    }
    Ok(table)
}

/// What single benchmarks are meant to take at most, milliseconds.
const BUDGETS: [(&str, f64); 4] = [
    ("page_to_dossier", 3.0),
    ("braise_of_twelve", 1.5),
    ("with_spread", 150.0),
    ("thousand_kitchens", 1500.0),
];

/// What a benchmark is meant to take, and whether its median does; nothing where nothing is meant.
fn budget(names: &[&str], median: &str) -> String {
    let found = BUDGETS.iter().find(|(name, _)| names.contains(name));
    found.map_or(String::new(), |(_, most)| {
        let met = milliseconds(median).is_some_and(|median| median <= *most);
        meant(&format!("≤ {most} ms"), met)
    })
}

/// A time as the benchmarks print it: `32.79 ms`, `532.3 µs`, `1.2 s`.
fn milliseconds(printed: &str) -> Option<f64> {
    let (number, unit) = printed.trim().split_once(' ')?;
    let factor = match unit {
        "s" => 1e3,
        "ms" => 1.0,
        "µs" => 1e-3,
        "ns" => 1e-6,
        _ => return None,
    };
    Some(number.parse::<f64>().ok()? * factor)
}

/// A line of the benchmarks' tree: its depth, its name, and what stands beside it.
fn branch(line: &str) -> Option<(usize, String, String)> {
    let at = line.find(['├', '╰'])?;
    let depth = line[..at].chars().count();
    let rest = line[at..].trim_start_matches(['├', '╰', '─', ' ']);
    let (name, figures) = rest.split_once("  ").unwrap_or((rest, ""));
    Some((depth, name.trim().to_owned(), figures.trim().to_owned()))
}

/// The program as a user starts it: one dish, all dishes.
fn program(root: &Path) -> Result<Table> {
    let mut build = run::cargo(root);
    build.args(["build", "--release", "--quiet", "--package", "potwright"]);
    if !run::passes(build)? {
        bail!("the release build failed");
    }
    let program = root.join("target").join("release").join(PROGRAM);
    let mut table = Table::new("The program", &["run", "start to end", "memory", "meant to be"]);
    let mut dishes: Vec<PathBuf> = fs::read_dir(root.join("demo/lock-house/dishes"))?
        .filter_map(Result::ok)
        .map(|entry| entry.path())
        .collect();
    dishes.sort();
    for dish in dishes {
        let name = dish
            .file_stem()
            .map(|stem| stem.to_string_lossy().into_owned())
            .unwrap_or_default();
        let path = dish.to_string_lossy().into_owned();
        let figures = measured(&program, &["reckon", &path])?;
        table
            .rows
            .push(row(&format!("reckon {name}"), figures, Some((60, 100))));
    }
    table
        .rows
        .push(row("digest of the demo book", measured(&program, &[])?, None));
    Ok(table)
}

/// `most`: the milliseconds and megabytes it is meant to stay within.
fn row(name: &str, (time, peak): (Duration, u64), most: Option<(u64, u64)>) -> Vec<String> {
    let meant = most.map_or(String::new(), |(ms, megabytes)| {
        let met = time <= Duration::from_millis(ms) && peak <= megabytes * 1_000_000;
        meant(&format!("≤ {ms} ms, ≤ {megabytes} MB"), met)
    });
    let memory = if peak == 0 {
        "not read".into()
    } else {
        format!("{:.1} MB", peak as f64 / 1e6)
    };
    vec![
        name.into(),
        format!("{:.0} ms", time.as_secs_f64() * 1e3),
        memory,
        meant,
    ]
}

/// Median time and greatest memory (bytes) over the starts.
fn measured(program: &Path, arguments: &[&str]) -> Result<(Duration, u64)> {
    let mut times = Vec::new();
    let mut peak = 0;
    for _ in 0..STARTS {
        let begun = Instant::now();
        let status = quiet(program, arguments).status().context("cannot start the program")?;
        times.push(begun.elapsed());
        if !status.success() {
            bail!("{} {} failed", program.display(), arguments.join(" "));
        }
        // Watching costs time, so the memory is read in starts of its own.
        peak = peak.max(watched(program, arguments)?);
    }
    times.sort();
    Ok((times[STARTS / 2], peak))
}

fn quiet(program: &Path, arguments: &[&str]) -> Command {
    let mut command = Command::new(program);
    command
        .args(arguments)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null());
    command
}

/// The last peak the system reports before the program ends; nought where it reports none.
fn watched(program: &Path, arguments: &[&str]) -> Result<u64> {
    let mut child = quiet(program, arguments).spawn()?;
    let status = format!("/proc/{}/status", child.id());
    let mut peak = 0;
    while child.try_wait()?.is_none() {
        let read = fs::read_to_string(&status).unwrap_or_default();
        peak = peak.max(high_water(&read).unwrap_or(0));
    }
    Ok(peak)
}

/// `VmHWM` of a `/proc/PID/status`, in bytes.
fn high_water(status: &str) -> Option<u64> {
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    let kilobytes: u64 = line.trim().strip_suffix("kB")?.trim().parse().ok()?;
    Some(kilobytes * 1024)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_the_tree_of_benchmarks() {
        let line = "│  ├─ haddock    1.2 ms    │ 2.0 ms │ 1.4 ms │ 1.5 ms │ 100 │ 100";
        let (depth, name, rest) = branch(line).expect("a branch");
        assert_eq!((depth, name.as_str()), (3, "haddock"));
        assert!(rest.starts_with("1.2 ms"));
        assert_eq!(branch("Timer precision: 20 ns"), None);
    }

    #[test]
    fn budgets() {
        assert_eq!(milliseconds("1.2 s"), Some(1200.0));
        assert_eq!(milliseconds("quick"), None);
        assert_eq!(budget(&["page_to_dossier", "3"], "2.9 ms"), "≤ 3 ms");
        assert_eq!(budget(&["page_to_dossier", "3"], "3100 µs"), "≤ 3 ms: **not met**");
        assert_eq!(budget(&["central", "3"], "9 ms"), "");
    }

    #[test]
    fn reads_the_peak() {
        assert_eq!(
            high_water("Name:\tx\nVmHWM:\t    2048 kB\nVmRSS:\t 1 kB\n"),
            Some(2_097_152)
        );
        assert_eq!(high_water("Name:\tx\n"), None);
    }
}
