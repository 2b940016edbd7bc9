//! A small builder of inline SVG: tags with escaped texts and short numbers, nothing more.
//!
//! It knows no chart. [`Drawing`] is the whole picture with the words that stand in for it;
//! [`Tag`] is one element, built by chaining. Looks come from classes, so that one style sheet
//! serves light, dark and paper. Ids are never used except for the two texts a screen reader needs.

use std::fmt::Write as _;

/// A place in the picture, in its own units; y grows downward.
pub(crate) type Point = (f64, f64);

/// A picture with its size and the words that stand in for it.
#[derive(Debug, Clone)]
pub(crate) struct Drawing {
    /// Width and height of the view box.
    size: Point,
    body: String,
}

impl Drawing {
    /// An empty picture.
    pub(crate) fn new(width: f64, height: f64) -> Self {
        Self { size: (width, height), body: String::new() }
    }

    /// Puts a tag on top of what is there.
    pub(crate) fn add(&mut self, tag: Tag) {
        self.body.push_str(&tag.finish());
    }

    /// Puts several tags on top, in order.
    pub(crate) fn add_all(&mut self, tags: impl IntoIterator<Item = Tag>) {
        for tag in tags {
            self.add(tag);
        }
    }

    /// The markup. `key` makes the ids unique on a page; `title` and `description` are read out
    /// instead of the picture.
    pub(crate) fn finish(&self, key: &str, title: &str, description: &str) -> String {
        let (width, height) = (number(self.size.0), number(self.size.1));
        let key = escape(key);
        format!(
            "<svg viewBox=\"0 0 {width} {height}\" role=\"img\" aria-labelledby=\"{key}-t {key}-d\">\
             <title id=\"{key}-t\">{}</title><desc id=\"{key}-d\">{}</desc>{}</svg>",
            escape(title),
            escape(description),
            self.body,
        )
    }
}

/// One element.
#[derive(Debug, Clone)]
pub(crate) struct Tag {
    name: &'static str,
    open: String,
    content: String,
}

impl Tag {
    /// An empty element.
    pub(crate) fn new(name: &'static str) -> Self {
        Self { name, open: String::new(), content: String::new() }
    }

    /// A circle.
    pub(crate) fn circle(centre: Point, radius: f64) -> Self {
        Self::new("circle").num("cx", centre.0).num("cy", centre.1).num("r", radius)
    }

    /// An ellipse with level axes.
    pub(crate) fn ellipse(centre: Point, radii: Point) -> Self {
        Self::new("ellipse").num("cx", centre.0).num("cy", centre.1).num("rx", radii.0).num("ry", radii.1)
    }

    /// A straight line.
    pub(crate) fn line(from: Point, to: Point) -> Self {
        Self::new("line").num("x1", from.0).num("y1", from.1).num("x2", to.0).num("y2", to.1)
    }

    /// A rectangle from its upper left corner.
    pub(crate) fn rect(corner: Point, size: Point) -> Self {
        Self::new("rect").num("x", corner.0).num("y", corner.1).num("width", size.0).num("height", size.1)
    }

    /// An open line through points.
    pub(crate) fn polyline(points: &[Point]) -> Self {
        Self::path(&format!("M{}", pairs(points)))
    }

    /// A closed shape through points.
    pub(crate) fn polygon(points: &[Point]) -> Self {
        Self::path(&format!("M{}Z", pairs(points)))
    }

    /// A quadratic curve.
    pub(crate) fn curve(from: Point, control: Point, to: Point) -> Self {
        Self::path(&format!("M{}Q{}", pairs(&[from]), pairs(&[control, to])))
    }

    /// A path from its commands, which must be this crate's own.
    pub(crate) fn path(commands: &str) -> Self {
        Self::new("path").set("d", commands)
    }

    /// Words; anchored at their start unless a class says otherwise.
    pub(crate) fn text(at: Point, words: &str) -> Self {
        let mut tag = Self::new("text").num("x", at.0).num("y", at.1);
        tag.content = escape(words);
        tag
    }

    /// Words inside other words.
    pub(crate) fn span(words: &str) -> Self {
        let mut tag = Self::new("tspan");
        tag.content = escape(words);
        tag
    }
    /// The same with one more element inside.
    pub(crate) fn child(mut self, child: Self) -> Self {
        self.content.push_str(&child.finish());
        self
    }

    /// The same with these classes.
    pub(crate) fn class(self, classes: &str) -> Self {
        self.set("class", classes)
    }

    /// The same with an attribute; the value is escaped.
    pub(crate) fn set(mut self, key: &str, value: &str) -> Self {
        // Writing to a string cannot fail.
        let _ = write!(self.open, " {key}=\"{}\"", escape(value));
        self
    }

    /// The same with a number for an attribute.
    pub(crate) fn num(self, key: &str, value: f64) -> Self {
        let value = number(value);
        self.set(key, &value)
    }

    fn finish(self) -> String {
        let Self { name, open, content } = self;
        if content.is_empty() { format!("<{name}{open}/>") } else { format!("<{name}{open}>{content}</{name}>") }
    }
}

/// A coordinate with at most two decimals and no trailing zeros; what is not finite becomes 0.
pub(crate) fn number(value: f64) -> String {
    let value = if value.is_finite() { value } else { 0.0 };
    let text = format!("{value:.2}");
    let short = text.trim_end_matches('0').trim_end_matches('.');
    if short == "-0" { "0".into() } else { short.into() }
}

fn pairs(points: &[Point]) -> String {
    let pair = |point: &Point| format!("{},{}", number(point.0), number(point.1));
    points.iter().map(pair).collect::<Vec<String>>().join(" ")
}

/// Text as it may stand in an element or between double quotes. Control characters, which no
/// document may hold, show as the replacement character.
fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            c if c.is_control() => out.push(char::REPLACEMENT_CHARACTER),
            c => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_text_can_become_markup() {
        let mut drawing = Drawing::new(10.0, 10.0);
        drawing.add(Tag::text((0.0, 0.0), "<script>\"'&\u{0}").set("data-name", "\"><script>"));
        let markup = drawing.finish("a\"b", "<t>", "d&d");
        assert!(!markup.contains("<script") && !markup.contains("<t>"), "{markup}");
        assert!(markup.contains("&lt;script&gt;&quot;&#39;&amp;\u{fffd}"), "{markup}");
        assert!(markup.contains("data-name=\"&quot;&gt;&lt;script&gt;\""), "{markup}");
    }

    #[test]
    fn numbers_are_short_and_always_numbers() {
        let shown = [1.0, -0.001, 2.345, 10.0, f64::NAN].map(number);
        assert_eq!(shown, ["1", "0", "2.35", "10", "0"].map(str::to_owned));
    }
}
