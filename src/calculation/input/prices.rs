//! The caller's own prices.

use std::collections::BTreeMap;
use std::fmt;
use std::str::FromStr;

use iso_currency::Currency;
use rust_decimal::Decimal;
use serde::de::{self, Deserializer, MapAccess, Visitor};
use serde::{Deserialize, Serialize};
use utoipa::openapi::schema::{ObjectBuilder, Type};
use utoipa::openapi::{RefOr, Schema};
use utoipa::{PartialSchema, ToSchema};
use validator::Validate;

use crate::calculation::report::{Diagnostics, FieldError, FieldErrorCode, FieldPath, Finding, ListJoin, Statement};
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::materials::MaterialItem;
use crate::practice::sources::Source;
use crate::vocabulary::Vocabulary;

/// An amount of money as decimal text, so that no digit is lost: `"24.50"`.
#[derive(Clone, Debug, Serialize)]
#[serde(transparent)]
pub struct MoneyText(String);

/// What things cost, in one currency. Nothing is priced that is not listed here. Quantities are rounded up to whole units once for the bill;
/// each line, its quantity times its price, to the minor unit of the currency, halves away from zero; the total is the sum of the lines.
/// Tax and margin are the caller's.
#[derive(Clone, Debug, Serialize, Deserialize, Validate, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Prices {
    /// The currency, its ISO 4217 code: `USD`.
    #[validate(length(min = 3, max = 3))]
    #[schema(min_length = 3, max_length = 3)]
    pub currency: String,
    /// The price of one unit, by one of the `price_keys` of `reference/material-items` or by `sku` of `stock` or `wire_spools`; a sku goes first. What may come in several units is priced in each by its own name, as `backer_rod/ft` and `backer_rod/m`, so that no price is taken for another unit. Wire on a spool is priced by the spool's `sku` only. Other names are listed as unused.
    #[validate(length(max = 200))]
    #[serde(default, deserialize_with = "price_list")]
    pub items: Option<BTreeMap<String, MoneyText>>,
    /// The price of one hour of the crew.
    pub hourly_rate: Option<MoneyText>,
}

/// Prices as decimal numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct ResolvedPrices {
    /// The currency.
    pub currency: Currency,
    /// The price of one unit, by item or sku.
    pub items: BTreeMap<String, Decimal>,
    /// The price of one hour.
    pub hourly_rate: Option<Decimal>,
}

impl Prices {
    /// Reads the prices; `skus` are the caller's own numbers that may be priced.
    pub fn resolve(&self, skus: &[&str], at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<ResolvedPrices> {
        let currency = self.resolve_currency(&at.field("currency"), diagnostics);
        let items_at = at.field("items");
        let keys = price_keys();
        let mut items = BTreeMap::new();
        for (name, text) in self.items.iter().flatten() {
            let at = items_at.member(name);
            // A price list may be longer than one job.
            if !skus.contains(&name.as_str()) && !keys.contains(name) {
                diagnostics.mark_unused(&at);
                if let Some(meant) = nearest_keys(name, &keys) {
                    let meant = meant.into_iter().map(|key| Statement::new("errors-meant").text("meant", key));
                    let message = Statement::new("input-price-key-unknown").text("name", name.clone());
                    let message = message.phrases("meant", meant.collect(), ListJoin::Or);
                    let finding = Finding::new(FindingCode::PriceKeyUnknown, Level::Warning, &at, message);
                    diagnostics.add_finding(finding);
                }
            }
            items.insert(name.clone(), text.resolve(&at, diagnostics));
        }
        let hourly_rate = self.hourly_rate.as_ref().map(|text| text.resolve(&at.field("hourly_rate"), diagnostics));
        diagnostics.add_sources(&[Source::Iso4217]);
        Some(ResolvedPrices {
            currency: currency?,
            items: items.into_iter().map(|(name, price)| Some((name, price?))).collect::<Option<_>>()?,
            hourly_rate: hourly_rate.map_or(Some(None), |rate| rate.map(Some))?,
        })
    }

    /// The currency. A wrong length has been reported by the validation of lengths.
    fn resolve_currency(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Currency> {
        let sent = self.currency.as_str();
        if sent.chars().count() != 3 {
            return None;
        }
        let reject = |detail: Statement, hint: Statement, diagnostics: &mut Diagnostics| {
            diagnostics.add_error(at, FieldErrorCode::ValueUnknown, detail, hint);
            None
        };
        let Some(currency) = Currency::from_code(sent) else {
            let detail = Statement::new("errors-no-currency").text("currency", sent.to_owned());
            let upper = sent.to_ascii_uppercase();
            let Some(meant) = Currency::from_code(&upper) else {
                return reject(detail, Statement::new("errors-send-currency"), diagnostics);
            };
            let hint = Statement::new("errors-currency-upper-case").text("code", upper.clone());
            let suggestion = meant.exponent().map(|_| upper);
            let error = FieldError::new(at, FieldErrorCode::ValueUnknown, detail, hint).suggesting(suggestion);
            diagnostics.push_error(error);
            return None;
        };
        // Metals, test codes and units of account have no minor unit to round to.
        if currency.exponent().is_none() {
            let hint = Statement::new("errors-currency-without-minor-unit-hint");
            return reject(
                Statement::new("errors-currency-without-minor-unit").text("currency", sent.to_owned()),
                hint,
                diagnostics,
            );
        }
        Some(currency)
    }
}

/// The known names that a name which prices nothing was perhaps meant to be: without a unit, one for each unit.
fn nearest_keys(name: &str, keys: &[String]) -> Option<Vec<String>> {
    let written = name.to_lowercase().replace([' ', '-'], "_");
    let thing = |key: &str| key.split('/').next().unwrap_or_default().to_owned();
    let has_unit = written.contains('/');
    let compared = |key: &str| if has_unit { key.to_owned() } else { thing(key) };
    let apart = |key: &&String| strsim::damerau_levenshtein(&written, &compared(key));
    let nearest = keys.iter().min_by_key(apart).filter(|key| apart(key) <= 1 + compared(key).len() / 4)?;
    let meant = compared(nearest);
    if keys.contains(&meant) {
        return Some(vec![meant]);
    }
    Some(keys.iter().filter(|key| compared(key) == meant).cloned().collect())
}

/// Every name that an item can be priced under.
pub fn price_keys() -> Vec<String> {
    let of = |item: &MaterialItem| item.units().iter().filter_map(|unit| item.price_key(unit)).collect::<Vec<_>>();
    MaterialItem::ALL.iter().flat_map(of).collect()
}

impl ResolvedPrices {
    /// The price of a name.
    pub fn of(&self, name: &str) -> Option<Decimal> {
        self.items.get(name).copied()
    }

    /// Rounds to the minor unit of the currency, halves away from zero, with all its decimals: 12.5 USD is 12.50.
    pub fn round(&self, amount: Decimal) -> Decimal {
        let decimals = self.currency.exponent().map_or(2, u32::from);
        let mut rounded = amount.round_dp_with_strategy(decimals, rust_decimal::RoundingStrategy::MidpointAwayFromZero);
        rounded.rescale(decimals);
        rounded
    }
}

impl MoneyText {
    /// At most 9 digits before the point and 6 behind it, no sign: sums of them stay far inside what a decimal holds.
    const PATTERN: &'static str = r"^[0-9]{1,9}(\.[0-9]{1,6})?$";

    /// Reads the amount.
    pub fn resolve(&self, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<Decimal> {
        let text = self.0.as_str();
        if is_amount(text) {
            return Decimal::from_str(text).ok();
        }
        let code = if text.contains(',') { FieldErrorCode::DecimalComma } else { FieldErrorCode::NumberInvalid };
        let shown: String = text.chars().take(40).collect();
        let detail = Statement::new("errors-no-money").text("text", shown);
        let hint = Statement::new("errors-no-money-hint");
        diagnostics.push_error(FieldError::new(at, code, detail, hint).suggesting(amount_meant(text)));
        None
    }
}

/// At most 9 digits before the point and 6 behind it.
fn is_amount(text: &str) -> bool {
    let (whole, fraction) = text.split_once('.').unwrap_or((text, "0"));
    let is_plain = |part: &str, max_digits: usize| {
        (1..=max_digits).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit())
    };
    is_plain(whole, 9) && is_plain(fraction, 6)
}

/// The amount without a sign of currency and space around it, and with a point for a comma that can be nothing else: three digits
/// after a comma may be thousands, if no zero stands alone before it.
fn amount_meant(text: &str) -> Option<String> {
    let bare = text.trim_matches(|c: char| c.is_whitespace() || c == '$' || c == '€');
    let amount = match bare.split_once(',') {
        Some((whole, decimals)) if decimals.len() != 3 || whole == "0" => format!("{whole}.{decimals}"),
        Some(_) => return None,
        None => bare.to_owned(),
    };
    is_amount(&amount).then_some(amount)
}

impl<'de> Deserialize<'de> for MoneyText {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct MoneyTextVisitor;
        impl Visitor<'_> for MoneyTextVisitor {
            type Value = MoneyText;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("amount_of_money as text, such as \"24.50\"")
            }
            fn visit_str<E: de::Error>(self, text: &str) -> Result<MoneyText, E> {
                Ok(MoneyText(text.to_owned()))
            }
        }
        deserializer.deserialize_str(MoneyTextVisitor)
    }
}

impl PartialSchema for MoneyText {
    fn schema() -> RefOr<Schema> {
        ObjectBuilder::new()
            .schema_type(Type::String)
            .description(Some(
                "An amount of money as decimal text, without currency: the currency stands once, beside it.",
            ))
            .max_length(Some(16))
            .pattern(Some(Self::PATTERN))
            .examples(["24.50", "0.185"])
            .into()
    }
}

impl ToSchema for MoneyText {
    fn name() -> std::borrow::Cow<'static, str> {
        "MoneyText".into()
    }
}

/// A map that refuses a name that occurs twice, as every object of a request does.
struct PriceList(BTreeMap<String, MoneyText>);

fn price_list<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Option<BTreeMap<String, MoneyText>>, D::Error> {
    Ok(Option::<PriceList>::deserialize(deserializer)?.map(|list| list.0))
}

impl<'de> Deserialize<'de> for PriceList {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(PriceListVisitor)
    }
}

struct PriceListVisitor;

impl<'de> Visitor<'de> for PriceListVisitor {
    type Value = PriceList;
    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a map")
    }
    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        let mut list = BTreeMap::new();
        while let Some((name, price)) = map.next_entry::<String, MoneyText>()? {
            if list.contains_key(&name) {
                return Err(de::Error::custom(format_args!("duplicate field `{name}`")));
            }
            list.insert(name, price);
        }
        Ok(PriceList(list))
    }
}
