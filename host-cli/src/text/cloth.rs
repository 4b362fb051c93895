//! The stash as text.

use tenter_core::{Confidence, Figure, Figures, Grain, Length, Note, Range, Ratio, Rules, Suit, Table, Unit};

use crate::finding::fit::known;
use crate::log::{Construction, Entry, Fabric, Fact, Hands, StoredTest, fold, retest};
use crate::text::gauge as gauge_text;
use crate::text::gauge::GaugeText;
use crate::text::lines::Lines;
use crate::text::table;
use crate::text::table::Column;
use crate::words::advice::Spoken;
use crate::words::bidi::isolated;
use crate::words::figures;
use crate::words::quantity;
pub use crate::words::quantity::cloth;
use crate::words::terms as words;
use crate::words::washing;

/// A fabric in a list.
#[derive(Debug)]
pub struct Listed {
    /// The fabric.
    pub fabric: Fabric,
    /// Stretch across, as last measured.
    pub crosswise: Option<Ratio>,
    /// Stretch along, as last measured.
    pub lengthwise: Option<Ratio>,
}

/// What the newest test of a grain says.
#[derive(Debug)]
pub struct Standing<'a> {
    /// The test.
    pub test: &'a StoredTest,
    /// The figures, with her own hand.
    pub figures: Figures,
    /// How much of the scatter is known from her own pulls, 0 to 1.
    pub own: f32,
    /// What to know about the readings.
    pub notes: Vec<Note>,
    /// The kinds of garment that ask for as much.
    pub suits: Vec<&'static Suit>,
    /// The test before it, and by how many points the stretch differs, where that is more than both are worth.
    pub disagrees: Option<(&'a StoredTest, f32)>,
}

impl<'a> Standing<'a> {
    /// What the newest test of each grain says, of all tests of a fabric, the oldest first.
    #[must_use]
    pub fn all(fabric: &Fabric, tests: &'a [StoredTest], hands: &Hands, confidence: Confidence) -> Vec<Self> {
        let grains = [Grain::Crosswise, Grain::Lengthwise, Grain::Bias].into_iter();
        let newest =
            grains.filter_map(|grain| tests.iter().rev().find(|test| !test.dropped && test.said.test.grain() == grain));
        let rules = |test| Rules {
            confidence,
            scatter: hands.scatter_for(fabric.construction, test),
            construction: fabric.construction,
            ..Rules::default()
        };
        newest
            .filter_map(|newest| {
                let before = retest::before(tests, newest);
                Self::of(newest, before, rules(&newest.said.test), hands, fabric.construction)
            })
            .collect()
    }

    /// What `newest` says, beside the test `before` it.
    #[must_use]
    pub fn of(
        newest: &'a StoredTest,
        before: Option<&'a StoredTest>,
        rules: Rules,
        hands: &Hands,
        construction: Construction,
    ) -> Option<Self> {
        let test = &newest.said.test;
        let nothing_asked = tenter_core::Demand::default();
        let evaluation = tenter_core::Evaluation::of(test, &nothing_asked, &rules).ok()?;
        let suits = tenter_core::suits(test, &rules).ok()?.collect();
        let own = hands.on(construction).without(crate::log::Share::of(test)).repeatability();
        let disagrees = before.and_then(|before| {
            let stretch = &evaluation.figures.stretch;
            let apart = retest::disagreement(stretch, before, hands, construction, rules.confidence)?;
            Some((before, apart))
        });
        Some(Self {
            test: newest,
            figures: evaluation.figures,
            own: own.map_or(0.0, tenter_core::Repeatability::share),
            notes: evaluation.notes.iter().copied().collect(),
            suits,
            disagrees,
        })
    }

    /// Its grain.
    #[must_use]
    pub const fn grain(&self) -> Grain {
        self.test.said.test.grain()
    }
}

/// Everything about one fabric.
#[derive(Debug)]
pub struct Shown<'a> {
    /// The fabric.
    pub fabric: &'a Fabric,
    /// All its tests, the oldest first.
    pub tests: &'a [StoredTest],
    /// All its entries.
    pub history: &'a [Entry],
    /// What the newest tests say.
    pub standing: Vec<Standing<'a>>,
    /// Her hand.
    pub hands: Hands,
    /// The table of stretch classes.
    pub table: &'static Table,
    /// How sure an interval is.
    pub confidence: Confidence,
    /// The unit of the text.
    pub unit: Unit,
}

impl Shown<'_> {
    /// The garments that ask for most of what each grain gives, two a grain, each once.
    #[must_use]
    pub fn suits(&self) -> Vec<&'static Suit> {
        let mut suits: Vec<&'static Suit> = Vec::new();
        for suit in self.standing.iter().flat_map(|standing| standing.suits.iter().rev().take(2)) {
            if !suits.iter().any(|known| known.garment == suit.garment) {
                suits.push(suit);
            }
        }
        suits
    }

    /// How much of the trust is hers and how much assumed; none where nothing was measured.
    #[must_use]
    pub fn trust(&self) -> Option<String> {
        let most = self.standing.iter().max_by(|a, b| a.own.total_cmp(&b.own))?;
        Some(words::trust(self.fabric.construction, &self.hands, &most.test.said.test))
    }

    /// What washing does along and across, as far as it was measured.
    #[must_use]
    pub fn washing(&self) -> Vec<Spoken> {
        let change = |grain| {
            let change = known::washing(self.fabric, grain)?;
            Some(washing::line(grain, &change, self.confidence))
        };
        [Grain::Lengthwise, Grain::Crosswise].into_iter().filter_map(change).collect()
    }

    /// Whether a test counts, where it comes from and what was said with it.
    #[must_use]
    pub fn standing_of(&self, stored: &StoredTest) -> String {
        let counts = self.standing.iter().any(|standing| standing.test.id == stored.id);
        let first = match (stored.dropped, counts) {
            (true, _) => "retired",
            (_, true) => "counts",
            _ => "older",
        };
        let handheld = if stored.said.device.is_some() { "handheld" } else { "" };
        let note = isolated(&stored.said.note);
        let parts = [first, handheld, &note];
        parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
    }

    /// The history, each step with its day.
    #[must_use]
    pub fn steps(&self) -> Vec<(String, String)> {
        let lengths = fold::lengths(self.history);
        let said = |(index, entry): (usize, &Entry)| {
            let left = lengths.iter().find(|(at, _)| *at == index).and_then(|(_, length)| *length);
            (quantity::day(entry.at), step(entry, left, self.unit))
        };
        self.history.iter().enumerate().map(said).filter(|(_, words)| !words.is_empty()).collect()
    }
}

/// A fabric and what is on hand, in one line.
#[must_use]
pub fn line_about(fabric: &Fabric, unit: Unit) -> String {
    let mut text = format!("{}  {}", fabric.tag, isolated(&fabric.name));
    for part in [on_hand(fabric, unit), fabric.construction.word().to_owned()] {
        if !part.is_empty() {
            text.push_str(", ");
            text.push_str(&part);
        }
    }
    text
}

/// `1.20 m of 150 cm`, as far as it is known.
#[must_use]
pub fn on_hand(fabric: &Fabric, unit: Unit) -> String {
    match (fabric.length, fabric.width) {
        (Some(length), Some(width)) => format!("{} of {}", cloth(length, unit), quantity::width(width, unit)),
        (Some(length), None) => cloth(length, unit),
        (None, Some(width)) => format!("{} wide", quantity::width(width, unit)),
        (None, None) => String::new(),
    }
}

/// The list.
#[must_use]
pub fn list(listed: &[Listed], all: usize, dropped: bool, unit: Unit, width: usize) -> String {
    let mut text = Lines::new(width);
    if all == 0 {
        text.words(if dropped {
            "nothing is retired"
        } else {
            "the stash is empty; begin with tenter cloth add NAME, or look round with tenter demo"
        });
        return text.finish();
    }
    let columns = [
        ("tag", Column::Number),
        ("name", Column::Text),
        ("made", Column::Word),
        ("across", Column::Number),
        ("along", Column::Number),
        ("on hand", Column::Number),
        ("wide", Column::Number),
        ("where", Column::Text),
    ];
    let stretch = |ratio: Option<Ratio>| ratio.map(quantity::percent).unwrap_or_else(|| "–".to_owned());
    let rows = listed.iter().map(|listed| {
        let fabric = &listed.fabric;
        let place = match &fabric.shop {
            Some(shop) => match &shop.price {
                Some(price) => format!("seen: {}, {price}", shop.place),
                None => format!("seen: {}", shop.place),
            },
            None => fabric.place.clone(),
        };
        vec![
            fabric.tag.to_string(),
            fabric.name.clone(),
            fabric.construction.word().to_owned(),
            stretch(listed.crosswise),
            stretch(listed.lengthwise),
            fabric.length.map(|length| cloth(length, unit)).unwrap_or_default(),
            fabric.width.map(|width| quantity::width(width, unit)).unwrap_or_default(),
            place,
        ]
    });
    if !listed.is_empty() {
        text.block(&table::render(&columns, rows, width));
    }
    let kind = if dropped { "retired" } else { "in the stash" };
    text.words(&format!("{} of {all} {kind}", listed.len()));
    text.finish()
}

/// Everything about one fabric.
#[must_use]
pub fn shown(shown: &Shown<'_>, columns: usize, unicode: bool) -> String {
    let fabric = shown.fabric;
    let mut text = Lines::new(columns);
    text.words(&format!("{}  {}", fabric.tag, isolated(&fabric.name)));
    if fabric.dropped {
        text.row("retired", &format!("bring it back with tenter cloth return {}", fabric.tag));
    }
    about(&mut text, shown);
    figures(&mut text, shown, unicode);
    if let Some(trust) = shown.trust() {
        text.row("trust", &trust);
    }
    if !shown.tests.is_empty() {
        text.blank();
        text.line(format_args!("  tests"));
        tests(shown, columns.saturating_sub(2)).lines().for_each(|line| text.line(format_args!("  {line}")));
    }
    text.blank();
    text.line(format_args!("  history"));
    for (day, words) in shown.steps() {
        text.row(&day, &words);
    }
    text.finish()
}

fn about(text: &mut Lines, shown: &Shown<'_>) {
    let (fabric, unit) = (shown.fabric, shown.unit);
    let washed = if fabric.washed { "washed" } else { "not washed" };
    let parts = [
        on_hand(fabric, unit),
        fabric.construction.word().to_owned(),
        isolated(&fabric.fibre),
        fabric.mass.map(|mass| mass.to_string()).unwrap_or_default(),
        washed.to_owned(),
    ];
    text.row("cloth", &parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", "));
    match &fabric.shop {
        Some(shop) => {
            let price = shop.price.as_ref().map(|price| format!(", {price}")).unwrap_or_default();
            text.row("seen", &format!("{}{price}; not bought", isolated(&shop.place)));
        }
        None if fabric.place.is_empty() => {}
        None => text.row("lies", &isolated(&fabric.place)),
    }
    if !fabric.note.is_empty() {
        text.row("note", &isolated(&fabric.note));
    }
    for line in shown.washing() {
        text.row("washing", &format!("{} {}", line.about, line.text));
    }
}

fn figures(text: &mut Lines, shown: &Shown<'_>, unicode: bool) {
    let drawn: Vec<Figure> = shown.standing.iter().map(|standing| standing.figures.stretch).collect();
    for standing in &shown.standing {
        text.blank();
        text.line(format_args!("  {}", standing.grain().word()));
        let stretch = standing.figures.stretch;
        let class = shown.table.class(stretch.ratio).name;
        figures::write(text, &standing.figures, class, &standing.notes, shown.confidence);
        // Where it cannot be foreseen, there is nothing to say here.
        let _ = figures::write_forecast(text, &standing.test.said.test, 3600, "1 h");
        text.block(&gauge_text::draw(&GaugeText {
            stretch,
            beside: &drawn,
            confidence: shown.confidence,
            asked: Range::default(),
            columns: text.columns(),
            unicode,
        }));
        if let Some((before, apart)) = standing.disagrees {
            text.row("disagrees", &words::disagreement(apart, &before.said));
        }
    }
    if !shown.standing.is_empty() {
        text.blank();
    }
    let tag = shown.fabric.tag;
    for grain in [Grain::Crosswise, Grain::Lengthwise] {
        if !shown.standing.iter().any(|standing| standing.grain() == grain) {
            text.row(grain.word(), &format!("not measured: tenter pull {tag} --grain {}", grain.word()));
        }
    }
    for suit in shown.suits() {
        text.row("suits", &format!("{} [{}]", words::garment(suit), suit.source));
    }
}

fn tests(shown: &Shown<'_>, width: usize) -> String {
    let columns = [
        ("test", Column::Word),
        ("pulled", Column::Word),
        ("grain", Column::Word),
        ("marks", Column::Number),
        ("pulls", Column::Number),
        ("stretch", Column::Number),
        ("growth", Column::Number),
        ("", Column::Text),
    ];
    let rows = shown.tests.iter().rev().map(|test| {
        let said = &test.said;
        let figures = Figures::of(&said.test, tenter_core::Scatter::ASSUMED).ok();
        vec![
            test.id.short(),
            quantity::pulled(said),
            said.test.grain().word().to_owned(),
            said.test.gauge().show(shown.unit).to_string(),
            said.test.pulls().len().to_string(),
            figures.map(|figures| quantity::percent(figures.stretch.ratio)).unwrap_or_default(),
            figures
                .and_then(|figures| figures.rest)
                .map(|rest| quantity::percent(rest.growth.ratio))
                .unwrap_or_default(),
            shown.standing_of(test),
        ]
    });
    table::render(&columns, rows, width)
}

/// One step of a fabric's history.
fn step(entry: &Entry, left: Option<Length>, unit: Unit) -> String {
    let left = left.map(|length| format!("; {} on hand", cloth(length, unit))).unwrap_or_default();
    let noted = |text: &str| if text.is_empty() { String::new() } else { format!(": {}", isolated(text)) };
    match &entry.fact {
        Fact::FabricAdded(_) => format!("added{left}"),
        Fact::FabricChanged { change, .. } => {
            let what = changed(change);
            format!("changed{}{left}", if what.is_empty() { String::new() } else { format!(" {what}") })
        }
        Fact::FabricCut { length, note, .. } => format!("cut {}{}{left}", cloth(*length, unit), noted(note)),
        Fact::FabricWashed { grain, marks, note, .. } => format!(
            "washed, {}: {} to {}{}",
            grain.word(),
            marks.before.show(unit),
            marks.after.show(unit),
            noted(note)
        ),
        Fact::FabricDropped { note, .. } => format!("retired{}", noted(note)),
        Fact::FabricRestored { .. } => "brought back".to_owned(),
        _ => String::new(),
    }
}

/// What a change names.
fn changed(change: &crate::log::FabricChange) -> String {
    let mut parts: Vec<String> = Vec::new();
    let mut text = |label: &str, value: &Option<String>| {
        parts.extend(value.as_ref().map(|value| format!("{label} '{}'", isolated(value))));
    };
    text("name", &change.name);
    text("fibre", &change.fibre);
    text("place", &change.place);
    text("note", &change.note);
    parts.extend(change.tag.map(|tag| format!("tag {tag}")));
    parts.extend(change.construction.map(|construction| format!("construction {}", construction.word())));
    parts.extend(change.mass.map(|mass| mass.map_or("mass unknown".to_owned(), |mass| format!("mass {mass}"))));
    parts.extend(change.width.map(|width| match width {
        Some(width) => format!("width {}", quantity::width(width.0, Unit::Cm)),
        None => "width unknown".to_owned(),
    }));
    parts.extend(change.washed.map(|washed| if washed { "washed" } else { "not washed" }.to_owned()));
    match &change.shop {
        Some(Some(shop)) => parts.push(format!("seen at '{}'", isolated(&shop.place))),
        Some(None) => parts.push("bought".to_owned()),
        None => {}
    }
    if change.length.is_some() && change.shop != Some(None) {
        parts.push("length counted".to_owned());
    }
    parts.join(", ")
}
