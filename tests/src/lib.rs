//! Whole jobs, faults and windows; the tests themselves stand in `tests/`, here is what they share.
//!
//! - [`windows`]: the built app in real windows, driven by WebDriver as a person drives it.

pub mod windows;
