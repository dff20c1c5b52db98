//! What was asked for in a job, in order: a list whose beginning is shared by all jobs that began alike.

use crate::{Evidence, Intent};
use std::sync::Arc;

/// The list, the newest at hand.
#[derive(Clone, Debug, Default)]
pub struct Asked {
    last: Option<Arc<Link>>,
    len: usize,
}

#[derive(Debug)]
struct Link {
    before: Option<Arc<Link>>,
    asked: (Intent, Evidence),
}

impl Asked {
    /// One more.
    pub fn push(&mut self, intent: Intent, evidence: Evidence) {
        self.last = Some(Arc::new(Link { before: self.last.take(), asked: (intent, evidence) }));
        self.len += 1;
    }

    /// How many.
    pub fn len(&self) -> usize {
        self.len
    }

    /// All of it, in order.
    pub fn in_order(&self) -> Vec<(Intent, Evidence)> {
        let mut all = Vec::with_capacity(self.len);
        let mut next = self.last.as_ref();
        while let Some(link) = next {
            all.push(link.asked.clone());
            next = link.before.as_ref();
        }
        all.reverse();
        all
    }
}

impl Drop for Asked {
    fn drop(&mut self) {
        // Link by link: a long list dropped from its head would go as deep as it is long.
        let mut next = self.last.take();
        while let Some(link) = next {
            next = Arc::into_inner(link).and_then(|mut link| link.before.take());
        }
    }
}
