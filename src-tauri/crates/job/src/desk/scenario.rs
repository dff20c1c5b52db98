//! The scenarios that a practice job may begin with: the shipped ones, and a workshop's own in a folder beside the book.

use super::Desk;
use crate::{ask::PracticeAsk, ask::Refused, fault, scenario::Scenario, view::ScenarioView};
use std::path::Path;

/// A file of more bytes is no scenario.
const MOST_BYTES: u64 = 64 << 10;
/// More files are not looked at.
const MOST_FILES: usize = 200;

impl Desk {
    /// All scenarios as the window offers them; a file that is none stands in the list with what is wrong with it.
    pub(super) async fn scenario_views(&self) -> Vec<ScenarioView> {
        let language = self.in_language();
        let view = |one: &Scenario| ScenarioView {
            id: one.id.clone(),
            title: one.title(language).to_owned(),
            story: one.story(language).to_owned(),
            wrong: false,
        };
        let (all, unread) = self.scenarios().await;
        let unread = unread.into_iter().map(|(name, why)| ScenarioView {
            story: self.tell().text("scenario-unread", &[("name", name.clone()), ("why", why)]),
            id: name.clone(),
            title: name,
            wrong: true,
        });
        all.iter().map(view).chain(unread).collect()
    }

    /// What a practice job asks for, by its scenario where it names one.
    pub(super) async fn by_scenario(&self, ask: &PracticeAsk) -> Result<PracticeAsk, Refused> {
        let Some(id) = &ask.scenario else { return Ok(ask.clone()) };
        let (all, _) = self.scenarios().await;
        let refused = || Refused { field: Some("scenario".into()), ..self.refuse("practice-scenario") };
        all.iter().find(|one| one.id == *id).map(Scenario::ask).ok_or_else(refused)
    }

    /// The scenarios, and names of files that are none with the reason.
    async fn scenarios(&self) -> (Vec<Scenario>, Vec<(String, String)>) {
        let (mut all, mut unread) = (Scenario::shipped(), Vec::new());
        let Some(folder) = &self.scenario_folder else { return (all, unread) };
        let mut names = Vec::new();
        // No folder is the usual case: a workshop without scenarios of its own.
        if let Ok(mut files) = tokio::fs::read_dir(folder).await {
            while let Ok(Some(file)) = files.next_entry().await {
                if file.path().extension().is_some_and(|end| end == "json") && names.len() < MOST_FILES {
                    names.push(file.path());
                }
            }
        }
        names.sort();
        for path in names {
            let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
            match self.read_scenario(&path).await {
                Ok(one) if all.iter().any(|other| other.id == one.id) => {
                    unread.push((name, self.tell().text("scenario-twice", &[("id", one.id)])));
                }
                Ok(one) => all.push(one),
                Err(why) => unread.push((name, why)),
            }
        }
        (all, unread)
    }

    async fn read_scenario(&self, path: &Path) -> Result<Scenario, String> {
        let text = fault::text_of(path, MOST_BYTES, &self.tell()).await?;
        Scenario::read(&text).map_err(|why| why.says(self.tell().words))
    }
}
