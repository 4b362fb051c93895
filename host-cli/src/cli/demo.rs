//! What `demo` says of itself.

/// Examples for the help.
pub const EXAMPLES: &str = "\
A stash to look round in: the cloths of a hill-walking group's sewing evening, with a windproof smock and a pair of
walking tights. Try it beside your own log, in a file that you can throw away:
      tenter --db demo.sqlite3 demo
      tenter --db demo.sqlite3 fit 'Fellside smock' A";
