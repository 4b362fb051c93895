//! What a garment is and has, as a form asks it for its plan.

use super::fields::Fields;
use super::form::{FieldKind, Form, FormField, members, or_none};
use crate::finding::plan::WantedKind;
use crate::input::Field;
use crate::input::synonym::{KIND, ZIP_ENDS};
use crate::log::Choices;
use crate::words::plan::work::detail;
use tenter_core::making::garment::Detail;

/// The choices as folded fields of a form; `now` is what the garment is and has with them.
pub fn asked(form: Form, choices: &Choices, now: Option<WantedKind>) -> Form {
    let yes = |is: bool| if is { "yes" } else { "" };
    let text = |text: &Option<String>| text.clone().unwrap_or_default();
    let kind = choices.kind.map(KIND.word).unwrap_or_default();
    let mut fields = vec![
        FormField::new("kind", "The garment", FieldKind::List(or_none("as the view says", members(&KIND)))).value(kind),
    ];
    let mut form = form.with("had_kind", kind);
    if let Some(WantedKind { kind, details }) = now {
        // Whether it is for a child is asked by itself.
        let all = kind.details().filter(|one| *one != Detail::Child);
        let all: Vec<(String, String)> = all.map(|one| (one.word().to_owned(), detail(kind, one).to_owned())).collect();
        let has: Vec<&str> = details.iter().filter(|one| *one != Detail::Child).map(Detail::word).collect();
        form = form.with("had_details", has.join(" "));
        fields.push(FormField::new("details", "It has", FieldKind::Several(all)).value(has.join("\n")));
    }
    fields.extend([
        FormField::text("zip", "The edge for its zip").hint("18cm").value(text(&choices.zip)).of(&[Field::Zip]),
        FormField::text("zip_neck", "What neck or waist take of that edge")
            .hint("15mm. Empty where you measured the finished edge")
            .value(text(&choices.zip_neck))
            .of(&[Field::ZipNeck]),
        FormField::text("zip_hem", "What the hem takes of it").value(text(&choices.zip_hem)).of(&[Field::ZipHem]),
        FormField::new("zip_ends", "The zip's lower end", FieldKind::List(or_none("as usual", members(&ZIP_ENDS))))
            .value(text(&choices.zip_ends)),
        FormField::new("elastic", "Elastic, one a line", FieldKind::Lines)
            .hint("soft waist 76cm 25mm over 100cm gives 80%: its kind, its place, what it is cut for, its width, what it must pass, how far it stretches")
            .value(choices.elastic.join("\n"))
            .of(&[Field::Elastic]),
        FormField::text("cord", "A cord: the edge that it draws in, and its width")
            .hint("110cm 5mm")
            .value(text(&choices.cord))
            .of(&[Field::Cord]),
        FormField::new("seam", "Seams between two roles, one a line", FieldKind::Lines)
            .hint("main+waistband=76cm, or main+panel:side=60cm lengthwise")
            .value(choices.seam.join("\n"))
            .of(&[Field::Seam]),
        FormField::new("child", "It is for a child", FieldKind::Tick).value(yes(choices.child)),
        FormField::new("sleepwear", "It is sleepwear", FieldKind::Tick).value(yes(choices.sleepwear)),
        FormField::new("tight", "It fits tightly", FieldKind::Tick).value(yes(choices.tight)),
    ]);
    form.fold("What it has: zip, elastic, cord, seams", fields)
}

/// What such a form sent, in the place of the choices that it showed.
pub fn sent(fields: &Fields, had: &Choices) -> Choices {
    let lines = |name: &str| -> Vec<String> {
        fields.get(name).lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect()
    };
    let shown: Vec<&str> = fields.get("had_details").split_whitespace().collect();
    let chosen: Vec<&str> = fields.all("details").collect();
    let owned = |words: Vec<&str>| words.into_iter().map(str::to_owned).collect();
    // Another kind has details of its own.
    let details = match fields.get("kind") == fields.get("had_kind") {
        true => had.changed(&Choices {
            with: owned(chosen.iter().filter(|one| !shown.contains(one)).copied().collect()),
            without: owned(shown.iter().filter(|one| !chosen.contains(one)).copied().collect()),
            ..Choices::default()
        }),
        false => Choices::default(),
    };
    let is = |name: &str| fields.get(name) == "yes";
    let zip = fields.typed("zip");
    Choices {
        kind: KIND.typed(fields.get("kind")),
        with: details.with,
        without: details.without,
        seam: lines("seam"),
        zip_neck: fields.typed("zip_neck"),
        zip_hem: fields.typed("zip_hem"),
        zip_ends: zip.as_ref().and(fields.typed("zip_ends")),
        zip,
        elastic: lines("elastic"),
        cord: fields.typed("cord"),
        child: is("child"),
        sleepwear: is("sleepwear"),
        tight: is("tight"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::web::Request;

    #[test]
    fn what_is_taken_off_the_usual_is_left_out_and_what_is_added_is_put_in() {
        let of = |query: &str| Fields::of_query(&Request::get(&format!("/?{query}")));
        let had = Choices { with: vec!["lining".to_owned()], zip: Some("18cm".to_owned()), ..Choices::default() };
        let same = "kind=&had_kind=&had_details=darts+fly+lining";
        let kept = sent(&of(&format!("{same}&details=darts&details=fly&details=lining&zip=18cm")), &had);
        assert_eq!(kept, had);
        let changed =
            sent(&of(&format!("{same}&details=darts&details=lining&details=cord&elastic=soft+waist+76cm%0D%0A")), &had);
        assert_eq!(
            (changed.with, changed.without),
            (vec!["lining".to_owned(), "cord".to_owned()], vec!["fly".to_owned()])
        );
        assert_eq!((changed.zip, changed.elastic), (None, vec!["soft waist 76cm".to_owned()]));
        let other = sent(&of("kind=skirt&had_kind=&had_details=darts&details=fly"), &had);
        assert_eq!((other.with, other.without), (Vec::new(), Vec::new()));
        assert_eq!(other.kind.map(KIND.word), Some("skirt"));
    }
}
