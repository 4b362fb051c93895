//! Under which tag a test is saved, and which cloth that means.

use tenter_core::saved::Meant;

use super::{Dial, Effect, ListRow, Model, Screen};
use crate::log::Named;

/// What is known of a tag.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TagUse {
    /// Nobody has it.
    Free,
    /// It may have been given here before.
    Given,
    /// A cloth of the log has it.
    Cloth(Named),
    /// Neither was it lent, nor is it known.
    Unknown,
}

/// To the dial of the tag, which begins at the next free one.
pub(super) fn ask(model: &mut Model) {
    model.dial = Dial::count(model.log.next_tag);
    model.show(Screen::Tag);
}

/// A tag was dialled: who has it?
pub(super) fn dialled(model: &mut Model) -> Option<Effect> {
    model.tag = model.dial.as_count();
    Some(Effect::LookUpTag { tag: model.tag })
}

/// It is known what has the tag: one that nobody has is taken, of any other a person says what is meant.
pub(super) fn looked_up(model: &mut Model, found: TagUse) -> Option<Effect> {
    if model.screen != Screen::Tag {
        return None;
    }
    model.tag_use = found;
    if model.tag_use == TagUse::Free {
        return save(model);
    }
    model.show(Screen::TagTaken);
    None
}

/// The person said it.
pub(super) fn choose(model: &mut Model, row: ListRow) -> Option<Effect> {
    if row == ListRow::ThatTag {
        return save(model);
    }
    ask(model);
    None
}

/// Saves under the tag that was chosen, or once more after that failed.
pub(super) fn save(model: &mut Model) -> Option<Effect> {
    model.meant = match &model.tag_use {
        TagUse::Cloth(cloth) => Meant::Cloth(cloth.mark),
        TagUse::Free | TagUse::Given if model.log.agreed => Meant::New,
        _ => Meant::Unsaid,
    };
    model.show(Screen::Saving);
    Some(Effect::Save { tag: model.tag, meant: model.meant, by: model.by.as_ref().map(|person| person.mark) })
}
