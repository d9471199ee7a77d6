//! The streams of a paper made smaller (ISO 32000-1, 7.4.4).
//!
//! At the middle level: the best took a fifth of a whole certificate's time, for a file less than a hundredth smaller.

use std::io::Write;

use flate2::Compression;
use flate2::write::ZlibEncoder;
use lopdf::{Document, Object, Stream};

use super::PaperError;

/// What the name of the filter adds to a stream's dictionary, in bytes.
const FILTER: usize = 20;

/// Packs every stream that is not packed yet and may be.
///
/// Errors: none that a memory buffer can give; they are passed on all the same.
pub fn deflate(file: &mut Document) -> Result<(), PaperError> {
    for object in file.objects.values_mut() {
        if let Object::Stream(stream) = object
            && stream.allows_compression
            && !stream.dict.has(b"Filter")
        {
            pack(stream).map_err(|error| PaperError::File(error.to_string()))?;
        }
    }
    Ok(())
}

fn pack(stream: &mut Stream) -> std::io::Result<()> {
    let mut encoder = ZlibEncoder::new(Vec::with_capacity(stream.content.len() / 2), Compression::default());
    encoder.write_all(&stream.content)?;
    let packed = encoder.finish()?;
    if packed.len() + FILTER < stream.content.len() {
        stream.dict.set("Filter", "FlateDecode");
        stream.set_content(packed);
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use lopdf::Dictionary;

    use super::*;

    #[test]
    fn what_shrinks_is_packed_and_reads_back_and_what_may_not_be_packed_stays() {
        let text = b"0 0 m 10 10 l S ".repeat(40);
        let mut file = Document::with_version("1.7");
        let long = file.add_object(Stream::new(Dictionary::new(), text.clone()));
        let short = file.add_object(Stream::new(Dictionary::new(), b"q Q".to_vec()));
        let plain = file.add_object(Stream::new(Dictionary::new(), text.clone()).with_compression(false));
        deflate(&mut file).unwrap();
        let stream = |id| file.get_object(id).unwrap().as_stream().unwrap();
        assert!(stream(long).content.len() < text.len() / 4);
        assert_eq!(stream(long).decompressed_content().unwrap(), text);
        assert_eq!(stream(short).content, b"q Q");
        assert_eq!(stream(plain).content, text);
        assert!(!stream(plain).dict.has(b"Filter"));
    }
}
