//! What is remembered with a cloth: its photographs, what worked on it, and what was made of it.

use std::collections::BTreeSet;

use jiff::civil::Date;

use super::pair::NamedCloth;
use crate::log::{ClothPhoto, Colour, Fabric, Garment, Here, Learned, Lesson, Photo, PhotoName};
use crate::store::{Read, StoreError};

/// Two cloths count as alike where the lighter has at least so many hundredths of the mass of the heavier.
const ALIKE_MASS: u64 = 85;
/// Shorter words of a label, such as "and", name no fibre.
const SHORTEST_FIBRE: usize = 4;

/// A photograph with its number among those of its cloth.
#[derive(Clone, Debug)]
pub struct Seen {
    /// Its number, from 1 on, in the order in which they are shown.
    pub number: usize,
    /// What was said of it.
    pub photo: ClothPhoto,
    /// The small picture; none where it has not arrived yet.
    pub thumbnail: Option<Photo>,
}

/// The photographs of a cloth, retired ones too.
///
/// # Errors
///
/// A log that cannot be read.
pub fn photos(read: &dyn Read, fabric: &Fabric) -> Result<Vec<Seen>, StoreError> {
    let seen = |(number, photo): (usize, &ClothPhoto)| {
        let thumbnail = if photo.dropped { None } else { read.photo(photo.said.thumbnail)? };
        Ok(Seen { number, photo: photo.clone(), thumbnail })
    };
    (1..).zip(&fabric.photos).map(seen).collect()
}

/// The photographs that nothing shows any more: those that were taken off every cloth which had them.
#[must_use]
pub fn retired_photos(fabrics: &[Fabric]) -> Vec<PhotoName> {
    let all = |dropped| {
        let photos = fabrics.iter().flat_map(|fabric| &fabric.photos).filter(move |photo| photo.dropped == dropped);
        photos.flat_map(|photo| [photo.said.photo, photo.said.thumbnail])
    };
    let shown: BTreeSet<PhotoName> = all(false).collect();
    let retired: BTreeSet<PhotoName> = all(true).filter(|name| !shown.contains(name)).collect();
    retired.into_iter().collect()
}

/// The colour of a cloth: that of its first photograph.
#[must_use]
pub fn colour(fabric: &Fabric) -> Option<Colour> {
    fabric.live_photos().next().map(|photo| photo.said.colour)
}

/// What was learned the last time that a cloth, or one like it, was sewn and worn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LastTime {
    /// The cloth that taught it, where it was another.
    pub like: Option<NamedCloth>,
    /// The newest that was said of how it is sewn, and of how it wears.
    pub learned: Learned,
    /// The day on which the newer of both was said.
    pub day: Date,
}

impl LastTime {
    fn of(fabric: &Fabric, like: Option<NamedCloth>, here: Here) -> Option<Self> {
        let newest = fabric.live_lessons().next()?;
        let find = |wanted: fn(&Lesson) -> bool| fabric.live_lessons().find(|lesson| wanted(lesson));
        let sewn = find(|lesson| !lesson.learned.sewn().is_empty() || !lesson.learned.note.is_empty());
        let wore = find(|lesson| !lesson.learned.wore.is_empty());
        let mut learned = sewn.map(|lesson| lesson.learned.clone()).unwrap_or_default();
        learned.wore = wore.map(|lesson| lesson.learned.wore.clone()).unwrap_or_default();
        Some(Self { like, learned, day: here.shows(newest.id.at()).date() })
    }
}

/// What was learned of a cloth; else of the one most like it of `all`: of the same construction, of nearly the same mass
/// where both are known, and else of the same first fibre. The tool's own rule.
#[must_use]
pub fn last_time(fabric: &Fabric, all: &[Fabric], here: Here) -> Option<LastTime> {
    LastTime::of(fabric, None, here).or_else(|| {
        let others = all.iter().filter(|other| other.id != fabric.id);
        let alike = others.filter_map(|other| Some((likeness(fabric, other)?, other)));
        let told = alike.filter(|(_, other)| other.live_lessons().next().is_some());
        let (_, nearest) = told.max_by_key(|(likeness, other)| (*likeness, core::cmp::Reverse(other.tag)))?;
        LastTime::of(nearest, Some(nearest.into()), here)
    })
}

/// How much two cloths are alike; none where they are not.
fn likeness(one: &Fabric, other: &Fabric) -> Option<(bool, u64)> {
    let fibre = first_fibre(&one.fibre).zip(first_fibre(&other.fibre)).is_some_and(|(one, other)| one == other);
    let near = match (one.mass, other.mass) {
        (Some(one), Some(other)) => {
            let (one, other) = (u64::from(one.mg_per_m2()), u64::from(other.mg_per_m2()));
            let near = one.min(other) * 100 / one.max(other).max(1);
            (near >= ALIKE_MASS).then_some(near)?
        }
        _ if fibre => 0,
        _ => return None,
    };
    (one.construction == other.construction).then_some((fibre, near))
}

/// The first fibre that a label names.
fn first_fibre(label: &str) -> Option<String> {
    let mut words = label.split(|c: char| !c.is_alphabetic());
    words.find(|word| word.chars().count() >= SHORTEST_FIBRE).map(str::to_lowercase)
}

/// The garments for which a cloth was cut, in the order in which it was.
#[must_use]
pub fn made_of<'g>(fabric: &Fabric, garments: &'g [Garment]) -> Vec<&'g Garment> {
    let mut made: Vec<&Garment> = Vec::new();
    for cut in &fabric.cuts {
        let garment = garments.iter().find(|garment| garment.id == cut.garment);
        made.extend(garment.filter(|garment| !made.iter().any(|known| known.id == garment.id)));
    }
    made
}

#[cfg(test)]
#[cfg(feature = "desk")]
mod tests {
    use super::*;
    use crate::log::{Construction, Ids, Learned, MassPerArea};

    fn cloth(tag: u16, construction: Construction, fibre: &str, mass: Option<u32>) -> Fabric {
        let mut fabric = Fabric::named(Ids::default().next(), tag, "cloth");
        fabric.construction = construction;
        fabric.fibre = fibre.to_owned();
        fabric.mass = mass.map(|grams| MassPerArea::from_mg_per_m2(grams * 1000));
        fabric
    }

    fn taught(mut fabric: Fabric, needle: &str, wore: &str) -> Fabric {
        let learned = Learned { needle: needle.to_owned(), wore: wore.to_owned(), ..Learned::default() };
        fabric.lessons.push(Lesson { id: Ids::default().next(), learned, dropped: false });
        fabric
    }

    #[test]
    fn its_own_lesson_comes_before_that_of_one_like_it() {
        let knit = Construction::Knit;
        let own = taught(cloth(1, knit, "cotton", Some(200)), "stretch 75", "");
        let other = taught(cloth(2, knit, "cotton", Some(200)), "jersey 80", "bagged");
        let told = last_time(&own, &[own.clone(), other.clone()], Here::desk()).unwrap();
        assert_eq!((told.like, told.learned.needle.as_str()), (None, "stretch 75"));
        let bare = cloth(3, knit, "95 cotton", Some(180));
        let told = last_time(&bare, &[own.clone(), other.clone(), bare.clone()], Here::desk()).unwrap();
        assert_eq!(told.like.unwrap().tag, 1, "both are as near; the lower tag");
        let mut gone = own.clone();
        gone.lessons[0].dropped = true;
        assert_eq!(last_time(&gone, &[gone.clone(), other], Here::desk()).unwrap().like.unwrap().tag, 2);
        assert_eq!(last_time(&gone, &[], Here::desk()), None);
    }

    /// 170 of 200 g/m² is 85 %; without a mass the fibre speaks; another construction never.
    #[test]
    fn what_is_alike() {
        let teacher = taught(cloth(1, Construction::Woven, "wool, polyester", Some(200)), "80", "");
        let cases = [
            (Construction::Woven, "linen", Some(170), true),
            (Construction::Woven, "wool", Some(169), false),
            (Construction::Woven, "a 60 Wool", None, true),
            (Construction::Woven, "polyester, wool", None, false),
            (Construction::Woven, "", None, false),
            (Construction::Knit, "wool", Some(200), false),
        ];
        for (construction, fibre, mass, alike) in cases {
            let cloth = cloth(2, construction, fibre, mass);
            assert_eq!(
                last_time(&cloth, core::slice::from_ref(&teacher), Here::desk()).is_some(),
                alike,
                "{fibre} {mass:?}"
            );
        }
    }
}
