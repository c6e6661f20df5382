//! A table of fasteners typed at a desk: each row a fasten step, headings in any order.

use super::csv::{self, CsvError, Row};
use super::field::Number;
use super::id::PartId;
use super::json;
use super::kinds::fasten::{Front, Lock, rectangle};
use super::kinds::fasten::{Lengths, fields, layout, layout_words, passes, size_words};
use super::kinds::{Fasten, Reuse, Work};
use super::part::{Part, PartPlace};
use super::sheet::{Sheet, Step, StepId, Units};
use super::text_form::{said, stages, thread};
use crate::trade::application::{Application, Face, JointKind, ManualWord};
use crate::trade::guard::Fastener;
use crate::trade::order::{Layout, MOST_BOLTS, Pass};
use crate::trade::preload::Condition;
use crate::trade::quantity::{
    LengthUnit, MassUnit, Stated, TorqueUnit, Unit, decimal, kept, no_number, parse_torque, short,
    unit_symbol,
};
use crate::trade::stages::Stage;
use crate::trade::strength::Strength;
use crate::trade::strip::FemaleMaterial;
use crate::trade::thread::Thread;
use std::fmt;

/// A column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Column {
    Step,
    Thread,
    Length,
    Count,
    Torque,
    Unit,
    Class,
    Into,
    Engagement,
    Condition,
    New,
    Uses,
    Longest,
    Layout,
    Labels,
    Groups,
    Passes,
    Stages,
    StretchLeast,
    StretchMost,
    StretchDecides,
    Fastener,
    Grip,
    Plain,
    Shank,
    ToYield,
    Seals,
    SelfLocking,
    RunningApart,
    Lock,
    Front,
    OldLocked,
    Compound,
    Joint,
    Bag,
    Notes,
}

/// Each column's heading as we write it, and the words others use; matched without case, blanks or
/// what stands in brackets.
const COLUMNS: [(Column, &str, &[&str]); 36] = [
    (
        Column::Step,
        "step",
        &["title", "name", "what", "joint", "fastener", "description"],
    ),
    (Column::Thread, "thread", &["size", "bolt", "screw"]),
    (Column::Length, "length mm", &["length"]),
    (
        Column::Count,
        "count",
        // No "no": most number their rows by it.
        &["quantity", "qty", "number", "pieces", "pcs"],
    ),
    (Column::Torque, "torque", &["tighteningtorque", "setting"]),
    (Column::Unit, "unit", &["torqueunit", "units"]),
    (Column::Class, "class", &["strength", "grade", "propertyclass"]),
    (Column::Into, "into", &["material", "screwedinto", "case"]),
    (
        Column::Engagement,
        "engagement mm",
        &["engagement", "depth", "depthmm"],
    ),
    (
        Column::Condition,
        "condition",
        &["state", "threadstate", "lubrication"],
    ),
    (Column::New, "new", &["reuse", "mustbenew", "neworagain"]),
    (Column::Uses, "may be tightened", &["uses", "mostuses"]),
    (Column::Longest, "greatest length mm", &["greatestlength"]),
    (Column::Layout, "layout", &["pattern"]),
    (Column::Front, "front", &["frontside"]),
    (Column::Labels, "bolt numbers", &["labels", "boltnumber"]),
    (Column::Groups, "groups", &["group", "othertorques"]),
    (Column::Passes, "passes", &["pass"]),
    (Column::Stages, "stages", &["stage"]),
    (Column::StretchLeast, "least stretch mm", &["leaststretch"]),
    (Column::StretchMost, "most stretch mm", &["moststretch"]),
    (Column::StretchDecides, "stretch decides", &["tostretch"]),
    (
        Column::Fastener,
        "what it is",
        &["kindoffastener", "fastenerkind", "fastenertype"],
    ),
    (Column::Grip, "grip mm", &["grip"]),
    (Column::Plain, "plain shank mm", &["plainshank", "shank"]),
    (Column::Shank, "shank diameter mm", &["shankdiameter", "waist"]),
    (Column::ToYield, "past yield", &["toyield", "torquetoyield"]),
    (Column::Seals, "seals", &["seal", "sealing"]),
    (
        Column::SelfLocking,
        "self-locking",
        &["selflockingnut", "lockingnut", "locknut"],
    ),
    (Column::RunningApart, "running torque not added", &["notadded"]),
    (Column::Lock, "locked by", &["lock", "lockedwith"]),
    (Column::OldLocked, "old ones locked", &["oldlocked"]),
    (
        Column::Compound,
        "compound",
        &["locking", "threadlocker", "goesonit"],
    ),
    (Column::Joint, "joint of the compound", &["compoundjoint"]),
    (Column::Bag, "bag", &["where", "place"]),
    (Column::Notes, "notes", &["note", "remark", "remarks"]),
];

/// Why a table is no list of fasteners.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TableError {
    /// Not a table.
    Csv(CsvError),
    /// A heading is missing.
    NoColumn(&'static str),
    /// A column heading stands twice.
    Twice { line: usize, heading: &'static str },
    /// Headings only.
    NoRows,
    /// A cell can't be read.
    Cell {
        line: usize,
        column: &'static str,
        why: String,
    },
}

impl fmt::Display for TableError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Csv(error) => error.fmt(f),
            Self::NoColumn(heading) => write!(
                f,
                "Line 1 has no heading “{heading}”: the first line names the columns, at least thread, which may stay empty below, and torque."
            ),
            Self::Twice { line, heading } => {
                write!(f, "Line {line}: two columns mean “{heading}”: keep one.")
            }
            Self::NoRows => f.write_str("The table has headings and no rows: add a line for each size."),
            Self::Cell { line, column, why } => write!(f, "Line {line}, {column}: {why}"),
        }
    }
}

impl std::error::Error for TableError {}

/// Reads a table into fasten steps, numbered from `first` on.
///
/// # Errors
/// [`TableError`], naming the line and the column; nothing is half read.
pub fn read(text: &str, first: StepId) -> Result<Vec<Step>, TableError> {
    kept(|| read_table(text, first))
}

fn read_table(text: &str, first: StepId) -> Result<Vec<Step>, TableError> {
    let rows = csv::read(text).map_err(TableError::Csv)?;
    let (head, rows) = rows.split_first().ok_or(TableError::NoRows)?;
    let columns = headings(head)?;
    if rows.is_empty() {
        return Err(TableError::NoRows);
    }
    rows.iter()
        .zip(first.0..)
        .map(|(row, id)| {
            Line {
                row,
                columns: &columns,
            }
            .step(StepId(id))
        })
        .collect()
}

/// Writes the fasten steps of a sheet as a table.
///
/// The work comes back whole. What a table has no column for: a step's number, minutes and waits, the parts
/// it needs beside its own fasteners, and fields of a newer form.
pub fn write(sheet: &Sheet) -> String {
    let head = COLUMNS
        .iter()
        .filter(|(column, ..)| *column != Column::Unit)
        .map(|(_, heading, _)| (*heading).to_owned())
        .collect();
    let rows = sheet.steps.iter().filter_map(|step| match &step.work {
        Work::Fasten(fasten) => Some(row_of(step, fasten)),
        _ => None,
    });
    kept(|| csv::write(&std::iter::once(head).chain(rows).collect::<Vec<_>>()))
}

fn row_of(step: &Step, fasten: &Fasten) -> Vec<String> {
    let number = |value: Option<f64>| value.map_or(String::new(), |value| value.to_string());
    let lengths = fasten.stated_lengths();
    // In mm as the heading says; another unit stands behind its number.
    let stated = |value: Option<Stated>| match (value, lengths.unit) {
        (None, _) => String::new(),
        (Some(value), LengthUnit::Millimetre) => value.text(),
        (Some(value), unit) => format!("{} {}", value.text(), unit.symbol()),
    };
    let size = size_words(fasten);
    let bag = step
        .parts
        .iter()
        .find(|part| part.name == size)
        .map(|part| match &part.place {
            PartPlace::Bag(name) => name.clone(),
            PartPlace::NotSaid => String::new(),
            place => place.words(),
        });
    vec![
        step.title.clone(),
        fasten.thread_name(),
        number(fasten.length_mm),
        fasten.layout.count().to_string(),
        fasten.torque.text(),
        fasten
            .strength
            .map_or(String::new(), |class| class.name().to_owned()),
        fasten.into.map_or(String::new(), |into| into.words().to_owned()),
        number(fasten.engagement_mm),
        match fasten.condition {
            Condition::Unknown => String::new(),
            condition => condition.words().to_owned(),
        },
        if fasten.reuse == Reuse::New { "new" } else { "" }.to_owned(),
        number(fasten.most_uses.map(f64::from)),
        stated(lengths.longest),
        layout_cell(&fasten.layout),
        match fasten.front {
            Front::NotSaid => String::new(),
            front => front.words().to_owned(),
        },
        fasten.label_words(),
        fasten.group_words(),
        passes::words(&fasten.passes),
        stages::line(&fasten.stages),
        stated(lengths.stretch_least),
        stated(lengths.stretch_most),
        yes(fasten.stretch_decides),
        match fasten.what_it_is() {
            Fastener::NotTold => String::new(),
            fastener => fastener.words().to_owned(),
        },
        number(fasten.grip_mm),
        number(fasten.plain_mm),
        number(fasten.shank_mm),
        yes(fasten.to_yield),
        yes(fasten.seal),
        yes(fasten.self_locking),
        yes(fasten.running_apart),
        match fasten.lock {
            Lock::None => String::new(),
            lock => lock.words().to_owned(),
        },
        yes(fasten.old_locked),
        fasten
            .compound
            .as_ref()
            .and_then(|joint| joint.manual)
            .map_or(String::new(), |manual| manual.words().to_owned()),
        fasten.compound.as_ref().map_or(String::new(), joint_words),
        bag.unwrap_or_default(),
        step.notes.clone(),
    ]
}

/// Whether so many may be in the upper row of a rectangle of that count.
fn in_row(count: usize, across: usize) -> Result<(), String> {
    fields::ACROSS[0].judge(across as f64, MassUnit::Kilogram)?;
    fields::row_fits(count, across).map_err(|most| format!("{most}: write fewer."))
}

/// The pattern; a rectangle with how many are in its upper row.
fn layout_cell(layout: &Layout) -> String {
    match layout {
        Layout::Rectangle { across, .. } => format!("rectangle {across}"),
        other => layout_words(other).to_owned(),
    }
}

fn yes(it: bool) -> String {
    if it { "yes" } else { "" }.to_owned()
}

/// What is known of a joint beside the manual's word, as the job form names it: "kind: washer; hole: blind".
fn joint_words(joint: &Application) -> String {
    let known = Application {
        manual: None,
        ..joint.clone()
    };
    // A flat list of words, numbers, yes and no: there is nothing in it to quote.
    let text = json::write(&known).unwrap_or_default().replace('"', "");
    let answers = text.trim_matches(['{', '}']).split(',');
    let known: Vec<String> = answers
        .filter_map(|answer| answer.split_once(':'))
        .filter(|(_, value)| *value != "null")
        .map(|(name, value)| format!("{name}: {value}"))
        .collect();
    known.join("; ")
}

/// Reads such words.
fn joint_of(words: &str) -> Option<Application> {
    let plain = |text: &str| {
        text.chars()
            .all(|c| c.is_ascii_alphanumeric() || "_.-".contains(c))
    };
    let answers: Option<Vec<String>> = words
        .split(';')
        .map(|answer| {
            let (name, value) = answer.split_once(':')?;
            let (name, value) = (name.trim(), value.trim());
            let bare = decimal(value).is_some() || ["true", "false"].contains(&value);
            let value = if bare {
                value.to_owned()
            } else {
                format!("\"{value}\"")
            };
            (plain(name) && plain(value.trim_matches('"'))).then(|| format!("\"{name}\":{value}"))
        })
        .collect();
    json::read(&format!("{{{}}}", answers?.join(","))).ok()
}

/// Which column each cell of a row belongs to, with the unit its heading names.
type Columns = Vec<Option<(Column, Option<TorqueUnit>)>>;

fn headings(head: &Row) -> Result<Columns, TableError> {
    let columns: Columns = head.cells.iter().map(|cell| column_of(cell)).collect();
    for (column, heading, _) in COLUMNS {
        let times = columns
            .iter()
            .flatten()
            .filter(|(found, _)| *found == column)
            .count();
        if times > 1 {
            return Err(TableError::Twice {
                line: head.line,
                heading,
            });
        }
        if times == 0 && matches!(column, Column::Thread | Column::Torque) {
            return Err(TableError::NoColumn(heading));
        }
    }
    Ok(columns)
}

/// "Torque (N·m)" is the torque, in N·m.
fn column_of(heading: &str) -> Option<(Column, Option<TorqueUnit>)> {
    let (name, unit) = heading
        .split_once(['(', '[', '/'])
        .map_or((heading, None), |(name, unit)| (name, Some(unit)));
    let plain = plain(name);
    let (column, ..) = COLUMNS
        .into_iter()
        .find(|(_, own, others)| plain == self::plain(own) || others.contains(&plain.as_str()))?;
    let unit = unit.and_then(|unit| unit_of(unit.trim_end_matches([')', ']', ' '])));
    Some((column, unit))
}

fn plain(words: &str) -> String {
    words
        .chars()
        .filter(|c| c.is_alphanumeric())
        .map(|c| c.to_ascii_lowercase())
        .collect()
}

/// A unit in symbols or words, read by the torque reader itself.
fn unit_of(words: &str) -> Option<TorqueUnit> {
    parse_torque(&format!("1 {words}"), None)
        .ok()
        .map(|torque| torque.unit)
}

struct Line<'a> {
    row: &'a Row,
    columns: &'a Columns,
}

impl Line<'_> {
    /// The cell of that column; empty cells count as none.
    fn cell(&self, column: Column) -> Option<&str> {
        let at = self
            .columns
            .iter()
            .position(|found| found.is_some_and(|(found, _)| found == column))?;
        self.row
            .cells
            .get(at)
            .map(String::as_str)
            .filter(|cell| !cell.is_empty())
    }

    fn wrong(&self, column: Column, why: impl Into<String>) -> TableError {
        let heading = COLUMNS
            .iter()
            .find(|(own, ..)| *own == column)
            .map_or("", |(_, name, _)| *name);
        TableError::Cell {
            line: self.row.line,
            column: heading,
            why: why.into(),
        }
    }

    fn needed(&self, column: Column) -> Result<&str, TableError> {
        self.cell(column)
            .ok_or_else(|| self.wrong(column, "it is empty: every row needs one."))
    }

    /// Whichever of `all` goes by the cell's words, or the only one that begins so. No class of bolt is
    /// told by a beginning: "5" is the grade of one bolt and half the class of another.
    fn one_of<T: Copy>(
        &self,
        column: Column,
        all: &[T],
        words: impl Fn(T) -> &'static str,
    ) -> Result<Option<T>, TableError> {
        let Some(cell) = self.cell(column) else {
            return Ok(None);
        };
        let wanted = plain(cell);
        let exact = all.iter().copied().find(|one| plain(words(*one)) == wanted);
        let begins = || {
            let mut found = all
                .iter()
                .copied()
                .filter(|one| plain(words(*one)).starts_with(&wanted) && !wanted.is_empty());
            let one = found.next().filter(|_| column != Column::Class);
            one.filter(|_| found.next().is_none())
        };
        exact.or_else(begins).map(Some).ok_or_else(|| {
            let offered: Vec<&str> = all.iter().map(|one| words(*one)).collect();
            self.wrong(
                column,
                format!("“{}” is none of these: {}.", short(cell), offered.join(", ")),
            )
        })
    }

    /// What it is. A beginning that meant one thing before there were banjo bolts still means it.
    fn fastener(&self) -> Result<Option<Fastener>, TableError> {
        let of = |all: &[Fastener]| self.one_of(Column::Fastener, all, Fastener::words);
        let earlier: Vec<Fastener> = Fastener::ALL
            .into_iter()
            .filter(|one| *one != Fastener::Banjo)
            .collect();
        of(&earlier).or_else(|_| of(&Fastener::ALL))
    }

    fn millimetres(&self, column: Column, row: &Number<Fasten>) -> Result<Option<f64>, TableError> {
        let Some(cell) = self.cell(column) else {
            return Ok(None);
        };
        let wrong = |why: &str| self.wrong(column, format!("“{}” is not a length in mm. {why}", short(cell)));
        let mm = decimal(cell.trim_end_matches("mm")).ok_or_else(|| self.wrong(column, no_number(cell)))?;
        row.judge(mm, MassUnit::Kilogram)
            .map(Some)
            .map_err(|why| wrong(&why))
    }

    /// Stretch and greatest length, "0.0050 in": in mm where no unit stands behind; none where nothing is said.
    fn lengths(&self) -> Result<Option<Lengths>, TableError> {
        let columns = [Column::StretchLeast, Column::StretchMost, Column::Longest];
        let mut found: Option<Lengths> = None;
        for column in columns {
            let Some(cell) = self.cell(column) else { continue };
            let number = cell.trim_end_matches(|c: char| !c.is_ascii_digit() && c != '.');
            let behind = cell.get(number.len()..).unwrap_or_default();
            let symbol = if behind.trim().is_empty() {
                "mm".to_owned()
            } else {
                unit_symbol(behind)
            };
            let unit = Units::LENGTHS.into_iter().find(|unit| unit.symbol() == symbol);
            let stated = unit.zip(Stated::typed(number));
            let (unit, stated) = stated.ok_or_else(|| {
                let why = format!("“{}” is no length: write digits and mm, in or thou.", short(cell));
                self.wrong(column, why)
            })?;
            let lengths = found.get_or_insert(Lengths::of(unit));
            if lengths.unit != unit {
                let why = "write stretch and greatest length of one row in one unit.";
                return Err(self.wrong(column, why));
            }
            let (own, row) = match column {
                Column::StretchLeast => (&mut lengths.stretch_least, &fields::STRETCH[0]),
                Column::StretchMost => (&mut lengths.stretch_most, &fields::STRETCH[1]),
                _ => (&mut lengths.longest, &fields::LONGEST[0]),
            };
            *own = Some(stated);
            let mm = stated.value * unit.metres() / LengthUnit::Millimetre.metres();
            row.judge(mm, MassUnit::Kilogram)
                .map_err(|why| self.wrong(column, format!("“{}” makes no sense. {why}", short(cell))))?;
        }
        Ok(found)
    }

    fn step(&self, id: StepId) -> Result<Step, TableError> {
        let thread = thread::read(self.cell(Column::Thread).unwrap_or_default())
            .map_err(|why| self.wrong(Column::Thread, why))?;
        let said = said::typed(self.needed(Column::Torque)?, self.unit()?)
            .map_err(|why| self.wrong(Column::Torque, why))?;
        let count = self.count()?;
        let into = self.one_of(Column::Into, &FemaleMaterial::ALL, FemaleMaterial::words)?;
        let mut fasten = Fasten {
            length_mm: self.millimetres(Column::Length, &fields::LENGTH[0])?,
            strength: self.one_of(Column::Class, &Strength::ALL, Strength::name)?,
            into,
            engagement_mm: self.millimetres(Column::Engagement, &fields::ENGAGEMENT[0])?,
            passes: self.passes()?,
            stages: self.stages(said.stages)?,
            stretch_decides: self.flag(Column::StretchDecides)?,
            grip_mm: self.millimetres(Column::Grip, &fields::GRIP[0])?,
            plain_mm: self.millimetres(Column::Plain, &fields::GRIP[1])?,
            shank_mm: self.millimetres(Column::Shank, &fields::GRIP[2])?,
            to_yield: self.flag(Column::ToYield)?,
            seal: self.flag(Column::Seals)?,
            self_locking: self.flag(Column::SelfLocking)?,
            running_apart: self.flag(Column::RunningApart)?,
            lock: self
                .one_of(Column::Lock, &Lock::ALL, Lock::words)?
                .unwrap_or_default(),
            front: self
                .one_of(Column::Front, &Front::ALL, Front::words)?
                .unwrap_or_default(),
            old_locked: self.flag(Column::OldLocked)?,
            condition: self.condition()?,
            reuse: self.reuse()?,
            most_uses: self.uses()?,
            compound: self.compound(thread, into)?,
            ..Fasten::new(thread, said.torque, self.layout(count)?)
        };
        if let Some(fastener) = self.fastener()? {
            fasten.take_fastener(fastener);
        }
        if let Some(lengths) = self.lengths()? {
            fasten.state_lengths(lengths);
        }
        let labels = fasten.set_labels(self.cell(Column::Labels).unwrap_or_default());
        labels.map_err(|why| self.wrong(Column::Labels, why))?;
        let groups = fasten.set_groups(self.cell(Column::Groups).unwrap_or_default());
        groups.map_err(|why| self.wrong(Column::Groups, why))?;
        let size = size_words(&fasten);
        let title = self
            .cell(Column::Step)
            .map_or_else(|| format!("{count} × {size}"), str::to_owned);
        let parts = self.cell(Column::Bag).map(|bag| Part {
            id: PartId(1),
            own: true,
            name: size,
            count: count as u32,
            new_part: fasten.reuse == Reuse::New,
            place: place_of(bag),
        });
        Ok(Step {
            notes: self.cell(Column::Notes).unwrap_or_default().to_owned(),
            parts: parts.into_iter().collect(),
            ..Step::new(id, &title, Work::Fasten(fasten))
        })
    }

    /// The unit of a bare number: the row's own, else the heading's.
    fn unit(&self) -> Result<Option<TorqueUnit>, TableError> {
        match self.cell(Column::Unit) {
            Some(cell) => unit_of(cell)
                .map(Some)
                .ok_or_else(|| self.wrong(Column::Unit, format!("“{}” is no unit of torque.", short(cell)))),
            None => Ok(self
                .columns
                .iter()
                .flatten()
                .find_map(|(column, unit)| unit.filter(|_| *column == Column::Torque))),
        }
    }

    fn count(&self) -> Result<usize, TableError> {
        let Some(cell) = self.cell(Column::Count) else {
            return Ok(1);
        };
        match cell.trim_end_matches(['x', '×', ' ']).parse::<usize>() {
            Ok(count) if (1..=MOST_BOLTS).contains(&count) => Ok(count),
            _ => Err(self.wrong(
                Column::Count,
                format!("“{}” is not a count from 1 to {MOST_BOLTS}.", short(cell)),
            )),
        }
    }

    fn condition(&self) -> Result<Condition, TableError> {
        if self
            .cell(Column::Condition)
            .is_some_and(|cell| plain(cell) == "dry")
        {
            return Ok(Condition::Dry);
        }
        Ok(self
            .one_of(Column::Condition, &Condition::ALL, Condition::words)?
            .unwrap_or(Condition::Unknown))
    }

    fn reuse(&self) -> Result<Reuse, TableError> {
        match self.cell(Column::New).map(plain).as_deref() {
            None | Some("no" | "again" | "old" | "false" | "0" | "reuse" | "reused") => Ok(Reuse::Again),
            Some("yes" | "new" | "true" | "1" | "x" | "newonly") => Ok(Reuse::New),
            Some(_) => Err(self.wrong(Column::New, "write “new” or leave it empty.")),
        }
    }

    fn uses(&self) -> Result<Option<u32>, TableError> {
        let Some(cell) = self.cell(Column::Uses) else {
            return Ok(None);
        };
        let wrong = |why: String| self.wrong(Column::Uses, why);
        let times =
            decimal(cell).ok_or_else(|| wrong("write how many times in all, in digits.".to_owned()))?;
        fields::USES[0]
            .judge(times, MassUnit::Kilogram)
            .map(|times| Some(times as u32))
            .map_err(wrong)
    }

    fn layout(&self, count: usize) -> Result<Layout, TableError> {
        let wrong = |why: &str| Err(self.wrong(Column::Layout, why));
        match self.cell(Column::Layout).map(plain).as_deref() {
            None if count == 1 => Ok(Layout::Single),
            Some("single" | "one") if count == 1 => Ok(Layout::Single),
            Some("single" | "one") => wrong("“single” is for one fastener."),
            Some("line" | "row" | "inline") => Ok(Layout::Line { count }),
            Some("circle" | "round" | "ring") => Ok(Layout::Circle { count }),
            Some("tworows" | "rows" | "pairs" | "pairedrows") if count.is_multiple_of(2) => {
                Ok(Layout::PairedRows { pairs: count / 2 })
            }
            Some("tworows" | "rows" | "pairs" | "pairedrows") => wrong("two rows need an even count."),
            None | Some("free" | "asnumbered" | "order") => Ok(Layout::Free { count }),
            Some(words) => match words.strip_prefix("rectangle") {
                Some(_) if !count.is_multiple_of(2) || count < 4 => {
                    wrong("a rectangle needs an even count of four or more.")
                }
                Some("") => Ok(layout("rectangle", count)),
                Some(across) => match across.parse() {
                    Ok(across) => in_row(count, across)
                        .map(|()| rectangle(count, across))
                        .map_err(|why| self.wrong(Column::Layout, why)),
                    Err(_) => wrong("behind “rectangle” write how many are in its upper row."),
                },
                None => wrong("write single, line, two rows, rectangle, circle or as numbered."),
            },
        }
    }

    /// "30 60 100" or "30/60/100 %": shares of the torque.
    fn passes(&self) -> Result<Vec<Pass>, TableError> {
        // Some head their passes "stages".
        let elsewhere = || {
            self.cell(Column::Stages)
                .filter(|cell| passes::read(cell).is_ok())
        };
        let cell = self.cell(Column::Passes).or_else(elsewhere);
        passes::read(cell.unwrap_or_default()).map_err(|why| self.wrong(Column::Passes, why))
    }

    /// "snug 10 N·m; 20 N·m; 60°", or those said behind the torque.
    fn stages(&self, behind: Vec<Stage>) -> Result<Vec<Stage>, TableError> {
        match self.cell(Column::Stages) {
            Some(cell) if passes::read(cell).is_err() => {
                if !behind.is_empty() {
                    let why = "the angle stands behind the torque too: write it in one of them.";
                    return Err(self.wrong(Column::Stages, why));
                }
                stages::typed_line(cell).map_err(|why| self.wrong(Column::Stages, why))
            }
            _ => Ok(behind),
        }
    }

    fn flag(&self, column: Column) -> Result<bool, TableError> {
        match self.cell(column).map(plain).as_deref() {
            None | Some("no" | "false" | "0") => Ok(false),
            Some("yes" | "true" | "1" | "x") => Ok(true),
            Some(_) => Err(self.wrong(column, "write “yes” or leave it empty.")),
        }
    }

    fn compound(
        &self,
        thread: Option<Thread>,
        into: Option<FemaleMaterial>,
    ) -> Result<Option<Application>, TableError> {
        let told = match self.cell(Column::Joint) {
            Some(words) => Some(joint_of(words).ok_or_else(|| {
                self.wrong(
                    Column::Joint,
                    "write it as it is exported: kind: fastener; hole: blind.",
                )
            })?),
            None => None,
        };
        let Some(cell) = self.cell(Column::Compound) else {
            return Ok(told);
        };
        let manual = match plain(cell).as_str() {
            "no" | "none" => return Ok(None),
            "low" => ManualWord::LockLow,
            "medium" => ManualWord::LockMedium,
            "high" => ManualWord::LockHigh,
            "sealant" => ManualWord::ThreadSealant,
            "dry" => ManualWord::Dry,
            _ => self
                .one_of(Column::Compound, ManualWord::ALL, ManualWord::words)?
                .unwrap_or(ManualWord::NotStated),
        };
        if let Some(told) = told {
            return Ok(Some(Application {
                manual: Some(manual),
                ..told
            }));
        }
        let face = into.map(|into| match into {
            FemaleMaterial::CastAluminium | FemaleMaterial::WroughtAluminium | FemaleMaterial::Magnesium => {
                Face::CastAluminium
            }
            FemaleMaterial::CastIron | FemaleMaterial::Steel => Face::SteelOrIron,
            FemaleMaterial::Bronze => Face::BrassOrCopper,
        });
        Ok(Some(Application {
            manual: Some(manual),
            thread: thread.map(|thread| thread.major()),
            assembled: Some(false),
            face,
            ..Application::new(JointKind::ThreadedFastener)
        }))
    }
}

fn place_of(words: &str) -> PartPlace {
    let named = PartPlace::TILES
        .into_iter()
        .skip(1)
        .find(|place| plain(&place.words()) == plain(words));
    let bag = || {
        let name = words.trim();
        let name = ["in bag ", "bag ", "Bag "]
            .iter()
            .find_map(|start| name.strip_prefix(start))
            .unwrap_or(name);
        PartPlace::Bag(name.to_owned())
    };
    named.unwrap_or_else(bag)
}
