//! What shops cut cloth to.

use tenter_core::making::yardage::ShopCut;

use super::Words;

/// Steps in which cloth is cut.
pub const SHOP_CUT: Words<ShopCut> = Words { all: &ShopCut::ALL, word, others, unclear: &[] };

const fn word(cut: ShopCut) -> &'static str {
    match cut {
        ShopCut::TenCentimetres => "10cm",
        ShopCut::FiveCentimetres => "5cm",
        ShopCut::EighthYard => "1/8yd",
    }
}

const fn others(cut: ShopCut) -> &'static [&'static str] {
    match cut {
        ShopCut::TenCentimetres => &["10", "0.1m", ".1m", "10 centimetres", "100mm", "1dm"],
        ShopCut::FiveCentimetres => &["5", "0.05m", ".05m", "5 centimetres", "50mm"],
        ShopCut::EighthYard => &["1/8 yard", "eighth", "eighth yard", "4 1/2in", "4.5in", "⅛yd"],
    }
}
