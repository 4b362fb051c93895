//! The flags of `cloth picture` and `cloth learned`.

use clap::Args;

use super::reading::ShowArgs;

/// Examples for the help of `cloth picture`.
pub const PICTURE: &str = "\
Examples:
      tenter cloth picture 2
      tenter cloth picture 2 swatch.jpg --copy 1
      tenter cloth picture 7 swatch.jpg --note 'right side, by daylight'

A photograph is kept small, at most 1200 pixels long, without place, time or camera. It is in your log, in what you \
export, on cards and in the swatch book. tenter reads JPEG, PNG and WebP, up to 32 MB and 50 million pixels.";

/// Examples for the help of `cloth learned`.
pub const LEARNED: &str = "\
Examples:
      tenter cloth learned 9 --needle 'stretch 75' --stitch 'zigzag 1 x 2.5' \\
          --pressure light --wore 'knees bagged after 3 h'
      tenter cloth learned 9 --retire 1

tenter offers it the next time that you handle or plan this cloth, or one like it.";

/// `cloth picture`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ClothPictureArgs {
    /// The number on the cloth, or its identifier
    #[arg(value_name = "TAG")]
    pub fabric: String,
    /// The photograph to add; without it tenter lists those that are there
    #[arg(value_name = "FILE", conflicts_with_all = ["first", "retire", "return"])]
    pub file: Option<String>,
    /// What it shows
    #[arg(long, value_name = "TEXT", requires = "file", conflicts_with = "copy")]
    pub note: Option<String>,
    /// Show this photograph before the others
    #[arg(long, value_name = "NUMBER", conflicts_with_all = ["retire", "return", "copy"])]
    pub first: Option<String>,
    /// Take this photograph off the cloth
    #[arg(long, value_name = "NUMBER", conflicts_with_all = ["return", "copy"])]
    pub retire: Option<String>,
    /// Put a retired photograph back
    #[arg(long, value_name = "NUMBER", conflicts_with = "copy")]
    pub r#return: Option<String>,
    /// Write this photograph to FILE
    #[arg(long, value_name = "NUMBER", requires = "file")]
    pub copy: Option<String>,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// `cloth learned`, as typed.
#[derive(Args, Debug, Clone)]
pub struct LearnedArgs {
    /// The number on the cloth, or its identifier
    #[arg(value_name = "TAG")]
    pub fabric: String,
    /// What worked, and how it wore.
    #[command(flatten)]
    pub learned: LearnedFlags,
    /// Take this off the list: it does not hold
    #[arg(long, value_name = "NUMBER", conflicts_with = "return")]
    pub retire: Option<String>,
    /// Put back what was retired
    #[arg(long, value_name = "NUMBER")]
    pub r#return: Option<String>,
    /// How the result is shown.
    #[command(flatten)]
    pub show: ShowArgs,
}

/// What worked, and how it wore, as typed.
#[derive(Args, Debug, Clone, Default, PartialEq, Eq)]
pub struct LearnedFlags {
    /// The needle that worked
    #[arg(long, value_name = "TEXT")]
    pub needle: Option<String>,
    /// The stitch that worked
    #[arg(long, value_name = "TEXT")]
    pub stitch: Option<String>,
    /// Its length
    #[arg(long, value_name = "TEXT")]
    pub length: Option<String>,
    /// The pressure of the foot
    #[arg(long, value_name = "TEXT")]
    pub pressure: Option<String>,
    /// The tension of the thread
    #[arg(long, value_name = "TEXT")]
    pub tension: Option<String>,
    /// The thread
    #[arg(long, value_name = "TEXT")]
    pub thread: Option<String>,
    /// How it wore
    #[arg(long, value_name = "TEXT")]
    pub wore: Option<String>,
    /// Anything else
    #[arg(long, value_name = "TEXT")]
    pub note: Option<String>,
}
