//! What came of the steps of the check.

use std::fmt::Write as _;
use std::time::Duration;

/// What came of a step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Outcome {
    /// How it ended.
    pub state: State,
    /// What there is to say of it; may be empty.
    pub says: String,
    /// Tests passed and failed, when it was a step of tests.
    pub tests: Option<(usize, usize)>,
    /// Tests that were skipped, by name.
    pub skipped: Vec<String>,
}

/// How a step ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum State {
    Passed,
    Failed,
    NotRun,
}

impl Outcome {
    /// Passed or failed, with words for the second case.
    pub(crate) fn of(passed: bool, otherwise: &str) -> Self {
        if passed {
            Self::new(State::Passed, String::new())
        } else {
            Self::failed(otherwise.into())
        }
    }

    /// Failed.
    pub(crate) fn failed(says: String) -> Self {
        Self::new(State::Failed, says)
    }

    /// Could not run.
    pub(crate) fn not_run(says: String) -> Self {
        Self::new(State::NotRun, says)
    }

    fn new(state: State, says: String) -> Self {
        Outcome {
            state,
            says,
            tests: None,
            skipped: Vec::new(),
        }
    }
}

/// All steps of a check.
#[derive(Debug, Default)]
pub(crate) struct Summary {
    steps: Vec<(&'static str, Outcome, Duration)>,
    /// Steps and tests that could not run, with the reason.
    pub not_run: Vec<String>,
}

impl Summary {
    /// Takes down what came of a step.
    pub(crate) fn add(&mut self, name: &'static str, outcome: Outcome, took: Duration) {
        if outcome.state == State::NotRun {
            self.not_run.push(format!("{name}: {}", outcome.says));
        }
        self.not_run.extend(
            outcome
                .skipped
                .iter()
                .map(|test| format!("{test}: marked to be skipped")),
        );
        self.steps.push((name, outcome, took));
    }

    /// Whether the check passes; in CI nothing may have been left out.
    pub(crate) fn passes(&self, ci: bool) -> bool {
        let none_failed = self.steps.iter().all(|(_, outcome, _)| outcome.state != State::Failed);
        none_failed && (!ci || self.not_run.is_empty())
    }

    /// The closing lines: a line a step, what was not run, tests passed and failed.
    pub(crate) fn text(&self, ci: bool) -> String {
        let mut text = String::new();
        for (name, outcome, took) in &self.steps {
            let word = match outcome.state {
                State::Passed => "passed",
                State::Failed => "FAILED",
                State::NotRun => "not run",
            };
            let line = format!("{word:8} {name:32} {:5.0} s  {}", took.as_secs_f64(), outcome.says);
            _ = writeln!(text, "{}", line.trim_end());
        }
        if !self.not_run.is_empty() {
            let failure = if ci { " (a failure, because CI=true)" } else { "" };
            _ = writeln!(text, "\nnot run{failure}:");
            for line in &self.not_run {
                _ = writeln!(text, "  {line}");
            }
        }
        let counts = self.steps.iter().filter_map(|(_, outcome, _)| outcome.tests);
        let (passed, failed) = counts.fold((0, 0), |sum, tests| (sum.0 + tests.0, sum.1 + tests.1));
        _ = writeln!(
            text,
            "\n{passed} passed, {failed} failed, {} not run",
            self.not_run.len()
        );
        text
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn summary(outcome: Outcome) -> Summary {
        let mut summary = Summary::default();
        summary.add("tests", outcome, Duration::from_secs(2));
        summary
    }

    #[test]
    fn what_was_not_run_fails_only_in_ci() {
        let left_out = summary(Outcome::not_run("no such tool".into()));
        assert!(left_out.passes(false));
        assert!(!left_out.passes(true));
        assert!(left_out.text(true).contains("tests: no such tool"));
    }

    #[test]
    fn a_failure_fails_everywhere() {
        let failed = summary(Outcome::of(false, "see above"));
        assert!(!failed.passes(false));
        assert!(!failed.passes(true));
    }

    #[test]
    fn the_last_line_counts_the_tests() {
        let mut outcome = Outcome::of(true, "");
        outcome.tests = Some((3, 0));
        assert!(
            summary(outcome)
                .text(false)
                .ends_with("3 passed, 0 failed, 0 not run\n")
        );
    }
}
