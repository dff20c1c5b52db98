//! How many tests passed and failed, read from what cargo and vitest say.

/// Tests that ran.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Count {
    /// Tests that passed.
    pub passed: u32,
    /// Tests that failed.
    pub failed: u32,
}

impl Count {
    /// Adds what `line` tells: a `test result:` line of cargo, or the `Tests` line of vitest (not its `Test Files` line).
    pub fn read(&mut self, line: &str) {
        let line = line.trim();
        let Some(results) = line.strip_prefix("test result:").or_else(|| line.strip_prefix("Tests ")) else { return };
        let mut before = None;
        for word in results.split([' ', ';', '|', '.']) {
            match (word, before) {
                ("passed", Some(n)) => self.passed += n,
                ("failed", Some(n)) => self.failed += n,
                _ => {}
            }
            before = word.parse::<u32>().ok();
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Count;

    fn check(lines: &[&str], passed: u32, failed: u32) {
        let mut count = Count::default();
        lines.iter().for_each(|line| count.read(line));
        assert_eq!(count, Count { passed, failed }, "{lines:?}");
    }

    #[test]
    fn results_of_cargo_are_added_up() {
        let ok = "test result: ok. 12 passed; 0 failed; 1 ignored; 0 measured; 0 filtered out; finished in 0.02s";
        let red = "test result: FAILED. 3 passed; 2 failed; 0 ignored; 0 measured; 0 filtered out; finished in 1.00s";
        check(&[ok, red], 15, 2);
    }

    #[test]
    fn results_of_vitest_are_added_up_and_files_are_not_tests() {
        check(&[" Test Files  4 passed (4)", "      Tests  34 passed (34)"], 34, 0);
        check(&["      Tests  1 failed | 33 passed (34)"], 33, 1);
    }

    #[test]
    fn other_lines_count_nothing() {
        check(&["test reading ... ok", "running 5 tests", "5 passed", ""], 0, 0);
    }
}
