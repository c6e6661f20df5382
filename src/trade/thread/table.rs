//! The sizes, one row each.
//!
//! Metric sizes and pitches: ISO 261 and 262. Bearing face: ISO 4014 product grade A, d_w least.
//! Holes: ISO 273 medium. Unified sizes: ASME B1.1. Widths across flats: ASME B18.2.1, and the
//! small hexagon heads of ASME B18.6.3 below 1/4 in. Holes: ASME B18.2.8 normal; it has no #12
//! and no 9/16 in, where the step of the neighbours is kept.

use super::Series;

pub(super) const MM_PER_INCH: f64 = 25.4;
/// Bearing face of an inch hexagon head over its width across flats (common practice, no source).
const INCH_BEARING_FACE: f64 = 0.95;

/// One thread size, in millimetres.
#[derive(Debug)]
pub(super) struct Row {
    pub name: &'static str,
    pub series: Series,
    pub major_mm: f64,
    pub pitch_mm: f64,
    pub head_mm: f64,
    pub hole_mm: f64,
}

const fn metric(
    name: &'static str,
    series: Series,
    major_mm: f64,
    pitch_mm: f64,
    head_mm: f64,
    hole_mm: f64,
) -> Row {
    Row {
        name,
        series,
        major_mm,
        pitch_mm,
        head_mm,
        hole_mm,
    }
}

const fn inch(
    name: &'static str,
    series: Series,
    major_in: f64,
    threads_per_inch: f64,
    flats_in: f64,
    hole_in: f64,
) -> Row {
    Row {
        name,
        series,
        major_mm: major_in * MM_PER_INCH,
        pitch_mm: MM_PER_INCH / threads_per_inch,
        head_mm: flats_in * MM_PER_INCH * INCH_BEARING_FACE,
        hole_mm: hole_in * MM_PER_INCH,
    }
}

/// Name, series, diameter, pitch (threads an inch for unified), bearing face (width across flats
/// for unified), clearance hole.
pub(super) static ROWS: [Row; 73] = [
    metric("M3", Series::MetricCoarse, 3.0, 0.5, 4.57, 3.4),
    metric("M3.5", Series::MetricCoarse, 3.5, 0.6, 5.07, 3.9),
    metric("M4", Series::MetricCoarse, 4.0, 0.7, 5.88, 4.5),
    metric("M5", Series::MetricCoarse, 5.0, 0.8, 6.88, 5.5),
    metric("M6", Series::MetricCoarse, 6.0, 1.0, 8.88, 6.6),
    metric("M7", Series::MetricCoarse, 7.0, 1.0, 9.63, 7.6),
    metric("M8", Series::MetricCoarse, 8.0, 1.25, 11.63, 9.0),
    metric("M10", Series::MetricCoarse, 10.0, 1.5, 14.63, 11.0),
    metric("M12", Series::MetricCoarse, 12.0, 1.75, 16.63, 13.5),
    metric("M14", Series::MetricCoarse, 14.0, 2.0, 19.64, 15.5),
    metric("M16", Series::MetricCoarse, 16.0, 2.0, 22.49, 17.5),
    metric("M18", Series::MetricCoarse, 18.0, 2.5, 25.34, 20.0),
    metric("M20", Series::MetricCoarse, 20.0, 2.5, 28.19, 22.0),
    metric("M22", Series::MetricCoarse, 22.0, 2.5, 31.71, 24.0),
    metric("M24", Series::MetricCoarse, 24.0, 3.0, 33.61, 26.0),
    metric("M3×0.35", Series::MetricFine, 3.0, 0.35, 4.57, 3.4),
    metric("M4×0.5", Series::MetricFine, 4.0, 0.5, 5.88, 4.5),
    metric("M5×0.5", Series::MetricFine, 5.0, 0.5, 6.88, 5.5),
    metric("M6×0.75", Series::MetricFine, 6.0, 0.75, 8.88, 6.6),
    metric("M7×0.75", Series::MetricFine, 7.0, 0.75, 9.63, 7.6),
    metric("M8×1", Series::MetricFine, 8.0, 1.0, 11.63, 9.0),
    metric("M8×0.75", Series::MetricFine, 8.0, 0.75, 11.63, 9.0),
    metric("M10×1.25", Series::MetricFine, 10.0, 1.25, 14.63, 11.0),
    metric("M10×1", Series::MetricFine, 10.0, 1.0, 14.63, 11.0),
    metric("M10×0.75", Series::MetricFine, 10.0, 0.75, 14.63, 11.0),
    metric("M12×1.5", Series::MetricFine, 12.0, 1.5, 16.63, 13.5),
    metric("M12×1.25", Series::MetricFine, 12.0, 1.25, 16.63, 13.5),
    metric("M12×1", Series::MetricFine, 12.0, 1.0, 16.63, 13.5),
    metric("M14×1.5", Series::MetricFine, 14.0, 1.5, 19.64, 15.5),
    metric("M14×1.25", Series::MetricFine, 14.0, 1.25, 19.64, 15.5),
    metric("M14×1", Series::MetricFine, 14.0, 1.0, 19.64, 15.5),
    metric("M16×1.5", Series::MetricFine, 16.0, 1.5, 22.49, 17.5),
    metric("M16×1", Series::MetricFine, 16.0, 1.0, 22.49, 17.5),
    metric("M18×2", Series::MetricFine, 18.0, 2.0, 25.34, 20.0),
    metric("M18×1.5", Series::MetricFine, 18.0, 1.5, 25.34, 20.0),
    metric("M18×1", Series::MetricFine, 18.0, 1.0, 25.34, 20.0),
    metric("M20×2", Series::MetricFine, 20.0, 2.0, 28.19, 22.0),
    metric("M20×1.5", Series::MetricFine, 20.0, 1.5, 28.19, 22.0),
    metric("M20×1", Series::MetricFine, 20.0, 1.0, 28.19, 22.0),
    metric("M22×2", Series::MetricFine, 22.0, 2.0, 31.71, 24.0),
    metric("M22×1.5", Series::MetricFine, 22.0, 1.5, 31.71, 24.0),
    metric("M22×1", Series::MetricFine, 22.0, 1.0, 31.71, 24.0),
    metric("M24×2", Series::MetricFine, 24.0, 2.0, 33.61, 26.0),
    metric("M24×1.5", Series::MetricFine, 24.0, 1.5, 33.61, 26.0),
    metric("M24×1", Series::MetricFine, 24.0, 1.0, 33.61, 26.0),
    inch("#4-40 UNC", Series::Unc, 0.112, 40.0, 0.1875, 0.128),
    inch("#5-40 UNC", Series::Unc, 0.125, 40.0, 0.1875, 0.156),
    inch("#6-32 UNC", Series::Unc, 0.138, 32.0, 0.25, 0.17),
    inch("#8-32 UNC", Series::Unc, 0.164, 32.0, 0.25, 0.196),
    inch("#10-24 UNC", Series::Unc, 0.19, 24.0, 0.3125, 0.221),
    inch("#12-24 UNC", Series::Unc, 0.216, 24.0, 0.3125, 0.25),
    inch("1/4-20 UNC", Series::Unc, 0.25, 20.0, 0.4375, 0.281),
    inch("5/16-18 UNC", Series::Unc, 0.3125, 18.0, 0.5, 0.344),
    inch("3/8-16 UNC", Series::Unc, 0.375, 16.0, 0.5625, 0.406),
    inch("7/16-14 UNC", Series::Unc, 0.4375, 14.0, 0.625, 0.469),
    inch("1/2-13 UNC", Series::Unc, 0.5, 13.0, 0.75, 0.562),
    inch("9/16-12 UNC", Series::Unc, 0.5625, 12.0, 0.8125, 0.625),
    inch("5/8-11 UNC", Series::Unc, 0.625, 11.0, 0.9375, 0.688),
    inch("3/4-10 UNC", Series::Unc, 0.75, 10.0, 1.125, 0.812),
    inch("#4-48 UNF", Series::Unf, 0.112, 48.0, 0.1875, 0.128),
    inch("#5-44 UNF", Series::Unf, 0.125, 44.0, 0.1875, 0.156),
    inch("#6-40 UNF", Series::Unf, 0.138, 40.0, 0.25, 0.17),
    inch("#8-36 UNF", Series::Unf, 0.164, 36.0, 0.25, 0.196),
    inch("#10-32 UNF", Series::Unf, 0.19, 32.0, 0.3125, 0.221),
    inch("#12-28 UNF", Series::Unf, 0.216, 28.0, 0.3125, 0.25),
    inch("1/4-28 UNF", Series::Unf, 0.25, 28.0, 0.4375, 0.281),
    inch("5/16-24 UNF", Series::Unf, 0.3125, 24.0, 0.5, 0.344),
    inch("3/8-24 UNF", Series::Unf, 0.375, 24.0, 0.5625, 0.406),
    inch("7/16-20 UNF", Series::Unf, 0.4375, 20.0, 0.625, 0.469),
    inch("1/2-20 UNF", Series::Unf, 0.5, 20.0, 0.75, 0.562),
    inch("9/16-18 UNF", Series::Unf, 0.5625, 18.0, 0.8125, 0.625),
    inch("5/8-18 UNF", Series::Unf, 0.625, 18.0, 0.9375, 0.688),
    inch("3/4-16 UNF", Series::Unf, 0.75, 16.0, 1.125, 0.812),
];
