//! What can be set, and how it is set now.

use super::step::Choice;
use crate::preferences::Preferences;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Everything that the settings show.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SettingsView {
    /// As it is set now.
    pub set: Preferences,
    /// Languages to choose from.
    pub languages: Vec<Choice>,
    /// Screens that the board may fill; the app fills this in.
    pub screens: Vec<ScreenChoice>,
    /// What the distance and the screen come to, in words: the size of the board's type, or that they do not fit.
    pub board_says: String,
}

/// A screen of this computer.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ScreenChoice {
    /// Its name, as the system gives it.
    pub name: String,
    /// Its size, such as '1920 x 1080'.
    pub size: String,
    /// True for the one that the window at the car stands on.
    pub here: bool,
}
