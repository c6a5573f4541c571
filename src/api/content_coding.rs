//! Content codings: which one a caller takes, and answers in it.

use std::io::Write;

use actix_web::HttpRequest;
use actix_web::http::header::{AcceptEncoding, ContentEncoding, Encoding, Header, HeaderValue, Preference, Quality};
use brotli::enc::BrotliEncoderParams;
use flate2::write::{DeflateEncoder, GzEncoder};
use flate2::{Compression, Crc};

/// Answers of fewer bytes are sent as they are: coded, they would hardly be fewer packets. A choice made here.
pub const LEAST_CODED: usize = 2 * 1024;

/// How well answers are packed that are computed for one caller. A choice made here: a report becomes a fifth of its size for a
/// third of what the next levels cost.
const SWIFT: Compression = Compression::fast();

/// How well brotli packs what is packed once. A choice made here: the two further levels save a tenth, and take ten times as long.
const BROTLI_QUALITY: i32 = 9;

/// How the bytes of an answer are coded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Coding {
    /// As they are.
    Identity,
    /// RFC 1952.
    Gzip,
    /// RFC 7932.
    Brotli,
}

impl Coding {
    /// For an answer that is computed for this request.
    pub fn of_computed(request: &HttpRequest) -> Self {
        Self::best_of(&[Self::Gzip], request)
    }

    /// The one of these that the caller likes best, the earlier of two that it likes alike. None is asked for by none.
    pub fn best_of(offered: &[Self], request: &HttpRequest) -> Self {
        let Ok(accepted) = AcceptEncoding::parse(request) else { return Self::Identity };
        let quality = |coding: Self| {
            let named = |wanted: &Preference<Encoding>| {
                let found = accepted.iter().find(|item| item.item == *wanted);
                found.map(|item| item.quality)
            };
            let own = named(&Preference::Specific(coding.encoding()));
            own.or_else(|| named(&Preference::Any)).unwrap_or(Quality::ZERO)
        };
        let plain = accepted.iter().find(|item| item.item == Preference::Specific(Encoding::identity()));
        let mut best = (Self::Identity, plain.map_or(Quality::ZERO, |item| item.quality));
        for coding in offered {
            let found = quality(*coding);
            let is_better = if best.0 == Self::Identity { found >= best.1 } else { found > best.1 };
            if found > Quality::ZERO && is_better {
                best = (*coding, found);
            }
        }
        best.0
    }

    /// The value of `content-encoding`; none for what is sent as it is.
    pub fn header(self) -> Option<HeaderValue> {
        (self != Self::Identity).then(|| HeaderValue::from_static(self.name()))
    }

    /// What the entity tag of an answer in this coding ends with: tags that are strong differ where bytes do.
    pub fn tag_suffix(self) -> &'static str {
        match self {
            Self::Identity => "",
            Self::Gzip => "-gzip",
            Self::Brotli => "-br",
        }
    }

    /// Packs something that is packed once and sent often.
    pub fn pack_well(self, text: &[u8]) -> Vec<u8> {
        match self {
            Self::Identity => text.to_vec(),
            Self::Gzip => gzip(text, Compression::best()),
            Self::Brotli => brotli(text),
        }
    }

    fn encoding(self) -> Encoding {
        match self {
            Self::Identity => Encoding::identity(),
            Self::Gzip => Encoding::gzip(),
            Self::Brotli => Encoding::brotli(),
        }
    }

    fn name(self) -> &'static str {
        match self {
            Self::Identity => ContentEncoding::Identity.as_str(),
            Self::Gzip => ContentEncoding::Gzip.as_str(),
            Self::Brotli => ContentEncoding::Brotli.as_str(),
        }
    }
}

/// An answer in the coding in which it is sent.
pub struct CodedText {
    /// Its bytes.
    pub bytes: Vec<u8>,
    /// How they are coded.
    pub coding: Coding,
}

impl CodedText {
    /// Codes an answer, if it is large enough.
    pub fn new(text: impl Into<Vec<u8>>, coding: Coding) -> Self {
        let text = text.into();
        if coding == Coding::Identity || text.len() < LEAST_CODED {
            return Self { bytes: text, coding: Coding::Identity };
        }
        Self { bytes: gzip(&text, SWIFT), coding: Coding::Gzip }
    }
}

/// What is written into a vector never fails, so that neither does a coder of it.
fn gzip(text: &[u8], level: Compression) -> Vec<u8> {
    let mut coder = GzEncoder::new(Vec::with_capacity(text.len() / 4), level);
    let _ = coder.write_all(text);
    coder.finish().unwrap_or_default()
}

fn brotli(text: &[u8]) -> Vec<u8> {
    let parameters =
        BrotliEncoderParams { quality: BROTLI_QUALITY, size_hint: text.len(), ..BrotliEncoderParams::default() };
    let mut packed = Vec::with_capacity(text.len() / 4);
    let _ = brotli::BrotliCompress(&mut &*text, &mut packed, &parameters);
    packed
}

/// A part of a text that is coded for itself, by any thread, and ends with a whole byte.
pub struct CodedPart {
    bytes: Vec<u8>,
    sum: Crc,
}

impl CodedPart {
    /// Codes a part of what is written in this coding.
    pub fn new(text: Vec<u8>, coding: Coding) -> Self {
        let mut sum = Crc::new();
        if coding == Coding::Identity {
            return Self { bytes: text, sum };
        }
        sum.update(&text);
        let mut coder = DeflateEncoder::new(Vec::with_capacity(text.len() / 4), SWIFT);
        let _ = coder.write_all(&text).and_then(|()| coder.flush());
        Self { bytes: std::mem::take(coder.get_mut()), sum }
    }
}

/// A text that is written part by part, each of which is coded for itself: whoever has read a part has all of its text.
pub struct PartStream {
    coding: Coding,
    sum: Crc,
}

impl PartStream {
    /// A stream as it is, or of RFC 1952.
    pub fn new(coding: Coding) -> Self {
        Self { coding, sum: Crc::new() }
    }

    /// The bytes that it begins with: no name, no time, of no system.
    pub fn begin(&self) -> &'static [u8] {
        if self.coding == Coding::Identity { &[] } else { &[0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 4, 0xff] }
    }

    /// The bytes of a part, which was made for the coding of the stream.
    pub fn part(&mut self, part: CodedPart) -> Vec<u8> {
        self.sum.combine(&part.sum);
        part.bytes
    }

    /// The bytes of a short text, which is not packed.
    pub fn plain(&mut self, text: &[u8]) -> Vec<u8> {
        if self.coding == Coding::Identity {
            return text.to_vec();
        }
        self.sum.update(text);
        let mut bytes = Vec::with_capacity(text.len() + 5);
        for block in text.chunks(usize::from(u16::MAX)) {
            let length = block.len() as u16;
            bytes.push(0);
            bytes.extend(length.to_le_bytes());
            bytes.extend((!length).to_le_bytes());
            bytes.extend(block);
        }
        bytes
    }

    /// The bytes that it ends with.
    pub fn end(&self) -> Vec<u8> {
        if self.coding == Coding::Identity {
            return Vec::new();
        }
        let mut bytes = vec![1, 0, 0, 0xff, 0xff];
        bytes.extend(self.sum.sum().to_le_bytes());
        bytes.extend(self.sum.amount().to_le_bytes());
        bytes
    }
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use actix_web::test::TestRequest;
    use flate2::read::GzDecoder;

    use super::*;

    #[test]
    fn the_coding_is_what_the_caller_likes_best() {
        use Coding::{Brotli, Gzip, Identity};
        for (accepted, wanted) in [
            (None, Identity),
            (Some(""), Identity),
            (Some("gzip, deflate, br, zstd"), Brotli),
            (Some("gzip"), Gzip),
            (Some("*"), Brotli),
            (Some("br;q=0.5, gzip;q=0.9"), Gzip),
            (Some("br;q=0, *"), Gzip),
            (Some("identity, gzip;q=0.5"), Identity),
            (Some("identity;q=0.5, gzip;q=0.5"), Gzip),
            (Some("deflate"), Identity),
            (Some("gzip;q=0"), Identity),
            (Some("gzip;q=of course"), Identity),
        ] {
            let mut request = TestRequest::get();
            if let Some(accepted) = accepted {
                request = request.insert_header(("accept-encoding", accepted));
            }
            assert_eq!(Coding::best_of(&[Brotli, Gzip], &request.to_http_request()), wanted, "{accepted:?}");
        }
    }

    #[test]
    fn parts_that_were_coded_each_for_itself_are_one_stream() {
        let parts = ["{\"a\":", &"lanes and gates ".repeat(9000), "}", &"x".repeat(70_000)];
        let written = |coding| {
            let mut stream = PartStream::new(coding);
            let mut bytes = stream.begin().to_vec();
            bytes.extend(stream.plain(parts[0].as_bytes()));
            bytes.extend(stream.part(CodedPart::new(parts[1].into(), coding)));
            if coding == Coding::Gzip {
                // Whoever has this much has all of the text so far.
                let mut so_far = vec![0; parts[..2].concat().len()];
                GzDecoder::new(&bytes[..]).read_exact(&mut so_far).unwrap();
            }
            bytes.extend(stream.plain(parts[2].as_bytes()));
            bytes.extend(stream.part(CodedPart::new(Vec::new(), coding)));
            bytes.extend(stream.plain(parts[3].as_bytes()));
            bytes.extend(stream.end());
            bytes
        };
        let mut text = String::new();
        // The decoder holds the sum and the length against the text.
        GzDecoder::new(&written(Coding::Gzip)[..]).read_to_string(&mut text).unwrap();
        assert_eq!(text, parts.concat());
        assert_eq!(written(Coding::Identity), parts.concat().as_bytes());
        assert!(written(Coding::Gzip).len() < 73_000);
    }

    #[test]
    fn only_a_large_text_is_coded() {
        let is_coded = |length| CodedText::new("a".repeat(length), Coding::Gzip).coding == Coding::Gzip;
        assert_eq!([LEAST_CODED - 1, LEAST_CODED].map(is_coded), [false, true]);
        assert_eq!(CodedText::new("a".repeat(5000), Coding::Identity).bytes.len(), 5000);
    }
}
