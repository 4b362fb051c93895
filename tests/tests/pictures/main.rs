//! The pictures of `tenter::picture`: as looked at, sound whatever they show, and true to scale in a real browser.

mod golden;
mod hostile;
mod in_browser;
mod sound;
