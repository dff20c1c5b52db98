//! Between what the job waits for and what the recogniser takes: the same in the words of each.

use bayhand_job::hearing::{self, Awaited, Place};
use bayhand_speech::heard::{Heard, What};
use bayhand_speech::spoken::Corner;
use bayhand_speech::spoken::grammar::{Corners, Expect, Form};

/// What the recogniser is held to.
pub fn expect(awaited: Awaited) -> Expect {
    let form = |form: hearing::Form| Form {
        corner: form.corner.map(|place| Corner::ALL[place.index()]),
        corners: match (form.corner, form.others) {
            (_, true) => Corners::Any,
            (Some(_), false) => Corners::Waited,
            (None, false) => Corners::None,
        },
        digits: form.digits,
        decimals: form.decimals,
        minus: form.minus,
        looks: form.looks,
    };
    Expect { phrases: awaited.phrases, reading: awaited.reading.map(form) }
}

/// What was said, for the job.
pub fn said(heard: Heard, above_noise_db: Option<f32>) -> hearing::Heard {
    let what = match heard.what {
        What::Phrase(phrase) => hearing::What::Phrase(phrase),
        What::Reading { corner, looks, unit } => {
            let corner = corner.and_then(|corner| Corner::ALL.iter().position(|one| *one == corner));
            let corner = corner.map(|index| Place::ALL[index]);
            hearing::What::Reading { corner, looks, unit: unit.map(str::to_owned) }
        }
        What::Rejected(why) => hearing::What::Rejected(why.code().to_owned()),
    };
    hearing::Heard { words: heard.words, what, score: heard.score, above_noise_db }
}
