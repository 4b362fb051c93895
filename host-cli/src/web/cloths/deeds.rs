//! What is done with a cloth: cut, washed, retired, returned; what was learned of it; its tests.

use tenter_core::Confidence;

use super::super::fields::fresh;
use super::super::form::{FieldKind, Form, FormField, members};
use super::super::part::{Link, PagePart, Row};
use super::super::shell::{Place, Shell};
use super::super::visit::{Answered, Visit, cloth};
use super::super::{Method, Response};
use super::edit::again;
use crate::deed::wash::TypedWash;
use crate::deed::{self, Refused};
use crate::finding::wash::Washed;
use crate::input::Field;
use crate::input::learned::TypedLearned;
use crate::input::synonym::GRAIN;
use crate::log::{Fabric, Fact};
use crate::store::Read;
use crate::words::page::told;
use crate::words::{cloth as words, doubt, memory, pull, quantity};

/// A page with the forms of a cloth.
fn page(fabric: &Fabric, title: &str, parts: Vec<PagePart>, status: u16) -> Answered {
    let mut page = Shell::new(Place::Cloths, &format!("{title} {}", words::title(fabric)));
    for part in parts {
        page.push(part);
    }
    page.push(PagePart::Links(vec![Link::new(cloth(fabric.id), "Back to the cloth")]));
    Ok(page.with_status(status))
}

/// Does what a form asks, and goes back to the cloth; or shows the form again with what is wrong.
fn done(
    visit: &mut Visit<'_>,
    fabric: &Fabric,
    title: &str,
    form: Form,
    deed: impl FnMut(&dyn Read) -> Result<(Vec<Fact>, ()), Refused>,
) -> Answered {
    match visit.once(deed) {
        Ok(_) => Ok(Response::see(&cloth(fabric.id))),
        Err(Refused::Store(error)) => Err(error.into()),
        Err(refused) => page(fabric, title, vec![PagePart::Form(Box::new(again(form, visit).refused(&refused)))], 422),
    }
}

/// Cuts a length off, or takes the newest cut back.
pub fn cut(visit: &mut Visit<'_>, id: &str) -> Answered {
    let fabric = visit.fabric(id)?;
    let (which, address) = (fabric.id.to_string(), format!("{}/cut", cloth(fabric.id)));
    let cut = Form::new("cut", &address, "Cut")
        .once(fresh(visit.here))
        .ask(FormField::text("length", "How much you cut off").hint("With its unit: 80cm, 1/2yd").of(&[Field::Cut]))
        .ask(FormField::text("note", "What for").of(&[Field::Note]));
    let back =
        Form::new("back", &address, "Take the newest cut back").once(fresh(visit.here)).with("undo", "yes").quiet();
    let title = "Cut from";
    if visit.request.method == Method::Get {
        let on_hand = words::on_hand(&fabric, visit.unit);
        let on_hand = if on_hand.is_empty() {
            "The length on hand is not known.".to_owned()
        } else {
            told(&format!("On hand: {on_hand}"))
        };
        return page(
            &fabric,
            title,
            vec![PagePart::Words(on_hand), PagePart::Form(Box::new(cut)), PagePart::Form(Box::new(back))],
            200,
        );
    }
    if visit.sent.get("undo") == "yes" {
        return done(visit, &fabric, title, back, |read| Ok((deed::cloth::uncut(read, &which)?.0, ())));
    }
    let (length, note) = (visit.sent.get("length").to_owned(), visit.sent.get("note").to_owned());
    done(visit, &fabric, title, cut, |read| deed::cloth::cut(read, &which, &length, &note, false))
}

/// Retires a cloth.
pub fn retire(visit: &mut Visit<'_>, id: &str) -> Answered {
    let fabric = visit.fabric(id)?;
    let which = fabric.id.to_string();
    let form = Form::new("retire", format!("{}/retire", cloth(fabric.id)), "Retire it")
        .once(fresh(visit.here))
        .ask(FormField::text("note", "Why").hint("Used up, given away").of(&[Field::Note]));
    let title = "Retire";
    if visit.request.method == Method::Get {
        let said = "It leaves the list. Its tests and its history stay, and you can bring it back.";
        return page(&fabric, title, vec![PagePart::Words(said.to_owned()), PagePart::Form(Box::new(form))], 200);
    }
    let note = visit.sent.get("note").to_owned();
    done(visit, &fabric, title, form, |read| Ok((deed::cloth::retire(read, &which, &note)?.0, ())))
}

/// Returns a retired cloth.
pub fn restore(visit: &mut Visit<'_>, id: &str) -> Answered {
    let fabric = visit.fabric(id)?;
    let which = fabric.id.to_string();
    let form = Form::new("return", format!("{}/return", cloth(fabric.id)), "Bring it back").once(fresh(visit.here));
    let title = "Bring back";
    if visit.request.method == Method::Get {
        return page(&fabric, title, vec![PagePart::Form(Box::new(form))], 200);
    }
    done(visit, &fabric, title, form, |read| Ok((deed::cloth::restore(read, &which)?.0, ())))
}

/// Stores marks before and after a wash.
pub fn wash(visit: &mut Visit<'_>, id: &str) -> Answered {
    let fabric = visit.fabric(id)?;
    let which = fabric.id.to_string();
    let form = Form::new("wash", format!("{}/wash", cloth(fabric.id)), "Store the marks")
        .once(fresh(visit.here))
        .ask(
            FormField::text("lengthwise", "Along: before and after")
                .hint("50cm to 48.5cm")
                .of(&[Field::WashedLengthwise]),
        )
        .ask(
            FormField::text("crosswise", "Across: before and after")
                .hint("50cm to 49.5cm")
                .of(&[Field::WashedCrosswise]),
        )
        .ask(FormField::text("note", "How you washed it").hint("40 °C, line").of(&[Field::Note]))
        .ask(FormField::new("as_read", "I read them twice, and they are so", FieldKind::Tick));
    let title = "Measure a wash of";
    if visit.request.method == Method::Get {
        let said = [
            "Before the wash, mark 50 cm along and 50 cm across. After it, when the cloth is dry and pressed, measure the marks again.",
            "Once the whole cloth was washed, tick that on its own page too.",
        ];
        let mut parts: Vec<PagePart> = said.map(|one| PagePart::Words(one.to_owned())).into();
        parts.push(PagePart::Form(Box::new(form)));
        return page(&fabric, title, parts, 200);
    }
    let typed = TypedWash {
        lengthwise: visit.sent.typed("lengthwise"),
        crosswise: visit.sent.typed("crosswise"),
        unit: Some(visit.unit),
        ..TypedWash::default()
    };
    let (note, as_read) = (visit.sent.get("note").to_owned(), visit.sent.get("as_read") == "yes");
    let found = deed::wash::marks(&typed).and_then(|(marks, _)| Ok((deed::wash::changes(&typed, &marks)?, marks)));
    let (changes, marks) = match found {
        Ok(found) => found,
        Err(refused) => {
            return page(&fabric, title, vec![PagePart::Form(Box::new(again(form, visit).refused(&refused)))], 422);
        }
    };
    let washed = Washed { changes, bought: None, confidence: Confidence::default(), as_read };
    if let Some(doubted) = washed.doubted() {
        let said = format!("{}. Measure them again, or tick below that they are so.", doubt::washed(&doubted));
        let notice = PagePart::Notice("The marks are not stored.".to_owned(), vec![told(&said)]);
        return page(&fabric, title, vec![notice, PagePart::Form(Box::new(again(form, visit)))], 422);
    }
    done(visit, &fabric, title, form, |read| Ok((deed::wash::store(read, &which, &marks, &note)?.0, ())))
}

/// The fields of what was learned.
pub fn lessons(form: Form) -> Form {
    form.ask(FormField::text("needle", "Needle").hint("stretch 75").of(&[Field::Needle]))
        .ask(FormField::text("stitch", "Stitch").of(&[Field::Stitch]))
        .ask(FormField::text("stitch_length", "Stitch length").of(&[Field::StitchLength]))
        .ask(FormField::text("pressure", "Pressure of the foot").of(&[Field::Pressure]))
        .ask(FormField::text("tension", "Tension of the thread").of(&[Field::ThreadTension]))
        .ask(FormField::text("thread", "Thread").of(&[Field::Thread]))
        .ask(FormField::text("wore", "How it wore").hint("knees bagged after a day").of(&[Field::Wore]))
        .ask(FormField::text("lesson", "Anything else").of(&[Field::Note]))
}

/// What was learned, as typed.
pub fn learned_in(visit: &Visit<'_>) -> TypedLearned {
    let sent = &visit.sent;
    TypedLearned {
        needle: sent.typed("needle"),
        stitch: sent.typed("stitch"),
        length: sent.typed("stitch_length"),
        pressure: sent.typed("pressure"),
        tension: sent.typed("tension"),
        thread: sent.typed("thread"),
        wore: sent.typed("wore"),
        note: sent.typed("lesson"),
    }
}

/// Remembers what worked on a cloth.
pub fn learned(visit: &mut Visit<'_>, id: &str) -> Answered {
    let fabric = visit.fabric(id)?;
    let (which, address) = (fabric.id.to_string(), format!("{}/learned", cloth(fabric.id)));
    let form = lessons(Form::new("learned", &address, "Remember it").once(fresh(visit.here)));
    let title = "What worked on";
    if visit.request.method == Method::Get {
        let garments = visit.log.garments()?;
        let mut parts = Vec::new();
        for (number, lesson) in (1..).zip(&fabric.lessons) {
            let said = memory::lesson(number, lesson, &garments, visit.here);
            let (button, turn) = if lesson.dropped { ("Return it", "return") } else { ("Retire it", "retire") };
            parts.push(PagePart::Words(told(&said)));
            let turned = Form::new("turn", &address, button).numbered(number).once(fresh(visit.here));
            let turned = turned.with(turn, number.to_string()).quiet();
            parts.push(PagePart::Form(Box::new(turned)));
        }
        parts.push(PagePart::Form(Box::new(form)));
        return page(&fabric, title, parts, 200);
    }
    for (turn, retire) in [("retire", true), ("return", false)] {
        if let Some(number) = visit.sent.typed(turn) {
            return done(visit, &fabric, title, form, |read| {
                Ok((deed::remember::turn_lesson(read, &which, &number, retire)?.0, ()))
            });
        }
    }
    let typed = learned_in(visit);
    done(visit, &fabric, title, form, |read| Ok((deed::remember::learn(read, &which, &typed, None)?.0, ())))
}

/// One test: out of account or back, and its grain put right.
pub fn test(visit: &mut Visit<'_>, id: &str, test: &str) -> Answered {
    let fabric = visit.fabric(id)?;
    let stored = deed::find::test_of(&*visit.log, &fabric, test, Field::Id)?;
    let (which, letters) = (fabric.id.to_string(), stored.id.to_string());
    let address = format!("{}/tests/{}", cloth(fabric.id), letters.to_lowercase());
    let title = "A test of";
    let (button, turn) = if stored.dropped { ("Count it again", "return") } else { ("Leave it out", "retire") };
    let turned = Form::new("turn", &address, button).once(fresh(visit.here)).with("turn", turn);
    let turned = if stored.dropped { turned } else { turned.ask(FormField::text("note", "Why").of(&[Field::Note])) };
    let regrain = Form::new("regrain", &address, "Store the grain").once(fresh(visit.here)).quiet().ask(
        FormField::new("grain", "It was pulled", FieldKind::Pick(members(&GRAIN)))
            .of(&[Field::Grain, Field::Regrain])
            .value(stored.said.test.grain().word()),
    );
    if visit.request.method == Method::Get {
        let known = crate::finding::shown::KnownCloth::of(&*visit.log, fabric.clone())?;
        let hands = visit.log.repeatability()?;
        let shown = known.shown(&hands, visit.rules(), visit.here);
        let reading = |length: &tenter_core::Length| quantity::reading(*length, visit.unit);
        let test = &stored.said.test;
        let rests = test
            .rests()
            .iter()
            .map(|rest| format!("{} after {}", reading(&rest.recovered), crate::words::terms::duration(rest.seconds)));
        let rows = vec![
            Row::new("what", &pull::line_about(&stored, visit.here)),
            Row::new("marks", &test.looks().map(|look| reading(&look.length)).collect::<Vec<_>>().join(", ")),
            Row::new("pulled to", &test.pulls().iter().map(reading).collect::<Vec<_>>().join(", ")),
            Row::new("after release", &rests.collect::<Vec<_>>().join(", ")),
            Row::new("held", test.held().word()),
            Row::new("status", &words::status(&shown, &stored)),
        ];
        let rows = rows.into_iter().filter(|row| !row.words.is_empty()).collect();
        return page(
            &fabric,
            title,
            vec![PagePart::Rows(rows), PagePart::Form(Box::new(turned)), PagePart::Form(Box::new(regrain))],
            200,
        );
    }
    if let Some(grain) = visit.sent.typed("grain") {
        return done(visit, &fabric, title, regrain, |read| {
            Ok((deed::pull::regrain(read, &which, &letters, &grain)?.0, ()))
        });
    }
    let (retire, note) = (visit.sent.get("turn") != "return", visit.sent.get("note").to_owned());
    done(visit, &fabric, title, turned, |read| {
        Ok((deed::pull::set_retired(read, &which, &letters, retire, &note)?.0, ()))
    })
}
