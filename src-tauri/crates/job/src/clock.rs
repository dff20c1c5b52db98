//! The clock is passed in: no logic reads one of its own.

use chrono::{DateTime, FixedOffset, Local};

/// What time it is at the car.
pub trait Clock: Send + Sync {
    /// Now, with the offset of local time.
    fn now(&self) -> DateTime<FixedOffset>;
}

/// The machine's clock.
#[derive(Clone, Copy, Debug, Default)]
pub struct SystemClock;

impl Clock for SystemClock {
    fn now(&self) -> DateTime<FixedOffset> {
        Local::now().fixed_offset()
    }
}
