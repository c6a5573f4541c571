//! What the trade knows: the closed lists of requests, the figures behind them, and where each figure comes from.
//!
//! - [`sources`]: the one register of sources; every figure and finding names its entries.
//! - [`site`]: barriers, surfaces, site hazards, constructions.
//! - [`roles`]: what loops are for, and the rules of their layout.
//! - [`vehicles`]: the classes of vehicles.
//! - [`wires`]: wire sizes and what is usual round them.
//! - [`detectors`]: the envelopes of detector units.
//! - [`sealants`]: the families of sealants.
//! - [`materials`]: what is loaded on the van, and how long the work takes.
//! - [`cure`]: when a sealant may be applied, and how fast it cures.
//! - [`job_steps`]: the order of an installation, and what proves it.
//! - [`faults`]: what fails, what people notice of it, and how much each sign weighs.
//! - [`fault_tests`]: the tests that separate faults.
//! - [`findings`]: every statement that a report can make.
//! - [`cautions`]: what can hurt someone.

pub mod cautions;
pub mod cure;
pub mod detectors;
pub mod fault_tests;
pub mod faults;
pub mod findings;
pub mod job_steps;
pub mod materials;
pub mod roles;
pub mod sealants;
pub mod site;
pub mod sources;
pub mod vehicles;
pub mod wires;

use sources::Source;
use utoipa::openapi::schema::{ObjectBuilder, Type};
use utoipa::openapi::{RefOr, Schema};

/// A closed list: its members, and what a menu shows of each.
pub trait Vocabulary: Copy + Eq + 'static {
    /// All members, in the order of a menu.
    const ALL: &'static [Self];
    /// The value in requests and reports.
    fn code(self) -> &'static str;
    /// A short name for a menu.
    fn label(self) -> &'static str;
    /// One or two sentences.
    fn description(self) -> &'static str;
    /// Where the description's figures come from.
    fn sources(self) -> &'static [Source];
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

/// Declares a closed list, a member per line: `Name "code" "Label" "Description" [sources]`.
macro_rules! vocabulary {
    ($(#[doc = $doc:literal])+ $name:ident { $($member:ident $code:literal $label:literal $description:literal [$($source:ident)*];)+ }) => {
        $(#[doc = $doc])+
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, serde::Deserialize)]
        pub enum $name {
            $(#[doc = $description] #[serde(rename = $code)] $member,)+
        }

        impl utoipa::PartialSchema for $name {
            fn schema() -> utoipa::openapi::RefOr<utoipa::openapi::Schema> {
                $crate::practice::schema::<Self>(concat!($($doc),+))
            }
        }

        impl utoipa::ToSchema for $name {
            fn name() -> std::borrow::Cow<'static, str> {
                std::borrow::Cow::Borrowed(stringify!($name))
            }
        }

        impl $crate::practice::Vocabulary for $name {
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
            fn sources(self) -> &'static [$crate::practice::sources::Source] {
                match self { $(Self::$member => &[$($crate::practice::sources::Source::$source),*]),+ }
            }
        }
    };
}
pub(crate) use vocabulary;
