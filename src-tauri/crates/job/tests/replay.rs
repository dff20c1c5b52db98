//! The state of a job is nothing but its entries replayed: read from the book anew after every step, all windows show
//! the same.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::Wish;
use common::Bay;

const SEED: u64 = 2;
/// The book itself is closed and opened again each time that so many steps are done; else the job is read from it anew.
const STEPS_TO_A_RESTART: usize = 25;

#[tokio::test]
async fn a_job_read_anew_after_every_step_is_the_same() {
    println!("seed {SEED}");
    let mut bay = Bay::practice(SEED).await;
    let job = bay.job();
    let mut steps = 0;
    while !bay.step().seal_in_review {
        bay.do_step().await;
        steps += 1;
        let (at_car, in_bay) = (bay.desk.step_view().await, bay.desk.bay_view().await);
        let step = bay.step().id.clone();
        if steps % STEPS_TO_A_RESTART == 0 {
            let at_desk = bay.desk.review_view(Some(job)).await.unwrap().job;
            bay = bay.restart().await;
            let read = bay.desk.review_view(Some(job)).await.unwrap().job;
            assert_eq!(read, at_desk, "{step}: the window at the desk");
        } else {
            bay.ask("", Wish::SetAside).await.unwrap();
        }
        assert_eq!(bay.view.job, None, "no job is open");
        bay.ask("", Wish::TakeUp { job }).await.unwrap();
        assert_eq!(bay.view, at_car, "{step}: the window at the car");
        assert_eq!(bay.desk.bay_view().await, in_bay, "{step}: the window of the bay");
    }
    assert!(steps > 100, "control: a whole job was done, {steps} steps");
}
