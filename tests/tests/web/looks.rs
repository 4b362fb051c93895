//! Every page on phones and desks, by day and by night: nothing runs off the window, no type is smaller than 11 px, everything
//! that is pressed is large enough for a thumb, everybody can use it, and it asks nothing of anybody else.

use std::path::{Path, PathBuf};

use serde_json::json;
use tenter_tests::browser::{WRONG, WalkStep, faults_in, walk};

use crate::server::Server;

/// Where photographs are kept to be looked at.
fn kept(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("web");
    std::fs::create_dir_all(&folder).unwrap();
    folder.join(name)
}

/// One page of each kind, with the name under which its photographs are kept.
fn pages(server: &Server) -> Vec<(&'static str, String)> {
    let first = |page: &str, start: &str| {
        let text = server.get(page).text();
        let link = text
            .split("href=\"")
            .skip(1)
            .map(|rest| rest.split('"').next().unwrap())
            .find(|link| link.starts_with(start));
        link.unwrap_or_else(|| panic!("no {start} on {page}")).replace("&#38;", "&").replace("&amp;", "&")
    };
    let role =
        server.get("/cloths").text().split("<option value=\"").nth(2).unwrap().split('"').next().unwrap().to_owned();
    let cloth = first("/cloths", "/cloths/01");
    let id = cloth.trim_start_matches("/cloths/").to_uppercase();
    let (pattern, fit) = (
        first("/patterns", "/patterns/01").split('/').take(3).collect::<Vec<_>>().join("/"),
        first("/patterns", "/patterns/01"),
    );
    let garment = first("/garments", "/garments/01");
    let begun = server
        .post("/measure", &[("construction", "woven"), ("wants", "5%"), ("unit", "cm")])
        .head("location")
        .to_owned();
    let done = server.post(
        "/measure/form",
        &[
            ("construction", "woven"),
            ("wants", "5%"),
            ("marks", "25cm"),
            ("pulls", "26.9 27 26.9"),
            ("back", "25.1"),
            ("after", "30min"),
            ("held", "folded"),
            ("unit", "cm"),
        ],
    );
    let other = first(&format!("/cloths?for={role}"), "/cloths/01")
        .split('?')
        .next()
        .unwrap()
        .trim_start_matches("/cloths/")
        .to_uppercase();
    vec![
        ("home", "/".to_owned()),
        ("begin", "/measure".to_owned()),
        ("step", begun),
        ("answer", done.head("location").to_owned()),
        ("form", "/measure/form".to_owned()),
        ("inbox", "/inbox".to_owned()),
        ("cloths", "/cloths".to_owned()),
        ("cloths-for", format!("/cloths?for={role}")),
        ("cloth", format!("{cloth}?for={role}")),
        ("cloth-edit", format!("{cloth}/edit")),
        ("cloth-cut", format!("{cloth}/cut")),
        ("cloth-wash", format!("{cloth}/wash")),
        ("cloth-photos", format!("{cloth}/photos")),
        ("cloth-learned", format!("{cloth}/learned")),
        ("cloth-new", "/cloths/new".to_owned()),
        ("test", first(&cloth, &format!("{cloth}/tests/"))),
        ("patterns", "/patterns".to_owned()),
        ("pattern", pattern.clone()),
        ("pattern-new", "/patterns/new".to_owned()),
        ("role", first(&pattern, &format!("{pattern}/roles/"))),
        ("fit", fit.clone()),
        ("map", first(&fit, &format!("{pattern}/map"))),
        ("plan-choices", first(&pattern, &format!("{pattern}/plan/choices"))),
        ("garment-begin", first(&pattern, &format!("{pattern}/begin"))),
        ("garments", "/garments".to_owned()),
        ("garment", garment.clone()),
        ("garment-edit", format!("{garment}/edit")),
        ("pair", format!("/pair?one={id}&other={other}&along=60cm&seam=side")),
        ("handle", format!("/handle?cloth={id}&why=yes")),
        ("size", "/size?stretch=25%25&girth=104cm/101cm&opening=57cm/48cm&kind=&cord=110cm&cord_width=5mm".to_owned()),
        ("hang", "/hang?width=5cm&piece=strip&method=&mass=500g".to_owned()),
        ("gauge", "/print/gauge".to_owned()),
        ("people", "/people".to_owned()),
        ("tags", "/tags".to_owned()),
        ("compare", "/people/compare".to_owned()),
        ("class", "/print/class".to_owned()),
        ("log", "/log".to_owned()),
        ("more", "/more".to_owned()),
        ("measuring", "/guide/measuring".to_owned()),
        ("signs", "/guide/signs".to_owned()),
        ("words", "/guide/words".to_owned()),
        ("trust", "/guide/trust".to_owned()),
        ("nowhere", "/nowhere".to_owned()),
    ]
}

/// The same, and what is printed from them, as the HTML standard asks.
#[test]
fn every_page_is_valid_html() {
    let server = Server::evening();
    let pages = pages(&server);
    let printed = pages.iter().filter_map(|(name, target)| match *name {
        "fit" => Some(target.replace("/fit?", "/plan?")),
        "garment" => Some(format!("{target}/plan?why=yes")),
        _ => None,
    });
    let gauges = pages.iter().filter(|(name, _)| *name == "fit").map(|(_, target)| target.replace("/fit?", "/gauges?"));
    let prints = ["/print/book", "/print/cards", "/print/class?wants=5%25&lines=12", "/print/gauge?wants=5%25"];
    let prints: Vec<String> = printed.chain(gauges).chain(prints.map(str::to_owned)).collect();
    // What is refused is shown again with what is wrong.
    let refused = ["/size?girth=wide", "/hang?width=wide&method=", "/print/gauge?wants=wide"].map(str::to_owned);
    let targets: Vec<String> = pages.into_iter().map(|(_, target)| target).chain(prints).chain(refused).collect();
    let pages: Vec<(String, String)> =
        targets.into_iter().map(|target| (target.clone(), server.get(&target).text())).collect();
    assert!(pages.iter().all(|(_, page)| page.starts_with("<!DOCTYPE html>")));
    assert_eq!(faults_in(&pages).unwrap(), Vec::<String>::new());
    // The checker sees what is wrong.
    let wrong = [("wrong".to_owned(), pages[0].1.replace("<main ", "<p id=\"main\"></p><main "))];
    assert!(!faults_in(&wrong).unwrap().is_empty());
}

#[test]
fn every_page_at_every_size_by_day_and_by_night() {
    let server = Server::evening();
    let mut steps = Vec::new();
    let pages = pages(&server);
    for (name, target) in &pages {
        for width in [320, 360, 390, 768, 1280] {
            // The colours are the same at every width.
            for dark in [false, true].into_iter().filter(|dark| !dark || matches!(width, 360 | 1280)) {
                let png = kept(&format!("{name}-{width}-{}.png", if dark { "dark" } else { "light" }));
                steps.push(WalkStep {
                    width: Some(width),
                    dark: Some(dark),
                    go: Some(target.clone()),
                    ask: Some(WRONG.to_owned()),
                    axe: matches!(width, 360 | 1280),
                    png: Some(png),
                    ..WalkStep::default()
                });
            }
        }
    }
    let walk = walk(&server.base(), (360, 740), true, &steps).unwrap();
    let mut wrong = Vec::new();
    for (seen, step) in walk.seen.iter().zip(&steps) {
        let what =
            format!("{} at {:?}, dark {:?}", step.go.as_deref().unwrap(), step.width.unwrap(), step.dark.unwrap());
        if seen.result != json!({"wide": false, "small": [], "thumb": []}) {
            wrong.push(format!("{what}: {}", seen.result));
        }
        wrong.extend(seen.violations.iter().map(|violation| format!("{what}: {violation}")));
    }
    assert_eq!(wrong, Vec::<String>::new());
    // A browser draws the sign of its own calendar from an address that holds it.
    let is_own = |address: &&String| address.starts_with(&server.base()) || address.starts_with("data:image/svg+xml");
    let elsewhere: Vec<_> = walk.requests.iter().filter(|address| !is_own(address)).collect();
    assert_eq!(elsewhere, Vec::<&String>::new());
}
