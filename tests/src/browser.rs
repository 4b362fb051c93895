//! A real browser: opens a page at given widths, light and dark, runs a script in it, photographs and prints it, and
//! tells every address it asked for. Fails where the browser is missing; `tests/install` gets it.

use std::io::{self, Write as _};
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

use serde::{Deserialize, Serialize};
use serde_json::Value;

/// The key that goes on to the next thing.
pub const TAB: &str = "<Tab>";

/// The widths at which pages are looked at: phone, tablet, desk.
pub const WIDTHS: [u32; 3] = [360, 768, 1280];

/// Words that leave their picture, by more than a hundredth of its width.
pub const OUTSIDE: &str = "[...document.querySelectorAll('svg svg text, svg text')].filter(text => {
    const svg = text.ownerSVGElement, box = text.getBBox(), view = svg.viewBox.baseVal, slack = view.width / 100;
    return box.x < -slack || box.y < -slack || box.x + box.width > view.width + slack || box.y + box.height > view.height + slack;
}).map(text => (text.closest('[id]')?.id ?? '') + ': ' + text.textContent)";

/// Words of a picture that run into one another, by more than a fifth of their height.
pub const OVERLAPPING: &str = "[...document.querySelectorAll('svg')].filter(svg => !svg.ownerSVGElement).flatMap(svg => {
    const name = svg.closest('[id]')?.id ?? '';
    const texts = [...svg.querySelectorAll('text')].map(text => [text, text.getBoundingClientRect()]);
    return texts.flatMap(([text, a], place) => texts.slice(place + 1).filter(([, b]) => {
        const slack = Math.min(a.height, b.height) / 5;
        return a.left + slack < b.right && b.left + slack < a.right && a.top + slack < b.bottom && b.top + slack < a.bottom;
    }).map(([other]) => name + ': ' + text.textContent + ' / ' + other.textContent));
})";

/// One look at the page.
#[derive(Debug, Clone, Serialize)]
pub struct View {
    /// Width of the window, in CSS pixels.
    pub width: u32,
    /// Height of the window, in CSS pixels.
    pub height: u32,
    /// Whether the reader prefers dark pages.
    pub dark: bool,
    /// Pixels of the photograph for each CSS pixel.
    pub zoom: u32,
    /// Where a photograph goes.
    pub png: Option<PathBuf>,
    /// Whether the photograph shows the window alone, and not the whole page.
    pub window: bool,
    /// Where the printed page goes.
    pub pdf: Option<PathBuf>,
    /// What is pressed or typed before anything else: `<Tab>` and the like are keys, anything else is text.
    pub keys: Vec<String>,
    /// Whether the page's own scripts run.
    pub scripts: bool,
    /// A script to evaluate; its value, as JSON, is the view's result.
    pub script: Option<String>,
    /// Whether to check that everybody can use the page.
    pub axe: bool,
}

impl View {
    /// A look at a window of that width, with nothing kept.
    #[must_use]
    pub fn new(width: u32, dark: bool) -> Self {
        Self {
            width,
            height: 900,
            dark,
            zoom: 1,
            png: None,
            window: false,
            pdf: None,
            keys: Vec::new(),
            scripts: true,
            script: None,
            axe: false,
        }
    }

    /// The same with a photograph.
    #[must_use]
    pub fn photographed(self, png: PathBuf) -> Self {
        Self { png: Some(png), ..self }
    }

    /// The same, printed.
    #[must_use]
    pub fn printed(self, pdf: PathBuf) -> Self {
        Self { pdf: Some(pdf), ..self }
    }

    /// The same after keys.
    #[must_use]
    pub fn keyed(self, keys: &[&str]) -> Self {
        Self { keys: keys.iter().map(ToString::to_string).collect(), ..self }
    }

    /// The same with a script.
    #[must_use]
    pub fn asked(self, script: &str) -> Self {
        Self { script: Some(script.to_owned()), ..self }
    }
}

/// What one view gave.
#[derive(Debug, Clone, Deserialize)]
pub struct Seen {
    /// What the script gave; null without one.
    pub result: Value,
    /// What keeps somebody from using the page, each with its first place.
    pub violations: Vec<String>,
}

/// What a visit gave.
#[derive(Debug, Clone, Deserialize)]
pub struct Visit {
    /// One for each view, in their order.
    pub views: Vec<Seen>,
    /// Every address that was asked for, the page itself included, once for each view.
    pub requests: Vec<String>,
    /// What the page complained of.
    pub errors: Vec<String>,
}

#[derive(Serialize)]
struct Job<'a> {
    browser: PathBuf,
    file: &'a Path,
    views: &'a [View],
}

/// Opens a file once for each view.
///
/// # Errors
///
/// When browser, Node or their packages are missing, or the page cannot be opened.
pub fn visit(file: &Path, views: &[View]) -> io::Result<Visit> {
    let job = Job { browser: find("chromium")?, file: &file.canonicalize()?, views };
    let said = node("visit.mjs", &serde_json::to_vec(&job)?)?;
    Ok(serde_json::from_slice(&said)?)
}

/// One step of a walk through pages; each part that is there is done, in the order of these fields.
#[derive(Debug, Clone, Default, Serialize)]
pub struct WalkStep {
    /// From here on the window is so wide.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub width: Option<u32>,
    /// Whether the reader prefers dark pages.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dark: Option<bool>,
    /// Opens an address.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub go: Option<String>,
    /// Types a text into a field, by its selector.
    #[serde(rename = "type", skip_serializing_if = "Option::is_none")]
    pub typed: Option<(String, String)>,
    /// Chooses a value of a list.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub choose: Option<(String, String)>,
    /// Ticks a box, or one of several.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tick: Option<String>,
    /// Presses what leads to another page, and waits for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub press: Option<String>,
    /// A script to evaluate; its value is the step's result.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ask: Option<String>,
    /// Whether to check that everybody can use the page.
    pub axe: bool,
    /// Where a photograph goes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub png: Option<PathBuf>,
}

/// What a step of a walk gave.
#[derive(Debug, Clone, Deserialize)]
pub struct Walked {
    /// What the script gave; null without one.
    pub result: Value,
    /// What keeps somebody from using the page.
    pub violations: Vec<String>,
    /// The address at which the step ended, behind the base.
    pub address: String,
}

/// What a walk gave.
#[derive(Debug, Clone, Deserialize)]
pub struct Walk {
    /// One for each step.
    pub seen: Vec<Walked>,
    /// Every address that was asked for.
    pub requests: Vec<String>,
    /// What pages complained of.
    pub errors: Vec<String>,
    /// What a script put before the reader.
    pub dialogs: Vec<String>,
}

/// Walks through the pages of a server in a window of that size, with or without the pages' scripts.
///
/// # Errors
///
/// When browser, Node or their packages are missing, or a step cannot be made.
pub fn walk(base: &str, (width, height): (u32, u32), scripts: bool, steps: &[WalkStep]) -> io::Result<Walk> {
    #[derive(Serialize)]
    struct WalkJob<'a> {
        browser: PathBuf,
        base: &'a str,
        width: u32,
        height: u32,
        scripts: bool,
        steps: &'a [WalkStep],
    }
    let job = WalkJob { browser: find("chromium")?, base, width, height, scripts, steps };
    Ok(serde_json::from_slice(&node("walk.mjs", &serde_json::to_vec(&job)?)?)?)
}

/// Holds pages, each with a name, against the HTML standard; one line for each fault.
///
/// # Errors
///
/// When Node or its packages are missing.
pub fn faults_in(pages: &[(String, String)]) -> io::Result<Vec<String>> {
    #[derive(Serialize)]
    struct ValidateJob<'a> {
        pages: &'a [(String, String)],
    }
    #[derive(Deserialize)]
    struct Validated {
        faults: Vec<String>,
    }
    let said = node("validate.mjs", &serde_json::to_vec(&ValidateJob { pages })?)?;
    Ok(serde_json::from_slice::<Validated>(&said)?.faults)
}

/// Runs one of the programs beside this crate with a job; what it wrote.
fn node(program: &str, job: &[u8]) -> io::Result<Vec<u8>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut node = Command::new("node");
    node.arg(folder.join("browser").join(program)).arg(folder.join("../target/browser"));
    let mut child = node.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn()?;
    child.stdin.take().ok_or_else(|| io::Error::other("no way in"))?.write_all(job)?;
    succeeded(&format!("node tests/browser/{program}"), child.wait_with_output()?)
}

/// A program on the path.
pub(crate) fn find(program: &str) -> io::Result<PathBuf> {
    let path = std::env::var_os("PATH").unwrap_or_default();
    let found = std::env::split_paths(&path).map(|folder| folder.join(program)).find(|file| file.is_file());
    found.ok_or_else(|| io::Error::new(io::ErrorKind::NotFound, format!("{program} is missing; run tests/install")))
}

fn succeeded(what: &str, output: Output) -> io::Result<Vec<u8>> {
    if output.status.success() {
        return Ok(output.stdout);
    }
    Err(io::Error::other(format!("{what}: {}", String::from_utf8_lossy(&output.stderr))))
}

/// A sheet of paper as a grey picture.
#[derive(Debug)]
pub struct Sheet {
    /// Pixels across.
    pub width: usize,
    /// Pixels down.
    pub height: usize,
    grey: Vec<u8>,
}

/// Dots of a rasterised sheet for each millimetre.
pub const DOTS_PER_MM: usize = 20;

impl Sheet {
    /// Whether a dot is rather dark.
    #[must_use]
    pub fn is_dark(&self, x: usize, y: usize) -> bool {
        x < self.width && self.grey.get(y * self.width + x).is_some_and(|grey| *grey < 128)
    }

    /// How many dots are rather dark.
    #[must_use]
    pub fn dark_dots(&self) -> usize {
        self.grey.iter().filter(|grey| **grey < 128).count()
    }

    /// The longest unbroken dark run in a row: its first dot and its length.
    #[must_use]
    pub fn longest_run(&self, y: usize) -> (usize, usize) {
        let mut best = (0, 0);
        let mut from = 0;
        for x in 0..=self.width {
            if !self.is_dark(x, y) {
                if x - from > best.1 {
                    best = (from, x - from);
                }
                from = x + 1;
            }
        }
        best
    }

    /// The length of the longest dark line within 2 mm of a height, in millimetres.
    #[must_use]
    pub fn line_at(&self, mm: f64) -> f64 {
        let rows = (0..self.height).filter(|y| (millimetres(*y) - mm).abs() < 2.0);
        millimetres(rows.map(|y| self.longest_run(y).1).max().unwrap_or(0))
    }

    /// The middles of the upright strokes that run, dark all the way, from one height to another, in millimetres.
    #[must_use]
    pub fn posts(&self, top: f64, foot: f64) -> Vec<f64> {
        let rows: Vec<usize> = (0..self.height).filter(|y| (top..foot).contains(&millimetres(*y))).collect();
        let is_post = |x: usize| rows.iter().all(|y| self.is_dark(x, *y));
        let mut posts = Vec::new();
        let mut from = None;
        for x in 0..=self.width {
            match (from, is_post(x)) {
                (None, true) => from = Some(x),
                (Some(begun), false) => {
                    posts.push(f64::midpoint(millimetres(begun), millimetres(x)));
                    from = None;
                }
                _ => {}
            }
        }
        posts
    }

    /// Panics unless the sheet is A4 (ISO 216: 210 by 297 mm) and the line near a height measures 100 mm ± 0.5 mm, which
    /// is what a person can read on a tape.
    pub fn assert_true_to_scale(&self, check_line: f64) {
        let (width, height) = (millimetres(self.width), millimetres(self.height));
        assert!((width - 210.0).abs() < 0.3 && (height - 297.0).abs() < 0.3, "{width} by {height} mm");
        let length = self.line_at(check_line);
        assert!((length - 100.0).abs() < 0.5, "the check line of 100 mm measures {length} mm");
    }
}

/// Dots in millimetres.
fn millimetres(dots: usize) -> f64 {
    let number = |count: usize| u32::try_from(count).map_or(f64::INFINITY, f64::from);
    number(dots) / number(DOTS_PER_MM)
}

/// The sheets of a printed page.
///
/// # Errors
///
/// When `pdftoppm` is missing or cannot read the file.
pub fn sheets(pdf: &Path) -> io::Result<Vec<Sheet>> {
    let folder = tempfile::tempdir()?;
    let dots_per_inch = (DOTS_PER_MM * 254 / 10).to_string();
    let mut command = Command::new(find("pdftoppm")?);
    command.args(["-gray", "-r", &dots_per_inch]).arg(pdf).arg(folder.path().join("sheet"));
    succeeded("pdftoppm", command.output()?)?;
    let mut files: Vec<PathBuf> =
        std::fs::read_dir(folder.path())?.map(|file| Ok(file?.path())).collect::<io::Result<_>>()?;
    files.sort();
    files.iter().map(|file| sheet(&std::fs::read(file)?)).collect()
}

/// Reads a grey picture in the portable graymap format: `P5`, width, height, 255, then a byte a dot.
fn sheet(bytes: &[u8]) -> io::Result<Sheet> {
    let wrong = || io::Error::new(io::ErrorKind::InvalidData, "not a grey picture");
    let mut rest = bytes;
    let mut word = || {
        let end = rest.iter().position(u8::is_ascii_whitespace)?;
        let (word, later) = rest.split_at(end);
        rest = &later[1..];
        std::str::from_utf8(word).ok()
    };
    let (kind, width, height, _) = (word(), word(), word(), word());
    let size = |word: Option<&str>| word.and_then(|word| word.parse().ok()).ok_or_else(wrong);
    let (width, height): (usize, usize) = (size(width)?, size(height)?);
    if kind != Some("P5") || rest.len() != width * height {
        return Err(wrong());
    }
    Ok(Sheet { width, height, grey: rest.to_vec() })
}
