//! A cloth: a length in the stash, or a bolt met in a shop.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};
pub use tenter_core::Construction;
use tenter_core::making::care::Described;
pub use tenter_core::making::care::{Drape, Finish, Purpose};
use tenter_core::{Grain, Length};

use super::garment::CutFor;
use super::id::Id;
use super::json::{Mm, mm, some};
use super::learned::Lesson;
use super::photo::ClothPhoto;
use super::quantity::{MassPerArea, Price};
use super::tag::Tag;

/// Where a cloth was seen, and for how much.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Shop {
    /// The shop, market or website.
    pub place: String,
    /// The price, where it is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub price: Option<Price>,
}

/// Two marks measured before and after washing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WashMarks {
    /// Between the marks before.
    #[serde(with = "mm")]
    pub before: Length,
    /// Between the same marks after.
    #[serde(with = "mm")]
    pub after: Length,
    /// Between two lines of the scale.
    #[serde(with = "mm")]
    pub division: Length,
}

/// A cloth as it stands now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fabric {
    /// Its identifier: that of the entry that added it.
    pub id: Id,
    /// The number pinned to the cloth.
    pub tag: Tag,
    /// What it is called.
    pub name: String,
    /// What it is made of, as on the label.
    pub fibre: String,
    /// How it is made.
    pub construction: Construction,
    /// Usable width.
    pub width: Option<Length>,
    /// Length on hand.
    pub length: Option<Length>,
    /// Mass per area.
    pub mass: Option<MassPerArea>,
    /// What was done to its surface, where that was said.
    pub finish: Option<Finish>,
    /// How it falls, where that was said.
    pub drape: Option<Drape>,
    /// What it is made for, where that was said.
    pub purpose: Option<Purpose>,
    /// Whether all pieces must lie one way up: nap, pile, a print with an up and a down.
    pub one_way: bool,
    /// Its colour, in the user's words.
    pub colour: String,
    /// Where it lies.
    pub place: String,
    /// Anything else.
    pub note: String,
    /// Whether it was washed since it came home.
    pub washed: bool,
    /// When it was last washed, where the log saw that: what was pulled before is of another cloth.
    pub last_washed: Option<Timestamp>,
    /// Where it was seen, as long as it was not bought.
    pub shop: Option<Shop>,
    /// Newest washing marks along the length.
    pub washed_lengthwise: Option<WashMarks>,
    /// Newest washing marks across the width.
    pub washed_crosswise: Option<WashMarks>,
    /// Its photographs, retired ones too, in the order in which they are shown.
    pub photos: Vec<ClothPhoto>,
    /// What was learned of it, retired lessons too, the oldest first.
    pub lessons: Vec<Lesson>,
    /// What was cut of it for garments, in the order in which it was cut.
    pub cuts: Vec<CutFor>,
    /// Whether it was dropped from the stash.
    pub dropped: bool,
}

impl Fabric {
    /// A cloth that is only named so far.
    #[must_use]
    pub fn named(id: Id, tag: impl Into<Tag>, name: &str) -> Self {
        Self {
            id,
            tag: tag.into(),
            name: name.to_owned(),
            fibre: String::new(),
            construction: Construction::default(),
            width: None,
            length: None,
            mass: None,
            finish: None,
            drape: None,
            purpose: None,
            one_way: false,
            colour: String::new(),
            place: String::new(),
            note: String::new(),
            washed: false,
            last_washed: None,
            shop: None,
            washed_lengthwise: None,
            washed_crosswise: None,
            photos: Vec::new(),
            lessons: Vec::new(),
            cuts: Vec::new(),
            dropped: false,
        }
    }

    /// Gives letters to those that share a tag with another that is there: by the order in which they were added, which
    /// is the same in every copy of the log. They stand by tag.
    pub fn letter(fabrics: &mut [Self]) {
        for tagged in fabrics.chunk_by_mut(|one, other| one.tag.number() == other.tag.number()) {
            let mut live: Vec<&mut Self> = tagged.iter_mut().filter(|fabric| !fabric.dropped).collect();
            if live.len() > 1 {
                live.sort_by_key(|fabric| fabric.id);
                (0..).zip(live).for_each(|(place, fabric)| fabric.tag = Tag::shared(fabric.tag.number(), place));
            }
        }
    }

    /// Whether it lies in a shop.
    #[must_use]
    pub const fn is_seen(&self) -> bool {
        self.shop.is_some()
    }

    /// The photographs that are shown, in their order.
    pub fn live_photos(&self) -> impl Iterator<Item = &ClothPhoto> {
        self.photos.iter().filter(|photo| !photo.dropped)
    }

    /// What was learned of it and holds, the newest first.
    pub fn live_lessons(&self) -> impl Iterator<Item = &Lesson> {
        self.lessons.iter().rev().filter(|lesson| !lesson.dropped)
    }

    /// The newest washing marks along a grain.
    #[must_use]
    pub const fn wash_marks(&self, grain: Grain) -> Option<WashMarks> {
        match grain {
            Grain::Lengthwise => self.washed_lengthwise,
            Grain::Crosswise => self.washed_crosswise,
            Grain::Bias => None,
        }
    }

    /// What is known of it, as washing and care take it.
    #[must_use]
    pub fn described(&self) -> Described<'_> {
        Described { fibre: &self.fibre, name: &self.name, construction: self.construction, finish: self.finish }
    }

    /// Changes what `change` names and leaves the rest.
    pub fn apply(&mut self, change: FabricChange) {
        let FabricChange {
            tag,
            name,
            fibre,
            construction,
            width,
            length,
            mass,
            finish,
            drape,
            purpose,
            one_way,
            colour,
            place,
            note,
            washed,
            after_wash: _,
            shop,
        } = change;
        set(&mut self.tag, tag.map(Tag::from));
        set(&mut self.name, name);
        set(&mut self.fibre, fibre);
        set(&mut self.construction, construction);
        set(&mut self.width, width.map(|width| width.map(|Mm(width)| width)));
        set(&mut self.length, length.map(|length| length.map(|Mm(length)| length)));
        set(&mut self.mass, mass);
        set(&mut self.finish, finish);
        set(&mut self.drape, drape);
        set(&mut self.purpose, purpose);
        set(&mut self.one_way, one_way);
        set(&mut self.colour, colour);
        set(&mut self.place, place);
        set(&mut self.note, note);
        set(&mut self.washed, washed);
        set(&mut self.shop, shop);
    }
}

fn set<T>(field: &mut T, value: Option<T>) {
    if let Some(value) = value {
        *field = value;
    }
}

/// What is said about a cloth: absent fields stay as they are, null clears.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
#[allow(clippy::option_option)] // Absent, null and a value are three things.
pub struct FabricChange {
    /// The number pinned to the cloth, from 1 on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tag: Option<u16>,
    /// What it is called.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// What it is made of.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fibre: Option<String>,
    /// How it is made.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub construction: Option<Construction>,
    /// Usable width.
    #[serde(rename = "width_mm", skip_serializing_if = "Option::is_none", deserialize_with = "some")]
    pub width: Option<Option<Mm>>,
    /// Length on hand, measured again.
    #[serde(rename = "length_mm", skip_serializing_if = "Option::is_none", deserialize_with = "some")]
    pub length: Option<Option<Mm>>,
    /// Mass per area.
    #[serde(rename = "mg_per_m2", skip_serializing_if = "Option::is_none", deserialize_with = "some")]
    pub mass: Option<Option<MassPerArea>>,
    /// What was done to its surface.
    #[serde(skip_serializing_if = "Option::is_none", deserialize_with = "some")]
    pub finish: Option<Option<Finish>>,
    /// How it falls.
    #[serde(skip_serializing_if = "Option::is_none", deserialize_with = "some")]
    pub drape: Option<Option<Drape>>,
    /// What it is made for.
    #[serde(skip_serializing_if = "Option::is_none", deserialize_with = "some")]
    pub purpose: Option<Option<Purpose>>,
    /// Whether all pieces must lie one way up.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub one_way: Option<bool>,
    /// Its colour.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub colour: Option<String>,
    /// Where it lies.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<String>,
    /// Anything else.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// Whether it was washed since it came home.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub washed: Option<bool>,
    /// Whether length and width are what the wash left of those before, by the marks.
    #[serde(skip_serializing_if = "core::ops::Not::not")]
    pub after_wash: bool,
    /// Where it was seen; null once it was bought.
    #[serde(skip_serializing_if = "Option::is_none", deserialize_with = "some")]
    pub shop: Option<Option<Shop>>,
}
