//! From a drawn sheet to the bytes of the file: structure, metadata, colour, attachments, and nothing left to chance.
//!
//! The same sheet gives the same bytes: dates are handed in, the file's id comes from its content, no name is random.

use std::collections::BTreeMap;

use lopdf::{Dictionary, Document, LoadOptions, Object, ObjectId, Stream, StringFormat, dictionary};
use printpdf::PdfSaveOptions;
use sha2::{Digest, Sha256};
use time::{OffsetDateTime, UtcOffset};

use super::PaperError;
use super::icc;
use super::sheet::Sheet;
use super::tags::{Kid, Role, Tags};

/// A file inside the paper.
#[derive(Debug, Clone, Copy)]
pub struct Attachment<'a> {
    /// File name.
    pub name: &'a str,
    /// What it is, for the list of attachments.
    pub description: &'a str,
    /// Media type.
    pub media_type: &'a str,
    /// The bytes.
    pub bytes: &'a [u8],
}

/// What the file says about itself.
#[derive(Debug, Clone)]
pub struct About<'a> {
    /// Title.
    pub title: String,
    /// The shop.
    pub author: &'a str,
    /// Language tag of the text.
    pub language: &'a str,
    /// When the paper was made; never the clock of the machine.
    pub made_at: OffsetDateTime,
    /// Files to put in.
    pub attachments: Vec<Attachment<'a>>,
}

/// The finished file.
pub fn finish(sheet: Sheet, about: &About<'_>) -> Result<Vec<u8>, PaperError> {
    let (document, tags) = sheet.into_document()?;
    let options = PdfSaveOptions { optimize: false, subset_fonts: true, secure: true, image_optimization: None };
    let mut warnings = Vec::new();
    let mut file = document.to_lopdf_document(&options, &mut warnings);
    "1.7".clone_into(&mut file.version);
    let pages: Vec<ObjectId> = file.get_pages().into_values().collect();

    add_character_sets(&mut file);
    let structure = add_structure(&mut file, &tags, &pages)?;
    let metadata = add_metadata(&mut file, about);
    let intent = add_output_intent(&mut file);
    let info = file.add_object(info(about));
    let mut files = Vec::new();
    for attachment in &about.attachments {
        files.push((attachment.name, add_attachment(&mut file, attachment, about.made_at)));
    }

    let catalog = file.catalog_mut().map_err(PaperError::file)?;
    catalog.set("Lang", Object::string_literal(about.language));
    catalog.set("MarkInfo", dictionary! { "Marked" => true });
    catalog.set("ViewerPreferences", dictionary! { "DisplayDocTitle" => true });
    catalog.set("PageMode", Object::Name(b"UseNone".to_vec()));
    catalog.set("StructTreeRoot", structure);
    catalog.set("Metadata", metadata);
    catalog.set("OutputIntents", vec![intent.into()]);
    if !files.is_empty() {
        // ISO 32000-1, 7.9.6: the names of a name tree are sorted.
        files.sort_by_key(|(name, _)| *name);
        let names =
            files.iter().flat_map(|(name, id)| [Object::string_literal(*name), Object::Reference(*id)]).collect();
        catalog.set("AF", files.iter().map(|(_, id)| Object::Reference(*id)).collect::<Vec<_>>());
        catalog.set("Names", dictionary! { "EmbeddedFiles" => dictionary! { "Names" => Object::Array(names) } });
    }
    file.trailer.set("Info", info);
    file.compress();
    let id = Object::String(content_id(&file), StringFormat::Hexadecimal);
    file.trailer.set("ID", vec![id.clone(), id]);
    let mut bytes = Vec::new();
    file.save_to(&mut bytes).map_err(|e| PaperError::File(e.to_string()))?;
    Ok(bytes)
}

/// An id from everything the file holds, so that two papers differ and one paper made twice does not.
fn content_id(file: &Document) -> Vec<u8> {
    let mut digest = Sha256::new();
    for (id, object) in &file.objects {
        match object {
            // The bytes as they are: spelled out as numbers they would be four times as long.
            Object::Stream(stream) => {
                digest.update(format!("{id:?}{:?}{}", stream.dict, stream.content.len()));
                digest.update(&stream.content);
            }
            other => digest.update(format!("{id:?}{other:?}")),
        }
    }
    digest.finalize()[..16].to_vec()
}

/// Which characters a cut-down face holds, as PDF/A-1 asks of each (ISO 19005-1, 6.3.5): all that are left in it.
fn add_character_sets(file: &mut Document) {
    let is_descriptor = |object: &Object| object.as_dict().is_ok_and(|face| face.has(b"FontFile2"));
    let faces: Vec<ObjectId> =
        file.objects.iter().filter(|(_, object)| is_descriptor(object)).map(|(id, _)| *id).collect();
    for id in faces {
        let Some(glyphs) = glyph_count(file, id) else { continue };
        let mut bits = vec![0xff_u8; glyphs / 8];
        if !glyphs.is_multiple_of(8) {
            bits.push(0xff << (8 - glyphs % 8));
        }
        let set = file.add_object(Stream::new(Dictionary::new(), bits));
        if let Ok(face) = file.get_dictionary_mut(id) {
            face.set("CIDSet", set);
        }
    }
}

fn glyph_count(file: &Document, face: ObjectId) -> Option<usize> {
    let outlines =
        file.dereference(file.get_dictionary(face).ok()?.get(b"FontFile2").ok()?).ok()?.1.as_stream().ok()?;
    let tables = ttf_parser::RawFace::parse(&outlines.content, 0).ok()?;
    let maxp = tables.table(ttf_parser::Tag::from_bytes(b"maxp"))?;
    Some(usize::from(u16::from_be_bytes([*maxp.get(4)?, *maxp.get(5)?])))
}

fn add_structure(file: &mut Document, tags: &Tags, pages: &[ObjectId]) -> Result<ObjectId, PaperError> {
    let root = file.new_object_id();
    let ids: Vec<ObjectId> = tags.nodes.iter().map(|_| file.new_object_id()).collect();
    for (node, id) in tags.nodes.iter().zip(&ids) {
        let mut kids = Vec::new();
        for kid in &node.kids {
            kids.push(match kid {
                Kid::Node(place) => Object::Reference(ids[*place]),
                Kid::Content { page, mcid } => Object::Dictionary(dictionary! {
                    "Type" => "MCR", "Pg" => pages[*page], "MCID" => whole(*mcid),
                }),
            });
        }
        let parent = node.parent.map_or(root, |place| ids[place]);
        let mut element = dictionary! {
            "Type" => "StructElem", "S" => node.role.name(), "P" => parent, "K" => kids,
        };
        if !node.alt.is_empty() {
            element.set("Alt", text_string(&node.alt));
        }
        if !node.language.is_empty() {
            element.set("Lang", Object::string_literal(node.language.as_str()));
        }
        if node.role == Role::TH {
            element.set("A", dictionary! { "O" => "Table", "Scope" => "Column" });
        }
        file.set_object(*id, element);
    }
    let mut numbers = Vec::new();
    for (index, page) in pages.iter().enumerate() {
        let owners = tags.owners.get(index).map(Vec::as_slice).unwrap_or_default();
        let owners: Vec<Object> = owners.iter().map(|place| Object::Reference(ids[*place])).collect();
        numbers.extend([whole(index), Object::Reference(file.add_object(owners))]);
        let dictionary = file.get_object_mut(*page).and_then(Object::as_dict_mut).map_err(PaperError::file)?;
        dictionary.set("StructParents", whole(index));
        dictionary.set("Tabs", Object::Name(b"S".to_vec()));
    }
    let parents = file.add_object(dictionary! { "Nums" => numbers });
    file.set_object(
        root,
        dictionary! {
            "Type" => "StructTreeRoot", "K" => ids[0], "ParentTree" => parents,
            "ParentTreeNextKey" => whole(pages.len()),
        },
    );
    Ok(root)
}

fn whole(value: usize) -> Object {
    Object::Integer(i64::try_from(value).unwrap_or(i64::MAX))
}

/// Text outside pages: ASCII as it is, else UTF-16 (ISO 32000-1, 7.9.2.2).
fn text_string(text: &str) -> Object {
    if text.is_ascii() {
        return Object::string_literal(text);
    }
    let units = text.encode_utf16().flat_map(u16::to_be_bytes);
    Object::String([0xfe, 0xff].into_iter().chain(units).collect(), StringFormat::Hexadecimal)
}

fn pdf_date(at: OffsetDateTime) -> String {
    let at = at.to_offset(UtcOffset::UTC);
    let (year, month, day) = at.to_calendar_date();
    format!("D:{year:04}{:02}{day:02}{:02}{:02}{:02}+00'00'", u8::from(month), at.hour(), at.minute(), at.second())
}

fn info(about: &About<'_>) -> Dictionary {
    let date = Object::string_literal(pdf_date(about.made_at));
    dictionary! {
        "Title" => text_string(&about.title), "Author" => text_string(about.author),
        "Creator" => Object::string_literal("Fuelwright"), "Producer" => Object::string_literal("Fuelwright"),
        "CreationDate" => date.clone(), "ModDate" => date,
    }
}

/// The claim of PDF/A-1b, kept by a test that runs a validator over the papers that make it.
const ARCHIVAL: &str = r#"  <rdf:Description rdf:about="" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">
   <pdfaid:part>1</pdfaid:part>
   <pdfaid:conformance>B</pdfaid:conformance>
  </rdf:Description>
"#;

fn add_metadata(file: &mut Document, about: &About<'_>) -> ObjectId {
    let at = about.made_at.to_offset(UtcOffset::UTC);
    let (year, month, day) = at.to_calendar_date();
    let month = u8::from(month);
    let date = format!("{year:04}-{month:02}-{day:02}T{:02}:{:02}:{:02}+00:00", at.hour(), at.minute(), at.second());
    let (title, author, language) = (xml(&about.title), xml(about.author), xml(about.language));
    // A paper that carries files cannot be PDF/A-1, and claims nothing.
    let claim = if about.attachments.is_empty() { ARCHIVAL } else { "" };
    let packet = format!(
        r#"<?xpacket begin="{bom}" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
 <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
  <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/">
   <dc:format>application/pdf</dc:format>
   <dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
   <dc:creator><rdf:Seq><rdf:li>{author}</rdf:li></rdf:Seq></dc:creator>
   <dc:language><rdf:Bag><rdf:li>{language}</rdf:li></rdf:Bag></dc:language>
  </rdf:Description>
  <rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
   <xmp:CreatorTool>Fuelwright</xmp:CreatorTool>
   <xmp:CreateDate>{date}</xmp:CreateDate>
   <xmp:ModifyDate>{date}</xmp:ModifyDate>
  </rdf:Description>
  <rdf:Description rdf:about="" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
   <pdf:Producer>Fuelwright</pdf:Producer>
  </rdf:Description>
{claim} </rdf:RDF>
</x:xmpmeta>
<?xpacket end="w"?>"#,
        bom = '\u{feff}'
    );
    let head = dictionary! { "Type" => "Metadata", "Subtype" => "XML" };
    // Readers that know no PDF look for this packet as plain text.
    file.add_object(Stream::new(head, packet.into_bytes()).with_compression(false))
}

fn xml(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

fn add_output_intent(file: &mut Document) -> ObjectId {
    let profile = file.add_object(Stream::new(dictionary! { "N" => 3 }, icc::srgb()));
    file.add_object(dictionary! {
        "Type" => "OutputIntent", "S" => "GTS_PDFA1", "DestOutputProfile" => profile,
        "OutputConditionIdentifier" => Object::string_literal("sRGB IEC61966-2.1"),
        "Info" => Object::string_literal("sRGB IEC61966-2.1"),
    })
}

fn add_attachment(file: &mut Document, attachment: &Attachment<'_>, made_at: OffsetDateTime) -> ObjectId {
    let date = Object::string_literal(pdf_date(made_at));
    let parameters = dictionary! { "Size" => whole(attachment.bytes.len()), "ModDate" => date };
    let head = dictionary! {
        "Type" => "EmbeddedFile", "Subtype" => Object::Name(attachment.media_type.as_bytes().to_vec()),
        "Params" => parameters,
    };
    let stream = file.add_object(Stream::new(head, attachment.bytes.to_vec()));
    file.add_object(dictionary! {
        "Type" => "Filespec", "F" => Object::string_literal(attachment.name), "UF" => text_string(attachment.name),
        "Desc" => text_string(attachment.description), "AFRelationship" => "Data",
        "EF" => dictionary! { "F" => stream, "UF" => stream },
    })
}

/// No stream of a paper comes near this; a file that swells beyond it was made to do harm.
const LARGEST: usize = 32 << 20;

/// The words on the pages, in the order they were drawn.
///
/// Errors: the bytes are no PDF that can be read.
pub fn text(pdf: &[u8]) -> Result<String, PaperError> {
    let options = LoadOptions { max_decompressed_size: Some(LARGEST), ..LoadOptions::default() };
    let file = Document::load_mem_with_options(pdf, options).map_err(PaperError::file)?;
    let pages: Vec<u32> = file.get_pages().into_keys().collect();
    file.extract_text_with_limit(&pages, LARGEST).map_err(PaperError::file)
}

/// The bytes of a file inside a paper, by its name; `None` when the paper has none of that name.
///
/// Errors: the bytes are no PDF that can be read.
pub fn attachment(pdf: &[u8], name: &str) -> Result<Option<Vec<u8>>, PaperError> {
    let options = LoadOptions { max_decompressed_size: Some(LARGEST), ..LoadOptions::default() };
    let file = Document::load_mem_with_options(pdf, options).map_err(PaperError::file)?;
    Ok(attachments(&file).remove(name))
}

/// Only a flat name tree is read: that is how papers are made.
fn attachments(file: &Document) -> BTreeMap<String, Vec<u8>> {
    let mut found = BTreeMap::new();
    let Some(names) = embedded_names(file) else { return found };
    for pair in names.chunks_exact(2) {
        let Ok(name) = pair[0].as_str() else { continue };
        if let (Ok(name), Some(bytes)) = (std::str::from_utf8(name), embedded_bytes(file, &pair[1])) {
            found.insert(name.to_owned(), bytes);
        }
    }
    found
}

fn dictionary_at<'a>(file: &'a Document, parent: &'a Dictionary, key: &[u8]) -> Option<&'a Dictionary> {
    file.dereference(parent.get(key).ok()?).ok()?.1.as_dict().ok()
}

fn embedded_names(file: &Document) -> Option<&Vec<Object>> {
    let names = dictionary_at(file, file.catalog().ok()?, b"Names")?;
    let tree = dictionary_at(file, names, b"EmbeddedFiles")?;
    file.dereference(tree.get(b"Names").ok()?).ok()?.1.as_array().ok()
}

fn embedded_bytes(file: &Document, specification: &Object) -> Option<Vec<u8>> {
    let specification = file.dereference(specification).ok()?.1.as_dict().ok()?;
    let streams = dictionary_at(file, specification, b"EF")?;
    let stream = file.dereference(streams.get(b"F").ok()?).ok()?.1.as_stream().ok()?;
    stream.decompressed_content_with_limit(LARGEST).ok()
}
