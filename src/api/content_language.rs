//! The language of an answer: `lang` in the query, else `Accept-Language` (RFC 9110), else English.

use std::array;
use std::cmp::Reverse;
use std::sync::OnceLock;

use actix_web::HttpRequest;
use actix_web::http::header::{self, AcceptLanguage, Header, HeaderName, HeaderValue, Preference};

use super::request_context::RequestContext;
use crate::wording::Language;

/// The parameter of the query that wins over the header, for links and pages.
pub const PARAMETER: &str = "lang";

/// What the parameter says.
pub const PARAMETER_DESCRIPTION: &str = "The language of the answer, for links and pages: `en`, `es` or `fr`, with or without a region. \
    It wins over `accept-language`; `*` means English, and what is not spoken here counts as not sent.";

/// Says that an answer depends on the codings and the languages that its caller takes.
pub const VARY_BY_CODING_AND_LANGUAGE: (HeaderName, HeaderValue) =
    (header::VARY, HeaderValue::from_static("accept-encoding, accept-language"));

/// The language in which a request is answered; found once.
pub fn of_request(request: &HttpRequest) -> Language {
    *RequestContext::of(request).language.get_or_init(|| asked_in_query(request).unwrap_or_else(|| accepted(request)))
}

/// The header that names the language of an answer.
pub fn content_language(language: Language) -> (HeaderName, HeaderValue) {
    (header::CONTENT_LANGUAGE, HeaderValue::from_static(language.tag()))
}

fn asked_in_query(request: &HttpRequest) -> Option<Language> {
    let query = request.query_string();
    if query.is_empty() {
        return None;
    }
    form_urlencoded::parse(query.as_bytes()).filter(|(name, _)| name == PARAMETER).find_map(|(_, tag)| of_tag(&tag))
}

fn accepted(request: &HttpRequest) -> Language {
    if !request.headers().contains_key(header::ACCEPT_LANGUAGE) {
        return Language::English;
    }
    let Ok(accepted) = AcceptLanguage::parse(request) else { return Language::English };
    let mut liked: Vec<_> = accepted.iter().filter(|item| item.quality != header::Quality::ZERO).collect();
    // Stable: what is liked alike keeps its order.
    liked.sort_by_key(|item| Reverse(item.quality));
    let language = |preference: &Preference<_>| match preference {
        Preference::Any => Some(Language::English),
        Preference::Specific(tag) => of_tag(&ToString::to_string(tag)),
    };
    liked.into_iter().find_map(|item| language(&item.item)).unwrap_or(Language::English)
}

/// The language of a tag, whatever its region: `es` of `es-MX`; English of `*`.
fn of_tag(tag: &str) -> Option<Language> {
    let primary = tag.split(['-', '_']).next().unwrap_or_default();
    if primary == "*" {
        return Some(Language::English);
    }
    Language::ALL.iter().copied().find(|language| language.tag().eq_ignore_ascii_case(primary))
}

/// Something that differs by language and is made for the first who asks for it.
pub struct PerLanguage<T>([OnceLock<T>; Language::ALL.len()]);

impl<T> PerLanguage<T> {
    /// Nothing made yet.
    pub const fn new() -> Self {
        Self([const { OnceLock::new() }; Language::ALL.len()])
    }

    /// That of a language.
    pub fn get_or_init(&self, language: Language, make: impl FnOnce() -> T) -> &T {
        self.0[language as usize].get_or_init(make)
    }
}

impl<T> Default for PerLanguage<T> {
    fn default() -> Self {
        Self(array::from_fn(|_| OnceLock::new()))
    }
}

#[cfg(test)]
mod tests {
    use actix_web::test::TestRequest;

    use super::*;

    fn language(query: &str, accepted: &str) -> Language {
        let request = TestRequest::with_uri(&format!("/v1/reference/roles{query}"));
        let request = if accepted.is_empty() { request } else { request.insert_header(("accept-language", accepted)) };
        of_request(&request.to_http_request())
    }

    #[test]
    fn the_query_wins_over_the_header_and_english_over_nothing() {
        assert_eq!(language("", ""), Language::English);
        assert_eq!(language("", "fr-CA"), Language::French);
        assert_eq!(language("?lang=es", "fr"), Language::Spanish);
        assert_eq!(language("?lang=ES-mx", ""), Language::Spanish);
        assert_eq!(language("?lang=*", "fr"), Language::English);
        // What nobody speaks here is as good as not asked.
        assert_eq!(language("?lang=tlh", "fr"), Language::French);
        assert_eq!(language("?lang=", "fr"), Language::French);
        assert_eq!(language("?length=es", ""), Language::English);
    }

    #[test]
    fn the_best_liked_language_that_is_spoken_is_taken() {
        for (accepted, expected) in [
            ("de, es;q=0.5, fr;q=0.8", Language::French),
            ("es-419,es;q=0.9,en;q=0.8", Language::Spanish),
            ("en;q=0.1, es;q=0.9", Language::Spanish),
            ("fr;q=0, es;q=0.1", Language::Spanish),
            ("fr;q=0", Language::English),
            ("*", Language::English),
            ("de", Language::English),
            ("fr, es", Language::French),
            ("no language; at all", Language::English),
        ] {
            assert_eq!(language("", accepted), expected, "{accepted}");
        }
    }
}
