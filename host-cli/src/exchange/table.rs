//! The log as CSV for a spreadsheet: UTF-8, a line of heads, decimal points, lengths in millimetres, one row a test or a
//! fabric.

use tenter_core::{Confidence, Ends, Figure, Figures, Length, Load, PullTest, Ratio};

use crate::error::Error;
use crate::json::millimetres;
use crate::log::{Fabric, Hands, Mass, Price, StoredTest};

/// The heads of the tests. `import --csv` reads those before `stretch_percent`, and leaves the rest alone.
pub const TESTS: [&str; 23] = [
    "id",
    "tag",
    "name",
    "construction",
    "pulled",
    "grain",
    "gauge",
    "readings",
    "division",
    "ends",
    "held",
    "settling",
    "load",
    "note",
    "stretch_percent",
    "stretch_low",
    "stretch_high",
    "growth_percent",
    "growth_low",
    "growth_high",
    "recovery_percent",
    "growth_seconds",
    "device",
];

/// The heads of the fabrics.
pub const FABRICS: [&str; 16] = [
    "id",
    "tag",
    "name",
    "fibre",
    "construction",
    "width_mm",
    "length_mm",
    "g_per_m2",
    "place",
    "note",
    "washed",
    "seen",
    "price",
    "washed_lengthwise",
    "washed_crosswise",
    "dropped",
];

/// A text that a spreadsheet will not take for a formula: one that begins with = + - @, a tab or a carriage return gets
/// an apostrophe before it (a common precaution against what is called CSV injection).
#[must_use]
pub fn harmless(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r', '\'']) { format!("'{text}") } else { text.to_owned() }
}

/// The text that [`harmless`] was given; one that begins with an apostrophe of its own is left alone.
#[must_use]
pub fn as_typed(text: &str) -> &str {
    text.strip_prefix('\'').filter(|rest| harmless(rest) == text).unwrap_or(text)
}

fn mm(length: Length) -> String {
    millimetres(length).to_string()
}

/// Readings in the order in which they were made: `105 106 101@60s` is two pulls and a reading a minute after the
/// second.
fn readings(test: &PullTest) -> String {
    let mut words: Vec<String> = Vec::new();
    for (index, pull) in test.pulls().iter().enumerate() {
        words.push(mm(*pull));
        let mine = test.rests().iter().filter(|rest| usize::from(rest.after_pull) == index);
        words.extend(mine.map(|rest| format!("{}@{}s", mm(rest.recovered), rest.seconds)));
    }
    words.join(" ")
}

/// How a test was made, in the columns from `grain` to `load`.
#[must_use]
pub fn made(test: &PullTest) -> [String; 8] {
    [
        test.grain().word().to_owned(),
        mm(test.gauge()),
        readings(test),
        mm(test.scale().division()),
        if test.scale().ends() == Ends::Both { "both" } else { "one" }.to_owned(),
        test.held().word().to_owned(),
        if test.settled() { "yes" } else { "no" }.to_owned(),
        match test.load() {
            Load::Hand => "hand".to_owned(),
            Load::Force { millinewtons } => format!("{}N", f64::from(millinewtons) / 1000.0),
        },
    ]
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
pub fn test(test: &StoredTest, fabric: Option<&Fabric>, hands: &Hands) -> Result<Vec<String>, Error> {
    let said = &test.said;
    let readings_of = &said.test;
    let construction = fabric.map(|fabric| fabric.construction).unwrap_or_default();
    let figures = Figures::of(readings_of, hands.scatter_for(construction, readings_of))
        .map_err(|reason| Error::reading("readings", "", reason))?;
    let [stretch, stretch_low, stretch_high] = figure(Some(&figures.stretch));
    let [growth, growth_low, growth_high] = figure(figures.rest.as_ref().map(|rest| &rest.growth));
    let recovery = figures.rest.and_then(|rest| rest.recovery).map(|figure| percent(figure.ratio));
    let mut row = vec![
        test.id.to_string(),
        fabric.map(|fabric| fabric.tag).or(said.tag).map(|tag| tag.to_string()).unwrap_or_default(),
        fabric.map(|fabric| harmless(&fabric.name)).unwrap_or_default(),
        fabric.map(|fabric| fabric.construction.word()).unwrap_or_default().to_owned(),
        said.pulled.to_string(),
    ];
    row.extend(made(readings_of));
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
    ]);
    Ok(row)
}

/// The row of a fabric.
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
        fabric.tag.to_string(),
        harmless(&fabric.name),
        harmless(&fabric.fibre),
        fabric.construction.word().to_owned(),
        length(fabric.width),
        length(fabric.length),
        fabric.mass.map(Mass::g_per_m2).map(|mass| mass.to_string()).unwrap_or_default(),
        harmless(&fabric.place),
        harmless(&fabric.note),
        yes(fabric.washed),
        shop.map(|shop| harmless(&shop.place)).unwrap_or_default(),
        shop.and_then(|shop| shop.price.as_ref()).map(Price::to_string).map(|text| harmless(&text)).unwrap_or_default(),
        marks(fabric.washed_lengthwise),
        marks(fabric.washed_crosswise),
        yes(fabric.dropped),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_made_harmless_comes_back() {
        for text in ["=1+1", "-5 cm", "'twas dry", "'=", "''", "'", "", "plain", "@", "'plain"] {
            assert_eq!(as_typed(&harmless(text)), text);
        }
        assert_eq!(as_typed("'twas typed"), "'twas typed");
    }
}
