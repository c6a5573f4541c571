//! The style sheet of all drawings: thin ink on paper, light or dark as the reader's device asks, always light in print.
//!
//! Every rule is limited to drawings by their class, so that a page may hold them among its own elements. Colours stand in the
//! rules themselves, for converters that do not support variables. Colour says nothing that is not also said in words.

use crate::vocabulary::vocabulary;

/// The class of the outermost element.
pub const ROOT_CLASS: &str = "loopwright-drawing";

/// When a drawing is dark.
const WHERE_ASKED: &str = "@media screen and (prefers-color-scheme:dark)";

const LIGHT: Palette =
    Palette { paper: "#ffffff", ink: "#16191d", faint: "#79828c", wire: "#0b4f94", fill: "#d6dee6", stop: "#a3140c" };

const DARK: Palette =
    Palette { paper: "#14171b", ink: "#eceff2", faint: "#8b949e", wire: "#86bdf7", fill: "#39444f", stop: "#ff9d93" };

vocabulary! {
    /// The colours of a drawing on a screen; in print it is always light.
    DrawingTheme {
        Auto "auto" "As the device" "Light or dark, as the reader's device asks.";
        Light "light" "Light" "Dark ink on light paper.";
        Dark "dark" "Dark" "Light ink on dark paper.";
    }
}

/// The style sheet.
pub fn style_sheet() -> String {
    format!("{SHAPES}{}{WHERE_ASKED}{{{}}}", LIGHT.rules(), DARK.rules()).replace(".R ", &format!(".{ROOT_CLASS} "))
}

impl DrawingTheme {
    /// Gives a drawing, which is made as the reader's device asks, these colours.
    pub fn apply(self, drawing: String) -> String {
        match self {
            Self::Auto => drawing,
            Self::Light => drawing.replacen(WHERE_ASKED, "@media not all", 1),
            Self::Dark => drawing.replacen(WHERE_ASKED, "@media screen", 1),
        }
    }
}

/// The colours of one scheme.
struct Palette {
    paper: &'static str,
    ink: &'static str,
    faint: &'static str,
    wire: &'static str,
    fill: &'static str,
    stop: &'static str,
}

/// What does not change with the colours: weights of lines and of type.
const SHAPES: &str = ".R text{font-family:sans-serif;font-size:11px}.R .head{font-size:14px;font-weight:bold}\
    .R .strong{font-weight:bold}.R .middle{text-anchor:middle}.R .end{text-anchor:end}\
    .R .line,.R .fine,.R .wire,.R .heavy,.R .dashed,.R .chain,.R .frame{fill:none;stroke-linejoin:round}\
    .R .line{stroke-width:1}.R .fine{stroke-width:.6}.R .heavy{stroke-width:2}.R .wire{stroke-width:1.6}\
    .R .frame{stroke-width:1.6}.R .dashed{stroke-width:.9;stroke-dasharray:4 3}\
    .R .chain{stroke-width:.9;stroke-dasharray:9 2.5 2 2.5}";

impl Palette {
    fn rules(&self) -> String {
        let Self { paper, ink, faint, wire, fill, stop } = self;
        format!(
            ".R .paper{{fill:{paper}}}.R text,.R .dot{{fill:{ink}}}.R .line,.R .heavy,.R .dashed,.R .chain{{stroke:{ink}}}\
             .R .fine{{stroke:{faint}}}.R .wire{{stroke:{wire}}}.R .frame{{stroke:{stop}}}.R .stop{{fill:{stop}}}\
             .R .balloon{{fill:{paper};stroke:{ink};stroke-width:1}}.R .wiredot{{fill:{wire}}}.R .fill{{fill:{fill}}}\
             .R .core{{fill:{paper};stroke:{wire};stroke-width:1}}"
        )
    }
}
