//! The bytes of a session file as rows of cells: compression, byte-order mark, separator.
//!
//! The file is streamed, never held; each row and the whole have a ration of bytes, so that neither
//! a compressed bomb nor a line without end can fill the memory. Every ending of a line becomes a
//! line feed, so that rows are counted alike in all files. What the cells mean is in [`super::session_file`].

use std::io::{BufReader, Cursor, Read};

use csv::{ByteRecord, Reader, ReaderBuilder};
use flate2::read::MultiGzDecoder;

use super::numbers::Mark;
use super::session_error::SessionError;

/// Bytes looked at to find out what the file is.
const PEEK: usize = 64 * 1024;
/// The most bytes read, uncompressed.
const MOST_BYTES: u64 = 2 * 1024 * 1024 * 1024;
/// No row has more bytes; a quotation mark that is never closed makes one.
const LONGEST_ROW: u64 = 1024 * 1024;

/// The error of a quotation mark that swallowed rows; the row begins on `line`.
pub(super) fn never_closed(name: &str, line: u32, record: &ByteRecord) -> SessionError {
    let before = record.iter().take_while(|cell| !cell.contains(&b'\n'));
    let opened = before.flatten().filter(|&&byte| byte == b'\n').count();
    let line = line.saturating_add(u32::try_from(opened).unwrap_or(u32::MAX));
    let found = "a quotation mark is opened on this line and not closed before the next rows";
    let hint = "close it on the same line, or take it away; a mark inside a quoted text is written twice";
    SessionError::of_file(name, found, "closed where its text ends", hint).at_row(line)
}

/// A file being read row by row.
pub(super) struct Table<'a> {
    reader: Reader<Rationed<'a>>,
    /// The first row.
    pub(super) header: ByteRecord,
    /// What its numbers seem to have before their decimals.
    pub(super) mark: Mark,
    /// What stands between its cells.
    pub(super) separator: u8,
    line: u64,
    latest_spans_lines: bool,
}

impl<'a> Table<'a> {
    /// Opens a file; `separator` is found from the header when not given.
    pub(super) fn open(name: &str, bytes: impl Read + 'a, separator: Option<u8>) -> Result<Self, SessionError> {
        let (start, rest) = peek(name, unpacked(name, bytes)?)?;
        refuse_binary(name, &start)?;
        let text = start.strip_prefix(b"\xef\xbb\xbf").unwrap_or(&start).to_vec();
        let separator = separator.unwrap_or_else(|| likely_separator(&text));
        let mark = if separator == b',' { Mark::Point } else { likely_mark(&text, separator) };
        let whole = Rationed::new(Box::new(Cursor::new(text).chain(rest)));
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
        let mut table = Self { reader, header, mark, separator, line: 1, latest_spans_lines: false };
        table.refuse_open_quote(name, &table.header, 1)?;
        table.header.trim();
        Ok(table)
    }

    /// The next row into `record`; whether there was one.
    pub(super) fn next(&mut self, name: &str, record: &mut ByteRecord) -> Result<bool, SessionError> {
        self.reader.get_mut().row = LONGEST_ROW;
        self.line = self.reader.position().line();
        let found = self.reader.read_byte_record(record);
        let found = found.map_err(|error| broken(name, &error).at_row(self.line()))?;
        // Counted from the row's end: blank lines before it are passed over unseen.
        let inside: u64 = record.as_slice().iter().map(|&byte| u64::from(byte == b'\n')).sum();
        self.line = self.reader.position().line().saturating_sub(1 + inside);
        self.latest_spans_lines = inside > 0;
        if found && inside > 0 {
            // A row that only the end of the file ends has one end of a line less behind it.
            self.refuse_open_quote(name, record, self.line().saturating_add(1))?;
        }
        Ok(found)
    }

    /// Whether a cell of the latest row holds the end of a line.
    pub(super) fn latest_spans_lines(&self) -> bool {
        self.latest_spans_lines
    }

    /// A quotation mark that is open at the end of the file has swallowed every row below it.
    fn refuse_open_quote(&self, name: &str, record: &ByteRecord, line: u32) -> Result<(), SessionError> {
        let end = self.reader.get_ref();
        let is_open = end.has_ended
            && end.last_in_sight != b'"'
            && record.iter().next_back().is_some_and(|cell| cell.ends_with(b"\n"));
        if is_open { Err(never_closed(name, line, record)) } else { Ok(()) }
    }

    /// The line on which the latest row begins.
    pub(super) fn line(&self) -> u32 {
        u32::try_from(self.line).unwrap_or(u32::MAX)
    }

    /// Bytes read so far, uncompressed.
    pub(super) fn bytes_read(&self) -> u64 {
        self.reader.position().byte()
    }
}

/// Bytes with a ration for one row and one for the whole file, each line ended by one line feed.
struct Rationed<'a> {
    bytes: Box<dyn Read + 'a>,
    row: u64,
    file: u64,
    latest: u8,
    /// The latest byte that ends no line.
    last_in_sight: u8,
    has_ended: bool,
}

/// Which ration is used up.
#[derive(Debug, Clone, Copy, thiserror::Error)]
enum TooMuch {
    #[error("one row is longer than 1 MiB")]
    Row,
    #[error("the file is larger than 2 GiB")]
    File,
}

impl TooMuch {
    fn hint(self) -> &'static str {
        match self {
            Self::Row => "look for a quotation mark that is opened in this row and never closed",
            Self::File => "give one season at a time",
        }
    }
}

impl<'a> Rationed<'a> {
    fn new(bytes: Box<dyn Read + 'a>) -> Self {
        Self { bytes, row: LONGEST_ROW, file: MOST_BYTES, latest: b'\n', last_in_sight: b'\n', has_ended: false }
    }

    /// Makes every ending of a line one line feed; how many bytes are left.
    fn with_plain_endings(&mut self, bytes: &mut [u8]) -> usize {
        let Some(&last) = bytes.last() else { return 0 };
        let mut before = std::mem::replace(&mut self.latest, last);
        if before != b'\r' && !bytes.contains(&b'\r') {
            return bytes.len();
        }
        let mut kept = 0;
        for at in 0..bytes.len() {
            let byte = bytes[at];
            if byte != b'\n' || before != b'\r' {
                bytes[kept] = if byte == b'\r' { b'\n' } else { byte };
                kept += 1;
            }
            before = byte;
        }
        kept
    }
}

impl Read for Rationed<'_> {
    fn read(&mut self, buffer: &mut [u8]) -> std::io::Result<usize> {
        loop {
            let used_up = if self.row == 0 { TooMuch::Row } else { TooMuch::File };
            let ration = self.row.min(self.file).min(buffer.len() as u64);
            if ration == 0 {
                return Err(std::io::Error::other(used_up));
            }
            let part = &mut buffer[..usize::try_from(ration).unwrap_or(usize::MAX)];
            let read = self.bytes.read(part)?;
            if read == 0 && !matches!(self.latest, b'\n' | b'\r') {
                // The last line is ended too.
                (part[0], self.latest) = (b'\n', b'\n');
                return Ok(1);
            }
            self.row -= read as u64;
            self.file -= read as u64;
            self.has_ended |= read == 0;
            let in_sight = buffer[..read].iter().rfind(|byte| !byte.is_ascii_whitespace());
            self.last_in_sight = in_sight.copied().unwrap_or(self.last_in_sight);
            let kept = self.with_plain_endings(&mut buffer[..read]);
            if kept > 0 || read == 0 {
                return Ok(kept);
            }
        }
    }
}

fn broken(name: &str, error: &csv::Error) -> SessionError {
    if let csv::ErrorKind::Io(error) = error.kind() {
        let too_much = error.get_ref().and_then(|inner| inner.downcast_ref::<TooMuch>());
        if let Some(too_much) = too_much {
            return SessionError::of_file(name, too_much.to_string(), "", too_much.hint());
        }
    }
    let hint = "copy or export the file again; if it is compressed, it may have been cut short";
    SessionError::of_file(name, format!("it cannot be read on: {error}"), "", hint)
}

fn unpacked<'a>(name: &str, bytes: impl Read + 'a) -> Result<Box<dyn Read + 'a>, SessionError> {
    let mut reader = BufReader::with_capacity(PEEK, bytes);
    let magic = std::io::BufRead::fill_buf(&mut reader).map_err(|error| broken(name, &error.into()))?;
    let is_gzip = magic.starts_with(&[0x1f, 0x8b]);
    Ok(if is_gzip { Box::new(MultiGzDecoder::new(reader)) } else { Box::new(reader) })
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

/// The decimal mark of most numbers below the header.
fn likely_mark(text: &[u8], separator: u8) -> Mark {
    let rows = text.iter().position(|&byte| byte == b'\n').map_or(&b""[..], |end| &text[end..]);
    Mark::of_most(rows.split(|&byte| byte == separator || matches!(byte, b'\n' | b'\r' | b'"')))
}
