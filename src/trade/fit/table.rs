//! The tables of ISO 286-1:2010, in µm, to 630 mm. A size falls in the first band whose upper end
//! it does not exceed.

use super::class::Position;

/// Upper ends of the main bands, mm.
pub(super) const BANDS: [f64; 14] = [
    3.0, 6.0, 10.0, 18.0, 30.0, 50.0, 80.0, 120.0, 180.0, 250.0, 315.0, 400.0, 500.0, 630.0,
];

/// Upper ends of the intermediate bands, mm, for the letters r to u.
pub(super) const FINE_BANDS: [f64; 26] = [
    3.0, 6.0, 10.0, 18.0, 24.0, 30.0, 40.0, 50.0, 65.0, 80.0, 100.0, 120.0, 140.0, 160.0, 180.0, 200.0,
    225.0, 250.0, 280.0, 315.0, 355.0, 400.0, 450.0, 500.0, 560.0, 630.0,
];

/// Standard tolerances (table 1), one row a grade from IT4 to IT11. IT4 serves the Δ of grade 5 only.
#[rustfmt::skip]
pub(super) const TOLERANCES: [[f64; 14]; 8] = [
    [ 3.0,  4.0,  4.0,   5.0,   6.0,   7.0,   8.0,  10.0,  12.0,  14.0,  16.0,  18.0,  20.0,  22.0],
    [ 4.0,  5.0,  6.0,   8.0,   9.0,  11.0,  13.0,  15.0,  18.0,  20.0,  23.0,  25.0,  27.0,  32.0],
    [ 6.0,  8.0,  9.0,  11.0,  13.0,  16.0,  19.0,  22.0,  25.0,  29.0,  32.0,  36.0,  40.0,  44.0],
    [10.0, 12.0, 15.0,  18.0,  21.0,  25.0,  30.0,  35.0,  40.0,  46.0,  52.0,  57.0,  63.0,  70.0],
    [14.0, 18.0, 22.0,  27.0,  33.0,  39.0,  46.0,  54.0,  63.0,  72.0,  81.0,  89.0,  97.0, 110.0],
    [25.0, 30.0, 36.0,  43.0,  52.0,  62.0,  74.0,  87.0, 100.0, 115.0, 130.0, 140.0, 155.0, 175.0],
    [40.0, 48.0, 58.0,  70.0,  84.0, 100.0, 120.0, 140.0, 160.0, 185.0, 210.0, 230.0, 250.0, 280.0],
    [60.0, 75.0, 90.0, 110.0, 130.0, 160.0, 190.0, 220.0, 250.0, 290.0, 320.0, 360.0, 400.0, 440.0],
];

/// The grade of the first row of [`TOLERANCES`].
pub(super) const FIRST_GRADE: u8 = 4;

/// Amount of a shaft's fundamental deviation (tables 4 and 5) for the letters on the main bands:
/// below the nominal size for d to g, above it for k to p.
#[rustfmt::skip]
const MAIN: [(Position, [f64; 14]); 8] = [
    (Position::D, [20.0, 30.0, 40.0, 50.0, 65.0, 80.0, 100.0, 120.0, 145.0, 170.0, 190.0, 210.0, 230.0, 260.0]),
    (Position::E, [14.0, 20.0, 25.0, 32.0, 40.0, 50.0,  60.0,  72.0,  85.0, 100.0, 110.0, 125.0, 135.0, 145.0]),
    (Position::F, [ 6.0, 10.0, 13.0, 16.0, 20.0, 25.0,  30.0,  36.0,  43.0, 50.0, 56.0, 62.0, 68.0, 76.0]),
    (Position::G, [ 2.0,  4.0,  5.0,  6.0,  7.0,  9.0,  10.0,  12.0,  14.0, 15.0, 17.0, 18.0, 20.0, 22.0]),
    // Grades 4 to 7; coarser ones sit on the nominal size.
    (Position::K, [ 0.0,  1.0,  1.0,  1.0,  2.0,  2.0,   2.0,   3.0,   3.0, 4.0, 4.0, 4.0, 5.0, 0.0]),
    (Position::M, [ 2.0,  4.0,  6.0,  7.0,  8.0,  9.0,  11.0,  13.0,  15.0, 17.0, 20.0, 21.0, 23.0, 26.0]),
    (Position::N, [ 4.0,  8.0, 10.0, 12.0, 15.0, 17.0,  20.0,  23.0,  27.0, 31.0, 34.0, 37.0, 40.0, 44.0]),
    (Position::P, [ 6.0, 12.0, 15.0, 18.0, 22.0, 26.0,  32.0,  37.0,  43.0, 50.0, 56.0, 62.0, 68.0, 78.0]),
];

/// The same for the letters on the intermediate bands; t starts above 24 mm.
#[rustfmt::skip]
const FINE: [(Position, [Option<f64>; 26]); 4] = [
    (Position::R, [Some(10.0), Some(15.0), Some(19.0), Some(23.0), Some(28.0), Some(28.0), Some(34.0), Some(34.0),
        Some(41.0), Some(43.0), Some(51.0), Some(54.0), Some(63.0), Some(65.0), Some(68.0),
        Some(77.0), Some(80.0), Some(84.0), Some(94.0), Some(98.0), Some(108.0),
        Some(114.0), Some(126.0), Some(132.0), Some(150.0), Some(155.0)]),
    (Position::S, [Some(14.0), Some(19.0), Some(23.0), Some(28.0), Some(35.0), Some(35.0), Some(43.0), Some(43.0),
        Some(53.0), Some(59.0), Some(71.0), Some(79.0), Some(92.0), Some(100.0), Some(108.0),
        Some(122.0), Some(130.0), Some(140.0), Some(158.0), Some(170.0), Some(190.0),
        Some(208.0), Some(232.0), Some(252.0), Some(280.0), Some(310.0)]),
    (Position::T, [None, None, None, None, None, Some(41.0), Some(48.0), Some(54.0),
        Some(66.0), Some(75.0), Some(91.0), Some(104.0), Some(122.0), Some(134.0), Some(146.0),
        Some(166.0), Some(180.0), Some(196.0), Some(218.0), Some(240.0), Some(268.0),
        Some(294.0), Some(330.0), Some(360.0), Some(400.0), Some(450.0)]),
    (Position::U, [Some(18.0), Some(23.0), Some(28.0), Some(33.0), Some(41.0), Some(48.0), Some(60.0), Some(70.0),
        Some(87.0), Some(102.0), Some(124.0), Some(144.0), Some(170.0), Some(190.0), Some(210.0),
        Some(236.0), Some(258.0), Some(284.0), Some(315.0), Some(350.0), Some(390.0),
        Some(435.0), Some(490.0), Some(540.0), Some(600.0), Some(660.0)]),
];

/// Lower deviation below the nominal size of shafts j to 500 mm, grades 5 and 6 alike, then 7.
const SHAFT_J: [[f64; 13]; 2] = [
    [
        2.0, 2.0, 2.0, 3.0, 4.0, 5.0, 7.0, 9.0, 11.0, 13.0, 16.0, 18.0, 20.0,
    ],
    [
        4.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 18.0, 21.0, 26.0, 28.0, 32.0,
    ],
];

/// Upper deviation of holes J to 500 mm, grades 6, 7 and 8: no rule, only this table.
const HOLE_J: [[f64; 13]; 3] = [
    [
        2.0, 5.0, 5.0, 6.0, 8.0, 10.0, 13.0, 16.0, 18.0, 22.0, 25.0, 29.0, 33.0,
    ],
    [
        4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 18.0, 22.0, 26.0, 30.0, 36.0, 39.0, 43.0,
    ],
    [
        6.0, 10.0, 12.0, 15.0, 20.0, 24.0, 28.0, 34.0, 41.0, 47.0, 55.0, 60.0, 66.0,
    ],
];

/// The place of a size among bands.
pub(super) fn band(mm: f64, bands: &[f64]) -> Option<usize> {
    bands.iter().position(|&upper| mm <= upper)
}

/// The tolerance of a grade, µm.
pub(super) fn tolerance(mm: f64, grade: u8) -> Option<f64> {
    let row = TOLERANCES.get(usize::from(grade.checked_sub(FIRST_GRADE)?))?;
    row.get(band(mm, &BANDS)?).copied()
}

/// The amount of the fundamental deviation of a letter other than H, J and JS, µm.
pub(super) fn amount(mm: f64, position: Position) -> Option<f64> {
    if let Some((_, row)) = MAIN.iter().find(|(p, _)| *p == position) {
        return row.get(band(mm, &BANDS)?).copied();
    }
    let (_, row) = FINE.iter().find(|(p, _)| *p == position)?;
    row.get(band(mm, &FINE_BANDS)?).copied()?
}

/// How far a shaft j reaches below the nominal size, µm.
pub(super) fn shaft_j(mm: f64, grade: u8) -> Option<f64> {
    let row = match grade {
        5 | 6 => SHAFT_J.first(),
        7 => SHAFT_J.get(1),
        _ => None,
    }?;
    row.get(band(mm, &BANDS)?).copied()
}

/// How far a hole J reaches above the nominal size, µm.
pub(super) fn hole_j(mm: f64, grade: u8) -> Option<f64> {
    let row = HOLE_J.get(usize::from(grade.checked_sub(6)?))?;
    row.get(band(mm, &BANDS)?).copied()
}
