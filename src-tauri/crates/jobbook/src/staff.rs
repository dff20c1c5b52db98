//! People's secrets at work: the first supervisor, PINs, keys, the recovery code.

use std::path::PathBuf;

use chrono::{DateTime, FixedOffset};

use crate::event::{BookEvent, Person};
use crate::key_file::KeyFile;
use crate::people::Denied;
use crate::seal::{SealingKey, fingerprint, grouped, typed};
use crate::secret::{self, PIN, Secret, random};
use crate::{Book, BookError};

/// Signs of a recovery code: 100 bits.
const RECOVERY_SIGNS: usize = 20;

type Time = DateTime<FixedOffset>;

impl Book {
    /// Makes the first supervisor of a book that knows no people yet, with PIN and key. From then on nobody acts by a
    /// name alone. Gives back the recovery code, to be written down and kept elsewhere: it is shown this once.
    ///
    /// # Errors
    /// [`BookError::Denied`], or the book or the key file cannot be written.
    pub async fn first_supervisor(
        &self,
        person: Person,
        pin: &Secret,
        passphrase: &Secret,
        at: Time,
    ) -> Result<Secret, BookError> {
        let initials = person.initials.clone();
        let first = |pin: String| BookEvent::PersonEnrolled { by: None, person: person.clone(), pin };
        // Refused before a key file is made.
        self.permits(&first(String::new())).await?;
        let pin = new_verifier(pin).await?;
        let (file, public) = new_key(passphrase).await?;
        let (code, code_verifier) = new_code().await?;
        self.keep_key(&initials, &file)?;
        let events = |names: Vec<String>| {
            let [pin, code] = two(names);
            vec![
                first(pin),
                BookEvent::KeySet {
                    by: initials.clone(),
                    initials: initials.clone(),
                    key: public,
                    reason: "first".into(),
                },
                BookEvent::RecoverySet { by: initials.clone(), code },
            ]
        };
        self.note(vec![pin, code_verifier], events, at).await?;
        Ok(code)
    }

    /// Enters somebody in the list, with a PIN that they change later. The caller has made sure that it is the
    /// supervisor `by` who asks ([`Book::unlock`]).
    ///
    /// # Errors
    /// [`BookError::Denied`], or the book cannot be written.
    pub async fn enrol(&self, by: &str, person: Person, pin: &Secret, at: Time) -> Result<(), BookError> {
        let pin = new_verifier(pin).await?;
        let by = Some(by.to_owned());
        let event = |names: Vec<String>| {
            vec![BookEvent::PersonEnrolled { by, person, pin: names.into_iter().next().unwrap_or_default() }]
        };
        self.note(vec![pin], event, at).await
    }

    /// Sets a new PIN. The caller has made sure that it is `by` who asks.
    ///
    /// # Errors
    /// [`BookError::Denied`], or the book cannot be written.
    pub async fn set_pin(&self, by: &str, initials: &str, pin: &Secret, at: Time) -> Result<(), BookError> {
        let pin = new_verifier(pin).await?;
        let (by, initials) = (by.to_owned(), initials.to_owned());
        let event = |names: Vec<String>| {
            vec![BookEvent::PinSet { by, initials, pin: names.into_iter().next().unwrap_or_default() }]
        };
        self.note(vec![pin], event, at).await
    }

    /// Checks a PIN. A wrong one is recorded, and after some the next try has to wait.
    ///
    /// # Errors
    /// [`Denied::WrongPin`], [`Denied::Wait`], [`Denied::Unknown`], or the book cannot be written.
    pub async fn check_pin(&self, initials: &str, pin: &Secret, now: Time) -> Result<Person, BookError> {
        let roster = self.roster().await?;
        let member = roster.member(initials)?;
        let seconds = member.wait_s(now);
        if seconds > 0 {
            return Err(Denied::Wait { initials: initials.into(), seconds }.into());
        }
        let verifier = self.apart(&member.pin).await?.unwrap_or_default();
        let initials = initials.to_owned();
        if fits(pin, verifier).await {
            if member.was_refused() {
                self.note(Vec::new(), |_| vec![BookEvent::PinAccepted { initials }], now).await?;
            }
            return Ok(member.person.clone());
        }
        let refused = initials.clone();
        self.note(Vec::new(), |_| vec![BookEvent::PinRefused { initials }], now).await?;
        Err(Denied::WrongPin { initials: refused }.into())
    }

    /// Opens a supervisor's key with their passphrase: proof that it is they who ask, and what they seal with.
    ///
    /// # Errors
    /// [`BookError::Denied`].
    pub async fn unlock(&self, initials: &str, passphrase: &Secret) -> Result<SealingKey, BookError> {
        let roster = self.roster().await?;
        let member = roster.supervisor(initials)?;
        let none = || Denied::NoKey(initials.to_owned());
        let public = member.key.clone().ok_or_else(none)?;
        let file = KeyFile::read(&self.key_path(initials, &public), initials)?.ok_or_else(none)?;
        if file.public != public {
            return Err(Denied::BadKeyFile(initials.to_owned()).into());
        }
        let (passphrase, initials) = (passphrase.clone(), initials.to_owned());
        Ok(work(move || file.open(&passphrase, &initials)).await?)
    }

    /// Gives a supervisor a new key under a new passphrase. Seals by the old one stay what they are. The caller has made
    /// sure that it is `by` who asks.
    ///
    /// # Errors
    /// [`BookError::Denied`], or the book or the key file cannot be written.
    pub async fn set_key(
        &self,
        by: &str,
        initials: &str,
        passphrase: &Secret,
        reason: &str,
        at: Time,
    ) -> Result<(), BookError> {
        let event = |key| BookEvent::KeySet {
            by: by.to_owned(),
            initials: initials.to_owned(),
            key,
            reason: reason.trim().to_owned(),
        };
        self.permits(&event(String::new())).await?;
        let (file, public) = new_key(passphrase).await?;
        self.keep_key(initials, &file)?;
        self.note(Vec::new(), |_| vec![event(public)], at).await
    }

    /// Gives a supervisor who lost PIN or passphrase a new PIN and a new key, for the recovery code, which is used up by
    /// it. All of it is recorded. Gives back the next code.
    ///
    /// # Errors
    /// [`BookError::Denied`], or the book or the key file cannot be written.
    pub async fn recover(
        &self,
        initials: &str,
        code: &Secret,
        pin: &Secret,
        passphrase: &Secret,
        at: Time,
    ) -> Result<Secret, BookError> {
        let roster = self.roster().await?;
        roster.supervisor(initials)?;
        let verifier = match &roster.recovery {
            Some(name) => self.apart(name).await?.unwrap_or_default(),
            None => String::new(),
        };
        let code = Secret::new(typed(&String::from_utf8_lossy(code.bytes())));
        if !fits(&code, verifier).await {
            return Err(Denied::WrongCode.into());
        }
        let pin = new_verifier(pin).await?;
        let (file, key) = new_key(passphrase).await?;
        let (next, next_verifier) = new_code().await?;
        self.keep_key(initials, &file)?;
        let (by, who) = (initials.to_owned(), initials.to_owned());
        let events = |names: Vec<String>| {
            let [pin, code] = two(names);
            vec![
                BookEvent::Recovered { initials: who.clone() },
                BookEvent::PinSet { by: by.clone(), initials: who.clone(), pin },
                BookEvent::KeySet { by: by.clone(), initials: who, key, reason: "recovery".into() },
                BookEvent::RecoverySet { by, code },
            ]
        };
        self.note(vec![pin, next_verifier], events, at).await?;
        Ok(next)
    }

    /// Where a supervisor's key file lies: beside the book, named by its fingerprint. It may be kept elsewhere and
    /// brought back for a seal.
    pub fn key_path(&self, initials: &str, public: &str) -> PathBuf {
        let name = format!("{initials}-{}.key", fingerprint(public).unwrap_or_default());
        self.path().with_file_name("keys").join(name)
    }

    fn keep_key(&self, initials: &str, file: &KeyFile) -> Result<(), BookError> {
        let path = self.key_path(initials, &file.public);
        file.write(&path).map_err(|source| BookError::File { path, source })
    }

    async fn permits(&self, event: &BookEvent) -> Result<(), BookError> {
        let mut inner = self.inner.lock().await;
        Ok(inner.ledger(self.path()).await?.permits(event)?)
    }
}

/// A secret's hash takes long on purpose: it is made where nobody waits for the thread.
async fn work<T: Send + 'static>(secret: impl FnOnce() -> Result<T, Denied> + Send + 'static) -> Result<T, Denied> {
    let done = tokio::task::spawn_blocking(secret).await;
    done.unwrap_or_else(|fault| Err(Denied::NoRandom(fault.to_string())))
}

async fn fits(secret: &Secret, verifier: String) -> bool {
    let secret = secret.clone();
    work(move || Ok(secret::fits(&secret, &verifier))).await.unwrap_or(false)
}

async fn new_verifier(pin: &Secret) -> Result<String, Denied> {
    pin.has_form_of_pin()?;
    verifier_of(pin.clone()).await
}

async fn verifier_of(secret: Secret) -> Result<String, Denied> {
    let cannot = || Denied::NoRandom("argon2id cannot be computed".into());
    work(move || secret::verifier(&secret, PIN, random()?).ok_or_else(cannot)).await
}

async fn new_key(passphrase: &Secret) -> Result<(KeyFile, String), Denied> {
    let passphrase = passphrase.clone();
    work(move || KeyFile::make(&passphrase).map(|(file, key)| (file, key.public()))).await
}

/// A recovery code and what it is checked against.
async fn new_code() -> Result<(Secret, String), Denied> {
    let code = grouped(&random::<16>()?, RECOVERY_SIGNS);
    let verifier = verifier_of(Secret::new(typed(&code))).await?;
    Ok((Secret::new(code), verifier))
}

fn two(names: Vec<String>) -> [String; 2] {
    let mut names = names.into_iter();
    [names.next().unwrap_or_default(), names.next().unwrap_or_default()]
}
