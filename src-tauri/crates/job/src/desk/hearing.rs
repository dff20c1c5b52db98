//! What may be said now, and what comes of what was heard: the pure answers of [`crate::hearing`] on the job that is open.
//!
//! A number that was heard waits here, not in the window: it gets into a draft only once it is confirmed.

use super::{Desk, entered};
use crate::{
    ask::Attention,
    body::HeardSeen,
    hearing::{Awaited, Came, Heard, Pending, Scene},
    log::Log,
    show,
    view::{HeardAct, HeardView},
};
use bayhand_procedure::{Entered, Next, Step, next};
use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

/// What was heard at the step at hand.
#[derive(Debug, Default)]
pub(super) struct Heed(Mutex<Kept>);

#[derive(Debug, Default)]
struct Kept {
    /// Waits to be confirmed.
    pending: Option<Pending>,
    /// Stands in the draft, by key.
    taken: BTreeMap<String, Pending>,
}

impl Heed {
    /// What was heard of these entries of a step: of each that is still as it was heard.
    pub(super) fn of(&self, step: &str, entries: &BTreeMap<String, Entered>) -> BTreeMap<String, HeardSeen> {
        let kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let same = |pending: &Pending, entered: &Entered| {
            pending.step == step && pending.entry.text == entered.text && pending.entry.unit == entered.unit
        };
        let heard = entries.iter().filter_map(|(key, entered)| {
            let pending = kept.taken.get(key).filter(|pending| same(pending, entered))?;
            let seen = HeardSeen { words: pending.words.clone(), score: format!("{:.2}", pending.score) };
            Some((key.clone(), seen))
        });
        heard.collect()
    }

    /// The step is recorded: what was heard at it is no draft any more.
    pub(super) fn forget(&self) {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = Kept::default();
    }
}

impl Desk {
    /// What may be said now; none where nothing is listened to: no step is at hand, nobody acts, or another language than
    /// the recogniser's is spoken.
    pub async fn awaited(&self, attention: &Attention) -> Option<Awaited> {
        self.at_scene(attention, |scene, _| scene.awaited()).await.ok()
    }

    /// What comes of something heard.
    pub async fn heard(&self, attention: &Attention, heard: &Heard) -> HeardView {
        let came = self.at_scene(attention, |scene, kept| keep(scene.hear(heard), kept)).await;
        came.unwrap_or_else(nothing)
    }

    /// The number that waits is confirmed by key or hand, or taken back.
    pub async fn confirm_heard(&self, attention: &Attention, right: bool) -> HeardView {
        let came =
            self.at_scene(attention, |scene, kept| keep(if right { scene.confirm() } else { scene.cancel() }, kept));
        came.await.unwrap_or_else(nothing)
    }

    /// The step at hand as this person sees it, or why nothing is listened to, in words.
    async fn at_scene<R>(
        &self,
        attention: &Attention,
        what: impl FnOnce(&Scene<'_>, &mut Kept) -> R,
    ) -> Result<R, String> {
        let open = self.open.lock().await;
        let tell = self.tell_to(&attention.by);
        let no = |id: &str| tell.text(id, &[]);
        if self.language() != "en" {
            return Err(no("heard-english-only"));
        }
        let log = open.as_ref().ok_or_else(|| no("refused-no-job"))?;
        let step = at_hand(log).filter(|step| step.id == attention.step).ok_or_else(|| no("refused-stale"))?;
        if attention.by.is_empty() {
            return Err(no("heard-nobody"));
        }
        let mut kept = self.heed.0.lock().unwrap_or_else(PoisonError::into_inner);
        let kept = &mut *kept;
        // What was heard at a step that is no longer at hand is forgotten.
        kept.pending.take_if(|pending| pending.step != step.id);
        kept.taken.retain(|_, taken| taken.step == step.id);
        let entries = entered(attention.entries.clone());
        let pending = kept.pending.clone();
        let scene = Scene {
            step,
            hazards_open: show::hazards(log, step, &tell).iter().any(|hazard| hazard.acknowledged.is_none()),
            entries: &entries,
            reading_back: attention.reading_back,
            pending: pending.as_ref(),
            tell: &tell,
        };
        Ok(what(&scene, kept))
    }
}

fn at_hand(log: &Log) -> Option<&Step> {
    if log.state.held {
        return None;
    }
    let Next::Step { id, .. } = next(&log.document, &log.state) else { return None };
    log.document.step(&id).map(|(_, step)| step)
}

fn keep(came: Came, kept: &mut Kept) -> HeardView {
    kept.pending = came.pending;
    if let Some(taken) = came.taken {
        kept.taken.insert(taken.key.clone(), taken);
    }
    came.view
}

fn nothing(says: String) -> HeardView {
    HeardView { act: HeardAct::Nothing, says, loud: None, pending: None }
}
