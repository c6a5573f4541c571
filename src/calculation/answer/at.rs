//! Where in a request something stands.

use std::fmt;

/// A place in the request: a JSON Pointer (RFC 6901) as a URI fragment when shown, a few borrowed steps until then.
///
/// ```
/// use loopwright::calculation::answer::At;
///
/// let stock = At::BODY.field("stock");
/// let third = stock.item(2);
/// assert_eq!(third.field("along_travel").to_string(), "#/stock/2/along_travel");
/// assert_eq!(At::BODY.member("6/20").to_string(), "#/6~120");
/// ```
#[derive(Clone, Copy, Debug)]
pub struct At<'a> {
    parent: Option<&'a At<'a>>,
    step: Step<'a>,
}

#[derive(Clone, Copy, Debug)]
enum Step<'a> {
    Body,
    Field(&'static str),
    Member(&'a str),
    Item(usize),
}

/// The most characters of a caller's own name that an answer repeats.
pub const LONGEST_NAME: usize = 64;

impl At<'_> {
    /// The request itself.
    pub const BODY: Self = At { parent: None, step: Step::Body };

    /// A field of the object here.
    pub fn field(&self, name: &'static str) -> At<'_> {
        At { parent: Some(self), step: Step::Field(name) }
    }

    /// A member of the object here whose name the caller chose.
    pub fn member<'b>(&'b self, name: &'b str) -> At<'b> {
        At { parent: Some(self), step: Step::Member(name) }
    }

    /// An item of the array here, counted from 0.
    pub fn item(&self, index: usize) -> At<'_> {
        At { parent: Some(self), step: Step::Item(index) }
    }
}

impl fmt::Display for At<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(parent) = self.parent {
            parent.fmt(f)?;
        }
        match self.step {
            Step::Body => f.write_str("#"),
            // Field names here are our own identifiers, which need no escape.
            Step::Field(name) => {
                f.write_str("/")?;
                f.write_str(name)
            }
            Step::Member(name) => {
                let name: String = name.chars().take(LONGEST_NAME).collect();
                write!(f, "/{}", name.replace('~', "~0").replace('/', "~1"))
            }
            Step::Item(index) => write!(f, "/{index}"),
        }
    }
}
