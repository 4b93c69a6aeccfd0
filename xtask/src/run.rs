//! Running other programs: with the terminal passed through, quietly, or line by line.

use std::io::{BufRead, BufReader, Read};
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::mpsc::{Sender, channel};
use std::thread;

use anyhow::{Context, Result};

/// The cargo that runs this task.
pub(crate) fn cargo(root: &Path) -> Command {
    let program = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let mut command = Command::new(program);
    command.current_dir(root);
    command
}

/// Whether the program starts and ends well; its output is thrown away.
pub(crate) fn succeeds(program: &str, arguments: &[&str]) -> bool {
    let mut command = Command::new(program);
    command
        .args(arguments)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null());
    command.status().is_ok_and(|status| status.success())
}

/// What the program prints, when it ends well.
pub(crate) fn output(root: &Path, program: &str, arguments: &[&str]) -> Option<String> {
    let done = Command::new(program).args(arguments).current_dir(root).output().ok()?;
    done.status
        .success()
        .then(|| String::from_utf8_lossy(&done.stdout).into_owned())
}

/// Runs with the terminal passed through; true when it ended well.
pub(crate) fn passes(mut command: Command) -> Result<bool> {
    let status = command
        .status()
        .with_context(|| format!("cannot start {:?}", command.get_program()))?;
    Ok(status.success())
}

/// Runs, prints every line of both outputs as it comes, and hands the lines back; true when it ended well.
pub(crate) fn lines(mut command: Command) -> Result<(bool, Vec<String>)> {
    command
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped());
    let mut child = command
        .spawn()
        .with_context(|| format!("cannot start {:?}", command.get_program()))?;
    let (sender, receiver) = channel();
    let out = child.stdout.take().map(|stream| follow(stream, sender.clone()));
    let err = child.stderr.take().map(|stream| follow(stream, sender));
    let mut kept = Vec::new();
    for line in receiver {
        println!("{line}");
        kept.push(line);
    }
    for reader in [out, err].into_iter().flatten() {
        _ = reader.join();
    }
    Ok((child.wait()?.success(), kept))
}

fn follow(stream: impl Read + Send + 'static, sender: Sender<String>) -> thread::JoinHandle<()> {
    thread::spawn(move || {
        for line in BufReader::new(stream).split(b'\n').map_while(Result::ok) {
            let line = String::from_utf8_lossy(&line).trim_end_matches('\r').to_owned();
            if sender.send(line).is_err() {
                return;
            }
        }
    })
}
