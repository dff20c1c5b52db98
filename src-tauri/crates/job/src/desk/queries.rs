//! What windows ask without anything being recorded, and how they are set.

use super::{Desk, entered};
use crate::{
    ask::{Entry, Refused},
    coach::coach,
    draft::Draft,
    preferences::{Preferences, Wrong},
    show,
    view::{Choice, CoachView, OriginView, Outlook, ReadBack, SettingsView},
};
use bayhand_words::Language;
use std::{collections::BTreeMap, sync::PoisonError};

impl Desk {
    /// Where a figure of a job comes from: exactly its own readings.
    ///
    /// # Errors
    /// There is no such job or figure, or the job cannot be read.
    pub async fn origin(&self, job: i64, figure: &str) -> Result<OriginView, Refused> {
        let _ordered = self.open.lock().await;
        let log = self.read(job).await?;
        show::origin(&log, figure, &self.tell()).ok_or_else(|| self.refuse("no-such-figure"))
    }

    /// Takes how the windows are set, such as at the start of the program.
    ///
    /// # Errors
    /// The first thing that cannot be, by its field; nothing is changed then.
    pub fn set(&self, preferences: Preferences) -> Result<SettingsView, Refused> {
        let refused = |wrong: Wrong| wrong.refused(self.tell().text(&format!("refused-{}", wrong.code), &[]));
        preferences.check().map_err(refused)?;
        if !Language::ALL.iter().any(|language| language.code() == preferences.language) {
            return Err(refused(Wrong { field: "language", code: "language-unknown" }));
        }
        *self.preferences.write().unwrap_or_else(PoisonError::into_inner) = preferences;
        self.changed.send_modify(|n| *n += 1);
        Ok(self.settings())
    }

    /// The refusal when the settings hold but could not be kept for the next start.
    pub fn settings_not_kept(&self, why: &dyn std::fmt::Display) -> Refused {
        let says = self.tell().text("refused-settings-not-kept", &[("why", why.to_string())]);
        Refused { code: "settings-not-kept".into(), field: None, says }
    }

    /// How the windows are set. The screens are not known here.
    pub fn settings(&self) -> SettingsView {
        let set = self.preferences.read().unwrap_or_else(PoisonError::into_inner).clone();
        let language = |l: Language| Choice { code: l.code().into(), label: l.name().into(), outlook: None };
        SettingsView {
            languages: Language::ALL.into_iter().map(language).collect(),
            screens: Vec::new(),
            board_says: show::board_says(&set.board, &self.tell()),
            set,
        }
    }

    /// What would follow from turning for a place on the trade line, 0 to 1. A query: nothing is recorded.
    ///
    /// # Errors
    /// No place can be chosen at the step at hand.
    pub async fn preview(&self, by: &str, at: f64) -> Result<Outlook, Refused> {
        let open = self.open.lock().await;
        let log = open.as_ref().ok_or_else(|| self.refuse("no-job"))?;
        show::preview(log, at, &self.tell_to(by)).ok_or_else(|| self.refuse("nothing-to-choose"))
    }

    /// What was wrong at a practice job, where it showed, and how the job was done. A query: nothing is recorded.
    ///
    /// # Errors
    /// A job on a real car, or one that has not ended: whoever is at work is told nothing.
    pub async fn coach(&self, job: i64) -> Result<CoachView, Refused> {
        let _ordered = self.open.lock().await;
        let log = self.read(job).await?;
        if !log.ended() {
            return Err(self.refuse("coach-not-yet"));
        }
        let coached = coach(&log).ok_or_else(|| self.refuse("coach-real"))?;
        Ok(show::coach(&log, &coached, &self.tell()))
    }

    /// What was understood of what is typed for a step, to be read back before it counts. A query: nothing is recorded.
    ///
    /// # Errors
    /// The first field that is wrong, with its name, value and range.
    pub async fn read_back(&self, by: &str, step: &str, entries: BTreeMap<String, Entry>) -> Result<ReadBack, Refused> {
        let open = self.open.lock().await;
        let log = open.as_ref().ok_or_else(|| self.refuse("no-job"))?;
        let tell = self.tell_to(by);
        let Some((_, step)) = log.document.step(step) else { return Err(self.refuse("stale")) };
        let draft = Draft::check(step, &entered(entries), tell.words)?;
        Ok(draft.read_back(step, &tell))
    }
}
