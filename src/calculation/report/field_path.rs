//! Where in a request something stands.

/// A place in the request, kept as a few borrowed steps; [`FieldPath::pointer`] writes it as a JSON Pointer (RFC 6901) in a URI fragment.
///
/// ```
/// use loopwright::calculation::report::FieldPath;
///
/// let stock = FieldPath::BODY.field("stock");
/// let third = stock.item(2);
/// assert_eq!(third.field("along_travel").pointer(), "#/stock/2/along_travel");
/// assert_eq!(FieldPath::BODY.item(120).member("6/20~a").pointer(), "#/120/6~120~0a");
/// ```
#[derive(Clone, Copy, Debug)]
pub struct FieldPath<'a> {
    parent: Option<&'a FieldPath<'a>>,
    step: Step<'a>,
}

#[derive(Clone, Copy, Debug)]
enum Step<'a> {
    Body,
    Field(&'static str),
    Member(&'a str),
    Item(usize),
}

/// The capacity that most pointers need, bytes.
const USUAL_LENGTH: usize = 64;

/// The most characters of a caller's own name that an answer repeats.
pub const MAX_NAME_CHARS: usize = 64;

impl FieldPath<'_> {
    /// The request itself.
    pub const BODY: Self = FieldPath { parent: None, step: Step::Body };

    /// A field of the object here.
    pub fn field(&self, name: &'static str) -> FieldPath<'_> {
        FieldPath { parent: Some(self), step: Step::Field(name) }
    }

    /// A member of the object here whose name the caller chose.
    pub fn member<'b>(&'b self, name: &'b str) -> FieldPath<'b> {
        FieldPath { parent: Some(self), step: Step::Member(name) }
    }

    /// An item of the array here, counted from 0.
    pub fn item(&self, index: usize) -> FieldPath<'_> {
        FieldPath { parent: Some(self), step: Step::Item(index) }
    }

    /// The place as text.
    pub fn pointer(&self) -> String {
        let mut pointer = String::with_capacity(USUAL_LENGTH);
        self.write(&mut pointer);
        pointer
    }

    fn write(&self, pointer: &mut String) {
        if let Some(parent) = self.parent {
            parent.write(pointer);
        }
        match self.step {
            Step::Body => pointer.push('#'),
            // Field names here are our own identifiers, which need no escape.
            Step::Field(name) => {
                pointer.push('/');
                pointer.push_str(name);
            }
            Step::Member(name) => {
                let name: String = name.chars().take(MAX_NAME_CHARS).collect();
                pointer.push('/');
                pointer.push_str(&name.replace('~', "~0").replace('/', "~1"));
            }
            Step::Item(index) => {
                pointer.push('/');
                pointer.push_str(&index.to_string());
            }
        }
    }
}
