//! Sizes at which an answer changes: the rules go by them, and so do the questions.

/// Low strength serves threads to about this size, mm (common practice).
pub const LOW_TO_MM: f64 = 6.0;
/// Wicking grades serve threads to about this size, mm (common practice).
pub const WICKING_TO_MM: f64 = 12.0;
/// High strength starts here, mm; below it, removal shears the fastener (common practice).
pub const HIGH_FROM_MM: f64 = 10.0;
/// The widest gap an anaerobic sealant or retaining compound is trusted with, mm (common practice).
pub const ANAEROBIC_GAP_MM: f64 = 0.25;
/// The widest gap, mm on the diameter, where the part has to run true: it sits off centre by up to half of
/// it (common practice).
pub const CENTRED_GAP_MM: f64 = 0.1;
/// The gaps in which a retaining compound is strongest, mm on the diameter (a bearing supplier's note).
pub const STRONGEST_MM: (f64, f64) = (0.05, 0.13);
/// The widest gap for silicone, "a few millimetres" (common practice).
pub const SILICONE_GAP_MM: f64 = 3.0;
/// What an open thread is taken as, mm.
pub const OPEN_THREAD_MM: f64 = 8.0;
/// A whisker, so that a limit typed in inches is still the limit.
pub const WHISKER: f64 = 1e-9;
