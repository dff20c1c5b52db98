//! One table of what all benchmarks found.
//!
//! A benchmark says a row by a line of its own: `table: WHAT | OURS | BESIDE | THEIRS | RATIO | AIM`, the ratio being ours by
//! theirs, the aim empty where there is none. What criterion measures it says in its own form, which is read as well.

/// Rows so far, in the order in which they were said.
#[derive(Default)]
pub struct Table {
    rows: Vec<[String; 6]>,
    /// What criterion measures now, and the first time that it told, seconds.
    criterion: (String, Option<(String, f64)>),
}

impl Table {
    /// Takes the row that `line` says, if it says one.
    pub fn read(&mut self, line: &str) {
        if let Some(row) = line.strip_prefix("table: ") {
            let mut cells = row.split('|').map(|cell| cell.trim().to_owned());
            self.rows.push(std::array::from_fn(|_| cells.next().unwrap_or_default()));
        } else if let Some((name, times)) = line.split_once("time:   [") {
            // A long name stands on the line before.
            let name = if name.trim().is_empty() { self.criterion.0.clone() } else { name.trim().to_owned() };
            if let Some((shown, seconds)) = middle(times) {
                self.criterion_row(name, shown, seconds);
            }
        } else if !line.trim().is_empty() && !line.starts_with("Benchmarking") {
            self.criterion.0 = line.trim().to_owned();
        }
    }

    /// The rows of `other` after these.
    pub fn add(&mut self, other: Self) {
        self.rows.extend(other.rows);
    }

    /// A benchmark that told nothing, and why.
    pub fn not_run(&mut self, name: &str, why: &str) {
        self.rows.push([
            name.to_owned(),
            "NOT RUN".to_owned(),
            why.to_owned(),
            String::new(),
            String::new(),
            String::new(),
        ]);
    }

    /// The first of a run is what the others are compared with.
    fn criterion_row(&mut self, name: String, shown: String, seconds: f64) {
        let (beside, theirs) = self.criterion.1.get_or_insert_with(|| (format!("{name} ({shown})"), seconds));
        let ratio = format!("{:.2}", seconds / *theirs);
        self.rows.push([name, shown, beside.clone(), String::new(), ratio, String::new()]);
    }

    /// The table, each column as wide as its widest cell, what was measured last since it is the longest.
    pub fn text(&self) -> String {
        let head = ["what", "ours", "beside", "theirs", "ratio", "aim"].map(str::to_owned);
        let rows = || std::iter::once(&head).chain(&self.rows);
        let order = [4, 5, 1, 3, 2, 0];
        let width = |column: usize| rows().map(|row| row[column].chars().count()).max().unwrap_or(0);
        let line = |row: &[String; 6]| {
            let cells = order.map(|column| format!("{:1$}", row[column], width(column)));
            format!("{}\n", cells.join("  ").trim_end())
        };
        rows().map(line).collect()
    }
}

/// The middle one of criterion's `LOW UNIT ESTIMATE UNIT HIGH UNIT]`, as it is shown and in seconds.
fn middle(times: &str) -> Option<(String, f64)> {
    let mut words = times.trim_end_matches(']').split(' ').skip(2);
    let (number, unit) = (words.next()?, words.next()?);
    let of_unit = match unit {
        "ps" => 1e-12,
        "ns" => 1e-9,
        "µs" | "us" => 1e-6,
        "ms" => 1e-3,
        "s" => 1.0,
        _ => return None,
    };
    Some((format!("{number} {unit}"), number.parse::<f64>().ok()? * of_unit))
}

#[cfg(test)]
mod tests {
    use super::Table;

    fn check(lines: &[&str], text: &str) {
        let mut table = Table::default();
        lines.iter().for_each(|line| table.read(line));
        let without_head: String = table.text().split_inclusive('\n').skip(1).collect();
        assert_eq!(without_head, text, "{lines:?}");
    }

    #[test]
    fn a_row_is_read_from_its_line() {
        check(
            &["some progress", "table: append | 1.1 ms | barely | 1.0 ms | 1.10 | at most 1.3"],
            "1.10   at most 1.3  1.1 ms  1.0 ms  barely  append\n",
        );
        check(&["table: append | 1.1 ms | barely"], "            1.1 ms          barely  append\n");
        check(&["no table: at all", ""], "");
    }

    #[test]
    fn what_criterion_says_is_read_and_compared_with_its_first() {
        check(
            &[
                "one plan: the optimum   time:   [10.0 µs 12.0 µs 13.0 µs]",
                "Benchmarking a name that is long: Warming up",
                "a name that is long",
                "                        time:   [1.0 ms 1.2 ms 1.3 ms]",
            ],
            "1.00         12.0 µs          one plan: the optimum (12.0 µs)  one plan: the optimum\n\
             100.00       1.2 ms           one plan: the optimum (12.0 µs)  a name that is long\n",
        );
    }

    #[test]
    fn what_did_not_run_says_why() {
        let mut table = Table::default();
        table.not_run("voice", "it needs a folder");
        assert!(table.text().contains("NOT RUN"), "{}", table.text());
        assert!(table.text().contains("it needs a folder"), "{}", table.text());
    }
}
