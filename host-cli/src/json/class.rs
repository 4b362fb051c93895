//! Several people's pulls of one cloth, as JSON.

use serde_json::json;

use crate::finding::class::{ClassPulls, Hand};
use crate::json::rounded;

/// One object, on one line; stretches and limits in percent of the marks.
#[must_use]
pub fn render(class: &ClassPulls) -> String {
    let hand = |hand: &Hand| {
        json!({
            "name": hand.name,
            "pulls": hand.pulls.iter().map(|pull| rounded(*pull, 3)).collect::<Vec<_>>(),
            "mean_percent": rounded(hand.mean, 3),
            "half_width": rounded(hand.half, 3),
        })
    };
    let compared = &class.compared;
    json!({
        "tag": class.fabric.tag.number(),
        "grain": class.grain.word(),
        "people": class.hands.iter().map(hand).collect::<Vec<_>>(),
        "mean_percent": rounded(compared.mean, 3),
        "half_width": rounded(class.half, 3),
        "repeatability_sd": rounded(compared.within.sqrt(), 3),
        "between_people_sd": rounded(compared.between.sqrt(), 3),
        "repeatability_limit": rounded(compared.repeatability_limit(), 3),
        "reproducibility_limit": rounded(compared.reproducibility_limit(), 3),
    })
    .to_string()
}
