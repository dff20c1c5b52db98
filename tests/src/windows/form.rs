//! What stands on the step at hand: fields, what is shown beside them, hazards, figures. Read, never acted on.

use super::window::Seen;
use super::{Tested, Window, wait};
use serde::Deserialize;
use std::collections::BTreeMap;

/// The step at hand as a person sees it.
#[derive(Clone, Debug, Deserialize)]
pub struct Form {
    /// Hazards that wait for a hand: ids of their buttons.
    pub hazards: Vec<String>,
    /// Fields in their order.
    pub fields: Vec<FormField>,
    /// What an instrument or a paper shows, by field key.
    pub shown: BTreeMap<String, String>,
    /// The signed turns that are asked for.
    pub turns: Option<String>,
    /// What the gate of the last try says.
    pub gate: Option<String>,
    /// Verdicts by figure.
    pub verdicts: BTreeMap<String, String>,
    /// Adjusters of the angles that are planned to be turned.
    pub turning: Vec<String>,
    /// True while the main action can be pressed.
    pub waits: bool,
}

/// One field.
#[derive(Clone, Debug, Deserialize)]
pub struct FormField {
    /// Its key.
    pub key: String,
    /// `typed`, `cards` or `list`.
    pub kind: String,
    /// Codes and words of the options.
    pub options: Vec<(String, String)>,
}

const FORM: &str = r#"
    const all = (css) => [...document.querySelectorAll(css)];
    const text = (css) => document.querySelector(css)?.textContent.trim() ?? null;
    const fields = [];
    const known = new Map();
    for (const one of all('main input, main select, main textarea')) {
      const id = one.dataset.id ?? '';
      if (one.type === 'radio' && one.name.startsWith('field-')) {
        const key = one.name.slice(6);
        if (!known.has(key)) {
          known.set(key, { key, kind: 'cards', options: [] });
          fields.push(known.get(key));
        }
        known.get(key).options.push([one.value, one.closest('label')?.querySelector('strong')?.textContent.trim() ?? '']);
      } else if (id.startsWith('field-')) {
        const list = one.tagName === 'SELECT';
        const options = list ? [...one.options].map((o) => [o.value, o.textContent.trim()]) : [];
        fields.push({ key: id.slice(6), kind: list ? 'list' : 'typed', options });
      }
    }
    const shown = {};
    for (const one of all('[data-id^="display-"]')) {
      // An instrument stands before what was agreed.
      shown[one.dataset.id.slice(8)] ??= (one.querySelector('.text') ?? one).textContent.trim();
    }
    const verdicts = {};
    for (const one of all('[data-figure]')) {
      verdicts[one.dataset.figure] = one.querySelector('[data-verdict]')?.dataset.verdict ?? '';
    }
    const turning = [...new Set(all('[data-adjuster]').map((one) => one.dataset.adjuster))];
    return {
      hazards: all('[data-id^="ack-"]').map((one) => one.dataset.id),
      fields,
      shown,
      turns: text('[data-id="turn-turns"]'),
      gate: text('[data-id="gate"]'),
      verdicts,
      turning,
      waits: document.querySelector('[data-id="record"]')?.disabled ?? true,
    };"#;

impl Window<'_> {
    /// The step at hand.
    ///
    /// # Errors
    /// When the driver does not answer.
    pub async fn form(&self) -> Tested<Form> {
        Ok(serde_json::from_value(self.read(FORM, vec![]).await?)?)
    }

    /// Records the step at hand. Numbers are read back first, and count once that was answered.
    ///
    /// # Errors
    /// When a refusal appears: its words; when nothing happens.
    pub async fn record(&self) -> Tested<Seen> {
        let before = self.seen().await?;
        self.click("record").await?;
        wait("the step to be recorded or read back", async || {
            let read_back = self.has("read-back").await.ok()?;
            let seen = self.seen().await.ok()?;
            (read_back || seen != before).then_some(())
        })
        .await?;
        if self.has("read-back").await? {
            self.click("record").await?;
        }
        self.changed_from(&before).await
    }

    /// Waits until the timer on the screen has run out.
    ///
    /// # Errors
    /// When there is none, or it does not.
    pub async fn wait_until_over(&self) -> Tested {
        let over = "return document.querySelector('[data-part=timer]')?.dataset.over === 'true';";
        wait("the timer to run out", async || {
            let is_over = self.read(over, vec![]).await.ok()? == serde_json::Value::Bool(true);
            is_over.then_some(())
        })
        .await
    }

    /// Chooses an option of a list by clicking it.
    ///
    /// # Errors
    /// When the list or the option does not come.
    pub async fn pick(&self, key: &str, option: &str) -> Tested {
        self.click(&format!("field-{key}")).await?;
        self.click(&format!("option-{key}-{option}")).await
    }
}
