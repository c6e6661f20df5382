//! device
