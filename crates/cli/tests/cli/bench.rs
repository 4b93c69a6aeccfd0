//! A folder to work in, and the program in it.

use std::fs;
use std::io::Write as _;
use std::path::PathBuf;
use std::process::{Command, Stdio};

/// A soup of our own, short and whole.
pub(crate) const SOUP: &str = "Leek soup\n\nServes 4\n\n30 g butter\n3 leeks, sliced\n300 g potatoes, diced\n\
    1 litre vegetable stock\nsalt to taste\n\nMelt the butter in a large pot over a low heat, add the leeks, cover and \
    sweat for 10 minutes. Add the potatoes and the stock, bring to the boil and simmer for 20 minutes. Season with salt.\n";

/// A folder of its own for one test, removed afterwards.
pub(crate) struct Bench(PathBuf);

/// What the program did.
pub(crate) struct Done {
    pub code: Option<i32>,
    pub out: String,
    pub err: String,
}

impl Bench {
    pub(crate) fn new(name: &str) -> Bench {
        let path = std::env::temp_dir().join(format!("potwright-cli-{}-{name}", std::process::id()));
        _ = fs::remove_dir_all(&path);
        fs::create_dir_all(&path).expect("a folder to test in");
        Bench(path)
    }

    /// Puts a file, with the folders it needs.
    pub(crate) fn put(&self, name: &str, bytes: &[u8]) {
        let path = self.0.join(name);
        fs::create_dir_all(path.parent().expect("a file lies in a folder")).expect("a folder to test in");
        fs::write(path, bytes).expect("a file to test with");
    }

    /// The names of all files in the folder, in order.
    pub(crate) fn files(&self) -> Vec<String> {
        let entries = fs::read_dir(&self.0).expect("is there");
        let mut names: Vec<String> = entries
            .map(|entry| entry.expect("is there").file_name().to_string_lossy().into_owned())
            .collect();
        names.sort();
        names
    }

    /// The program with these arguments, in this folder, with an empty home.
    pub(crate) fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_potwright"));
        command
            .args(arguments)
            .current_dir(&self.0)
            .env_clear()
            .env("HOME", &self.0);
        command.stdin(Stdio::null());
        command
    }

    pub(crate) fn run(&self, arguments: &[&str]) -> Done {
        done(self.command(arguments).output().expect("the program starts"))
    }

    /// With bytes on the standard input.
    pub(crate) fn run_on(&self, arguments: &[&str], input: &[u8]) -> Done {
        let mut command = self.command(arguments);
        command
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped());
        let mut child = command.spawn().expect("the program starts");
        child
            .stdin
            .take()
            .expect("is piped")
            .write_all(input)
            .expect("the program reads");
        done(child.wait_with_output().expect("the program ends"))
    }
}

fn done(output: std::process::Output) -> Done {
    Done {
        code: output.status.code(),
        out: String::from_utf8(output.stdout).expect("prints UTF-8"),
        err: String::from_utf8(output.stderr).expect("prints UTF-8"),
    }
}

impl Drop for Bench {
    fn drop(&mut self) {
        _ = fs::remove_dir_all(&self.0);
    }
}
