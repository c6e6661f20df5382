//! Halfcase: a phone bench companion for putting engines and gearboxes back together.
//!
//! Imports point downwards only: `screens` → `parts` → `bench` → `device` → `job` → `trade`.

pub mod job;
pub mod trade;

#[cfg(feature = "app")]
pub mod bench;
#[cfg(feature = "app")]
pub mod device;
#[cfg(feature = "app")]
pub mod parts;
#[cfg(feature = "app")]
pub mod screens;

#[cfg(all(feature = "setup", not(target_arch = "wasm32")))]
pub mod setup;
