//! Closed lists: the trait of their members, the macro that declares one, and their published schema.
//!
//! No list of the trade is declared here: those stand in [`crate::practice`], each member with its sources.

use utoipa::openapi::schema::{ObjectBuilder, Type};
use utoipa::openapi::{RefOr, Schema};

/// A closed list: its members, and what a menu shows of each.
pub trait Vocabulary: Copy + Eq + 'static {
    /// The name of the list: that of its type.
    const NAME: &'static str;
    /// All members, in the order of a menu.
    const ALL: &'static [Self];
    /// How many members there are: the bound of a list that holds each once.
    const COUNT: u64 = Self::ALL.len() as u64;
    /// The value in requests and reports.
    fn code(self) -> &'static str;
    /// A short name for a menu, in English; [`crate::wording::MemberIn`] has it in other languages.
    fn label(self) -> &'static str;
    /// One or two sentences, in English; [`crate::wording::MemberIn`] has them in other languages.
    fn description(self) -> &'static str;
}

/// The codes of some members in a row, as a request would list them.
pub fn join_codes<V: Vocabulary>(members: &[V]) -> String {
    members.iter().map(|member| member.code()).collect::<Vec<_>>().join(", ")
}

/// The published schema of a closed list: its codes, and what each means.
pub fn schema<V: Vocabulary>(purpose: &str) -> RefOr<Schema> {
    let members: Vec<_> =
        V::ALL.iter().map(|member| format!("- `{}`: {}", member.code(), member.description())).collect();
    ObjectBuilder::new()
        .schema_type(Type::String)
        .description(Some(format!("{}\n\n{}", purpose.trim(), members.join("\n"))))
        .enum_values(Some(V::ALL.iter().map(|member| member.code())))
        .into()
}

/// Declares a closed list, a member per line: `Name "code" "Label" "Description"`.
macro_rules! vocabulary {
    ($(#[doc = $doc:literal])+ $name:ident { $($member:ident $code:literal $label:literal $description:literal;)+ }) => {
        $(#[doc = $doc])+
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, serde::Deserialize)]
        pub enum $name {
            $(#[doc = $description] #[serde(rename = $code)] $member,)+
        }

        impl utoipa::PartialSchema for $name {
            fn schema() -> utoipa::openapi::RefOr<utoipa::openapi::Schema> {
                $crate::vocabulary::schema::<Self>(concat!($($doc),+))
            }
        }

        impl utoipa::ToSchema for $name {
            fn name() -> std::borrow::Cow<'static, str> {
                std::borrow::Cow::Borrowed(stringify!($name))
            }
        }

        impl $crate::vocabulary::Vocabulary for $name {
            const NAME: &'static str = stringify!($name);
            const ALL: &'static [Self] = &[$(Self::$member),+];
            fn code(self) -> &'static str {
                match self { $(Self::$member => $code),+ }
            }
            fn label(self) -> &'static str {
                match self { $(Self::$member => $label),+ }
            }
            fn description(self) -> &'static str {
                match self { $(Self::$member => $description),+ }
            }
        }
    };
}
pub(crate) use vocabulary;
