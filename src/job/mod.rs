//! The job and its rules.
