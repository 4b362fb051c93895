//! What the log holds: cloths, pull tests, patterns, and the entries they are made of.
//!
//! The log is a growing set of [entries](Entry). Nothing is ever overwritten: a change is one more entry, and what a
//! cloth, a test or a pattern is now is [folded](fold) from its entries in the order of their identifiers. So every
//! step can be seen and undone, and two logs merge by putting their entries together.

pub mod days;
pub mod desk;
pub mod entry;
mod entry_json;
pub mod fabric;
pub mod fold;
pub mod garment;
pub mod handheld;
pub mod hands;
pub mod held;
pub mod here;
pub mod id;
pub mod json;
pub mod learned;
pub mod pattern;
pub mod person;
pub mod photo;
pub mod quantity;
pub mod tag;
pub mod tested;

pub use desk::Desk;
pub use entry::{Entry, Fact, Subject};
#[cfg(feature = "desk")]
pub(crate) use entry_json::line_of;
pub use fabric::{Construction, Drape, Fabric, FabricChange, Finish, Purpose, Shop, WashMarks};
pub use garment::{Choices, CutFor, Garment, GarmentChange, GarmentState, Use};
pub use hands::Hands;
pub use held::{FreeTags, HeldTags, TagHolder};
pub use here::{EVER, Here};
pub use id::{Id, Ids};
pub use learned::{Learned, Lesson};
pub use pattern::{ClothNeed, GarmentKind, MassRange, Pattern, PatternChange, Role, RoleChange};
pub use person::{People, Person};
pub use photo::{ClothPhoto, Colour, MAX_PHOTO_BYTES, Photo, PhotoName, PhotoSaid};
pub use quantity::{MassPerArea, Price};
pub use tag::{Tag, TagRange};
pub use tenter_core::repeatability::{ByConstruction, Pooled};
pub use tested::{Device, Marks, StoredTest, Tested};
