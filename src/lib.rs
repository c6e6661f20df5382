//! Halfcase: a phone bench companion for putting engines and gearboxes back together.
//!
//! Imports point downwards only: `screens` → `parts` → `bench` → `device` → `job` → `trade`.

pub mod job;
pub mod trade;

#[cfg(feature = "state")]
pub mod bench;
#[cfg(feature = "state")]
pub mod device;

#[cfg(feature = "app")]
pub mod parts;
#[cfg(feature = "app")]
pub mod screens;

/// Without a browser: only what needs none, for its tests.
#[cfg(all(feature = "state", not(feature = "app")))]
pub mod parts {
    pub mod typed;
    pub mod when;
}
/// Without a browser: only what needs none, for its tests.
#[cfg(all(feature = "state", not(feature = "app")))]
pub mod screens {
    pub mod route;
}

#[cfg(all(feature = "setup", not(target_arch = "wasm32")))]
pub mod setup;
