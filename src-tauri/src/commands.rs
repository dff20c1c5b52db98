//! What a window may call. Each is one call into `bayhand-job`; which window may call which stands in `capabilities/`.
//!
//! A refusal is given back as [`Refused`], with its code, the field that is meant and its words.

use crate::board;
use crate::hearing::Hearing;
use crate::preferences_file::PreferencesFile;
use crate::sheet_file::{self, SheetFolder};
use crate::speech::Speech;
use bayhand_job::ask::{Ask, Attention, CorrectAsk, Entry, JobFilter, PersonAsk, Refused, StaffAsk};
use bayhand_job::preferences::Preferences;
use bayhand_job::view::{
    BayView, BookView, CarView, CarsView, CoachView, HeardView, InstrumentsView, ManualView, OriginView, Outlook,
    PeopleView, PersonRecord, ProcedureView, ReadBack, ReviewJob, ReviewView, SettingsView, StepView,
};
use bayhand_job::{Desk, Secret};
use std::collections::BTreeMap;
use tauri::{AppHandle, Manager, State};

/// The fixed words of the windows, by id.
#[tauri::command]
pub fn labels(desk: State<'_, Desk>) -> BTreeMap<String, String> {
    desk.labels()
}

/// What the window at the car shows, in the units of `by`.
#[tauri::command]
pub async fn step_view(desk: State<'_, Desk>, speech: State<'_, Speech>, by: String) -> Result<StepView, Refused> {
    let view = desk.step_view_for(&by).await;
    speech.follow(&desk, &by, &view);
    Ok(view)
}

/// Says once more what the step at hand says.
#[tauri::command]
pub async fn say_again(desk: State<'_, Desk>, speech: State<'_, Speech>, by: String) -> Result<(), Refused> {
    let view = desk.step_view_for(&by).await;
    speech.again(&desk, &by, &view);
    Ok(())
}

/// What the window at the car waits for: what is said is held to it.
#[tauri::command]
pub fn attend(hearing: State<'_, Hearing>, attention: Attention) {
    hearing.attend(attention);
}

/// The key to talk is held down, or let go.
#[tauri::command]
pub fn talk(hearing: State<'_, Hearing>, down: bool) {
    hearing.talk(down);
}

/// Confirms a number that was heard, or takes it back. Nothing is recorded.
#[tauri::command]
pub async fn confirm_heard(app: AppHandle, hearing: State<'_, Hearing>, right: bool) -> Result<HeardView, Refused> {
    Ok(hearing.confirm(&app, right).await)
}

/// What would follow from turning for a place on the trade line. Nothing is recorded.
#[tauri::command]
pub async fn preview(desk: State<'_, Desk>, by: String, at: f64) -> Result<Outlook, Refused> {
    desk.preview(&by, at).await
}

/// What was understood of what is typed. Nothing is recorded.
#[tauri::command]
pub async fn read_back(
    desk: State<'_, Desk>,
    speech: State<'_, Speech>,
    by: String,
    step: String,
    entries: BTreeMap<String, Entry>,
) -> Result<ReadBack, Refused> {
    let read = desk.read_back(&by, &step, entries).await.inspect_err(log_refusal);
    speech.read_back(&desk, &by, &read);
    read
}

/// How the windows are set, and what there is to choose.
#[tauri::command]
pub fn settings(app: AppHandle, desk: State<'_, Desk>) -> SettingsView {
    SettingsView { screens: board::screens(&app), ..desk.settings() }
}

/// Sets the windows, keeps that for the next start, and puts the board on its screen.
#[tauri::command]
pub fn set_preferences(
    app: AppHandle,
    desk: State<'_, Desk>,
    file: State<'_, PreferencesFile>,
    preferences: Preferences,
) -> Result<SettingsView, Refused> {
    let before = desk.settings().set.board.screen;
    let set = desk.set(preferences).inspect_err(log_refusal)?;
    if set.set.board.screen != before {
        board::hang(&app, set.set.board.screen.as_deref());
    }
    app.state::<Hearing>().set(&set.set.hearing);
    if let Err(error) = file.write(&set.set) {
        tracing::error!("the settings could not be kept");
        return Err(desk.settings_not_kept(&error));
    }
    Ok(SettingsView { screens: board::screens(&app), ..set })
}

/// The key that the pedal sends, so that a window can bar it.
#[tauri::command]
pub fn pedal(desk: State<'_, Desk>) -> Option<String> {
    desk.settings().set.pedal
}

/// Carries out a wish of the window at the car. Sealing is refused here: it belongs to the desk.
#[tauri::command]
pub async fn act(desk: State<'_, Desk>, speech: State<'_, Speech>, ask: Ask) -> Result<StepView, Refused> {
    let by = ask.by.clone();
    let answer = desk.act(ask).await.inspect_err(log_refusal);
    speech.answer(&desk, &by, &answer);
    answer
}

/// Makes the first supervisor of a new book. Gives back the recovery code, which is shown this once.
#[tauri::command]
pub async fn first_supervisor(
    desk: State<'_, Desk>,
    person: PersonAsk,
    pin: Secret,
    passphrase: Secret,
) -> Result<String, Refused> {
    desk.first_supervisor(person, pin, passphrase).await.inspect_err(log_refusal)
}

/// Gives a supervisor a new PIN and a new key for the recovery code. Gives back the next code.
#[tauri::command]
pub async fn recover(
    desk: State<'_, Desk>,
    initials: String,
    code: Secret,
    pin: Secret,
    passphrase: Secret,
) -> Result<String, Refused> {
    desk.recover(&initials, code, pin, passphrase).await.inspect_err(log_refusal)
}

/// Somebody takes over at the car by their PIN.
#[tauri::command]
pub async fn hand_over(
    desk: State<'_, Desk>,
    speech: State<'_, Speech>,
    initials: String,
    pin: Secret,
) -> Result<StepView, Refused> {
    let answer = desk.hand_over(&initials, pin).await.inspect_err(log_refusal);
    speech.answer(&desk, &initials, &answer);
    answer
}

/// Whoever is at the car leaves it.
#[tauri::command]
pub fn sign_off(desk: State<'_, Desk>) {
    desk.sign_off();
}

/// Changes somebody's own PIN.
#[tauri::command]
pub async fn change_pin(
    desk: State<'_, Desk>,
    initials: String,
    old: Secret,
    new: Secret,
) -> Result<PeopleView, Refused> {
    desk.change_pin(&initials, old, new).await.inspect_err(log_refusal)
}

/// Carries out what a supervisor wants of the list of people.
#[tauri::command]
pub async fn keep_people(desk: State<'_, Desk>, ask: StaffAsk) -> Result<PeopleView, Refused> {
    desk.keep_people(ask).await.inspect_err(log_refusal)
}

/// Lets a gate pass, by the PIN of somebody who is not at work on its step.
#[tauri::command]
pub async fn waive(
    desk: State<'_, Desk>,
    speech: State<'_, Speech>,
    revision: u64,
    by: String,
    pin: Secret,
    step: String,
    reason: String,
) -> Result<StepView, Refused> {
    let answer = desk.waive(revision, &by, pin, &step, &reason).await.inspect_err(log_refusal);
    speech.answer(&desk, &by, &answer);
    answer
}

/// Looks at a workshop's own procedure, with which the next job then begins. Where it lies is kept for the next start.
#[tauri::command]
pub async fn look_at_procedure(
    desk: State<'_, Desk>,
    file: State<'_, PreferencesFile>,
    place: String,
) -> Result<ProcedureView, Refused> {
    let looked = desk.look_at_procedure(&place).await.inspect_err(log_refusal)?;
    file.write(&desk.settings().set).map_err(|error| desk.settings_not_kept(&error))?;
    Ok(looked)
}

/// The next job begins with the procedure that ships with the program.
#[tauri::command]
pub fn shipped_procedure(desk: State<'_, Desk>) -> ProcedureView {
    desk.choose_shipped_procedure()
}

/// A supervisor signs that the next job may begin with a procedure that is not proved.
#[tauri::command]
pub async fn sign_for_procedure(
    desk: State<'_, Desk>,
    by: String,
    passphrase: Secret,
    reason: String,
) -> Result<ProcedureView, Refused> {
    desk.sign_for_procedure(&by, passphrase, &reason).await.inspect_err(log_refusal)
}

/// What the board across the bay shows.
#[tauri::command]
pub async fn bay_view(desk: State<'_, Desk>) -> Result<BayView, Refused> {
    Ok(desk.bay_view().await)
}

/// What the window at the desk shows: all jobs, and `job` step by step.
#[tauri::command]
pub async fn review_view(desk: State<'_, Desk>, job: Option<i64>, filter: JobFilter) -> Result<ReviewView, Refused> {
    desk.review_view_with(job, &filter).await.inspect_err(log_refusal)
}

/// Corrects a text of an entry, by PIN. What it said first stays.
#[tauri::command]
pub async fn correct(desk: State<'_, Desk>, ask: CorrectAsk) -> Result<ReviewView, Refused> {
    desk.correct(ask).await.inspect_err(log_refusal)
}

/// What somebody did over all jobs.
#[tauri::command]
pub async fn person_record(desk: State<'_, Desk>, initials: String) -> Result<PersonRecord, Refused> {
    desk.person_record(&initials).await.inspect_err(log_refusal)
}

/// Seals `job` with a supervisor's key.
#[tauri::command]
pub async fn seal(
    desk: State<'_, Desk>,
    job: i64,
    revision: u64,
    by: String,
    passphrase: Secret,
) -> Result<ReviewView, Refused> {
    desk.seal(job, revision, &by, passphrase).await.inspect_err(log_refusal)
}

/// Sends `job` back to a step, by PIN.
#[tauri::command]
pub async fn send_back(
    desk: State<'_, Desk>,
    job: i64,
    revision: u64,
    by: String,
    pin: Secret,
    step: String,
    reason: String,
) -> Result<ReviewView, Refused> {
    desk.send_back(job, revision, &by, pin, &step, &reason).await.inspect_err(log_refusal)
}

/// Seals `job` or sends it back, in a book that knows no people.
#[tauri::command]
pub async fn review_act(desk: State<'_, Desk>, job: i64, ask: Ask) -> Result<ReviewView, Refused> {
    desk.review_act(job, ask).await.inspect_err(log_refusal)
}

/// Checks the chain and the seal of `job`, and says what was found.
#[tauri::command]
pub async fn verify(desk: State<'_, Desk>, job: i64) -> Result<String, Refused> {
    desk.verify(job).await.inspect_err(log_refusal)
}

/// What the coach says of the practice job `job`.
#[tauri::command]
pub async fn coach(desk: State<'_, Desk>, job: i64) -> Result<CoachView, Refused> {
    desk.coach(job).await.inspect_err(log_refusal)
}

/// Writes the sheet of `job` beside the book, and its figures as CSV and JSON, and says where.
#[tauri::command]
pub async fn write_sheet(desk: State<'_, Desk>, sheets: State<'_, SheetFolder>, job: i64) -> Result<String, Refused> {
    let handover = desk.handover(job).await.inspect_err(log_refusal)?;
    let figures = desk.figures(job).await.inspect_err(log_refusal)?;
    let not_set = |why: String| desk.not_set(job, &why);
    let template = sheets.template().map_err(|error| not_set(error.to_string())).inspect_err(log_refusal)?;
    let files = sheet_file::set(handover, figures, template).await.map_err(not_set).inspect_err(log_refusal)?;
    let paths = sheets.sheet_of(job);
    for (path, bytes) in paths.iter().zip(files) {
        let written = sheet_file::write(path.clone(), bytes).await;
        written.map_err(|why| desk.not_written("sheet", job, path, &why)).inspect_err(log_refusal)?;
    }
    tracing::info!(job, "sheet written");
    Ok(desk.sheet_told(paths.each_ref().map(|path| path.as_path())))
}

/// The procedure to be read.
#[tauri::command]
pub async fn manual(desk: State<'_, Desk>) -> Result<ManualView, Refused> {
    desk.manual().await.inspect_err(log_refusal)
}

/// The cars of the book, or those that a search finds.
#[tauri::command]
pub async fn cars(desk: State<'_, Desk>, search: String) -> Result<CarsView, Refused> {
    desk.cars(&search).await.inspect_err(log_refusal)
}

/// One car, by the number of its first job.
#[tauri::command]
pub async fn car(desk: State<'_, Desk>, id: i64) -> Result<CarView, Refused> {
    desk.car(id).await.inspect_err(log_refusal)
}

/// The instruments of the book.
#[tauri::command]
pub async fn instruments(desk: State<'_, Desk>) -> Result<InstrumentsView, Refused> {
    desk.instruments().await.inspect_err(log_refusal)
}

/// Where a figure of `job` comes from.
#[tauri::command]
pub async fn origin(desk: State<'_, Desk>, job: i64, figure: String) -> Result<OriginView, Refused> {
    desk.origin(job, &figure).await.inspect_err(log_refusal)
}

/// Copies of the book, and the jobs of other bays.
#[tauri::command]
pub async fn book_view(desk: State<'_, Desk>) -> Result<BookView, Refused> {
    desk.book_view().await.inspect_err(log_refusal)
}

/// Copies the book into a folder now and at the end of each job; the place is kept for the next start.
#[tauri::command]
pub async fn copy_to(
    desk: State<'_, Desk>,
    file: State<'_, PreferencesFile>,
    place: String,
) -> Result<String, Refused> {
    let says = desk.copy_to(&place).await.inspect_err(log_refusal)?;
    file.write(&desk.settings().set).map_err(|error| desk.settings_not_kept(&error))?;
    Ok(says)
}

/// Writes `job` beside the book as one text that a third party can check, and says where.
#[tauri::command]
pub async fn export_job(desk: State<'_, Desk>, sheets: State<'_, SheetFolder>, job: i64) -> Result<String, Refused> {
    let text = desk.export(job).await.inspect_err(log_refusal)?;
    let path = sheets.export_of(job);
    let written = sheet_file::write(path.clone(), text.into_bytes()).await;
    written.map_err(|why| desk.not_written("export", job, &path, &why)).inspect_err(log_refusal)?;
    tracing::info!(job, "job exported");
    Ok(desk.export_told(&path))
}

/// Takes in a job that another bay exported; says whether it was new.
#[tauri::command]
pub async fn import_job(desk: State<'_, Desk>, place: String, by: String, pin: Secret) -> Result<String, Refused> {
    desk.import_from(&place, &by, pin).await.inspect_err(log_refusal)
}

/// One job that was taken in.
#[tauri::command]
pub async fn imported_job(desk: State<'_, Desk>, id: i64) -> Result<ReviewJob, Refused> {
    desk.imported_job(id).await.inspect_err(log_refusal)
}

/// Customer data of `job`, when there is some.
#[tauri::command]
pub async fn customer(desk: State<'_, Desk>, job: i64) -> Result<Option<String>, Refused> {
    desk.customer(job).await.inspect_err(log_refusal)
}

/// Keeps customer data of `job` apart from its record.
#[tauri::command]
pub async fn set_customer(
    desk: State<'_, Desk>,
    job: i64,
    by: String,
    pin: Secret,
    text: String,
) -> Result<(), Refused> {
    desk.set_customer(&by, pin, job, &text).await.inspect_err(log_refusal)
}

/// Erases customer data of `job`.
#[tauri::command]
pub async fn erase_customer(
    desk: State<'_, Desk>,
    job: i64,
    by: String,
    pin: Secret,
    reason: String,
) -> Result<(), Refused> {
    desk.erase_customer(&by, pin, job, &reason).await.inspect_err(log_refusal)
}

fn log_refusal(refused: &Refused) {
    tracing::info!(code = refused.code, "refused");
}
