//! How a cloth is made ready, pressed and pinned, in words.

use tenter_core::making::care::{Because, Before, Care, Dots, Pins, Press, Steam, Told};

use crate::words::advice::Spoken;

/// Washing, pressing and pinning, each a line; what needs no word has none.
#[must_use]
pub fn spoken(care: &Care) -> Vec<Spoken> {
    let lines = [Some(made_ready(care)), Some(ironed(care)), pinned(care)];
    lines.into_iter().flatten().collect()
}

/// How it is made ready before it is cut.
#[must_use]
pub fn made_ready(care: &Care) -> Spoken {
    let mut text = before(care.before.rule);
    if care.no_tumbling.is_some() && care.before.rule.wets() {
        text.push_str("; keep it out of the tumble dryer");
    }
    Spoken::new("wash", text, because(care.before), care.before.source)
}

/// How it is pressed.
#[must_use]
pub fn ironed(care: &Care) -> Spoken {
    let Care { iron, press, steam, .. } = care;
    let mut text = match iron.rule {
        Dots::Never => "no iron and no steam: they melt the finish".to_owned(),
        dots => heat(dots),
    };
    for more in [pressed(press.rule), steamed(steam.rule).filter(|_| iron.rule != Dots::Never)].into_iter().flatten() {
        text.push_str("; ");
        text.push_str(more);
    }
    if care.no_acetone {
        text.push_str("; keep acetone away, it dissolves acetate");
    }
    let (why, source) = match press.rule {
        Press::Usual => (because(*iron), iron.source),
        _ => (because(*press), press.source),
    };
    Spoken::new("press", text, why, source)
}

/// Where pins may go, unless they may go anywhere.
#[must_use]
pub fn pinned(care: &Care) -> Option<Spoken> {
    let text = match care.pins.rule {
        Pins::Usual => return None,
        Pins::Fine => "use fine pins only",
        Pins::InAllowance => "pin within the seam allowance only",
        Pins::Never => "no pins: holes stay; use clips and weights",
    };
    Some(Spoken::new("pins", text, because(care.pins), care.pins.source))
}

fn before(before: Before) -> String {
    let times = |times: u8| match times {
        1 => "once".to_owned(),
        2 => "twice".to_owned(),
        _ => format!("{times} times"),
    };
    match before {
        Before::Wash { times: 1 } => "wash and dry it once as you will wash the garment".to_owned(),
        Before::Wash { times: many } => format!("wash and dry it {} as you will wash the garment", times(many)),
        Before::WashInsideOut { times: many } => {
            format!("wash and dry it {} as you will wash the garment, inside out", times(many))
        }
        Before::Mild => {
            "wash it at 30 °C on a mild cycle, with liquid soap and no softener, and rinse it well".to_owned()
        }
        Before::Hand => "wash it by hand in cool water, and do not wring it".to_owned(),
        Before::DampRoll => "roll it in a wet cloth for a day, let it dry, and press it damp".to_owned(),
        Before::Soak => "soak it in warm water and hang it up to dry; do not iron it before you fuse it".to_owned(),
        Before::Steam => "do not wash it; steam it from behind".to_owned(),
        Before::Sponge => "do not wash it; sponge it with cold water".to_owned(),
        Before::Wipe => "do not wash it; wipe it with a damp cloth".to_owned(),
    }
}

fn heat(dots: Dots) -> String {
    let words = match dots {
        Dots::Three => "three dots",
        Dots::Two => "two dots",
        Dots::One | Dots::Never => "one dot",
    };
    format!("iron at {words}, {} °C at most", dots.celsius().unwrap_or_default())
}

const fn pressed(press: Press) -> Option<&'static str> {
    match press {
        Press::Usual => None,
        Press::DampCloth => Some("press under a damp cloth, and lift the iron instead of sliding it"),
        Press::WrongSide => Some("press the wrong side"),
        Press::UnderCloth => Some("press the wrong side under a dry cloth"),
        Press::OnlyToFuse => Some("to fuse it, hold the iron still for 10 to 15 s, and let it cool; try it on a scrap"),
        Press::NotFlat => Some("do not press the surface flat"),
        Press::NeedleBoard => Some("press the back only, the pile on a needle board or on a piece of itself"),
        Press::NoIron => Some("press seams with your fingers"),
    }
}

const fn steamed(steam: Steam) -> Option<&'static str> {
    match steam {
        Steam::Free => None,
        Steam::Light => Some("little steam"),
        Steam::FromBehind => Some("steam from behind only"),
        Steam::No => Some("no steam"),
    }
}

fn because<T>(told: Told<T>) -> String {
    match told.because {
        Because::Finish(finish) => format!("its finish: {}", finish.word()),
        Because::Fibre(fibre) => format!("there is {} in it", fibre.name()),
        Because::Kind => "by its fibre and how it is made".to_owned(),
        Because::Nothing => "nothing is known that speaks against it".to_owned(),
    }
}
