//! Refusals in words: what happened, what it means for the job, what to do.

use crate::{ask::Refused, draft::field_name, show::rank_code, tell::Tell};
use bayhand_jobbook::Denied;
use bayhand_procedure::Refusal;

/// A refusal by the procedure, in words. `step` is the one at hand, for the names of its fields.
pub fn refused(refusal: &Refusal, step: &str, tell: &Tell) -> Refused {
    let short = |id: &str| crate::show::short(id, tell);
    let rank = |rank| tell.text(&format!("rank-{}", rank_code(rank)), &[]);
    let field = |key: &str| field_name(tell.words, step, key);
    let (code, at, args): (&str, Option<&String>, Vec<(&str, String)>) = match refusal {
        Refusal::NoSuchStep(id) => ("no-such-step", None, vec![("step", id.clone())]),
        Refusal::NotNow { step, now } => ("not-now", None, vec![("step", short(step)), ("now", short(now))]),
        Refusal::NotSignedOn(by) => ("not-signed-on", None, vec![("by", by.clone())]),
        Refusal::AlreadySignedOn(by) => ("already-signed-on", None, vec![("by", by.clone())]),
        Refusal::Initials(given) => ("initials", None, vec![("given", given.clone())]),
        Refusal::Rank { by, rank: has, needed } => {
            ("rank", None, vec![("by", by.clone()), ("rank", rank(*has)), ("needed", rank(*needed))])
        }
        Refusal::AtWork(by) => ("at-work", None, vec![("by", by.clone())]),
        Refusal::Worked(by) => ("worked", None, vec![("by", by.clone())]),
        Refusal::HazardOpen(hazard) => {
            ("hazard-open", None, vec![("hazard", tell.text(&format!("hazard-{hazard}"), &[]))])
        }
        Refusal::NoSuchHazard(hazard) => ("no-such-hazard", None, vec![("hazard", hazard.clone())]),
        Refusal::AlreadyAcknowledged(hazard) => {
            ("already-acknowledged", None, vec![("hazard", tell.text(&format!("hazard-{hazard}"), &[]))])
        }
        Refusal::Missing(key) => ("missing", Some(key), vec![("field", field(key))]),
        Refusal::NotAsked(key) => ("not-asked", Some(key), vec![("field", key.clone())]),
        Refusal::NoSuchOption { key, text } => {
            ("no-such-option", Some(key), vec![("field", field(key)), ("text", text.clone())])
        }
        Refusal::Evidence { .. } => ("program-fault", None, vec![("what", refusal.to_string())]),
        Refusal::NothingToWaive(id) => ("nothing-to-waive", None, vec![("step", short(id))]),
        Refusal::NotWaivable(id) => ("not-waivable", None, vec![("step", short(id))]),
        Refusal::NoReason => ("no-reason", None, Vec::new()),
        Refusal::NotDone(id) => ("not-done", None, vec![("step", short(id))]),
        Refusal::OnHold => ("on-hold", None, Vec::new()),
        Refusal::NotOnHold => ("not-on-hold", None, Vec::new()),
        Refusal::Ended => ("ended", None, Vec::new()),
        Refusal::Stopping => ("stopping", None, Vec::new()),
        Refusal::BySealOnly => ("by-seal-only", None, Vec::new()),
        Refusal::NotReady(id) => ("not-ready", None, vec![("step", short(id))]),
        Refusal::DeadEnd { .. } => ("program-fault", None, vec![("what", refusal.to_string())]),
    };
    Refused { code: code.to_owned(), field: at.cloned(), says: tell.text(&format!("refused-{code}"), &args) }
}

/// What somebody may not by the list of people, in words, with the field of a form that is meant.
pub fn denied(denied: &Denied, tell: &Tell) -> Refused {
    let by = |initials: &String| vec![("by", initials.clone())];
    let (field, args): (Option<&str>, Vec<(&str, String)>) = match denied {
        Denied::Unknown(i) | Denied::NotASupervisor(i) => (Some("by"), by(i)),
        Denied::Taken(i) => (Some("initials"), by(i)),
        Denied::Initials(given) => (Some("initials"), vec![("given", given.clone())]),
        Denied::Text(_) => (Some("name"), Vec::new()),
        Denied::NoReason => (Some("reason"), Vec::new()),
        Denied::PinForm => (Some("pin"), Vec::new()),
        Denied::WrongPin { initials } => (Some("pin"), by(initials)),
        Denied::Wait { initials, seconds } => {
            (Some("pin"), vec![("by", initials.clone()), ("seconds", seconds.to_string())])
        }
        Denied::PassphraseForm => (Some("passphrase"), Vec::new()),
        Denied::WrongPassphrase(i) => (Some("passphrase"), by(i)),
        Denied::WrongCode => (Some("code"), Vec::new()),
        Denied::LastSupervisor(i) | Denied::NoKey(i) | Denied::BadKeyFile(i) => (None, by(i)),
        Denied::NoRandom(why) => (None, vec![("why", why.clone())]),
        Denied::AloneIsForTrainees | Denied::FirstIsASupervisor | Denied::NotTheFirst | Denied::NoCustomer => {
            (None, Vec::new())
        }
    };
    let code = denied.code();
    Refused {
        code: code.to_owned(),
        field: field.map(str::to_owned),
        says: tell.text(&format!("refused-{code}"), &args),
    }
}
