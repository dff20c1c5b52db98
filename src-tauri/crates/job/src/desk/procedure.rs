//! With which procedure the next job begins: the shipped one, or a workshop's own, looked at first. One that is not proved
//! begins no job unless a supervisor signs for it, and that stands in the job's first entry.

use super::Desk;
use crate::{
    ask::Refused,
    body::SignedFor,
    fault,
    log::shipped,
    preferences::Preferences,
    show,
    tell::Tell,
    view::{ManualView, ProcedureView, TrustCode},
};
use bayhand_jobbook::Secret;
use bayhand_procedure::prove::{Proof, Property, Trust, trust};
use bayhand_procedure::{Document, Fault, SHIPPED, hash, load};
use std::path::Path;
use std::sync::{Arc, PoisonError};

/// A document of more bytes is none: the shipped one has some hundred thousand.
const MOST_BYTES: u64 = 4 << 20;
/// So many faults are told at once.
const TOLD: usize = 6;

/// A procedure that was looked at.
#[derive(Clone, Debug)]
pub(super) struct Chosen {
    place: Option<String>,
    pub(super) text: String,
    pub(super) hash: String,
    pub(super) document: Arc<Document>,
    trust: TrustCode,
    /// What is not as it should be, in words.
    found: Vec<String>,
    pub(super) signed: Option<SignedFor>,
}

impl Chosen {
    /// True when a job may begin with it.
    pub(super) fn may_begin(&self) -> bool {
        self.trust != TrustCode::NotProved || self.signed.is_some()
    }
}

impl Desk {
    /// Looks at a workshop's own procedure; the next job begins with it, and its place is set for the next start. Proving it
    /// takes some seconds.
    ///
    /// # Errors
    /// The file cannot be read, or is no procedure; what was chosen before stays chosen.
    pub async fn look_at_procedure(&self, place: &str) -> Result<ProcedureView, Refused> {
        let place = place.trim().to_owned();
        let at_place = |code: &str, why: String| Refused {
            code: code.into(),
            field: Some("place".into()),
            says: self.tell().text(&format!("refused-{code}"), &[("place", place.clone()), ("why", why)]),
        };
        let text = fault::text_of(Path::new(&place), MOST_BYTES, &self.tell()).await;
        let text = text.map_err(|why| at_place("procedure-file", why))?;
        let document =
            load(&text).map(Arc::new).map_err(|faults| at_place("procedure-form", told(&faults, &self.tell())))?;
        let (asked, of) = (text.clone(), document.clone());
        let trusted = tokio::task::spawn_blocking(move || trust(&asked, &of)).await;
        let trusted = trusted.map_err(|fault| at_place("procedure-form", fault.to_string()))?;
        let (trust, found) = match trusted {
            Trust::Shipped => (TrustCode::Shipped, Vec::new()),
            Trust::Proved => (TrustCode::Proved, Vec::new()),
            Trust::NotProved(proof) => (TrustCode::NotProved, found(&proof, &self.tell())),
        };
        let hash = hash(&text);
        let set = self.settings().set;
        self.set(Preferences { procedure: Some(place.clone()), ..set })?;
        let chosen = Chosen { place: Some(place), text, hash, document, trust, found, signed: None };
        Ok(self.choose(Some(chosen)))
    }

    /// The next job begins with the procedure that ships with the program.
    pub fn choose_shipped_procedure(&self) -> ProcedureView {
        self.choose(None)
    }

    /// A supervisor signs that the next job may begin with a procedure that is not proved.
    ///
    /// # Errors
    /// A refusal in words; nothing was signed then.
    pub async fn sign_for_procedure(
        &self,
        by: &str,
        passphrase: Secret,
        reason: &str,
    ) -> Result<ProcedureView, Refused> {
        let reason = reason.trim().to_owned();
        if reason.is_empty() {
            return Err(Refused { field: Some("reason".into()), ..self.refuse("no-reason") });
        }
        self.unlock(by, &passphrase).await?;
        let roster = self.roster().await?;
        let name = roster.member(by).map_err(|e| self.by_book(&e.into()))?.person.name.clone();
        let chosen = self.chosen().filter(|chosen| chosen.trust == TrustCode::NotProved);
        let mut chosen = chosen.ok_or_else(|| self.refuse("nothing-to-sign"))?;
        let found = chosen.found.clone();
        chosen.signed = Some(SignedFor { by: by.to_owned(), name, reason, found });
        Ok(self.choose(Some(chosen)))
    }

    /// The procedure that the next job begins with.
    pub(super) fn procedure_view(&self) -> ProcedureView {
        let tell = self.tell();
        let chosen = self.chosen();
        let shipped = crate::log::shipped().ok();
        let title = |document: &Document, hash: &str| show::procedure_title(document, hash);
        match chosen {
            Some(chosen) => ProcedureView {
                title: title(&chosen.document, &chosen.hash),
                trust: chosen.trust,
                says: tell.text(trust_words(chosen.trust, chosen.signed.is_some()), &[]),
                found: chosen.found,
                signed_by: chosen.signed.map(|signed| signed.by),
                place: chosen.place,
            },
            None => ProcedureView {
                place: None,
                title: shipped.map_or_else(String::new, |document| title(&document, &hash(SHIPPED))),
                trust: TrustCode::Shipped,
                says: tell.text(trust_words(TrustCode::Shipped, false), &[]),
                found: Vec::new(),
                signed_by: None,
            },
        }
    }

    /// The manual: the procedure of the open job, or else the one that the next job begins with, to be read.
    ///
    /// # Errors
    /// The shipped document cannot be read.
    pub async fn manual(&self) -> Result<ManualView, Refused> {
        let open = self.open.lock().await.as_ref().map(|log| log.document.clone());
        let document = match (open, self.chosen()) {
            (Some(document), _) => document,
            (None, Some(chosen)) => chosen.document,
            (None, None) => shipped().map_err(|why| self.unreadable(&why))?,
        };
        Ok(show::manual(&document, &self.tell()))
    }

    pub(super) fn chosen(&self) -> Option<Chosen> {
        self.procedure.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// A signature is for one job.
    pub(super) fn begun_with(&self) {
        if let Some(chosen) = self.procedure.lock().unwrap_or_else(PoisonError::into_inner).as_mut() {
            chosen.signed = None;
        }
    }

    fn choose(&self, chosen: Option<Chosen>) -> ProcedureView {
        *self.procedure.lock().unwrap_or_else(PoisonError::into_inner) = chosen;
        self.changed.send_modify(|n| *n += 1);
        self.procedure_view()
    }
}

fn told(faults: &[Fault], tell: &Tell) -> String {
    let told = faults.iter().take(TOLD).map(|fault| format!("{}: {}", fault.at, fault::procedure(&fault.what, tell)));
    told.collect::<Vec<_>>().join("; ")
}

/// What a proof found, each safety property once with the steps at which it does not hold.
fn found(proof: &Proof, tell: &Tell) -> Vec<String> {
    let broken = Property::ALL.into_iter().enumerate().filter_map(|(number, property)| {
        let mut steps: Vec<String> = proof.against(property).map(|broken| show::short(&broken.at, tell)).collect();
        steps.dedup();
        let args = [("property", tell.text(&format!("safety-{}", number + 1), &[])), ("steps", steps.join(", "))];
        (!steps.is_empty()).then(|| tell.text("safety-broken", &args))
    });
    let faults = proof.faults.iter().take(TOLD).map(|fault| {
        let args = [("step", show::short(&fault.at, tell)), ("says", fault::procedure(&fault.what, tell))];
        tell.text("safety-fault", &args)
    });
    broken.chain(faults).collect()
}

fn trust_words(trust: TrustCode, signed: bool) -> &'static str {
    match (trust, signed) {
        (TrustCode::Shipped, _) => "procedure-shipped",
        (TrustCode::Proved, _) => "procedure-proved",
        (TrustCode::NotProved, false) => "procedure-not-proved",
        (TrustCode::NotProved, true) => "procedure-signed",
    }
}
