//! Help, completions, manual page, colour.

use crate::bench::{Bench, SOUP};

#[test]
fn every_command_has_help_with_one_example() {
    let bench = Bench::new("help");
    for command in ["digest", "reckon", "proof", "completions", "man"] {
        let done = bench.run(&[command, "--help"]);
        assert_eq!(done.code, Some(0), "{command}");
        assert_eq!(
            done.out.matches("Example: potwright").count(),
            1,
            "{command}: {}",
            done.out
        );
    }
    assert!(bench.run(&["--help"]).out.contains("Example: potwright"));
}

#[test]
fn completions_know_the_commands() {
    let bench = Bench::new("completions");
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        let done = bench.run(&["completions", shell]);
        assert_eq!(done.code, Some(0), "{shell}");
        assert!(done.out.contains("reckon"), "{shell}");
    }
}

#[test]
fn the_manual_page_has_a_section_for_every_command() {
    let done = Bench::new("man").run(&["man"]);
    assert!(done.out.contains(".TH potwright 1"), "{}", done.out);
    for section in ["DIGEST", "RECKON", "PROOF", "COMPLETIONS", "MAN"] {
        assert!(done.out.contains(&format!(".SH {section}\n")), "{section}");
    }
    let (sections, examples) = (
        done.out.matches(".SS SYNOPSIS").count(),
        done.out.matches(".SS EXAMPLE").count(),
    );
    assert_eq!(sections, examples, "one for each command");
}

#[test]
fn colour_can_be_asked_for_and_refused() {
    let bench = Bench::new("colour");
    bench.put("soup.txt", SOUP.as_bytes());
    let with = |name: &str| {
        let output = bench
            .command(&["reckon", "soup.txt"])
            .env(name, "1")
            .output()
            .expect("the program starts");
        String::from_utf8_lossy(&output.stdout).contains('\u{1b}')
    };
    assert!(with("CLICOLOR_FORCE"));
    assert!(!with("NO_COLOR"));
}
