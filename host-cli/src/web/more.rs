//! Everything else: paper, the log as a file, units.

use std::io::BufReader;

use tenter_core::Unit;

use super::fields::fresh;
use super::form::{FieldKind, Form, FormField, or_none};
use super::measure::cloths;
use super::part::{Link, PagePart, Row};
use super::patterns::fit::book_page;
use super::shell::{Place, Shell};
use super::visit::{Answered, Visit};
use super::{Method, Response, printed};
use crate::deed::{Refused, find};
use crate::exchange::jsonl::{self, Exported};
use crate::exchange::table::read::Trust;
use crate::exchange::{ExportError, ImportError, table};
use crate::finding::fit::Stock;
use crate::finding::make::to_print;
use crate::input::{self, Field, Why, Wrong};
use crate::log::{Fabric, Fact};
use crate::page::{form as worksheet, made, print};
use crate::picture::true_scale::{PullGauge, pull_gauge};
use crate::store::{Change as _, Merged};
use crate::words::cloth::title;
use crate::words::errors;
use crate::words::page::told;
use crate::words::quantity::counted;

/// Where everything else is.
pub fn show(visit: &mut Visit<'_>) -> Answered {
    let mut page = Shell::new(Place::More, "More");
    page.push(PagePart::Patch(
        "Ask".to_owned(),
        vec![PagePart::Links(vec![
            Link::new("/pair", "Two cloths in one seam"),
            Link::new("/handle", "How to sew a cloth"),
            Link::new("/size", "Sizes").about("Ease, openings, elastic, zips"),
            Link::new("/hang", "Which weight to hang"),
        ])],
    ));
    page.push(PagePart::Patch(
        "On paper".to_owned(),
        vec![PagePart::Links(vec![
            Link::new("/print/book", "The swatch book"),
            Link::new("/print/book?keep=yes", "The swatch book as a file").about("To hand on; it needs nothing else"),
            Link::new("/print/cards", "Cards to pin on").about("Of all cloths at home"),
            Link::new("/print/gauge", "A gauge").about("For a stretch that you type"),
            Link::new("/print/class", "A sheet for a class").about("To write readings on, with a gauge"),
        ])],
    ));
    page.push(PagePart::Patch(
        "The log".to_owned(),
        vec![PagePart::Links(vec![
            Link::new("/log", "The log as a file").about("Save a copy, or bring in another log"),
            Link::new("/people", "People").about("Who pulls, and how well each repeats"),
            Link::new("/tags", "Tags").about("Which tags are given here, and cloths that share one"),
            Link::new("/exchange", "Exchange with a phone").about("What was stored in a shop comes here"),
            Link::new("/inbox", "Tests without a cloth"),
        ])],
    ));
    page.push(PagePart::Patch(
        "Learn".to_owned(),
        vec![PagePart::Links(vec![
            Link::new("/guide/measuring", "How to measure"),
            Link::new("/guide/signs", "What the signs mean"),
            Link::new("/guide/words", "Words"),
            Link::new("/guide/trust", "How far to trust an answer"),
        ])],
    ));
    let units = [("cm", "Centimetres"), ("in", "Inches")].map(|(value, words)| (value.to_owned(), words.to_owned()));
    if visit.log.units()?.is_none() {
        let form = Form::new("units", "/units", "Remember it").once(fresh(visit.here)).quiet();
        let form = form.ask(FormField::new("unit", "Your tape has", FieldKind::Pick(units.to_vec())).value("cm"));
        page.push(PagePart::Patch("Units".to_owned(), vec![PagePart::Form(Box::new(form))]));
    }
    Ok(page.page())
}

/// Remembers the unit of bare numbers; the first that is said holds.
pub fn units(visit: &mut Visit<'_>) -> Answered {
    if visit.request.method == Method::Post
        && let Some(units) = Unit::from_symbol(visit.sent.get("unit"))
        && visit.log.units()?.is_none()
    {
        visit.once(|_| Ok((vec![Fact::UnitsSet { units }], ())))?;
    }
    Ok(Response::see("/more"))
}

/// The swatch book.
pub fn book(visit: &mut Visit<'_>) -> Answered {
    let stock = Stock::read(&*visit.log)?;
    let page = made::book(&*visit.log, &stock, None, visit.rules(), &mut || {})?;
    Ok(book_page(visit, page))
}

/// Cards of cloths: the one that is named, or all that lie at home.
pub fn cards(visit: &mut Visit<'_>) -> Answered {
    let stock = Stock::read(&*visit.log)?;
    let fabrics: Vec<Fabric> = match visit.query.typed("cloth") {
        Some(text) => vec![find::live_fabric(&*visit.log, &text)?],
        None => stock.fabrics.iter().filter(|fabric| !fabric.is_seen()).cloned().collect(),
    };
    if fabrics.is_empty() {
        let mut page = Shell::new(Place::More, "Cards");
        page.words("No cloth lies at home yet, so there is no card to print.");
        return Ok(page.page());
    }
    let (_, page) = made::cards(&*visit.log, &stock, &fabrics, visit.rules())?;
    Ok(printed::response(page))
}

/// The sheets of all garments that are being made, or of a class.
pub fn sheets(visit: &mut Visit<'_>) -> Answered {
    let garments = to_print(&*visit.log, visit.query.typed("class").as_deref())?;
    if garments.is_empty() {
        let mut page = Shell::new(Place::Garments, "Sheets");
        page.words("No garment is being made, so there is no sheet to print.");
        return Ok(page.page());
    }
    Ok(printed::response(made::garments(&*visit.log, &garments, visit.rules(), true)?))
}

/// A gauge for a stretch that is typed.
pub fn gauge(visit: &mut Visit<'_>) -> Answered {
    let form = Form::new("gauge", "/print/gauge", "Make the gauge")
        .asking()
        .ask(FormField::text("wants", "The stretch that is asked").hint("5%, 20-30%").of(&[Field::Wants]))
        .ask(FormField::text("name", "Text on the gauge").hint("our cloth"))
        .filled_if(&visit.query);
    let shown = |form: Form, status| {
        let mut page = Shell::new(Place::More, "A gauge to print");
        page.push(PagePart::Soft("Print it at 100 %, and check the line of 100 mm. Then pull the cloth along it, and see whether it reaches.".to_owned()));
        page.push(PagePart::Form(Box::new(form)));
        Ok(page.with_status(status))
    };
    if !visit.query.has("wants") {
        return shown(form, 200);
    }
    let text = visit.query.get("wants");
    let gauge = input::range(Field::Wants, Some(text), Unit::Mm).and_then(|asked| {
        let title = visit.query.typed("name").unwrap_or_else(|| "stretch".to_owned());
        let wrong = || Wrong::new(Field::Wants, text, Why::TooLongForPaper);
        pull_gauge(&PullGauge { title: &title, asked }).ok_or_else(wrong)
    });
    match gauge {
        Ok(gauge) => Ok(printed::response(print::page("Pull gauge", &[gauge]))),
        Err(wrong) => shown(form.refused(&wrong.into()), 422),
    }
}

/// A sheet on which a class writes its readings, with a gauge.
pub fn worksheet(visit: &mut Visit<'_>) -> Answered {
    let list = or_none("none of the list", cloths(&*visit.log)?);
    let form = Form::new("class", "/print/class", "Make the sheet")
        .asking()
        .ask(FormField::new("cloth", "The cloth that all pull", FieldKind::List(list)))
        .ask(FormField::text("wants", "The stretch that is asked").hint("5%").value("5%").of(&[Field::Wants]))
        .ask(FormField::new("lines", "How many people", FieldKind::Figures).value("12"))
        .filled_if(&visit.query);
    let shown = |form: Form, status| {
        let mut page = Shell::new(Place::More, "A sheet for a class");
        page.push(PagePart::Soft("Print it at 100 %, and check the line of 100 mm.".to_owned()));
        page.push(PagePart::Form(Box::new(form)));
        Ok(page.with_status(status))
    };
    if !visit.query.has("wants") {
        return shown(form, 200);
    }
    let cloth = match visit.query.typed("cloth") {
        Some(text) => title(&find::live_fabric(&*visit.log, &text)?),
        None => String::new(),
    };
    let text = visit.query.get("wants");
    let lines = visit.query.get("lines").trim().parse::<usize>().unwrap_or(12).clamp(1, 60);
    let page = input::range(Field::Wants, Some(text), Unit::Mm).and_then(|asked| {
        worksheet::page(&cloth, asked, lines).ok_or_else(|| Wrong::new(Field::Wants, text, Why::TooLongForPaper))
    });
    match page {
        Ok(page) => Ok(printed::response(page)),
        Err(wrong) => shown(form.refused(&wrong.into()), 422),
    }
}

/// The log as a file: taken along, or brought in.
pub fn log(visit: &mut Visit<'_>) -> Answered {
    if visit.request.method == Method::Get {
        return log_page(visit, Vec::new(), 200);
    }
    let Some(file) = visit.sent.file("file").cloned() else {
        return log_page(visit, vec![PagePart::Notice("Choose a file first.".to_owned(), Vec::new())], 422);
    };
    let is_table = file.name.to_lowercase().ends_with(".csv");
    let merged: Result<Merged, ImportError> = if is_table {
        table::read::entries(
            &file.bytes,
            &*visit.log,
            Trust { as_read: false, latest: visit.here.latest() },
            visit.here,
        )
        .and_then(|entries| Ok(visit.log.merge(&mut entries.into_iter().map(Ok))?))
    } else {
        Exported::begin(BufReader::new(file.bytes.as_slice()), &file.name, visit.here.latest())
            .and_then(|entries| visit.log.merge_all(entries))
    };
    match merged {
        Ok(merged) => {
            let mut rows = vec![
                Row::new("new", &counted(merged.new, "entry").replace("entrys", "entries")),
                Row::new("here before", &merged.known.to_string()),
            ];
            if merged.photos > 0 {
                rows.push(Row::new("photographs", &merged.photos.to_string()));
            }
            if merged.differ > 0 {
                rows.push(Row::new(
                    "differ",
                    &format!("{} differ from those in your log, which stays as it was", merged.differ),
                ));
            }
            log_page(
                visit,
                vec![PagePart::Notice("The file is in your log now.".to_owned(), Vec::new()), PagePart::Rows(rows)],
                200,
            )
        }
        Err(ImportError::Store(error)) => Err(error.into()),
        Err(error) => {
            let said = told(&errors::imported(&error));
            log_page(visit, vec![PagePart::Notice("Nothing was imported.".to_owned(), vec![said])], 422)
        }
    }
}

fn log_page(visit: &Visit<'_>, first: Vec<PagePart>, status: u16) -> Answered {
    let mut page = Shell::new(Place::More, "The log as a file");
    for part in first {
        page.push(part);
    }
    let entries = counted(visit.log.count()?, "entry").replace("entrys", "entries");
    page.push(PagePart::Patch(
        "Save a copy".to_owned(),
        vec![
            PagePart::Words(format!(
                "All that you stored, {entries}, in one file: for another computer, for a phone, or to keep."
            )),
            PagePart::Links(vec![
                Link::new("/log/tenter-log.jsonl", "The whole log").first(),
                Link::new("/log/tests.csv", "Tests as a table"),
                Link::new("/log/cloths.csv", "Cloths as a table"),
                Link::new("/log/garments.csv", "Garments as a table"),
            ]),
        ],
    ));
    let form = Form::new("bring", "/log", "Bring it in").ask(
        FormField::new("file", "A log, or a table of readings", FieldKind::File)
            .hint("What is here already stays as it is; bringing it twice changes nothing"),
    );
    page.push(PagePart::Patch("Bring in another".to_owned(), vec![PagePart::Form(Box::new(form))]));
    Ok(page.with_status(status))
}

/// The log, or a table of it, as a file.
pub fn file(visit: &mut Visit<'_>, name: &str) -> Answered {
    let (mut bytes, mut step) = (Vec::new(), || {});
    let read = &*visit.log;
    let (kind, name, written) = match name {
        "tenter-log.jsonl" => {
            ("application/jsonl", "tenter-log.jsonl", jsonl::write(read, true, &mut bytes, &mut step))
        }
        "tests.csv" => ("text/csv; charset=utf-8", "tests.csv", table::write::tests(read, true, &mut bytes, &mut step)),
        "cloths.csv" => ("text/csv; charset=utf-8", "cloths.csv", table::write::fabrics(read, &mut bytes)),
        "garments.csv" => ("text/csv; charset=utf-8", "garments.csv", table::write::garments(read, true, &mut bytes)),
        _ => return Ok(super::shell::nowhere()),
    };
    match written {
        Ok(_) => Ok(Response::kept(kind, name, bytes)),
        Err(ExportError::Store(error)) => Err(Refused::Store(error)),
        // What is written goes into memory, and a stored test can be worked out.
        Err(_) => Ok(Response::plain(500, "The file cannot be written.")),
    }
}
