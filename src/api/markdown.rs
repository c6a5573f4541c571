//! Markdown of this tree as HTML. It is written here, so that its HTML is trusted.

use pulldown_cmark::{CowStr, Event, Options, Parser, Tag, TagEnd, html};

/// The HTML of a text: tables are tables, headings have the anchors that links of the text name, and links to other files lead to where
/// `address_of` says, or are left out.
pub fn to_html(text: &str, address_of: impl Fn(&str) -> Option<&'static str>) -> String {
    let mut events: Vec<_> = Parser::new_ext(text, Options::ENABLE_TABLES).collect();
    for start in 0..events.len() {
        let anchor = anchor_of(&events[start..]);
        if let Event::Start(Tag::Heading { id, .. }) = &mut events[start] {
            *id = Some(anchor.into());
        }
    }
    // Links do not stand in each other.
    let mut is_left_out = false;
    let mut keep = |event: &mut Event| match event {
        Event::Start(Tag::Link { dest_url, .. }) if !dest_url.starts_with('#') && !dest_url.contains("://") => {
            let address = address_of(dest_url);
            is_left_out = address.is_none();
            *dest_url = CowStr::Borrowed(address.unwrap_or_default());
            !is_left_out
        }
        Event::End(TagEnd::Link) => !std::mem::take(&mut is_left_out),
        _ => true,
    };
    events.retain_mut(&mut keep);
    let mut written = String::with_capacity(text.len() * 3 / 2);
    html::push_html(&mut written, events.into_iter());
    written
}

/// The anchor of the heading that these events begin with: its words in lower case, joined by hyphens.
fn anchor_of(events: &[Event]) -> String {
    let inside = events.iter().take_while(|event| !matches!(event, Event::End(TagEnd::Heading(_))));
    let words = inside.filter_map(|event| match event {
        Event::Text(text) | Event::Code(text) => Some(text.to_lowercase()),
        _ => None,
    });
    let is_kept = |letter: &char| letter.is_alphanumeric() || " -_".contains(*letter);
    words.collect::<String>().chars().filter(is_kept).map(|letter| if letter == ' ' { '-' } else { letter }).collect()
}

#[cfg(test)]
mod tests {
    use super::to_html;

    #[test]
    fn headings_have_anchors_and_links_to_files_lead_where_they_are_served() {
        let text = "# A `first` (one)\n\n[here](#a-first-one) [log](LOG.md) [code](../src) [out](https://example.com)\n\n|a|\n|-|\n|b|\n";
        let written = to_html(text, |file| (file == "LOG.md").then_some("../log"));
        for part in [
            "<h1 id=\"a-first-one\">A <code>first</code> (one)</h1>",
            "<a href=\"#a-first-one\">here</a> <a href=\"../log\">log</a> code <a href=\"https://example.com\">out</a>",
            "<td>b</td>",
        ] {
            assert!(written.contains(part), "{part} is not in {written}");
        }
    }
}
