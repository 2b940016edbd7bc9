//! The bytes of a session file as rows of cells: compression, byte-order mark, separator.
//!
//! The file is streamed, never held; a limit on its size keeps a compressed bomb from filling the
//! memory. What the cells mean is in [`super::session_file`].

use std::io::{BufReader, Cursor, Read};

use csv::{ByteRecord, Reader, ReaderBuilder};
use flate2::read::MultiGzDecoder;

use super::session_error::SessionError;

/// Bytes looked at to find out what the file is.
const PEEK: usize = 64 * 1024;
/// The most bytes read, uncompressed.
const MOST_BYTES: u64 = 8 * 1024 * 1024 * 1024;
/// No row has more bytes; a quotation mark that is never closed makes one.
const LONGEST_ROW: usize = 1024 * 1024;

/// A file being read row by row.
pub(super) struct Table<'a> {
    reader: Reader<Box<dyn Read + 'a>>,
    /// The first row.
    pub(super) header: ByteRecord,
    /// Whether numbers look as if they had decimal commas.
    pub(super) has_decimal_comma: bool,
}

impl<'a> Table<'a> {
    /// Opens a file; `separator` is found from the header when not given.
    pub(super) fn open(name: &str, bytes: impl Read + 'a, separator: Option<u8>) -> Result<Self, SessionError> {
        let (start, rest) = peek(name, unpacked(name, bytes)?)?;
        refuse_binary(name, &start)?;
        let text = start.strip_prefix(b"\xef\xbb\xbf").unwrap_or(&start).to_vec();
        let separator = separator.unwrap_or_else(|| likely_separator(&text));
        let has_decimal_comma = separator != b',' && has_decimal_commas(&text);
        let whole: Box<dyn Read + 'a> = Box::new(Cursor::new(text).chain(rest));
        let mut reader = ReaderBuilder::new().delimiter(separator).flexible(true).has_headers(false).from_reader(whole);
        let mut header = ByteRecord::new();
        let mut has_header = true;
        while has_header && header.iter().all(|cell| cell.trim_ascii().is_empty()) {
            has_header = reader.read_byte_record(&mut header).map_err(|error| broken(name, &error))?;
        }
        if !has_header {
            let hint = "export the throws again; the first row must name the columns";
            return Err(SessionError::of_file(name, "the file is empty", "a table with a header", hint));
        }
        header.trim();
        Ok(Self { reader, header, has_decimal_comma })
    }

    /// The next row into `record`; whether there was one.
    pub(super) fn next(&mut self, name: &str, record: &mut ByteRecord) -> Result<bool, SessionError> {
        let found = self.reader.read_byte_record(record).map_err(|error| broken(name, &error))?;
        if record.as_slice().len() > LONGEST_ROW {
            let hint = "look for a quotation mark that is opened in this row and never closed";
            return Err(SessionError::of_file(name, "one row is longer than 1 MiB", "a row of ordinary cells", hint)
                .at_row(line_of(record)));
        }
        Ok(found)
    }

    /// Bytes read so far, uncompressed.
    pub(super) fn bytes_read(&self) -> u64 {
        self.reader.position().byte()
    }
}

/// The line on which a row begins.
pub(super) fn line_of(record: &ByteRecord) -> u32 {
    record.position().map_or(0, |position| u32::try_from(position.line()).unwrap_or(u32::MAX))
}

fn broken(name: &str, error: &csv::Error) -> SessionError {
    let hint = "copy or export the file again; if it is compressed, it may have been cut short";
    SessionError::of_file(name, format!("it cannot be read on: {error}"), "a whole file", hint)
}

fn unpacked<'a>(name: &str, bytes: impl Read + 'a) -> Result<Box<dyn Read + 'a>, SessionError> {
    let mut reader = BufReader::with_capacity(PEEK, bytes);
    let magic = std::io::BufRead::fill_buf(&mut reader).map_err(|error| broken(name, &error.into()))?;
    let is_gzip = magic.starts_with(&[0x1f, 0x8b]);
    Ok(if is_gzip { Box::new(MultiGzDecoder::new(reader).take(MOST_BYTES)) } else { Box::new(reader.take(MOST_BYTES)) })
}

fn peek<'a>(name: &str, mut bytes: Box<dyn Read + 'a>) -> Result<(Vec<u8>, Box<dyn Read + 'a>), SessionError> {
    let mut start = Vec::with_capacity(PEEK);
    bytes.by_ref().take(PEEK as u64).read_to_end(&mut start).map_err(|error| broken(name, &error.into()))?;
    Ok((start, bytes))
}

fn refuse_binary(name: &str, start: &[u8]) -> Result<(), SessionError> {
    let hint = "export as CSV with the encoding UTF-8";
    if start.starts_with(b"\xff\xfe") || start.starts_with(b"\xfe\xff") {
        return Err(SessionError::of_file(name, "the text is UTF-16", "UTF-8 text", hint));
    }
    if start.starts_with(b"PK\x03\x04") {
        return Err(SessionError::of_file(name, "it is a spreadsheet or an archive", "a CSV file", hint));
    }
    if start.contains(&0) {
        return Err(SessionError::of_file(name, "it holds bytes that are no text", "a CSV file", hint));
    }
    Ok(())
}

/// The separator that occurs most in the first line, outside quotes.
fn likely_separator(text: &[u8]) -> u8 {
    let line = text.iter().skip_while(|b| b.is_ascii_whitespace()).take_while(|&&b| b != b'\n');
    let mut counts = [(b',', 0), (b';', 0), (b'\t', 0), (b'|', 0)];
    let mut is_quoted = false;
    for &byte in line {
        is_quoted ^= byte == b'"';
        if let Some((_, count)) = counts.iter_mut().find(|(separator, _)| *separator == byte && !is_quoted) {
            *count += 1;
        }
    }
    counts.into_iter().rev().max_by_key(|(_, count)| *count).map_or(b',', |(separator, _)| separator)
}

fn has_decimal_commas(text: &[u8]) -> bool {
    let between_digits =
        |mark: u8| text.windows(3).filter(|w| w[1] == mark && w[0].is_ascii_digit() && w[2].is_ascii_digit()).count();
    between_digits(b',') > between_digits(b'.')
}
