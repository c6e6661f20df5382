//! wrench
