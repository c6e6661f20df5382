//! heat_plan
