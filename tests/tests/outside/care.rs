//! Finish and care: what each cloth must be spared, row by row.

use tenter_core::Source;
use tenter_core::making::care::{Before, Care, Described, Dots, Finish, Pins, Press, Steam};

fn care(fibre: &str, finish: Option<Finish>) -> Care {
    Care::of(&Described { fibre, finish, ..Described::default() })
}

/// The dots of the iron: 110, 150 and 200 °C (ISO 3758, second-hand).
#[test]
fn the_dots_of_the_iron() {
    assert_eq!(Dots::ALL.map(Dots::celsius), [Some(200), Some(150), Some(110), None]);
}

/// Waxed cotton: no machine, soap, dry-cleaning, tumbling or iron; sponge cold; holes stay, so clips and weights. Coated:
/// 30 °C mild, no softener, 110 °C at most on the back under a cloth, dry; pins in the allowance. Membrane: liquid soap, no
/// steam on the film, holes leak. Brushed: inside out, light steam, never flat. All common practice, no source.
#[test]
fn finishes_by_common_practice() {
    let rows = [
        (Finish::Waxed, Before::Sponge, Dots::Never, Steam::No, Press::NoIron, Pins::Never),
        (Finish::Coated, Before::Mild, Dots::One, Steam::No, Press::UnderCloth, Pins::InAllowance),
        (Finish::Membrane, Before::Mild, Dots::One, Steam::No, Press::UnderCloth, Pins::Never),
        (Finish::Brushed, Before::WashInsideOut { times: 2 }, Dots::Three, Steam::Light, Press::NotFlat, Pins::Usual),
    ];
    for (finish, before, dots, steam, press, pins) in rows {
        let care = care("cotton", Some(finish));
        let said = (care.before.rule, care.iron.rule, care.steam.rule, care.press.rule, care.pins.rule);
        assert_eq!(said, (before, dots, steam, press, pins), "{finish:?}");
        assert_eq!(care.press.source, Source::CommonPractice, "{finish:?}");
    }
    assert_eq!(care("polyester fleece", None).iron.rule, Dots::One, "fleece: 110 °C, never flat");
}

/// Fusible interfacing: soaked warm and hung, never tumbled before it is fused, pressed and not slid for 10 to 15 s.
/// Leather-like: wiped, 110 °C dry under a cloth, no steam, no pins. Both common practice.
#[test]
fn finishes_of_practice() {
    let fusible = care("polyester, fusible web", None);
    assert_eq!((fusible.before.rule, fusible.press.rule), (Before::Soak, Press::OnlyToFuse));
    assert!(fusible.no_tumbling.is_some() && fusible.before.source == Source::CommonPractice);
    let leather = care("polyurethane", Some(Finish::LeatherLike));
    let said = (leather.before.rule, leather.iron.rule, leather.steam.rule, leather.pins.rule);
    assert_eq!(said, (Before::Wipe, Dots::One, Steam::No, Pins::Never));
}

/// Velvet is not washed and steamed from behind; velveteen and corduroy, of cotton, are washed inside out; no sole plate
/// on the pile (from memory). Pins mar it, so in the allowance only (University of Kentucky, CT-MMB.174, of zips).
#[test]
fn a_pile_is_not_crushed() {
    let velvet = care("viscose velvet", None);
    assert_eq!((velvet.before.rule, velvet.press.rule), (Before::Steam, Press::NeedleBoard));
    assert_eq!((velvet.steam.rule, velvet.pins.rule), (Steam::FromBehind, Pins::InAllowance));
    assert!(velvet.pins.source.to_string().contains("CT-MMB.174"));
    assert_eq!(care("cotton corduroy", None).before.rule, Before::WashInsideOut { times: 2 });
}

/// Wool: rolled in a wet cloth for a day and pressed damp (Conover, *Complete Course in Dressmaking* 1, p. 115), 150 °C.
/// Silk: a lukewarm iron on the wrong side (the same), washed by hand, fine pins. Acetate: by hand without wringing,
/// 110 °C, dry, wrong side, no acetone (from memory).
#[test]
fn fibres_that_want_care() {
    let wool = care("wool, polyester", None);
    assert_eq!((wool.before.rule, wool.iron.rule, wool.press.rule), (Before::DampRoll, Dots::Two, Press::DampCloth));
    assert!(wool.before.source.to_string().contains("Conover"));
    let silk = care("100 % silk", None);
    assert_eq!((silk.before.rule, silk.iron.rule, silk.press.rule), (Before::Hand, Dots::One, Press::WrongSide));
    assert_eq!(silk.pins.rule, Pins::Fine);
    let acetate = care("acetate", None);
    assert_eq!((acetate.before.rule, acetate.iron.rule, acetate.steam.rule), (Before::Hand, Dots::One, Steam::No));
    assert!(acetate.no_acetone && !silk.no_acetone);
}

/// Cotton and linen take three dots, viscose, wool and polyester two, polyamide and acrylic one, and the least of a blend
/// counts (the usual symbols on labels, from memory).
#[test]
fn the_coolest_fibre_of_a_blend_counts() {
    let dots = |fibre| care(fibre, None).iron.rule;
    assert_eq!(["cotton", "linen"].map(dots), [Dots::Three; 2]);
    // Heat takes the spring out of elastane: common practice, no source.
    assert_eq!(dots("97 cotton 3 elastane"), Dots::Two);
    assert_eq!(["viscose", "65 polyester 35 cotton"].map(dots), [Dots::Two; 2]);
    assert_eq!(["polyamide", "cotton, acrylic"].map(dots), [Dots::One; 2]);
}
