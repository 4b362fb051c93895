//! Finish, drape and purpose of a cloth.

use tenter_core::making::care::{Drape, Finish, Purpose};

use super::Words;

/// What was done to a cloth's surface.
pub const FINISH: Words<Finish> = Words { all: &Finish::ALL, word: Finish::word, others: finishes, unclear: &[] };

const fn finishes(finish: Finish) -> &'static [&'static str] {
    match finish {
        Finish::Plain => &["none", "smooth", "unfinished"],
        Finish::Brushed => &["napped", "nap", "raised", "flannel", "fleece"],
        Finish::Coated => &["pu", "pvc", "pu coated", "pvc coated", "coating", "laminated film"],
        Finish::Membrane => &["laminate", "laminated", "softshell"],
        Finish::Waxed => &["oiled", "oilskin", "wax"],
        Finish::Pile => &["velvet", "velveteen", "corduroy", "cord", "velour", "plush", "fur", "fake fur"],
        Finish::Fusible => &["iron-on", "fusing", "adhesive"],
        Finish::LeatherLike => &["leather", "suede", "faux leather", "imitation leather", "leatherette", "suedette"],
    }
}

/// How a cloth falls.
pub const DRAPE: Words<Drape> = Words { all: &Drape::ALL, word: Drape::word, others: drapes, unclear: &[] };

const fn drapes(drape: Drape) -> &'static [&'static str] {
    match drape {
        Drape::Fluid => &["flowing", "drapey", "liquid"],
        Drape::Soft => &["supple"],
        Drape::Crisp => &["firm"],
        Drape::Stiff => &["rigid"],
    }
}

/// What a cloth is made for.
pub const PURPOSE: Words<Purpose> = Words { all: &Purpose::ALL, word: Purpose::word, others: purposes, unclear: &[] };

const fn purposes(purpose: Purpose) -> &'static [&'static str] {
    match purpose {
        Purpose::Outer => &["outside", "outer fabric", "fashion fabric", "shell", "main"],
        Purpose::Lining => &["lining fabric"],
        Purpose::Interfacing => &["interlining", "stiffening"],
        Purpose::Rib => &["ribbing"],
        Purpose::Pocketing => &["pocket", "pockets", "pocket bags"],
    }
}
