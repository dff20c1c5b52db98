//! Which step comes next: the first one to do, or, when a physical fact is missing for it, the step that brings that
//! fact about, found backwards through the needs by the shortest way. So raising, lowering and settling come up wherever the job came from.

use crate::{Condition, Document, Fact, Holds, Path, Refusal, Stage, Standing, State, Status, Step};

/// What comes next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Next {
    /// A step.
    Step {
        /// Its id.
        id: String,
        /// The step on the main path that it leads to, and the fact that is missing there; none when it is that step.
        because: Option<(String, Fact)>,
    },
    /// The job has ended.
    Ended,
    /// The document has no way on from here: a fault of the document.
    DeadEnd(Refusal),
}

/// What comes next.
pub fn next(document: &Document, state: &State) -> Next {
    let path = match state.status {
        Status::Working => Path::Main,
        Status::Stopping => Path::Stopped,
        Status::Stopped | Status::Sealed => return Next::Ended,
    };
    let goal = document.steps().find(|(stage, step)| stage.path == path && to_do(state, step));
    let Some((_, goal)) = goal else { return Next::Ended };
    let mut search = Search { document, state, on_the_way: Vec::new(), unmet: None, cut: false };
    match search.shortest(goal) {
        Some(step) if step.id == goal.id => Next::Step { id: step.id.clone(), because: None },
        Some(step) => {
            let fact = missing(&goal.needs, state).first().map_or(Fact::Stance, |h| h.fact);
            Next::Step { id: step.id.clone(), because: Some((goal.id.clone(), fact)) }
        }
        None => {
            let (step, fact) = search.unmet.unwrap_or_else(|| (goal.id.clone(), Fact::Stance));
            Next::DeadEnd(Refusal::DeadEnd { step, fact: fact.code() })
        }
    }
}

/// True when the step belongs to this job and its result is missing or must be taken again.
pub fn to_do(state: &State, step: &Step) -> bool {
    let wanted = match state.standing(&step.id) {
        Standing::Open | Standing::Tried => true,
        Standing::Void => !step.once,
        Standing::Done => false,
    };
    wanted && step.when.met(state)
}

/// The search backwards through needs, from a goal to a step that can be done now.
struct Search<'d> {
    document: &'d Document,
    state: &'d State,
    /// Steps that the one looked at leads to; none of them can help itself.
    on_the_way: Vec<&'d str>,
    /// The first step and fact that nothing brings about.
    unmet: Option<(String, Fact)>,
    /// True when a longer way was left untried.
    cut: bool,
}

impl<'d> Search<'d> {
    /// The goal itself when its needs hold, or the first step of the shortest way to it. Of ways of the same length the
    /// one that stands first in the document. A long way round could undo work: rolling the car off its pads is done
    /// before the pads are put away for good.
    fn shortest(&mut self, goal: &'d Step) -> Option<&'d Step> {
        for steps_between in 0.. {
            (self.unmet, self.cut) = (None, false);
            let found = self.offer(goal, steps_between);
            if found.is_some() || !self.cut {
                return found;
            }
        }
        None
    }

    fn offer(&mut self, step: &'d Step, steps_between: usize) -> Option<&'d Step> {
        if step.needs.met(self.state) {
            return Some(step);
        }
        if steps_between == 0 {
            self.cut = true;
            return None;
        }
        self.on_the_way.push(&step.id);
        let found = missing(&step.needs, self.state).into_iter().find_map(|holds| {
            let all: Vec<_> = makers(self.document, self.state, holds).collect();
            let way = all.into_iter().find_map(|maker| {
                let new = !self.on_the_way.contains(&maker.id.as_str());
                if new { self.offer(maker, steps_between - 1) } else { None }
            });
            if way.is_none() && self.unmet.is_none() {
                self.unmet = Some((step.id.clone(), holds.fact));
            }
            way
        });
        self.on_the_way.pop();
        found
    }
}

/// Facts of which one must be brought about next: the first missing one of 'all', or one for each way of 'any'.
fn missing<'c>(needs: &'c Condition, state: &State) -> Vec<&'c Holds> {
    match needs {
        Condition::Fact(holds) if holds.met(state) => Vec::new(),
        Condition::Fact(holds) => vec![holds],
        Condition::All(list) => list.iter().find(|c| !c.met(state)).map_or_else(Vec::new, |c| missing(c, state)),
        Condition::Any(list) => list.iter().flat_map(|c| missing(c, state)).collect(),
        // Nothing can be brought about that must not be; the lint keeps 'not' out of needs.
        Condition::Not(_) => Vec::new(),
    }
}

/// Steps that bring a fact about: those on demand first, then the main path; the wanted value that stands first is
/// tried first.
fn makers<'a>(document: &'a Document, state: &'a State, holds: &'a Holds) -> impl Iterator<Item = &'a Step> + 'a {
    let stopping = state.status == Status::Stopping;
    let open = move |stage: &Stage| match stage.path {
        Path::OnDemand => true,
        Path::Main => !stopping,
        Path::Stopped => stopping,
    };
    holds.is.iter().flat_map(move |value| {
        [true, false].into_iter().flat_map(move |on_demand| {
            document
                .steps()
                .filter(move |(stage, _)| open(stage) && (stage.path == Path::OnDemand) == on_demand)
                .map(|(_, step)| step)
                .filter(move |step| makes(step, holds.fact, *value, on_demand))
                .filter(move |step| step.when.met(state))
        })
    })
}

/// True when the step makes the fact so: by itself or, on demand, by an answer. A choice on the main path states what
/// the car is; it is not asked again to bring something about.
fn makes(step: &Step, fact: Fact, value: crate::Value, on_demand: bool) -> bool {
    let so = |b: &crate::document::Becomes| b.fact == fact && b.to == value;
    step.sets.iter().any(so) || (on_demand && step.options().any(|o| o.sets.iter().any(so)))
}
