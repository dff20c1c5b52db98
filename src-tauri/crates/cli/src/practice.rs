//! A whole job on the simulated car, on virtual time, by the same desk as the windows use.

use crate::{crew, setter};
use bayhand_job::ask::{Ask, PracticeAsk, Refused, Wish};
use bayhand_job::scenario::Scenario;
use bayhand_job::view::{Screen, StepBody, StepView};
use bayhand_job::{Clock, Desk, DeskError};
use bayhand_practice::Fault;
use bayhand_words::Words;
use chrono::{DateTime, FixedOffset, TimeDelta};
use std::{
    collections::BTreeMap,
    fmt,
    io::{self, Write},
    path::Path,
    sync::{Arc, Mutex, PoisonError},
};

/// A clock that goes on only when it is told to.
#[derive(Debug)]
pub struct VirtualClock(Mutex<DateTime<FixedOffset>>);

impl VirtualClock {
    /// A clock that shows this time.
    pub fn at(time: DateTime<FixedOffset>) -> VirtualClock {
        VirtualClock(Mutex::new(time))
    }

    /// Lets time pass.
    pub fn pass(&self, seconds: u32) {
        let mut now = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        *now += TimeDelta::seconds(i64::from(seconds));
    }

    /// Goes on from this time, if it is later than what the clock shows.
    pub fn go_on_from(&self, time: DateTime<FixedOffset>) {
        let mut now = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        *now = time.max(*now);
    }
}

impl Clock for VirtualClock {
    fn now(&self) -> DateTime<FixedOffset> {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// How a job went.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Went {
    /// Number in the book.
    pub job: i64,
    /// Steps recorded.
    pub steps: u32,
    /// Rounds of turning.
    pub rounds: u32,
    /// Waivers.
    pub waivers: u32,
}

/// Why a job did not end sealed.
#[derive(Debug)]
pub enum PracticeError {
    /// The book cannot be opened.
    Desk(DeskError),
    /// A step was refused and there was no way round.
    Refused {
        /// The step.
        step: String,
        /// Why.
        why: Refused,
    },
    /// A gate held what a careful setter does not let pass: the car was made safe and the job stopped.
    Stopped {
        /// The step that was held.
        step: String,
        /// What its gate found.
        says: String,
    },
    /// The job does not come to its end.
    Endless(String),
    /// Printing failed.
    Output(io::Error),
}

impl fmt::Display for PracticeError {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        match self {
            PracticeError::Desk(why) => write!(f, "{why}"),
            PracticeError::Refused { step, why } => write!(f, "{step}: {} ({})", why.says, why.code),
            PracticeError::Stopped { step, says } => write!(f, "the job was stopped, held at {step}: {says}"),
            PracticeError::Endless(step) => write!(f, "the job does not end; it stands at {step}"),
            PracticeError::Output(why) => write!(f, "{why}"),
        }
    }
}

impl std::error::Error for PracticeError {}

impl From<io::Error> for PracticeError {
    fn from(why: io::Error) -> Self {
        PracticeError::Output(why)
    }
}

/// The fault of that name.
///
/// # Errors
/// There is none; says which there are and the nearest.
pub fn fault(name: &str) -> Result<Fault, String> {
    if let Some(fault) = Fault::ALL.into_iter().find(|f| f.code() == name) {
        return Ok(fault);
    }
    let codes = Fault::ALL.map(Fault::code);
    let alike = |code: &&str| strsim::jaro_winkler(code, name);
    let nearest = codes.into_iter().max_by(|a, b| alike(a).total_cmp(&alike(b))).unwrap_or_default();
    Err(format!("there is no such fault; the nearest is {nearest}; there are {}", codes.join(", ")))
}

/// The practice job that a scenario's file asks for.
///
/// # Errors
/// The file cannot be read, or is no scenario.
pub fn scenario(file: &Path) -> Result<PracticeAsk, String> {
    let at = |why: String| format!("{}: {why}", file.display());
    let text = std::fs::read_to_string(file).map_err(|why| at(why.to_string()))?;
    Scenario::read(&text).map(|scenario| scenario.ask()).map_err(|why| at(why.says(&Words::english())))
}

/// A step that is held so often does not come right by changing what it asks to change.
const MOST_TRIES: u32 = 3;
/// No job needs more steps; a job that does runs in a circle.
const MOST_STEPS: u32 = 1500;

/// One job under way.
struct Job<'o> {
    desk: Desk,
    clock: Arc<VirtualClock>,
    view: StepView,
    went: Went,
    /// How often each step was held.
    held: BTreeMap<String, u32>,
    /// The step that was held for good, and what its gate found.
    stopped: Option<(String, String)>,
    out: &'o mut dyn Write,
}

/// Does a whole practice job on that simulated car, and lets the coach speak after it where `coach` says so, in the book at `book` and prints each
/// step, round and figure. A job of this car that stands open in the book is taken up where it was left.
///
/// # Errors
/// The book cannot be opened, a step is refused, the job does not end, or it was stopped because a gate found what a
/// careful setter does not let pass.
pub async fn run(
    book: &Path,
    practice: &PracticeAsk,
    coach: bool,
    start: DateTime<FixedOffset>,
    out: &mut dyn Write,
) -> Result<Went, PracticeError> {
    let clock = Arc::new(VirtualClock::at(start));
    let desk = Desk::open(book, clock.clone()).await.map_err(PracticeError::Desk)?;
    let view = desk.step_view().await;
    let mut job = Job { desk, clock, view, went: Went::default(), held: BTreeMap::new(), stopped: None, out };
    let went = whole(&mut job, practice).await;
    if coach && job.went.job > 0 {
        job.say_coached().await?;
    }
    job.desk.close().await.map_err(PracticeError::Desk)?;
    went
}

async fn whole(job: &mut Job<'_>, practice: &PracticeAsk) -> Result<Went, PracticeError> {
    let mut wrong: Vec<String> = practice.faults.iter().map(|fault| fault.code().to_owned()).collect();
    if practice.drawn > 0 {
        wrong.push(format!("{} drawn", practice.drawn));
    }
    let car = match wrong.is_empty() {
        true => format!("Practice coupe {}", practice.seed),
        false => format!("Practice coupe {} ({})", practice.seed, wrong.join(", ")),
    };
    let refused = |why| PracticeError::Refused { step: "sign-on".into(), why };
    crew::enrol(&job.desk).await.map_err(refused)?;
    writeln!(job.out, "{}", crew::told())?;
    let waiting = match &job.view.screen {
        Screen::Start(start) => start.open_jobs.iter().find(|j| j.title.starts_with(&format!("{car},"))).map(|j| j.id),
        _ => None,
    };
    match waiting {
        Some(id) => job.ask(crew::TRAINEE, Wish::TakeUp { job: id }).await?,
        None => job.ask(crew::TRAINEE, Wish::Begin { car, practice: Some(practice.clone()) }).await?,
    }
    // The waits of a job that was stopped half-way passed on virtual time, ahead of the machine's clock.
    if let Some(last) = job.desk.last_entry_at().await {
        job.clock.go_on_from(last);
    }
    // The trainee is not alone at the job.
    job.take_over(crew::TECHNICIAN).await?;
    while let Some(body) = job.step() {
        if body.seal_in_review {
            job.seal().await?;
            break;
        }
        job.do_step(body).await?;
        if job.went.steps > MOST_STEPS {
            return Err(PracticeError::Endless(job.step().map_or_else(String::new, |b| b.id.clone())));
        }
    }
    let went = job.went;
    if let Some((step, says)) = job.stopped.take() {
        writeln!(job.out, "stopped: job {}, {} steps, held at {step}", went.job, went.steps)?;
        return Err(PracticeError::Stopped { step, says });
    }
    writeln!(
        job.out,
        "sealed: job {}, {} steps, {} rounds, {} waivers",
        went.job, went.steps, went.rounds, went.waivers
    )?;
    Ok(went)
}

impl Job<'_> {
    fn step(&self) -> Option<StepBody> {
        match &self.view.screen {
            Screen::Step(body) => Some((**body).clone()),
            _ => None,
        }
    }

    /// Somebody is at the car, by their PIN.
    async fn take_over(&mut self, by: &str) -> Result<(), PracticeError> {
        let step = self.step().map_or_else(String::new, |b| b.id);
        let refused = |why| PracticeError::Refused { step: step.clone(), why };
        let at_car = self.desk.people().await.map_err(refused)?.at_car;
        if at_car.as_deref() != Some(by) {
            self.view = self.desk.hand_over(by, crew::pin(by)).await.map_err(refused)?;
            self.clock.pass(15);
            self.say_recorded().await?;
        }
        Ok(())
    }

    /// Asks as somebody, who takes over at the car first.
    async fn ask(&mut self, by: &str, wish: Wish) -> Result<(), PracticeError> {
        self.take_over(by).await?;
        let step = self.step().map_or_else(String::new, |b| b.id);
        let refused = |why| PracticeError::Refused { step, why };
        let ask = Ask { revision: self.view.revision, by: by.to_owned(), wish };
        self.view = self.desk.act(ask).await.map_err(refused)?;
        self.clock.pass(15);
        self.say_recorded().await
    }

    /// The newest entry is told after its commit.
    async fn say_recorded(&mut self) -> Result<(), PracticeError> {
        if let Some((id, number, hash)) = self.desk.head().await {
            self.went.job = id;
            writeln!(self.out, "recorded {number} {hash}")?;
            self.out.flush()?;
        }
        Ok(())
    }

    async fn do_step(&mut self, body: StepBody) -> Result<(), PracticeError> {
        let by = setter::who(&body.id);
        for hazard in body.hazards.iter().filter(|h| h.acknowledged.is_none()) {
            self.ask(by, Wish::Acknowledge { step: body.id.clone(), hazard: hazard.id.clone() }).await?;
        }
        if let Some(timer) = &body.timer {
            self.clock.pass(timer.seconds);
        }
        self.tell(&body)?;
        let entries = setter::entries(&body);
        let decided = entries.get("next").map(|e| e.text.clone()).unwrap_or_default();
        self.ask(by, Wish::Record { step: body.id.clone(), entries }).await?;
        self.went.steps += 1;
        if decided.starts_with("turn-") {
            self.went.rounds += 1;
        }
        let held = self.step().filter(|now| now.id == body.id && now.gate.is_some());
        let Some(held) = held else { return Ok(()) };
        let says = held.gate.as_ref().map(|g| g.says.clone()).unwrap_or_default();
        writeln!(self.out, "  held: {says}")?;
        let tries = self.held.entry(body.id.clone()).or_default();
        *tries += 1;
        // Where something can be changed first the next try does that; what does not come right by it is judged.
        let may_change =
            matches!(body.id.as_str(), "rough.heights" | "rough.angles" | "back.front-read" | "back.rear-read");
        if may_change && body.gate.is_none() && *tries < MOST_TRIES {
            return Ok(());
        }
        if !setter::lets_pass(&held) {
            let reason = format!("held at {}", body.id);
            self.ask(crew::SUPERVISOR, Wish::Stop { reason }).await?;
            writeln!(self.out, "  stopped by MT")?;
            self.stopped = Some((body.id, says));
            return Ok(());
        }
        let (revision, by) = (self.view.revision, crew::SUPERVISOR);
        let refused = |why| PracticeError::Refused { step: body.id.clone(), why };
        let waived = self.desk.waive(revision, by, crew::pin(by), &body.id, setter::WAIVER).await;
        self.view = waived.map_err(refused)?;
        self.clock.pass(15);
        self.say_recorded().await?;
        self.went.waivers += 1;
        writeln!(self.out, "  waived by MT")?;
        Ok(())
    }

    fn tell(&mut self, body: &StepBody) -> Result<(), PracticeError> {
        writeln!(self.out, "{} | {} | {}", body.count, body.id, body.instruction)?;
        if let Some(turn) = &body.turn {
            writeln!(self.out, "  {}: {}", turn.car_does, turn.collar_does)?;
        }
        for figure in &body.figures {
            let left = figure.left.as_deref().unwrap_or_default();
            let verdict = figure.verdict_word.as_deref().unwrap_or_default();
            writeln!(self.out, "  {}: {left} {verdict}", figure.name)?;
        }
        if let Some(zeros) = body.displays.iter().find(|d| d.key.as_deref() == Some(setter::ZEROS)) {
            writeln!(self.out, "  {}: {}", zeros.label, zeros.text)?;
        }
        Ok(())
    }

    /// What the coach says once the job has ended.
    async fn say_coached(&mut self) -> Result<(), PracticeError> {
        let refused = |why| PracticeError::Refused { step: "coach".into(), why };
        let view = self.desk.coach(self.went.job).await.map_err(refused)?;
        writeln!(self.out, "coach: {} {}", view.points, view.says)?;
        for row in view.wrong.iter().chain(&view.slips) {
            writeln!(self.out, "  {} [{}]", row.title, row.outcome)?;
            for line in &row.text {
                writeln!(self.out, "    {line}")?;
            }
        }
        for row in &view.score {
            writeln!(self.out, "  {}: {} {}", row.name, row.text, row.taken)?;
        }
        Ok(())
    }

    async fn seal(&mut self) -> Result<(), PracticeError> {
        let job = self.went.job;
        let refused = |why| PracticeError::Refused { step: "review.seal".into(), why };
        let (revision, by) = (self.view.revision, crew::SUPERVISOR);
        self.desk.seal(job, revision, by, crew::passphrase()).await.map_err(refused)?;
        self.say_recorded().await
    }
}
