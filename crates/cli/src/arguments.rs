//! What can be asked of the program.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use clap_complete::Shell;

/// Reads a recipe as its writer typed it and cooks it by computation.
///
/// Without a command: the digest of the demo book.
#[derive(Debug, Parser)]
#[command(
    name = "potwright",
    version,
    about,
    after_help = "Example: potwright reckon soup.txt"
)]
pub(crate) struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub command: Option<Command>,
}

/// The commands, one file each in `commands/`.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// A book at a glance: a dish a line
    #[command(after_help = "Example: potwright digest suppers")]
    Digest {
        /// Folder of the book; the demo book when left out
        folder: Option<PathBuf>,
        /// A kitchen.toml to cook in instead of the book's own
        #[arg(long, value_name = "FILE")]
        kitchen: Option<PathBuf>,
    },
    /// One dish in full: what it makes, how it eats, what it costs, what is open
    #[command(after_help = "Example: potwright reckon soup.txt --kitchen kitchen.toml")]
    Reckon {
        #[command(flatten)]
        page: Page,
        /// Print what was read on the page, without cooking it
        #[arg(long)]
        reading: bool,
        /// Print as JSON (docs/dossier-json.md)
        #[arg(long)]
        json: bool,
    },
    /// The questions an editor would pencil in the margin, beside the words
    #[command(after_help = "Example: potwright proof soup.txt")]
    Proof {
        #[command(flatten)]
        page: Page,
        /// Print as JSON
        #[arg(long)]
        json: bool,
    },
    /// A page set for another number of people or in other measures, by the plain factor method
    #[command(after_help = "Example: potwright convert soup.txt --for 40 --measures both")]
    Convert {
        #[command(flatten)]
        page: Page,
        /// For how many; the page must say for how many it is
        #[arg(long = "for", value_name = "NUMBER", allow_hyphen_values = true)]
        people: Option<String>,
        /// So many times the page: 3, 1/2, 2.5
        #[arg(long, value_name = "FACTOR", conflicts_with = "people", allow_hyphen_values = true)]
        times: Option<String>,
        /// Which measures the page is set in; as written when left out
        #[arg(long, value_name = "WHICH")]
        measures: Option<Measures>,
        /// Print as JSON
        #[arg(long)]
        json: bool,
    },
    /// Stove notes to draft pages, one a dish: what somebody said while cooking, as a machine wrote it down
    #[command(after_help = "Example: potwright draft friday.txt -o drafts\n\n\
        Reads plain text, [12:05] stamps, SubRip and WebVTT. What was not said is asked\n\
        in square brackets at the end of each draft.")]
    Draft {
        /// The notes; - for the standard input
        notes: String,
        /// Write a page a dish into this folder; no file is ever overwritten
        #[arg(short, long, value_name = "FOLDER")]
        output: Option<PathBuf>,
        /// Print as JSON, with the place of everything and what was set aside
        #[arg(long)]
        json: bool,
    },
    /// A page for the editor, in house style; with -o in another form: .docx with the queries as comments, .jsonld
    #[command(after_help = "Examples: potwright manuscript 2\n          \
                  potwright manuscript 2 -o beef-shin.docx\n\n\
        Without -o the page is printed in the style of the house ([house_style] in\n\
        book.toml); what could not be put so is printed as typed and listed.\n\
        The ending says which form: .docx, .jsonld, or .txt for the words of a word\n\
        processor's file as typed text. No file is ever overwritten.")]
    Manuscript {
        #[command(flatten)]
        page: Page,
        /// The file to write; printed when left out
        #[arg(short, long, value_name = "FILE")]
        output: Option<PathBuf>,
    },
    /// Pages in any form brought into a book: typed, .docx, .odt, .rtf, schema.org/Recipe, saved web pages
    #[command(after_help = "Example: potwright gather old-recipes --into suppers\n\n\
        Says what became of every file. No page of the book is ever overwritten.")]
    Gather {
        /// Folder with the files
        folder: PathBuf,
        /// Folder of the book; it is made when it is missing
        #[arg(long, value_name = "BOOK")]
        into: PathBuf,
    },
    /// The menus of a book, their dishes cooked; one menu when it is named
    #[command(after_help = "Example: potwright menu 'Friday for four'")]
    Menu {
        /// Title of the menu, or part of it
        title: Option<String>,
        /// Folder of the book; the demo book when left out
        #[arg(long, value_name = "FOLDER")]
        book: Option<PathBuf>,
    },
    /// The larder: what a name is taken for; a complete composition table for a book
    Larder {
        /// What to do
        #[command(subcommand)]
        work: Larder,
    },
    /// Completions for a shell
    #[command(after_help = "Example: potwright completions bash > potwright.bash")]
    Completions {
        /// Which shell
        shell: Shell,
    },
    /// The manual page
    #[command(after_help = "Example: potwright man > potwright.1")]
    Man,
}

/// What can be done with the larder.
#[derive(Debug, Subcommand)]
pub(crate) enum Larder {
    /// What a name is taken for, how well it fits, and what is known of it
    #[command(after_help = "Example: potwright larder find 'tinned tomatoes'")]
    Find {
        /// The food, as a page would name it
        #[arg(required = true, value_name = "NAME")]
        name: Vec<String>,
        /// Folder of the book whose own foods count too
        #[arg(long, value_name = "FOLDER")]
        book: Option<PathBuf>,
        /// Print as JSON (docs/larder-json.md)
        #[arg(long)]
        json: bool,
    },
    /// Bring a complete composition table into a book, so that its foods can be named on pages
    #[command(after_help = "Example: potwright larder import sr28asc --book suppers\n\n\
        Reads the USDA Standard Reference as ASCII files (FOOD_DES.txt ...) or the\n\
        CSV folder of FoodData Central (food.csv ...); writes larder_table.tsv.")]
    Import {
        /// Folder with the table's files
        folder: PathBuf,
        /// Folder of the book; the one we are in when left out
        #[arg(long, value_name = "FOLDER")]
        book: Option<PathBuf>,
        /// Put it in the place of a table that was brought in before
        #[arg(long)]
        replace: bool,
    },
}

/// Which page, and what it is cooked with.
#[derive(Debug, Args)]
pub(crate) struct Page {
    /// A page, typed or of a word processor (.docx, .odt, .rtf) or as data (.jsonld, .html); - for the standard input; or the number or title of a dish of the book
    #[arg(value_name = "PAGE")]
    pub page: String,
    /// Folder of the book whose kitchen, prices and dishes are used; a page in a book's folder uses that one
    #[arg(long, value_name = "FOLDER")]
    pub book: Option<PathBuf>,
    /// A kitchen.toml to cook in instead of the book's own
    #[arg(long, value_name = "FILE")]
    pub kitchen: Option<PathBuf>,
}

/// Measures a page can be set in.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum Measures {
    /// Grams and millilitres
    Metric,
    /// Cups, spoons, ounces and pounds
    Us,
    /// Metric, with US measures in brackets
    Both,
}
