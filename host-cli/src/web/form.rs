//! A form, with what was typed and what is wrong with it.

use super::fields::{Fields, ONCE};
use crate::deed::Refused;
use crate::input::Field;
use crate::input::synonym::Words;
use crate::log::Id;
use crate::words::errors::page;

/// A form.
#[derive(Clone, Debug, Default)]
pub struct Form {
    /// Tells it from other forms of a page.
    pub id: &'static str,
    /// Tells its fields from those of other forms of a page, of which several may be of one kind.
    on_page: String,
    /// Where it goes.
    pub action: String,
    /// Whether it only asks: then its fields stand behind a question mark.
    pub asks: bool,
    /// Whether it sends files.
    pub sends_files: bool,
    /// What it carries along.
    pub hidden: Vec<(String, String)>,
    /// Its fields.
    pub inputs: Vec<FormField>,
    /// Fields that are folded away at first, under what they are called.
    pub folded: Option<(&'static str, Vec<FormField>)>,
    /// What stands on its button.
    pub button: String,
    /// Whether the button is one among others, and not what the page is for.
    pub quiet: bool,
    /// What is wrong with no single field.
    pub wrong: Vec<String>,
}

/// A field of a form.
#[derive(Clone, Debug)]
pub struct FormField {
    /// What it is called in what is sent.
    pub name: &'static str,
    /// What it is called on the page.
    pub label: String,
    /// What to type.
    pub hint: String,
    /// What is typed.
    pub value: String,
    /// What is wrong with it.
    pub wrong: String,
    /// How it is asked.
    pub kind: FieldKind,
    /// The fields whose errors stand here.
    fields: &'static [Field],
}

/// How a field is asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FieldKind {
    /// A line of text.
    Text,
    /// Figures, with the number pad of a phone.
    Figures,
    /// What is looked for.
    Search,
    /// A few lines.
    Lines,
    /// A day.
    Day,
    /// One of a list: value and words.
    List(Vec<(String, String)>),
    /// One of a few, all seen: value and words.
    Pick(Vec<(String, String)>),
    /// Any of several, all seen: value and words; those that are chosen stand in the value, one a line.
    Several(Vec<(String, String)>),
    /// A box to tick.
    Tick,
    /// A photograph.
    Photo,
    /// A file.
    File,
}

impl FormField {
    /// A field of this name.
    pub fn new(name: &'static str, label: &str, kind: FieldKind) -> Self {
        let label = label.to_owned();
        Self { name, label, hint: String::new(), value: String::new(), wrong: String::new(), kind, fields: &[] }
    }

    /// A line of text.
    pub fn text(name: &'static str, label: &str) -> Self {
        Self::new(name, label, FieldKind::Text)
    }

    /// With what to type.
    pub fn hint(mut self, hint: &str) -> Self {
        hint.clone_into(&mut self.hint);
        self
    }

    /// With what is there.
    pub fn value(mut self, value: impl Into<String>) -> Self {
        self.value = value.into();
        self
    }

    /// With the fields whose errors stand here.
    pub const fn of(mut self, fields: &'static [Field]) -> Self {
        self.fields = fields;
        self
    }

    /// What tells a reader of the screen of the hint and of what is wrong: our own names, nothing typed.
    pub fn described(&self, form: &str) -> String {
        let id = |what| format!("{form}-{}-{what}", self.name);
        match (self.hint.is_empty(), self.wrong.is_empty()) {
            (true, true) => String::new(),
            (false, true) => format!(" aria-describedby=\"{}\"", id("hint")),
            (true, false) => format!(" aria-invalid=\"true\" aria-describedby=\"{}\"", id("wrong")),
            (false, false) => format!(" aria-invalid=\"true\" aria-describedby=\"{} {}\"", id("hint"), id("wrong")),
        }
    }

    /// Whether something other than the first of its list is typed.
    fn is_typed(&self) -> bool {
        match &self.kind {
            FieldKind::List(choices) | FieldKind::Pick(choices) => {
                !self.value.is_empty() && choices.first().is_none_or(|(first, _)| *first != self.value)
            }
            _ => !self.value.trim().is_empty(),
        }
    }

    /// Whether a value is chosen.
    pub fn is_chosen(&self, value: &str) -> bool {
        match self.kind {
            FieldKind::Several(_) => self.value.lines().any(|one| one == value),
            _ => self.value == value,
        }
    }
}

impl Form {
    /// A form that sends its fields to an address.
    pub fn new(id: &'static str, action: impl Into<String>, button: &str) -> Self {
        Self { id, on_page: id.to_owned(), action: action.into(), button: button.to_owned(), ..Self::default() }
    }

    /// One of several of its kind on a page, by its number from 1 on.
    pub fn numbered(self, number: usize) -> Self {
        let on_page = if number > 1 { format!("{}-{number}", self.id) } else { self.id.to_owned() };
        Self { on_page, ..self }
    }

    /// What its own fields are known by on the page.
    pub fn on_page(&self) -> &str {
        &self.on_page
    }

    /// One that carries the identifier of the entry that it makes.
    pub fn once(self, once: Id) -> Self {
        self.with(ONCE, once.to_string())
    }

    /// One that only asks.
    pub const fn asking(mut self) -> Self {
        self.asks = true;
        self
    }

    /// One among others.
    pub const fn quiet(mut self) -> Self {
        self.quiet = true;
        self
    }

    /// With something that it carries along.
    pub fn with(mut self, name: &str, value: impl Into<String>) -> Self {
        self.hidden.push((name.to_owned(), value.into()));
        self
    }

    /// With a field.
    pub fn ask(mut self, input: FormField) -> Self {
        self.sends_files |= matches!(input.kind, FieldKind::Photo | FieldKind::File);
        self.inputs.push(input);
        self
    }

    /// With fields that are folded away at first.
    pub fn fold(mut self, called: &'static str, inputs: Vec<FormField>) -> Self {
        self.folded = Some((called, inputs));
        self
    }

    /// All fields, the folded ones too.
    pub fn all(&mut self) -> impl Iterator<Item = &mut FormField> {
        let folded = self.folded.iter_mut().flat_map(|(_, inputs)| inputs);
        self.inputs.iter_mut().chain(folded)
    }

    /// Whether something is typed, or wrong, in a folded field.
    pub fn is_open(&self) -> bool {
        let folded = self.folded.iter().flat_map(|(_, inputs)| inputs);
        folded.into_iter().any(|input| !input.wrong.is_empty() || input.is_typed())
    }

    /// With what was typed.
    pub fn filled(mut self, fields: &Fields) -> Self {
        for input in self.all() {
            input.value = match input.kind {
                FieldKind::Several(_) => fields.all(input.name).collect::<Vec<_>>().join("\n"),
                FieldKind::Photo | FieldKind::File => String::new(),
                _ => fields.get(input.name).to_owned(),
            };
        }
        self
    }

    /// With what was asked, where anything was.
    pub fn filled_if(mut self, fields: &Fields) -> Self {
        for input in self.all() {
            if fields.has(input.name) {
                input.value = match input.kind {
                    FieldKind::Several(_) => fields.all(input.name).collect::<Vec<_>>().join("\n"),
                    _ => fields.get(input.name).to_owned(),
                };
            }
        }
        self
    }

    /// With what is wrong, at its field where it has one.
    pub fn refused(mut self, refused: &Refused) -> Self {
        let (field, words) = page::refused(refused);
        let found = field.and_then(|field| self.all().find(|input| input.fields.contains(&field)));
        match found {
            Some(input) => input.wrong = words.join(" "),
            None => self.wrong.extend(words),
        }
        self
    }
}

/// A list to choose from, from words that stand for themselves.
pub fn words<'w>(words: impl IntoIterator<Item = &'w str>) -> Vec<(String, String)> {
    words.into_iter().map(|word| (word.to_owned(), word.to_owned())).collect()
}

/// The words of a closed list.
pub fn members<T: Copy>(list: &Words<T>) -> Vec<(String, String)> {
    words(list.all.iter().map(|one| (list.word)(*one)))
}

/// The same with nothing chosen first.
pub fn or_none(none: &str, list: Vec<(String, String)>) -> Vec<(String, String)> {
    core::iter::once((String::new(), none.to_owned())).chain(list).collect()
}
