//! Whether somebody speaks: by how far the sound stands above the quiet of the place. Pure.
//!
//! What is below and above the band of a voice is taken away first, so that hum, rumble and hiss count little. The quiet is
//! followed, faster downwards than upwards.

use crate::sound::HERTZ;

/// Samples of a frame, 20 ms.
pub const FRAME: usize = HERTZ as usize / 50;

/// So far above the quiet, dB, a frame is loud.
const LOUD_DB: f32 = 6.0;

/// Loud frames among the last [`WINDOW`] that begin speech, and the most at which it ends.
const BEGIN: u32 = 6;
const WINDOW: u32 = 10;

/// Frames without speech after which it may have ended: 0.2 s, longer than the stop in `eight`.
const PAUSE: u32 = 10;

/// Frames without speech that end it: 0.5 s, longer than between two words and shorter than a pause for breath.
const END: u32 = 25;

/// What share of a difference the quiet follows in a frame: downwards, upwards, and upwards while somebody speaks.
const FALLS: f32 = 0.1;
const RISES: f32 = 0.03;
const RISES_IN_SPEECH: f32 = 0.002;

/// What changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// Somebody began to speak.
    Begins,
    /// They may have ended, or only draw breath.
    Pauses,
    /// They had not ended.
    GoesOn,
    /// They ended.
    Ends,
}

/// What was heard so far.
#[derive(Clone, Debug, Default)]
pub struct Activity {
    /// Level of the quiet, dB; none before the first frame.
    quiet_db: Option<f32>,
    /// The last frames, a bit each: loud or not.
    loud: u32,
    /// Frames since the last loud one; none while nobody speaks.
    still: Option<u32>,
    /// What is below the voice, and what is not above it.
    low: f32,
    voice: f32,
}

impl Activity {
    /// Takes the next frame.
    pub fn frame(&mut self, frame: &[f32]) -> Option<Change> {
        let level_db = self.level_db(frame);
        let share = |quiet: f32| match (level_db < quiet, self.still) {
            (true, _) => FALLS,
            (false, None) => RISES,
            (false, Some(_)) => RISES_IN_SPEECH,
        };
        let quiet_db = self.quiet_db.map_or(level_db, |quiet| quiet + share(quiet) * (level_db - quiet));
        self.quiet_db = Some(quiet_db);
        let loud = level_db > quiet_db + LOUD_DB;
        self.loud = (self.loud << 1 | u32::from(loud)) & ((1 << WINDOW) - 1);
        match &mut self.still {
            None if self.loud.count_ones() >= BEGIN => {
                self.still = Some(0);
                Some(Change::Begins)
            }
            None => None,
            Some(still) if loud => {
                let paused = *still >= PAUSE;
                *still = 0;
                paused.then_some(Change::GoesOn)
            }
            Some(still) => {
                *still += 1;
                match *still {
                    PAUSE => Some(Change::Pauses),
                    END => {
                        self.still = None;
                        self.loud = 0;
                        Some(Change::Ends)
                    }
                    _ => None,
                }
            }
        }
    }

    /// Level of a frame in the band of a voice: about 250 to 2000 Hz.
    fn level_db(&mut self, frame: &[f32]) -> f32 {
        let mut power = 0.0;
        for sample in frame {
            self.low += 0.1 * (sample - self.low);
            let above = sample - self.low;
            self.voice += 0.5 * (above - self.voice);
            power += self.voice * self.voice;
        }
        10.0 * (power / frame.len().max(1) as f32).max(1e-9).log10()
    }
}
