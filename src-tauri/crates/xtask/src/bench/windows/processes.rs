//! What the processes of an app use, as Linux counts it under `/proc`.

use crate::call::{self, Done};
use std::fs;
use std::path::Path;
use std::process::Command;

/// A process and all that it started, by their numbers.
pub struct Processes(Vec<u32>);

impl Processes {
    /// Those that there are now.
    pub fn of(first: u32) -> Self {
        let numbers = fs::read_dir("/proc").into_iter().flatten().flatten();
        let numbers = numbers.filter_map(|entry| entry.file_name().to_str()?.parse::<u32>().ok());
        let parents: Vec<(u32, u32)> = numbers.filter_map(|number| Some((number, stat(number)?.parent))).collect();
        let mut all = vec![first];
        let mut next = 0;
        while let Some(&of) = all.get(next) {
            all.extend(parents.iter().filter(|(_, parent)| *parent == of).map(|(number, _)| number));
            next += 1;
        }
        Self(all)
    }

    /// True when one of them is still there.
    pub fn any_left(&self) -> bool {
        self.0.iter().any(|number| Path::new(&format!("/proc/{number}")).exists())
    }

    /// Their memory, MB, each page shared out among those that hold it (PSS).
    ///
    /// # Errors
    /// When the system does not count it.
    pub fn memory_mb(&self) -> Done<f64> {
        let of = |number: &u32| {
            let told = fs::read_to_string(format!("/proc/{number}/smaps_rollup")).ok()?;
            told.lines().find_map(|line| line.strip_prefix("Pss:")?.trim().strip_suffix(" kB")?.parse::<f64>().ok())
        };
        let kib: Option<f64> = self.0.iter().map(of).sum();
        kib.map(|kib| kib * 1024.0 / 1e6)
            .ok_or_else(|| "This system does not count the memory of a process.".to_owned())
    }

    /// Seconds that a processor has worked for them so far.
    ///
    /// # Errors
    /// When the system does not count it.
    pub fn processor_s(&self) -> Done<f64> {
        let ticks: Option<u64> = self.0.iter().map(|number| Some(stat(*number)?.ticks)).sum();
        let ticks = ticks.ok_or("This system does not count the time of a process.")?;
        let a_second = call::told(Command::new("getconf").arg("CLK_TCK"))?;
        let a_second: f64 = a_second.trim().parse().map_err(|error| format!("`getconf CLK_TCK`: {error}."))?;
        Ok(ticks as f64 / a_second)
    }
}

/// What is read of `/proc/NUMBER/stat` (proc(5)).
struct Stat {
    parent: u32,
    /// Time in its own code and in the system's.
    ticks: u64,
}

fn stat(number: u32) -> Option<Stat> {
    let text = fs::read_to_string(format!("/proc/{number}/stat")).ok()?;
    // Its name stands in brackets and may hold anything; the first field behind it is the third.
    let fields: Vec<&str> = text.rsplit_once(')')?.1.split_whitespace().collect();
    let field = |nth: usize| fields.get(nth - 3)?.parse::<u64>().ok();
    Some(Stat { parent: u32::try_from(field(4)?).ok()?, ticks: field(14)? + field(15)? })
}

#[cfg(all(test, target_os = "linux"))]
mod tests {
    use super::Processes;
    use std::process::{Command, id};

    #[test]
    fn a_child_is_counted_with_its_parent() {
        let mut child = Command::new("sleep").arg("20").spawn().expect("a child");
        let all = Processes::of(id());
        assert!(all.0.contains(&child.id()), "{:?}", all.0);
        assert!(all.memory_mb().expect("memory") > 1.0);
        assert!(all.processor_s().expect("a time") >= 0.0);
        let alone = Processes::of(child.id());
        assert!(alone.any_left());
        child.kill().expect("it is there");
        child.wait().expect("it ended");
        assert!(!alone.any_left());
    }
}
