//! `prove DIR`: every procedure of a folder, its faults, its states, and each safety property.

use bayhand_procedure::prove::{CounterExample, Move, Proof, Property, prove};
use bayhand_procedure::{Intent, hash, load};
use bayhand_words::{Words, id};
use std::{fs, io, path::Path};

/// Proves every procedure in a folder and prints what was found. True when all are proved.
///
/// # Errors
/// The folder cannot be read, holds no procedure, or nothing can be printed.
pub fn run(folder: &Path, output: &mut impl io::Write) -> io::Result<bool> {
    let mut files: Vec<_> = fs::read_dir(folder)?.map(|entry| entry.map(|e| e.path())).collect::<Result<_, _>>()?;
    files.retain(|path| {
        let name = path.file_name().map(|n| n.to_string_lossy().into_owned()).unwrap_or_default();
        name.ends_with(".json") && !name.ends_with(".schema.json")
    });
    files.sort();
    if files.is_empty() {
        return Err(io::Error::other(format!("there is no procedure (*.json) in {}", folder.display())));
    }
    let mut all = true;
    for file in files {
        all &= one(&file, output)?;
    }
    Ok(all)
}

fn one(file: &Path, output: &mut impl io::Write) -> io::Result<bool> {
    let text = fs::read_to_string(file)?;
    writeln!(output, "{} sha256 {}", file.display(), hash(&text))?;
    let document = match load(&text) {
        Ok(document) => document,
        Err(faults) => {
            for fault in faults {
                writeln!(output, "  fault at {fault}")?;
            }
            return Ok(false);
        }
    };
    let proof = prove(&document);
    let words = Words::english();
    report(&proof, &words, output)?;
    Ok(proof.holds())
}

fn report(proof: &Proof, words: &Words, output: &mut impl io::Write) -> io::Result<()> {
    let parts: Vec<_> = proof.states.iter().map(|(part, states)| format!("{part} {states}")).collect();
    writeln!(output, "  {} states explored: {}", proof.count(), parts.join(", "))?;
    writeln!(output, "  {} whole jobs led, over {} states", proof.jobs.0, proof.jobs.1)?;
    for fault in &proof.faults {
        writeln!(output, "  fault at {fault}")?;
    }
    for (number, property) in Property::ALL.into_iter().enumerate() {
        let against: Vec<_> = proof.against(property).collect();
        let holds = if against.is_empty() { "holds" } else { "BROKEN" };
        writeln!(output, "  {}. {holds}: {}", number + 1, property.says())?;
        for broken in &against {
            counter_example(broken, words, output)?;
        }
        if !against.is_empty() && against.iter().all(|broken| broken.job.is_none()) {
            writeln!(output, "     No whole job was found that does this; the document is not proved all the same.")?;
        }
    }
    Ok(())
}

fn counter_example(broken: &CounterExample, words: &Words, output: &mut impl io::Write) -> io::Result<()> {
    writeln!(output, "     {} (at {}, {:?})", broken.says, broken.at, name(words, &broken.at))?;
    for step in &broken.shortest {
        let (what, step) = match step {
            Move::Done { step, options } if options.is_empty() => ("done", step.as_str()),
            Move::Done { step, options } => {
                writeln!(output, "       - {} ({step}): {}", name(words, step), options.join(", "))?;
                continue;
            }
            Move::Tried { step } => ("tried, a gate does not hold", step.as_str()),
            Move::Waived { step } => ("waived", step.as_str()),
            Move::Reopened { step } => ("opened again", step.as_str()),
            Move::Resumed => ("the job is held and gone on with", ""),
            Move::StopBegun => ("the job is begun to be stopped", ""),
        };
        if step.is_empty() {
            writeln!(output, "       - {what}")?;
        } else {
            writeln!(output, "       - {} ({step}): {what}", name(words, step))?;
        }
    }
    if let Some(job) = &broken.job {
        let steps: Vec<String> = job.iter().filter_map(|(intent, _)| told(intent)).collect();
        writeln!(output, "       A job of {} steps that does this, to be replayed:", steps.len())?;
        writeln!(output, "       {}", steps.join(" > "))?;
    }
    Ok(())
}

/// One move of a whole job, by the ids of its steps.
fn told(intent: &Intent) -> Option<String> {
    Some(match intent {
        Intent::Record { step, .. } => step.clone(),
        Intent::Reopen { step, .. } => format!("({step} opened again)"),
        Intent::Waive { step, by, .. } => format!("({step} waived by {by})"),
        Intent::Hold { .. } => "(held)".into(),
        Intent::Resume { .. } => "(resumed)".into(),
        Intent::Stop { .. } => "(stopped)".into(),
        Intent::SignOn { .. } | Intent::Acknowledge { .. } | Intent::Seal { .. } => return None,
    })
}

/// What a step is called; its id where the words do not know it.
fn name(words: &Words, step: &str) -> String {
    words.attr(&id("step", &[step]), "short", &[]).unwrap_or_else(|| step.to_owned())
}
