//! One open job as the windows see it (being written).
pub mod ask;
pub mod handover;
pub mod view;
