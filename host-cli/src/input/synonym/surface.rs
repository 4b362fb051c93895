//! Finish, drape and purpose of a cloth.

use tenter_core::making::care::{Drape, Finish, Purpose};

use super::Words;

/// Finishes.
pub const FINISH: Words<Finish> = Words {
    all: &Finish::ALL,
    word: Finish::word,
    others: |finish| match finish {
        Finish::Plain => &["none", "smooth", "unfinished"],
        Finish::Brushed => &["napped", "nap", "raised", "fleece", "flannel"],
        Finish::Coated => &["pu", "pvc", "pu coated", "pvc coated", "coating"],
        Finish::Membrane => &["laminate", "laminated", "laminated with a membrane"],
        Finish::Waxed => &["wax", "oiled", "oilskin"],
        Finish::Pile => &["velvet", "velveteen", "corduroy", "velour", "fur", "plush"],
        Finish::Fusible => &["iron on", "fusing", "adhesive"],
        Finish::LeatherLike => {
            &["leather", "suede", "leatherette", "faux leather", "fake leather", "imitation leather"]
        }
    },
    unclear: &[],
};

/// Drapes.
pub const DRAPE: Words<Drape> = Words {
    all: &Drape::ALL,
    word: Drape::word,
    others: |drape| match drape {
        Drape::Fluid => &["flowing", "drapey", "liquid"],
        Drape::Soft => &["limp", "supple"],
        Drape::Crisp => &["firm"],
        Drape::Stiff => &["rigid", "hard"],
    },
    unclear: &[],
};

/// Purposes.
pub const PURPOSE: Words<Purpose> = Words {
    all: &Purpose::ALL,
    word: Purpose::word,
    others: |purpose| match purpose {
        Purpose::Outer => &["shell", "outside", "fashion fabric", "main"],
        Purpose::Lining => &["lining fabric", "linings"],
        Purpose::Interfacing => &["interlining", "stiffening"],
        Purpose::Rib => &["ribbing", "cuff", "band"],
        Purpose::Pocketing => &["pocket", "pockets", "pocket bags"],
    },
    unclear: &[],
};
