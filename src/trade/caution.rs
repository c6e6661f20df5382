//! caution
