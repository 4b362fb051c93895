//! The handheld as JSON.

use serde::Serialize;
use tenter_core::record::RecordError;
use tenter_core::{Confidence, Figure};

use crate::finding::handheld::{There, Unclaimed, Waiting};
use crate::json::FigureJson;
use crate::json::figure;
use crate::json::line;
use crate::json::millimetres;
use crate::json::number;

#[derive(Serialize)]
struct ThereJson<'a> {
    device: Option<u32>,
    version: &'a str,
    on_seconds: u32,
    clock_ahead_seconds: Option<i64>,
    demand_slots: u8,
    free_pages: u16,
    tests: Vec<WaitingJson<'a>>,
}

#[derive(Serialize)]
struct WaitingJson<'a> {
    number: u32,
    unreadable: Option<&'static str>,
    tag: Option<u16>,
    fabric: Option<&'a str>,
    grain: Option<&'static str>,
    stretch_percent: Option<f64>,
    saved: Option<String>,
    in_log: bool,
}

impl<'a> From<&'a Waiting> for WaitingJson<'a> {
    fn from(waiting: &'a Waiting) -> Self {
        let test = waiting.test.as_ref().ok();
        let figures =
            test.and_then(|test| tenter_core::Figures::of(&test.saved.test, tenter_core::Scatter::ASSUMED).ok());
        Self {
            number: waiting.number,
            unreadable: waiting.test.as_ref().err().map(|error| match error {
                RecordError::Newer => "newer",
                _ => "damaged",
            }),
            tag: test.and_then(|test| test.tag()),
            fabric: waiting.fabric.as_ref().map(|fabric| fabric.name.as_str()),
            grain: test.map(|test| test.saved.test.grain().word()),
            stretch_percent: figures.map(|figures| number(figures.stretch.ratio.percent(3))),
            saved: test.and_then(|test| test.saved_at()).map(|at| at.to_string()),
            in_log: waiting.in_log,
        }
    }
}

#[derive(Serialize)]
struct UnclaimedJson {
    test: String,
    tag: Option<u16>,
    grain: &'static str,
    gauge_mm: f64,
    stretch: Option<FigureJson>,
    pulled: String,
    clock_unset: bool,
    /// Live cloths with the tag.
    worn_by: Vec<String>,
}

/// Who is there and what waits.
#[must_use]
pub fn there(there: &There) -> String {
    line(&ThereJson {
        device: (there.identity.device != 0).then_some(there.identity.device),
        version: &there.identity.version,
        on_seconds: there.identity.uptime_s,
        clock_ahead_seconds: there.ahead,
        demand_slots: there.identity.demand_slots,
        free_pages: there.listing.free_pages,
        tests: there.waiting.iter().map(WaitingJson::from).collect(),
    })
}

/// The tests without a cloth, as an array.
#[must_use]
pub fn inbox(unclaimed: &[Unclaimed]) -> String {
    let worth = |stretch: Option<Figure>| stretch.map(|stretch| figure(&stretch, Confidence::default()));
    let json = |one: &Unclaimed| UnclaimedJson {
        test: one.test.id.to_string(),
        tag: one.test.said.tag,
        grain: one.test.said.test.grain().word(),
        gauge_mm: millimetres(one.test.said.test.gauge()),
        stretch: worth(one.stretch),
        pulled: one.test.said.pulled.to_string(),
        clock_unset: one.test.said.clock_unset,
        worn_by: one.worn.iter().map(|fabric| fabric.id.to_string()).collect(),
    };
    line(&unclaimed.iter().map(json).collect::<Vec<_>>())
}
