//! Pages as a browser asks for them, from a log in memory that holds the samples.

use std::collections::BTreeSet;

use super::*;
use crate::exchange::jsonl::Exported;
use crate::log::Here;
use crate::store::memory::Memory;
use crate::store::{Change as _, Read as _};

/// A log with the samples.
fn evening() -> Memory {
    let mut log = Memory::new(Here::desk());
    let samples = include_bytes!("../../demo/evening.jsonl").as_slice();
    log.merge_all(Exported::begin(samples, "samples").unwrap()).unwrap();
    log
}

fn get(log: &mut Memory, target: &str) -> (u16, String) {
    let response = respond(&Request::get(target), log);
    (response.status, String::from_utf8(response.body).unwrap_or_default())
}

fn post(log: &mut Memory, target: &str, fields: &[(&str, &str)]) -> Response {
    respond(&Request::post(target, fields), log)
}

/// The value of a field of a form of a page.
fn field(page: &str, form: &str, name: &str) -> String {
    let form = page.split("<form").find(|one| one.contains(&format!("id=\"{form}\""))).unwrap();
    let form = form.split("</form").next().unwrap();
    let input = form.split("<input").find(|one| one.contains(&format!("name=\"{name}\""))).unwrap();
    input.split("value=\"").nth(1).unwrap().split('"').next().unwrap().to_owned()
}

/// Every address of ours that a page links to or sends to.
fn addresses(page: &str) -> Vec<String> {
    let links = page.split("href=\"").skip(1).map(|rest| rest.split('"').next().unwrap());
    links.filter(|link| link.starts_with('/')).map(|link| link.replace("&amp;", "&").replace("&#38;", "&")).collect()
}

/// Every page that can be reached from the first by links, with its text.
fn everywhere(log: &mut Memory) -> Vec<(String, u16, String)> {
    let (mut open, mut seen, mut pages) = (vec!["/".to_owned()], BTreeSet::new(), Vec::new());
    while let Some(target) = open.pop() {
        if !seen.insert(target.clone()) || seen.len() > 600 {
            continue;
        }
        let (status, page) = get(log, &target);
        if page.starts_with("<!DOCTYPE html>") && !target.starts_with("/print/book") && !target.contains("/book?") {
            open.extend(addresses(&page));
        }
        pages.push((target, status, page));
    }
    pages
}

/// What a person reads of a page.
fn read(page: &str) -> String {
    let mut text = String::new();
    for part in page.split('<').skip(1) {
        // What is between the tags of a style or a script is read by nobody.
        let unread = ["style", "script"].iter().any(|tag| part.starts_with(tag));
        if let Some((_, words)) = part.split_once('>').filter(|_| !unread) {
            text.push_str(words);
            text.push(' ');
        }
    }
    text
}

#[test]
fn every_link_leads_somewhere() {
    let mut log = evening();
    let pages = everywhere(&mut log);
    assert!(pages.len() > 100, "{}", pages.len());
    let lost: Vec<_> = pages.iter().filter(|(_, status, _)| *status != 200).map(|(target, ..)| target).collect();
    assert_eq!(lost, Vec::<&String>::new());
}

/// Where a text tells to type a command of the terminal or an option of one, with what stands around it.
fn command(text: &str) -> Option<String> {
    let starts = |sign: &'static str, length: usize| {
        let ends = move |at: &usize| text[at + length..].starts_with(|c: char| c.is_ascii_lowercase());
        text.match_indices(sign).map(|(at, _)| at).find(ends)
    };
    const VERBS: [&str; 17] = [
        "check", "pull", "cloth", "pattern", "fit", "pair", "handle", "size", "wash", "hang", "make", "people",
        "report", "export", "import", "sync", "demo",
    ];
    let verb = VERBS.iter().find_map(|verb| text.find(&format!("tenter {verb} ")));
    let at = [starts(" --", 3), starts("'--", 3), starts("(--", 3), verb].into_iter().flatten().min()?;
    let from = (0..=at.saturating_sub(80)).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(0);
    Some(text[from..].chars().take(160).collect())
}

/// Nobody types a command on a page, to print or not; nor where a garment's plan has everything to say, with its reasons.
#[test]
fn no_page_tells_to_type_a_command() {
    let mut log = evening();
    let mut pages = everywhere(&mut log);
    let patterns: Vec<_> = log.patterns().unwrap();
    for pattern in &patterns {
        let to = format!("/patterns/{}", pattern.id.to_string().to_lowercase());
        for view in pattern.views() {
            let view: String = form_urlencoded::byte_serialize(view.as_bytes()).collect();
            for kind in tenter_core::making::garment::GarmentKind::ALL {
                let plan = format!("{to}/plan?view={view}&kind={}&why=yes", kind.word());
                for had in
                    ["", "&elastic=soft+waist+76cm&cord=", "&had_details=closed-zip+buttons+fly&zip=18cm&child=yes"]
                {
                    let target = format!("{plan}{had}");
                    let (status, page) = get(&mut log, &target);
                    pages.push((target, status, page));
                }
            }
        }
    }
    let told: Vec<_> =
        pages.iter().filter_map(|(target, _, page)| Some((target, command(&read(page))?))).take(4).collect();
    assert_eq!(told, Vec::new());
}

/// What a plan is made for on the command line is chosen on a form.
#[test]
fn a_plan_is_made_from_choices() {
    let mut log = evening();
    let (_, list) = get(&mut log, "/patterns");
    let fit = addresses(&list).into_iter().find(|link| link.contains("/fit?view=B")).expect("a view");
    let choices = fit.replace("/fit?", "/plan/choices?");
    let (status, form) = get(&mut log, &choices);
    assert_eq!(status, 200);
    for name in
        ["details", "zip", "zip_neck", "zip_hem", "zip_ends", "elastic", "cord", "seam", "child", "shop", "use0"]
    {
        assert!(form.contains(&format!("name=\"{name}\"")), "{name}");
    }
    let plan = fit.replace("/fit?", "/plan?");
    let (status, page) =
        get(&mut log, &format!("{plan}&elastic=soft+waist+76cm+25mm+over+100cm+gives+80%25&cord=110cm+5mm"));
    assert_eq!(status, 200, "{page}");
    let text = read(&page);
    // 92 % of 76 cm is 69.9 cm; 100 / 69.92 − 1 = 43.0 %.
    for words in ["cut 72.4 cm", "it passes 100 cm: it needs 43.0 % of stretch and has 80.0 %"] {
        assert!(text.replace(['\u{a0}', '\u{202f}'], " ").contains(words), "{words}: {text}");
    }
    let (status, again) = get(&mut log, &format!("{plan}&elastic=soft&cord=110cm"));
    assert_eq!(status, 422);
    assert!(again.contains("soft waist 76cm") && again.contains("value=\"110cm\""), "{again}");
}

/// Every page forbids itself scripts and styles that are not ours, has a language, one title and one first heading.
#[test]
fn every_page_is_sound() {
    let mut log = evening();
    for (target, ..) in everywhere(&mut log) {
        let response = respond(&Request::get(&target), &mut log);
        let policy = response.header("content-security-policy").unwrap();
        assert!(
            policy.starts_with("default-src 'none'") && !policy.contains("script-src 'unsafe"),
            "{target}: {policy}"
        );
        assert_eq!(response.header("x-content-type-options"), Some("nosniff"), "{target}");
        let page = String::from_utf8_lossy(&response.body);
        if page.contains("href=\"/style.css\"") {
            assert!(!page.contains(" style=") && !page.contains("<style"), "{target} has a style of its own");
            assert_eq!((page.matches("<h1").count(), page.matches("<title>").count() > 0), (1, true), "{target}");
            let forms = page.matches("<form").count();
            assert_eq!(forms, page.matches("</form>").count(), "{target}");
        }
    }
}

#[test]
fn what_is_not_there_is_said() {
    let mut log = evening();
    for target in [
        "/nowhere",
        "/cloths/x",
        "/cloths/01m2k0hr231dk01r1x5kswjnw8",
        "/patterns/1",
        "/garments/1",
        "/photos/ff",
        "/guide/x",
        "/log/passwd",
        "/../x",
        "//",
        "/%2e%2e/x",
        "/cloths/%ff",
    ] {
        let (status, page) = get(&mut log, target);
        assert_eq!(status, 404, "{target}");
        assert!(page.contains("</html>"), "{target}");
    }
    // A test that is not being made begins anew.
    assert_eq!(
        respond(&Request::get("/measure/01m2k0hr231dk01r1x5kswjnw8"), &mut log).header("location"),
        Some("/measure")
    );
}

#[test]
fn a_form_that_is_sent_twice_stores_once() {
    let mut log = evening();
    let (_, page) = get(&mut log, "/cloths/new");
    let once = field(&page, "cloth", "once");
    let fields = [("once", once.as_str()), ("name", "Slate rib"), ("construction", "knit"), ("length", "2m")];
    let first = post(&mut log, "/cloths/new", &fields);
    let count = log.count().unwrap();
    let second = post(&mut log, "/cloths/new", &fields);
    assert_eq!((first.status, second.status, log.count().unwrap()), (303, 303, count));
    assert_eq!(first.header("location"), second.header("location"));
    let address = first.header("location").unwrap().to_owned();
    // A cut that is sent twice cuts once: 2 m less 0.5 m.
    let (_, page) = get(&mut log, &format!("{address}/cut"));
    let once = field(&page, "cut", "once");
    for _ in 0..2 {
        let cut = post(&mut log, &format!("{address}/cut"), &[("once", &once), ("length", "50cm"), ("note", "")]);
        assert_eq!(cut.status, 303);
    }
    assert!(get(&mut log, &address).1.contains("1.50"));
}

/// What is wrong stands at its field, and everything typed is kept.
#[test]
fn what_is_wrong_stands_at_its_field() {
    let mut log = evening();
    let fields = [
        ("name", "<b>Slate</b>"),
        ("length", "2"),
        ("width", "150cm"),
        ("note", "a \"note\""),
        ("construction", "knit"),
    ];
    let response = post(&mut log, "/cloths/new", &fields);
    let page = String::from_utf8(response.body).unwrap();
    assert_eq!(response.status, 422);
    let length = page.split("name=\"length\"").nth(1).unwrap().split("</div>").next().unwrap();
    assert!(length.contains("aria-invalid=\"true\"") && length.contains("type the unit too"), "{length}");
    assert!(page.contains("&#60;b&#62;Slate") || page.contains("&lt;b&gt;Slate"), "escaped and kept");
    assert!(page.contains("value=\"150cm\"") && page.contains("value=\"knit\" checked"));
    assert!(!page.contains("--length"));
}

/// Answers a step with what stands on one of its buttons, or with a length.
fn answer(log: &mut Memory, address: &str, typed: &str) -> Response {
    let (_, page) = get(log, address);
    let step = field(&page, "answer", "step");
    post(log, address, &[("step", &step), ("answer", typed)])
}

/// The swatch of the guide's dialogue: marks 10 cm, 10.1 cm; pulled to 12.4 cm. The mean of the marks is 10.05 cm, so the
/// stretch is 12.4 / 10.05 − 1 = 23.4 % (arithmetic).
#[test]
fn a_swatch_is_measured_step_by_step_and_stored_with_a_new_cloth() {
    let mut log = evening();
    let (_, page) = get(&mut log, "/measure");
    let once = field(&page, "begin", "once");
    let begin =
        [("once", once.as_str()), ("construction", "knit"), ("grain", "crosswise"), ("wants", "15%"), ("unit", "cm")];
    let begun = post(&mut log, "/measure", &begin);
    let address = begun.header("location").unwrap().to_owned();
    assert_eq!(post(&mut log, "/measure", &begin).header("location"), Some(address.as_str()), "sent twice");
    for typed in ["2", "", "10", "10.1", "2", ""] {
        assert_eq!(answer(&mut log, &address, typed).status, 303, "{typed}");
    }
    // No cloth gives that; what was typed is kept, and what was probably meant is said.
    let slip = answer(&mut log, &address, "1240");
    let page = String::from_utf8(slip.body).unwrap();
    assert!(slip.status == 422 && page.contains("value=\"1240\"") && page.contains("did you mean 12.4"), "{page}");
    assert_eq!(answer(&mut log, &address, "12.4").status, 303);
    assert!(get(&mut log, &address).1.contains("stretch 23.4"));
    // Back, and the same again; a step that was answered already is not answered twice.
    let (_, page) = get(&mut log, &address);
    let step = field(&page, "back", "step");
    assert_eq!(post(&mut log, &address, &[("step", &step), ("do", "back")]).status, 303);
    assert_eq!(post(&mut log, &address, &[("step", &step), ("answer", "13")]).status, 303);
    assert!(get(&mut log, &address).1.contains("read while you hold"));
    for typed in ["12.4", "", "10.2", "a", "", "12.5", "n", "a", "", "12.4", "n", "f"] {
        assert_eq!(answer(&mut log, &address, typed).status, 303, "{typed}");
    }
    let (status, page) = get(&mut log, &address);
    assert!(status == 200 && page.contains("MEETS"), "{page}");
    let tests = log.tests(crate::store::WhichTests::All).unwrap().len();
    let store = format!("{address}/store");
    let once = field(&page, "new", "once");
    let fields =
        [("once", once.as_str()), ("as", "new"), ("name", "Foyer rib"), ("seen", "the market"), ("price", "11.50/m")];
    let stored = post(&mut log, &store, &fields);
    assert_eq!(stored.status, 303);
    let cloth = stored.header("location").unwrap().to_owned();
    let count = log.count().unwrap();
    let again = post(&mut log, &store, &fields);
    assert_eq!((again.status, log.count().unwrap()), (303, count), "sent twice");
    assert_eq!(log.tests(crate::store::WhichTests::All).unwrap().len(), tests + 1);
    let (_, page) = get(&mut log, &cloth);
    assert!(page.contains("Foyer rib") && page.contains("the market") && page.contains("11.50/m"), "{page}");
}

/// A test that was left is gone on with, at the step where it was left.
#[test]
fn a_test_that_was_left_goes_on() {
    let mut log = evening();
    let begun = post(&mut log, "/measure", &[("construction", "woven"), ("unit", "cm")]);
    let address = begun.header("location").unwrap().to_owned();
    for typed in ["2", "", "25"] {
        answer(&mut log, &address, typed);
    }
    assert!(get(&mut log, "/measure").1.contains(&address));
    assert!(get(&mut log, &address).1.contains("Read the marks again"));
    let (_, page) = get(&mut log, &address);
    assert!(page.contains("marks 25\u{a0}cm"), "{page}");
}

#[test]
fn a_test_on_one_form_is_answered_and_kept_without_a_cloth() {
    let mut log = evening();
    let fields = [
        ("construction", "woven"),
        ("grain", "lengthwise"),
        ("wants", "5%"),
        ("marks", "25cm"),
        ("again", "25"),
        ("pulls", "26.9 27 26.9"),
        ("back", "25.1"),
        ("after", "30min"),
        ("held", "folded"),
        ("settling", "yes"),
        ("unit", "cm"),
    ];
    let sent = post(&mut log, "/measure/form", &fields);
    assert_eq!(sent.status, 303, "{}", String::from_utf8_lossy(&sent.body));
    let address = sent.header("location").unwrap().to_owned();
    let (_, page) = get(&mut log, &address);
    // (26.9 + 27 + 26.9) / 3 / 25 − 1 = 7.7 % (arithmetic).
    assert!(page.contains("7.7\u{a0}%"), "{page}");
    let stored = post(&mut log, &format!("{address}/store"), &[("as", "loose")]);
    assert_eq!(stored.header("location"), Some("/inbox"));
    assert!(get(&mut log, "/inbox").1.contains("lengthwise"));
    let wrong = post(&mut log, "/measure/form", &[("marks", "25cm"), ("pulls", "abc")]);
    let page = String::from_utf8(wrong.body).unwrap();
    assert!(wrong.status == 422 && page.contains(">abc</textarea>"), "{page}");
}

/// Doubtful readings are stored only by somebody who says that they are so, and then with the doubt.
#[test]
fn doubtful_readings_are_stood_by_or_not_stored() {
    let mut log = evening();
    // As long after release as while it was pulled.
    let fields = [
        ("construction", "knit"),
        ("marks", "10cm"),
        ("pulls", "11 11.1 11"),
        ("back", "11"),
        ("after", "60s"),
        ("held", "folded"),
        ("unit", "cm"),
    ];
    let sent = post(&mut log, "/measure/form", &fields);
    let address = sent.header("location").unwrap().to_owned();
    let (_, page) = get(&mut log, &address);
    assert!(page.contains("doubtful"), "{page}");
    let count = log.count().unwrap();
    let refused = post(&mut log, &format!("{address}/store"), &[("as", "new"), ("name", "Odd knit")]);
    assert_eq!((refused.status, log.count().unwrap()), (422, count));
    let stored =
        post(&mut log, &format!("{address}/store"), &[("as", "new"), ("name", "Odd knit"), ("as_read", "yes")]);
    assert_eq!(stored.status, 303);
    let tests = log.tests(crate::store::WhichTests::All).unwrap();
    assert!(tests.iter().any(|test| !test.said.as_read.is_empty()), "the doubt is kept");
}

#[test]
fn a_log_is_taken_along_and_brought_in_twice() {
    let mut log = evening();
    let response = respond(&Request::get("/log/tenter-log.jsonl"), &mut log);
    assert_eq!(response.header("content-disposition"), Some("attachment; filename=\"tenter-log.jsonl\""));
    let mut body =
        b"--line\r\nContent-Disposition: form-data; name=\"file\"; filename=\"tenter-log.jsonl\"\r\n\r\n".to_vec();
    body.extend(response.body);
    body.extend(b"\r\n--line--\r\n");
    let request = Request {
        method: Method::Post,
        content_type: "multipart/form-data; boundary=line".to_owned(),
        body,
        ..Request::get("/log")
    };
    let mut other = Memory::new(Here::desk());
    for new in [log.count().unwrap(), 0] {
        let response = respond(&request, &mut other);
        let page = String::from_utf8(response.body).unwrap();
        assert!(response.status == 200 && page.contains(&format!("<dd>{new} entr")), "{page}");
        assert_eq!(other.count(), log.count());
    }
}
