//! The parts of a packed file as elements and text: namespaces known by short names, limits kept, no entities followed.

use quick_xml::events::{BytesStart, Event};
use quick_xml::name::ResolveResult;
use quick_xml::{NsReader, XmlVersion};

use super::error::FileError;
use super::limits;

/// The namespaces whose elements are told apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Space {
    /// Text of an Office Open XML document (ECMA-376 part 1, 17).
    Word,
    /// Formulas of the same (22.1).
    Formula,
    /// Older and newer forms of the same thing (part 3).
    Forms,
    /// `office:` of OpenDocument 1.3.
    Office,
    /// `text:` of OpenDocument.
    Text,
    /// `table:` of OpenDocument.
    Table,
    /// `style:` of OpenDocument.
    Style,
    /// Dublin Core: creators.
    Core,
    Other,
}

impl Space {
    fn of(found: &ResolveResult) -> Space {
        let ResolveResult::Bound(namespace) = found else {
            return Space::Other;
        };
        match namespace.as_ref() {
            "http://schemas.openxmlformats.org/wordprocessingml/2006/main"
            | "http://purl.oclc.org/ooxml/wordprocessingml/main" => Space::Word,
            "http://schemas.openxmlformats.org/officeDocument/2006/math"
            | "http://purl.oclc.org/ooxml/officeDocument/math" => Space::Formula,
            "http://schemas.openxmlformats.org/markup-compatibility/2006" => Space::Forms,
            "urn:oasis:names:tc:opendocument:xmlns:office:1.0" => Space::Office,
            "urn:oasis:names:tc:opendocument:xmlns:text:1.0" => Space::Text,
            "urn:oasis:names:tc:opendocument:xmlns:table:1.0" => Space::Table,
            "urn:oasis:names:tc:opendocument:xmlns:style:1.0" => Space::Style,
            "http://purl.org/dc/elements/1.1/" => Space::Core,
            _ => Space::Other,
        }
    }
}

/// An element that begins.
pub(super) struct Element {
    /// Its namespace.
    pub space: Space,
    /// Its name without prefix.
    pub name: String,
    attributes: Vec<(String, String)>,
}

impl Element {
    fn new(space: Space, start: &BytesStart) -> Element {
        let mut attributes = Vec::new();
        for attribute in start.attributes().with_checks(false).flatten() {
            let value = attribute
                .normalized_value(XmlVersion::Implicit1_0)
                .unwrap_or_default()
                .into_owned();
            attributes.push((attribute.key.local_name().as_ref().to_owned(), value));
        }
        Element {
            space,
            name: start.local_name().as_ref().to_owned(),
            attributes,
        }
    }

    /// The value of an attribute, named without prefix.
    pub(super) fn get(&self, name: &str) -> Option<&str> {
        self.attributes
            .iter()
            .find(|(key, _)| key == name)
            .map(|(_, value)| value.as_str())
    }

    /// A whole number in an attribute.
    pub(super) fn number(&self, name: &str) -> Option<usize> {
        self.get(name).and_then(|value| value.parse().ok())
    }

    /// Whether a switch is on: the element is there and does not say no.
    pub(super) fn is_on(&self) -> bool {
        !matches!(self.get("val"), Some("0" | "false" | "off" | "none"))
    }

    /// Its namespace and name.
    pub(super) fn is(&self, space: Space, name: &str) -> bool {
        self.space == space && self.name == name
    }
}

/// Takes down what a part holds, in order.
pub(super) trait Visit {
    /// An element begins.
    fn open(&mut self, element: &Element);
    /// An element ends.
    fn close(&mut self, space: Space, name: &str);
    /// Text between elements.
    fn text(&mut self, text: &str);
    /// Whether more text has come than is read.
    fn is_full(&self) -> bool {
        false
    }
}

/// Walks through a part; `part` is its name, for messages.
///
/// # Errors
///
/// It is no well-formed XML, declares entities, is too deep, or holds too much text.
pub(super) fn walk(xml: &str, part: &str, visit: &mut impl Visit) -> Result<(), FileError> {
    let mut reader = NsReader::from_str(xml);
    reader.config_mut().expand_empty_elements = true;
    let mut depth = 0_usize;
    loop {
        let at = reader.buffer_position();
        let damaged = |says: String| FileError::Damaged(part.to_owned(), format!("at byte {at}: {says}"));
        let (space, event) = reader
            .read_resolved_event()
            .map_err(|error| damaged(error.to_string()))?;
        match event {
            Event::Start(start) => {
                depth += 1;
                if depth > limits::DEPTH {
                    return Err(FileError::TooDeep("its elements", limits::DEPTH));
                }
                visit.open(&Element::new(Space::of(&space), &start));
            }
            Event::End(end) => {
                depth = depth.saturating_sub(1);
                visit.close(Space::of(&space), end.local_name().as_ref());
            }
            Event::Text(text) => visit.text(&text.xml10_content()),
            Event::CData(text) => visit.text(&text.xml10_content()),
            Event::GeneralRef(reference) => match resolved(&reference.xml10_content()) {
                Some(letters) => visit.text(&letters),
                None => return Err(FileError::Entities(part.to_owned())),
            },
            Event::DocType(doctype) if doctype.contains("ENTITY") => {
                return Err(FileError::Entities(part.to_owned()));
            }
            Event::Eof if depth > 0 => return Err(damaged("it ends too early".into())),
            Event::Eof => return Ok(()),
            _ => {}
        }
        if visit.is_full() {
            return Err(FileError::TooLarge("its text", limits::mebibytes(limits::TEXT)));
        }
    }
}

/// What a reference stands for: a character by number, or one of the five that XML itself knows. A number that no
/// character has stands for the replacement character.
fn resolved(reference: &str) -> Option<String> {
    if let Some(number) = reference.strip_prefix('#') {
        let code = match number.strip_prefix(['x', 'X']) {
            Some(digits) => u32::from_str_radix(digits, 16),
            None => number.parse(),
        };
        let letter = code
            .ok()
            .and_then(char::from_u32)
            .unwrap_or(char::REPLACEMENT_CHARACTER);
        return Some(letter.to_string());
    }
    quick_xml::escape::resolve_predefined_entity(reference).map(str::to_owned)
}
