//! `bayhand-cli`: the same job without a window.

use bayhand_cli::{align, book, lines, practice, prove, voice};
use bayhand_job::ask::PracticeAsk;
use bayhand_practice::Fault;
use bayhand_speech::say::voice::Manner;
use bayhand_speech::spoken::number::Tongue;
use clap::{Parser, Subcommand};
use schemars::schema_for;
use std::{error::Error, io, io::BufRead as _, path::PathBuf, process::ExitCode};

#[derive(Parser)]
#[command(version, about = "The corner-balance and alignment job without a window")]
struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// JSON lines: loads and heights after collars or pads were moved.
    Predict,
    /// JSON lines: what to turn, in whole steps.
    Plan,
    /// JSON lines: whether readings of like state agree, and what would explain it if they do not.
    Plausible,
    /// JSON lines: caster from a sweep, toe from distances, thrust, turns of a tie rod.
    Align,
    /// JSON lines: what a sound file says, held to what is waited for.
    Hear {
        /// The voice model; without it the one that `cargo xtask voice` made.
        #[arg(long)]
        model: Option<PathBuf>,
    },
    /// Says a text into a WAV file, its numbers and units in words.
    Say {
        /// The text.
        #[arg(long)]
        text: String,
        /// Where to.
        #[arg(long)]
        out: PathBuf,
        /// Its language: en or de.
        #[arg(long, default_value = "en", value_parser = voice::tongue)]
        language: Tongue,
        /// A voice of the system by its own name, such as en-us+m3.
        #[arg(long)]
        voice: Option<String>,
        /// Words a minute, 80 to 300.
        #[arg(long, default_value_t = 150)]
        speed: u16,
        /// Loudness, 0 to 100 percent.
        #[arg(long, default_value_t = 100)]
        volume: u8,
    },
    /// Prints the JSON Schema of a command's question or answer.
    Schema {
        /// predict, predict-answer, plan, plan-answer, plausible, plausible-answer, align, align-answer, hear, hear-answer,
        /// refused or procedure.
        of: String,
    },
    /// Does a whole job on the simulated car and prints it.
    Practice {
        /// Seed of the car.
        #[arg(long, required_unless_present = "scenario")]
        seed: Option<u64>,
        /// A scenario instead: a file as scenarios/README.md tells its form.
        #[arg(long, conflicts_with_all = ["seed", "faults", "drawn"])]
        scenario: Option<PathBuf>,
        /// Makes this book or adds a job to it; without it the book is a temporary one.
        #[arg(long)]
        into: Option<PathBuf>,
        /// What is to be wrong, such as pad-zero or ballast-slides; may be given more than once. A name that is none gets
        /// the list of all.
        #[arg(long = "fault", value_parser = practice::fault)]
        faults: Vec<Fault>,
        /// How many things more are to be wrong that nobody names: the seed draws them.
        #[arg(long, default_value_t = 0)]
        drawn: u8,
        /// Afterwards the coach says what was wrong, where it showed, and how the job was done.
        #[arg(long)]
        coach: bool,
    },
    /// Proves every procedure of a folder: its faults, its states, each safety property.
    Prove {
        /// The folder.
        folder: PathBuf,
    },
    /// Checks every chain, seal and job of a book.
    Verify {
        /// The book.
        book: PathBuf,
        /// An earlier copy: everything in it must be in the book.
        #[arg(long)]
        against: Option<PathBuf>,
        /// Number of a job that must carry the seal of this --code.
        #[arg(long, requires = "code")]
        job: Option<i64>,
        /// The code of the seal, as it stands on the sheet.
        #[arg(long, requires = "job")]
        code: Option<String>,
    },
    /// Takes in a job that another book exported. Reads a PIN from standard input.
    Import {
        /// The book.
        book: PathBuf,
        /// The export.
        file: PathBuf,
        /// Initials of the supervisor who takes it in.
        #[arg(long)]
        by: String,
    },
    /// Writes a job as one JSON that a third party can check.
    Export {
        /// The book.
        book: PathBuf,
        /// Number of the job.
        #[arg(long)]
        job: i64,
        /// Where to.
        #[arg(long)]
        out: PathBuf,
    },
    /// Writes the sheet of a sealed job as a PDF, and beside it its figures as CSV and JSON.
    Sheet {
        /// The book.
        book: PathBuf,
        /// Number of the job.
        #[arg(long)]
        job: i64,
        /// Where to: the PDF; the figures get the same name.
        #[arg(long)]
        out: PathBuf,
        /// Its language: en or de.
        #[arg(long, default_value = "en")]
        language: String,
        /// A template of one's own in place of the program's.
        #[arg(long)]
        template: Option<PathBuf>,
    },
    /// Prints the program's template of the sheet, to begin one's own from.
    SheetTemplate,
}

#[tokio::main]
async fn main() -> ExitCode {
    match run(Arguments::parse().command).await {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("bayhand-cli: {why}");
            ExitCode::FAILURE
        }
    }
}

async fn run(command: Command) -> Result<(), Box<dyn Error>> {
    let (mut input, output) = (io::stdin().lock(), io::stdout().lock());
    match command {
        Command::Predict => lines::answer_all(input, output, lines::predict)?,
        Command::Plan => lines::answer_all(input, output, lines::plan)?,
        Command::Plausible => lines::answer_all(input, output, lines::plausible)?,
        Command::Align => lines::answer_all(input, output, align::align)?,
        Command::Hear { model } => {
            let recogniser = voice::recogniser(model)?;
            lines::answer_all(input, output, |line| voice::hear(&recogniser, line))?;
        }
        Command::Say { text, out, language, voice: name, speed, volume } => {
            let manner = Manner { tongue: language, volume_percent: volume, words_a_minute: speed, name };
            voice::say(&text, &manner, &out)?;
        }
        Command::Schema { of } => println!("{}", schema(&of)?),
        Command::Practice { seed, scenario, into, faults, drawn, coach } => {
            let ask = match scenario {
                Some(file) => practice::scenario(&file)?,
                // The seed is asked for where no scenario is named.
                None => PracticeAsk { seed: seed.unwrap_or_default(), faults, drawn, scenario: None },
            };
            practise(&ask, coach, into).await?;
        }
        Command::Verify { book, against, job, code } => {
            let sheet = job.zip(code.as_deref());
            println!("{}", book::verify(&book, against.as_deref(), sheet).await?);
        }
        Command::Import { book, file, by } => {
            let mut pin = String::new();
            input.read_line(&mut pin)?;
            let pin = bayhand_job::Secret::new(pin.trim());
            println!("{}", book::import(&book, &file, &by, pin).await?);
        }
        Command::Prove { folder } => {
            if !prove::run(&folder, &mut io::stdout())? {
                return Err("not proved".into());
            }
        }
        Command::Export { book, job, out } => book::export(&book, job, &out).await?,
        Command::Sheet { book, job, out, language, template } => {
            let how = book::Sheet { language: &language, template: template.as_deref() };
            book::sheet(&book, job, &out, how).await?;
        }
        Command::SheetTemplate => print!("{}", bayhand_sheet::TEMPLATE),
    }
    Ok(())
}

async fn practise(car: &PracticeAsk, coach: bool, into: Option<PathBuf>) -> Result<(), Box<dyn Error>> {
    let start = chrono::Local::now().fixed_offset();
    let temporary = std::env::temp_dir().join(format!("bayhand-practice-{}.db", std::process::id()));
    let keep = into.is_some();
    let book = into.unwrap_or_else(|| temporary.clone());
    let went = practice::run(&book, car, coach, start, &mut io::stdout()).await;
    if !keep {
        for end in ["", "-wal", "-shm", ".lock"] {
            let mut name = temporary.clone().into_os_string();
            name.push(end);
            // What was never made need not go.
            let _ = std::fs::remove_file(name);
        }
    }
    went?;
    Ok(())
}

fn schema(of: &str) -> Result<String, Box<dyn Error>> {
    let schema = match of {
        "predict" => schema_for!(lines::PredictLine),
        "predict-answer" => schema_for!(bayhand_chassis::Predicted),
        "plan" => schema_for!(bayhand_planner::Problem),
        "plan-answer" => schema_for!(bayhand_planner::Plan),
        "plausible" => schema_for!(bayhand_chassis::plausible::LikeReadings),
        "plausible-answer" => schema_for!(bayhand_chassis::plausible::Plausibility),
        "align" => schema_for!(align::AlignLine),
        "align-answer" => schema_for!(align::Aligned),
        "hear" => schema_for!(voice::HearLine),
        "hear-answer" => schema_for!(voice::HeardLine),
        "refused" => schema_for!(lines::Refused),
        "procedure" => schema_for!(bayhand_procedure::Document),
        other => return Err(format!("there is no schema of {other:?}; see --help").into()),
    };
    Ok(serde_json::to_string_pretty(&schema)?)
}
