//! A whole job in the real windows, from intake to the sheet, by clicks and keys alone: what a person does at the
//! practice car of an invented workshop, whose papers and instruments stand on the screen and are typed by hand.
//!
//! On the way: the first start with its people and their PINs, wrong input, a second person, a pause, a power cut, the same step in every window. A picture of each
//! stage goes to `target/pictures`.

use bayhand_jobbook::Book;
use bayhand_tests::windows::{App, Form, FormField, Seen, Tested, Window};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// More steps than any job needs: a job that takes more runs in a circle.
const MOST_STEPS: usize = 400;

#[tokio::test]
async fn a_whole_job_from_intake_to_the_sheet() -> Tested {
    let home = tempfile::tempdir()?;
    let book = home.path().join("book.db");
    let app = App::start_on(&book).await?;
    app.step().wait_for("the start", |seen| seen.screen == "start").await?;
    picture(&app.step(), "00-start").await?;
    picture(&app.review(), "00-review-empty").await?;
    first_start(&app.step()).await?;
    picture(&app.step(), "00-before-the-first-job").await?;
    app.step().fill("seed", "1").await?;
    app.step().go("begin-practice").await?;
    not_alone(&app.step()).await?;
    wrong_input(&app.step()).await?;

    let mut setter = Setter::default();
    let cut = setter.work(&app, |seen| seen.step == "loop.turn-RL").await?;
    app.kill().await?;

    // After the power cut the job stands where it stood.
    let app = App::start_on(&book).await?;
    app.step().wait_for("the open jobs", |seen| seen.screen == "start").await?;
    picture(&app.step(), "60-after-a-power-cut").await?;
    app.step().click("take-up-1").await?;
    take_over(&app.step(), "RO").await?;
    let again = app.step().wait_for("the job", |seen| seen.screen == "step").await?;
    assert_eq!((&again.step, &again.revision), (&cut.step, &cut.revision), "nothing recorded is lost");
    pause(&app.step()).await?;
    setter.work(&app, |seen| seen.step == "review.seal").await?;
    picture(&app.step(), "90-waits-for-the-seal").await?;
    println!("{} steps recorded, {} rounds, {} waivers", setter.recorded, setter.rounds, setter.waived);

    seal(&app).await?;
    let sheet = sheet(&app).await?;
    assert!(std::fs::read(sheet)?.starts_with(b"%PDF"), "the sheet is a PDF");
    app.close().await?;
    check_record(&book).await
}

/// The people of the workshop: initials, name, rank, PIN. The supervisor is made at the first start.
const PEOPLE: [(&str, &str, &str, &str); 3] = [
    ("MT", "Morgan Thwaite", "supervisor", "2468"),
    ("LB", "Lee Barrow", "technician", "9753"),
    ("RO", "Robin Oakes", "trainee", "1357"),
];
const PASSPHRASE: &str = "rain on a tin roof";

fn pin(initials: &str) -> &'static str {
    PEOPLE.iter().find(|person| person.0 == initials).map_or("", |person| person.3)
}

/// A new workshop: the first supervisor, whose recovery code is written down, then who works and the second person.
async fn first_start(step: &Window<'_>) -> Tested {
    let (initials, name, _, pin) = PEOPLE[0];
    let typed = [("initials", initials), ("name", name), ("pin", pin), ("pin-again", pin)];
    for (field, text) in typed.into_iter().chain([("passphrase", "short"), ("passphrase-again", "short")]) {
        step.fill(field, text).await?;
    }
    let says = step.refused("first-supervisor").await?;
    assert!(says.contains("at least 10 characters"), "a passphrase of five letters: {says}");
    step.fill("passphrase", PASSPHRASE).await?;
    step.fill("passphrase-again", PASSPHRASE).await?;
    step.click("first-supervisor").await?;
    assert_eq!(step.text("recovery-code").await?.len(), 24, "twenty signs in groups of four");
    picture(step, "00-recovery-code").await?;
    step.click("code-kept").await?;
    step.click("open-people").await?;
    for (initials, name, rank, pin) in &PEOPLE[1..] {
        step.click("add-person").await?;
        for (field, text) in [("initials", initials), ("name", name), ("pin", pin), ("pin-again", pin)] {
            step.fill(field, text).await?;
        }
        step.click(&format!("rank-{rank}")).await?;
        step.fill("passphrase", PASSPHRASE).await?;
        if *initials == "RO" {
            picture(step, "00-add-a-person").await?;
        }
        step.click("confirm").await?;
        step.text(&format!("person-{initials}")).await?;
    }
    step.click("person-RO").await?;
    picture(step, "00-take-over").await?;
    step.fill("pin", "8888777").await?;
    let says = step.refused("take-over").await?;
    assert!(says.contains("not the PIN of RO"), "a wrong PIN: {says}");
    take_over(step, "RO").await
}

/// Somebody takes over at the car by their PIN, on the large keys. The dialog is open.
async fn take_over(step: &Window<'_>, initials: &str) -> Tested {
    step.click(&format!("person-{initials}")).await?;
    for digit in pin(initials).chars() {
        step.click(&format!("digit-{digit}")).await?;
    }
    step.click("take-over").await?;
    step.gone("dialog-who").await
}

async fn act_as(step: &Window<'_>, initials: &str) -> Tested {
    step.click("actor").await?;
    take_over(step, initials).await
}

/// A trainee with nobody of higher rank at the job does not go on alone; a technician signs on, then the trainee does.
async fn not_alone(step: &Window<'_>) -> Tested {
    let seen = step.wait_for("the first step", |seen| seen.step == "intake.car").await?;
    fill_in(step, &step.form().await?, &Setter::default(), &seen).await?;
    step.click("record").await?;
    step.text("read-back").await?;
    let says = step.refused("record").await?;
    assert!(says.contains("RO may not do this step alone"), "a trainee alone: {says}");
    act_as(step, "LB").await?;
    act_as(step, "RO").await
}

/// Where this computer lacks a loudspeaker the window says so once, until that was seen.
async fn notice(step: &Window<'_>) -> Tested {
    if step.has("notice").await? {
        step.click("notice").await?;
        step.click("notice-seen").await?;
    }
    Ok(())
}

/// What cannot be is refused beside its field, what stands in the other fields stays, and nothing is recorded.
async fn wrong_input(step: &Window<'_>) -> Tested {
    let seen = step.wait_for("the first step", |seen| seen.step == "intake.car").await?;
    let form = step.form().await?;
    fill_in(step, &form, &Setter::default(), &seen).await?;
    let typed_total = step.value("field-total").await?;
    assert!(!typed_total.is_empty(), "control: something stands there");
    for (typed, part) in [("wide", "wide"), ("24.50.0", "24.50.0"), ("96", "1500"), ("99999", "4500")] {
        step.fill("field-wheelbase", typed).await?;
        let says = step.refused("record").await?;
        assert!(says.contains(part), "{typed:?} typed for a wheelbase: {says}");
    }
    picture(step, "01-wrong-input").await?;
    assert_eq!(step.value("field-total").await?, typed_total, "what stands in the other fields stays");
    Ok(())
}

/// The job is put on hold with a reason, and somebody goes on with it.
async fn pause(step: &Window<'_>) -> Tested {
    step.click("hold").await?;
    step.fill("reason", "shift ends").await?;
    let held = step.go("confirm").await?;
    assert_eq!(held.screen, "held", "a held job shows that it is held");
    picture(step, "61-on-hold").await?;
    let on = step.go("resume").await?;
    assert_eq!(on.screen, "step", "and goes on at its step");
    Ok(())
}

/// A careful setter at the windows.
#[derive(Default)]
struct Setter {
    recorded: usize,
    rounds: usize,
    waived: usize,
    acting: String,
    pictured: BTreeSet<String>,
    /// Steps whose last try was held by a gate.
    held: Option<String>,
}

impl Setter {
    /// Does step after step until one is at hand that is to be left.
    async fn work(&mut self, app: &App, until: impl Fn(&Seen) -> bool) -> Tested<Seen> {
        let step = app.step();
        self.acting.clear();
        loop {
            let seen = step.seen().await?;
            if until(&seen) {
                return Ok(seen);
            }
            assert!(self.recorded < MOST_STEPS, "the job does not end; it stands at {seen:?}");
            assert!(self.rounds <= 3, "a practice car is inside within three rounds; the job stands at {seen:?}");
            self.do_step(app, &seen).await?;
        }
    }

    async fn do_step(&mut self, app: &App, seen: &Seen) -> Tested {
        let step = app.step();
        notice(&step).await?;
        let who = if seen.step.ends_with("-second") || TECHNICIAN.contains(&seen.step.as_str()) { "LB" } else { "RO" };
        if self.acting != who {
            act_as(&step, who).await?;
            self.acting = who.to_owned();
        }
        let mut form = step.form().await?;
        if !form.hazards.is_empty() {
            self.picture_once(app, &format!("{}-hazards", stage(&seen.step))).await?;
        }
        while let Some(hazard) = form.hazards.first() {
            step.go(hazard).await?;
            form = step.form().await?;
        }
        fill_in(&step, &form, self, seen).await?;
        self.picture_once(app, stage(&seen.step)).await?;
        if [
            "loop.judge",
            "loop.turn-FL",
            "loop.turn-FR",
            "baseline.read-1",
            "settle.wait",
            "raise.lock",
            "align.runout",
            "align.lines",
            "align.caster",
            "align.read",
            "align.judge",
            "align.change-rear",
            "align.change-front",
            "final.read-2",
        ]
        .contains(&seen.step.as_str())
        {
            self.picture_once(app, &seen.step).await?;
        }
        if seen.step == "settle.wait" {
            step.wait_until_over().await?;
        }
        let decision = self.decision(seen, &form);
        let after = step.record().await?;
        self.recorded += 1;
        app.bay().wait_for("the bay to follow", |bay| bay.revision == after.revision).await?;
        if seen.step == "loop.judge" && decision != "go-on" {
            self.rounds += 1;
        }
        let was_held = self.held.as_deref() == Some(seen.step.as_str());
        let held = after.step == seen.step && step.has("gate").await?;
        self.held = held.then(|| seen.step.clone());
        if held && (was_held || !CHANGES.contains(&seen.step.as_str())) {
            self.waive(&step).await?;
        }
        Ok(())
    }

    async fn waive(&mut self, step: &Window<'_>) -> Tested {
        step.click("waive").await?;
        step.click("who-MT").await?;
        step.fill("secret", pin("MT")).await?;
        step.fill("reason", "what is left is smaller than the readings can show").await?;
        step.go("confirm").await?;
        self.waived += 1;
        self.held = None;
        Ok(())
    }

    /// The way on at a step that asks for a decision: what a gate held is changed first.
    fn decision(&self, seen: &Seen, form: &Form) -> &'static str {
        let held = form.gate.is_some();
        let inside = |id: &str| form.verdicts.get(id).is_none_or(|v| v == "inside");
        match seen.step.as_str() {
            "loop.judge" if ["cross_pct", "side_front_mm", "side_rear_mm"].into_iter().all(inside) => "go-on",
            "loop.judge" => "turn-cross",
            "rough.heights" if held => "set-heights",
            "rough.heights" => "heights-near",
            "rough.angles" if held => "set-angles",
            "rough.angles" => "angles-near",
            "align.judge" if inside_all(form, "") || form.turning.is_empty() => "angles-good",
            "align.judge" if inside_all(form, "caster") => "change-angles",
            "align.judge" => "change-caster",
            "back.front-read" | "back.rear-read" if held => "link-again",
            _ => "link-right",
        }
    }

    async fn picture_once(&mut self, app: &App, name: &str) -> Tested {
        if self.pictured.insert(name.to_owned()) {
            picture(&app.step(), &format!("step-{name}")).await?;
            picture(&app.bay(), &format!("bay-{name}")).await?;
        }
        Ok(())
    }
}

/// True when every angle of this kind is known to be inside.
fn inside_all(form: &Form, kind: &str) -> bool {
    form.verdicts.iter().filter(|(id, _)| id.starts_with(kind)).all(|(_, verdict)| verdict == "inside")
}

/// Steps that ask for a technician.
const TECHNICIAN: [&str; 3] = ["lift.equipment", "walk.high-voltage", "loop.advise"];
/// Steps at which something can be changed first when their gate holds.
const CHANGES: [&str; 4] = ["rough.heights", "rough.angles", "back.front-read", "back.rear-read"];

fn stage(step: &str) -> &str {
    step.split('.').next().unwrap_or(step)
}

/// Fills in every field, those too that come with a chosen option.
async fn fill_in(step: &Window<'_>, form: &Form, setter: &Setter, seen: &Seen) -> Tested {
    let mut done = BTreeSet::new();
    let mut now = form.clone();
    loop {
        now.fields.retain(|field| !done.contains(&field.key));
        if now.fields.is_empty() {
            return Ok(());
        }
        fill_in_what_is_there(step, &now, setter, seen).await?;
        done.extend(now.fields.iter().map(|field| field.key.clone()));
        now = step.form().await?;
    }
}

/// Types what is shown beside each field, says yes to checks, decides where a decision is asked for.
async fn fill_in_what_is_there(step: &Window<'_>, form: &Form, setter: &Setter, seen: &Seen) -> Tested {
    for field in &form.fields {
        let shown = form.shown.get(&field.key).map(String::as_str);
        let wanted = |field: &FormField| -> String {
            let named = field.options.iter().find(|(_, label)| Some(label.as_str()) == shown);
            let yes = field.options.iter().any(|(code, _)| code == "yes");
            match named {
                Some((code, _)) => code.clone(),
                None if yes => "yes".into(),
                None => setter.decision(seen, form).into(),
            }
        };
        match field.kind.as_str() {
            "cards" => step.click(&format!("option-{}-{}", field.key, wanted(field))).await?,
            "list" => step.pick(&field.key, &wanted(field)).await?,
            _ => {
                let typed = match (field.key.as_str(), shown, form.turns.as_deref()) {
                    ("reason", _, _) => "the same feel left and right comes first",
                    (_, Some(shown), _) => shown,
                    (_, None, Some(turns)) => turns,
                    _ if NUMBERS.contains(&field.key.split('.').next().unwrap_or_default()) => "0",
                    _ => "none",
                };
                step.fill(&format!("field-{}", field.key), typed).await?;
            }
        }
    }
    Ok(())
}

/// Number fields that nothing is shown for: nothing was turned, nothing was found.
const NUMBERS: [&str; 5] = ["turns", "toe-turns", "camber-turns", "caster-turns", "link-turns"];

/// The supervisor reads the record and seals it, in the review window.
async fn seal(app: &App) -> Tested {
    let review = app.review();
    review.click("job-1").await?;
    picture(&review, "91-review").await?;
    review.click("page-people").await?;
    picture(&review, "91-people").await?;
    review.click("job-1").await?;
    review.click("seal").await?;
    review.click("who-MT").await?;
    review.fill("secret", "rain on a tin rood").await?;
    let says = review.refused("confirm").await?;
    assert!(says.contains("does not open the key"), "another passphrase: {says}");
    review.fill("secret", PASSPHRASE).await?;
    picture(&review, "91-seal").await?;
    review.click("confirm").await?;
    app.step().wait_for("the job to have ended", |seen| seen.screen == "ended").await?;
    picture(&review, "92-sealed").await
}

/// Writes the sheet and gives its place.
async fn sheet(app: &App) -> Tested<PathBuf> {
    let review = app.review();
    review.click("verify").await?;
    review.click("write-sheet").await?;
    let sheet = app.book().parent().unwrap_or(Path::new(".")).join("sheets").join("job-1.pdf");
    let written = std::time::Instant::now();
    while !sheet.exists() && written.elapsed().as_secs() < 30 {
        tokio::time::sleep(std::time::Duration::from_millis(20)).await;
    }
    let kept = pictures().join("sheet.pdf");
    std::fs::copy(&sheet, kept)?;
    Ok(sheet)
}

/// The sealed record, read without the app: every hash in order, and a seal by who may.
async fn check_record(book: &Path) -> Tested {
    let book = Book::open_read_only(book).await?;
    let verified = book.verify().await?;
    assert_eq!((verified.jobs, verified.seals), (1, 1), "one job, sealed by key");
    let jobs = book.jobs().await?;
    let entries = book.entries(jobs[0].id).await?;
    let last = entries.last().map(|e| e.body.clone()).unwrap_or_default();
    assert!(last.contains(r#""event":"sealed","by":"MT""#), "the last entry is the seal: {last}");
    Ok(())
}

fn pictures() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join("target").join("pictures")
}

async fn picture(window: &Window<'_>, name: &str) -> Tested {
    window.screenshot(&pictures().join(format!("{name}.png"))).await
}
