//! Whole jobs, faults and windows; everything stands in `tests/`.
