//! The windows follow each other: what is recorded in one stands in all, each commit, without being asked for.

use bayhand_tests::windows::{App, Tested};

#[tokio::test]
async fn a_commit_at_the_car_reaches_every_window() -> Tested {
    let app = App::start().await?;
    let (step, bay, review) = (app.step(), app.bay(), app.review());
    let bay_before = bay.wait_for("the first view", |seen| !seen.revision.is_empty()).await?;

    step.fill("seed", "1").await?;
    let begun = step.go("begin-practice").await?;
    assert_eq!(begun.screen, "sign-on", "a job begins with who works on it");
    step.fill("initials", "RO").await?;
    step.fill("name", "Robin Example").await?;
    step.click("rank-technician").await?;
    let signed_on = step.go("sign-on").await?;
    assert_eq!(signed_on.screen, "step", "then comes the first step");

    let bay_after = bay.wait_for("the revision at the car", |seen| seen.revision == signed_on.revision).await?;
    assert_ne!(bay_after.revision, bay_before.revision, "control: the board showed something else before");
    review.wait_for("the revision at the car", |seen| seen.revision == signed_on.revision).await?;
    app.close().await
}

/// What was recorded is there after the app was killed outright, and the job goes on where it stopped.
#[tokio::test]
async fn a_killed_app_finds_its_job_again() -> Tested {
    let folder = tempfile::tempdir()?;
    let book = folder.path().join("book.db");

    let app = App::start_on(&book).await?;
    app.step().fill("seed", "2").await?;
    app.step().go("begin-practice").await?;
    app.kill().await?;

    let app = App::start_on(&book).await?;
    let open = app.step();
    open.wait_for("the start", |seen| seen.screen == "start").await?;
    let jobs = open.ids("take-up-").await?;
    assert_eq!(jobs.len(), 1, "the job that was begun is offered: {jobs:?}");
    let taken_up = open.go(&jobs[0]).await?;
    assert_eq!(taken_up.screen, "sign-on", "nobody had signed on, so that is where it stopped");
    app.close().await
}
