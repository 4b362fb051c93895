//! Tables of tests and of cloths.

use std::collections::HashMap;
use std::io::{self, Write};

use tenter_core::{Confidence, Figure, Figures, Length, Ratio, TestError};

use super::{FABRICS, GARMENTS, PATTERNS, TESTS, harmless, made};
use crate::exchange::ExportError;
use crate::input::{TypedTest, test::mm};
use crate::log::{
    Drape, Fabric, Finish, Garment, Hands, Id, MassPerArea, Pattern, People, Price, Purpose, StoredTest, Tag,
};
use crate::store::{Read, WhichTests, caught};

/// Writes one row a test, the oldest first, with `step` after each, with the names of people or without; how many.
///
/// # Errors
///
/// A log that cannot be read, or an output that cannot be written.
pub fn tests(read: &dyn Read, names: bool, out: &mut dyn Write, step: &mut dyn FnMut()) -> Result<u64, ExportError> {
    let fabrics: HashMap<Id, Fabric> = read.fabrics()?.into_iter().map(|fabric| (fabric.id, fabric)).collect();
    let (hands, people) = (read.repeatability()?, if names { read.people()? } else { People::default() });
    let mut rows = csv::Writer::from_writer(out);
    rows.write_record(TESTS).map_err(failed)?;
    let mut count = 0;
    caught(|own| {
        read.each_test(WhichTests::All, &mut |stored| {
            let fabric = stored.said.fabric.and_then(|id| fabrics.get(&id));
            let row = test(&stored, fabric, (&hands, &people)).map_err(ExportError::from);
            own.keep(row.and_then(|row| rows.write_record(row).map_err(failed)))?;
            count += 1;
            step();
            Ok(())
        })
    })?;
    rows.flush()?;
    Ok(count)
}

/// Writes one row a cloth, by tag, retired ones too; how many.
///
/// # Errors
///
/// A log that cannot be read, or an output that cannot be written.
pub fn fabrics(read: &dyn Read, out: &mut dyn Write) -> Result<u64, ExportError> {
    let mut rows = csv::Writer::from_writer(out);
    rows.write_record(FABRICS).map_err(failed)?;
    let mut count = 0;
    for one in read.fabrics()? {
        rows.write_record(fabric(&one)).map_err(failed)?;
        count += 1;
    }
    rows.flush()?;
    Ok(count)
}

/// Writes one row a role of a view, by pattern, retired ones left out, and one a pattern without roles; how many patterns.
///
/// # Errors
///
/// A log that cannot be read, or an output that cannot be written.
pub fn patterns(read: &dyn Read, out: &mut dyn Write) -> Result<u64, ExportError> {
    let mut rows = csv::Writer::from_writer(out);
    rows.write_record(PATTERNS).map_err(failed)?;
    let mut count = 0;
    for pattern in read.patterns()?.iter().filter(|pattern| !pattern.dropped) {
        count += 1;
        let mut roles = pattern.roles.iter().filter(|role| !role.dropped).peekable();
        if roles.peek().is_none() {
            rows.write_record(super::patterns::row(pattern, None)).map_err(failed)?;
        }
        for role in roles {
            rows.write_record(super::patterns::row(pattern, Some(role))).map_err(failed)?;
        }
    }
    rows.flush()?;
    Ok(count)
}

/// Writes one row a garment, in the order in which they were begun, retired ones too, with the names of people or without;
/// how many.
///
/// # Errors
///
/// A log that cannot be read, or an output that cannot be written.
pub fn garments(read: &dyn Read, names: bool, out: &mut dyn Write) -> Result<u64, ExportError> {
    let mut rows = csv::Writer::from_writer(out);
    rows.write_record(GARMENTS).map_err(failed)?;
    let (fabrics, patterns) = (read.fabrics()?, read.patterns()?);
    let mut count = 0;
    for mut one in read.garments()? {
        if !names {
            one.whom.clear();
        }
        rows.write_record(garment(&one, &fabrics, &patterns)).map_err(failed)?;
        count += 1;
    }
    rows.flush()?;
    Ok(count)
}

/// The row of a garment; its cloths as `main=7 lining=12`.
fn garment(garment: &Garment, fabrics: &[Fabric], patterns: &[Pattern]) -> Vec<String> {
    let pattern = patterns.iter().find(|pattern| Some(pattern.id) == garment.pattern);
    let cloths = garment.uses.iter().filter_map(|one| {
        let role = pattern?.roles.iter().find(|role| role.id == one.role)?;
        let fabric = fabrics.iter().find(|fabric| fabric.id == one.fabric)?;
        Some(format!("{}={}", role.name, fabric.tag))
    });
    vec![
        garment.id.to_string(),
        garment.number.to_string(),
        harmless(&garment.name),
        pattern.map(|pattern| harmless(&pattern.name)).unwrap_or_default(),
        harmless(&garment.view),
        harmless(&cloths.collect::<Vec<_>>().join(" ")),
        harmless(&garment.whom),
        garment.by.map(|by| by.to_string()).unwrap_or_default(),
        garment.state().word().to_owned(),
        garment.done.map(|done| done.to_string()).unwrap_or_default(),
        harmless(&garment.note),
        harmless(&garment.class),
    ]
}

/// A row is never refused, so only the output can fail.
fn failed(error: csv::Error) -> ExportError {
    ExportError::Output(match error.into_kind() {
        csv::ErrorKind::Io(error) => error,
        other => io::Error::other(format!("{other:?}")),
    })
}

fn percent(ratio: Ratio) -> String {
    ratio.percent(3).to_string()
}

fn figure(figure: Option<&Figure>) -> [String; 3] {
    let Some(figure) = figure else { return Default::default() };
    let (low, high) = figure.interval(Confidence::default());
    let rounded = |value| tenter_core::Decimal::round(value, 2).to_string();
    [percent(figure.ratio), rounded(low), rounded(high)]
}

/// The row of a test.
///
/// # Errors
///
/// A test without figures, which the log does not take.
pub fn test(
    test: &StoredTest,
    fabric: Option<&Fabric>,
    (hands, people): (&Hands, &People),
) -> Result<Vec<String>, TestError> {
    let said = &test.said;
    let readings_of = &said.test;
    let construction = fabric.map(|fabric| fabric.construction).unwrap_or_default();
    let figures = Figures::of(readings_of, hands.scatter_for(said.pulled_by, construction, readings_of))?;
    let [stretch, stretch_low, stretch_high] = figure(Some(&figures.stretch));
    let [growth, growth_low, growth_high] = figure(figures.rest.as_ref().map(|rest| &rest.growth));
    let recovery = figures.rest.and_then(|rest| rest.recovery).map(|figure| percent(figure.ratio));
    let mut row = vec![
        test.id.to_string(),
        fabric.map(|fabric| fabric.tag).or(said.tag.map(Tag::from)).map(|tag| tag.to_string()).unwrap_or_default(),
        fabric.map(|fabric| harmless(&fabric.name)).unwrap_or_default(),
        fabric.map(|fabric| fabric.construction.word()).unwrap_or_default().to_owned(),
        said.pulled.to_string(),
    ];
    row.extend(made(&TypedTest::of(readings_of)));
    row.extend([
        harmless(&said.note),
        stretch,
        stretch_low,
        stretch_high,
        growth,
        growth_low,
        growth_high,
        recovery.unwrap_or_default(),
        figures.rest.map(|rest| rest.seconds.to_string()).unwrap_or_default(),
        said.device.map(|device| format!("{} test {}", device.device, device.number)).unwrap_or_default(),
        people.name(said.pulled_by).map(harmless).unwrap_or_default(),
    ]);
    Ok(row)
}

/// The row of a cloth.
#[must_use]
pub fn fabric(fabric: &Fabric) -> Vec<String> {
    let length = |length: Option<Length>| length.map(mm).unwrap_or_default();
    let yes = |is: bool| if is { "yes" } else { "no" }.to_owned();
    let marks = |marks: Option<crate::log::WashMarks>| {
        marks.map(|marks| format!("{} to {}", mm(marks.before), mm(marks.after))).unwrap_or_default()
    };
    let shop = fabric.shop.as_ref();
    vec![
        fabric.id.to_string(),
        fabric.tag.number().to_string(),
        harmless(&fabric.name),
        harmless(&fabric.fibre),
        fabric.construction.word().to_owned(),
        length(fabric.width),
        length(fabric.length),
        fabric.mass.map(MassPerArea::g_per_m2).map(|mass| mass.to_string()).unwrap_or_default(),
        harmless(&fabric.place),
        harmless(&fabric.note),
        yes(fabric.washed),
        shop.map(|shop| harmless(&shop.place)).unwrap_or_default(),
        shop.and_then(|shop| shop.price.as_ref()).map(Price::to_string).map(|text| harmless(&text)).unwrap_or_default(),
        marks(fabric.washed_lengthwise),
        marks(fabric.washed_crosswise),
        yes(fabric.dropped),
        fabric.finish.map(Finish::word).unwrap_or_default().to_owned(),
        fabric.drape.map(Drape::word).unwrap_or_default().to_owned(),
        fabric.purpose.map(Purpose::word).unwrap_or_default().to_owned(),
        yes(fabric.one_way),
        harmless(&fabric.colour),
    ]
}
