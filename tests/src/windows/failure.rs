//! Why a window test fails, in words.

use std::fmt;

/// What was tried, and what came instead.
pub struct Failure(String);

/// What a window test gives back.
pub type Tested<T = ()> = Result<T, Failure>;

impl Failure {
    /// A failure in these words.
    pub fn new(says: impl Into<String>) -> Self {
        Self(says.into())
    }
}

/// As words: this is what the test runner prints.
impl fmt::Debug for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl<E: std::error::Error> From<E> for Failure {
    fn from(error: E) -> Self {
        Self(error.to_string())
    }
}
