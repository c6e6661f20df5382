//! The computation: pure, in uom quantities; knows nothing of jobs, storage or screens.

pub mod moment;

// Quantities and their text.
pub mod quantity;
pub mod stored;

// Bolts and wrenches.
pub mod adapter;
pub mod guard;
pub mod order;
pub mod pair;
pub mod preload;
pub mod stages;
pub mod strength;
pub mod stretch;
pub mod strip;
pub mod thread;
pub mod wrench;

// Compounds.
pub mod application;
pub mod compound;
pub mod cure;

// Press fits and heat.
pub mod bearing;
pub mod bearing_fit;
pub mod cooling;
pub mod fit;
pub mod growth;
pub mod heat_plan;
pub mod material;
pub mod press;

// Lifting and measuring.
pub mod gauging;
pub mod hoist;
pub mod lift;
pub mod measure;
pub mod measuring;
pub mod selection;
pub mod sling;

pub mod caution;
