//! The main job in a real browser at a phone's size: a swatch is measured step by step, stored with a new cloth, judged for a
//! view, and the plan made; with the pages' scripts and without.

use tenter_tests::browser::{WalkStep, walk};

use crate::server::Server;

fn press(selector: &str) -> WalkStep {
    WalkStep { press: Some(selector.to_owned()), ..WalkStep::default() }
}

fn typed(selector: &str, text: &str) -> WalkStep {
    WalkStep { typed: Some((selector.to_owned(), text.to_owned())), ..WalkStep::default() }
}

fn go(target: &str) -> WalkStep {
    WalkStep { go: Some(target.to_owned()), ..WalkStep::default() }
}

fn ask(script: &str) -> WalkStep {
    WalkStep { ask: Some(script.to_owned()), ..WalkStep::default() }
}

fn tick(selector: &str) -> WalkStep {
    WalkStep { tick: Some(selector.to_owned()), ..WalkStep::default() }
}

/// A length is typed and sent.
fn length(text: &str) -> [WalkStep; 2] {
    [typed("#length", text), press("#answer button")]
}

/// Marks 25 cm; pulled to 26.9, 27 and 26.9 cm, each hold begun with a press; nothing read after release.
fn the_main_job(server: &Server, scripts: bool) {
    let title = "document.querySelector('h1').textContent";
    let mut steps = vec![go("/"), press("main a[href='/measure']"), tick("input[name=construction][value=woven]")];
    steps.push(typed("#begin-wants", "5%"));
    steps.extend([press("#begin button"), ask(title), press("#answer button"), press("#answer button")]);
    steps.extend(length("25"));
    // A reload goes on at the same step.
    steps.extend([ask("location.pathname"), press("#leave button"), press("#answer button[value='0']")]);
    for pull in ["26.9", "27", "26.9"] {
        steps.push(press("#answer button"));
        steps.extend(length(pull));
        // Again, and after the third pull finish: what most would press stands first.
        steps.push(press("#answer button"));
    }
    steps.push(ask("document.querySelector('.big').innerText"));
    steps.extend([
        typed("#new-name", "Foyer twill"),
        typed("#new-seen", "the market hall"),
        typed("#new-price", "11.50/m"),
    ]);
    steps.extend([press("#new button"), ask(title)]);
    steps.extend([
        go("/patterns"),
        press("main .patch a[href*='/fit?view=A']"),
        ask("document.querySelector('main').innerText"),
    ]);
    steps.push(press("main a[href*='/plan?view=A']"));
    steps.push(ask("[document.title, document.querySelectorAll('.steps li').length]"));
    let walk = walk(&server.base(), (360, 740), scripts, &steps).unwrap();
    assert_eq!((walk.errors, walk.dialogs), (Vec::<String>::new(), Vec::<String>::new()));
    let results: Vec<_> = walk.seen.iter().map(|seen| &seen.result).filter(|result| !result.is_null()).collect();
    let [held, path, answer, cloth, fit, plan] = results.as_slice() else { panic!("{results:?}") };
    assert_eq!(**held, "Mark and hold the cloth");
    assert!(path.as_str().unwrap().starts_with("/measure/01"), "{path}");
    assert!(answer.as_str().unwrap().contains("MEETS"), "{answer}");
    assert_eq!(**cloth, "Foyer twill");
    assert!(fit.as_str().unwrap().contains("Foyer twill"), "{fit}");
    assert!(plan[0].as_str().unwrap().contains("plan") && plan[1].as_u64().unwrap() > 10, "{plan}");
}

#[test]
fn the_main_job_with_scripts() {
    the_main_job(&Server::evening(), true);
}

#[test]
fn the_main_job_without_scripts() {
    the_main_job(&Server::evening(), false);
}
