//! The forms an answer takes: text, page, Markdown, JSON, and a plan's calendar. A form sets what the
//! content says and adds nothing to it.

pub(crate) mod json;
pub(crate) mod calendar;
mod markdown;
mod page;
mod terminal;

#[cfg(test)]
mod tests {
    use super::super::content::amount::{movement, runs, speed};
    use super::super::content::{Answer, Command, Section, Step, Table, Unit, columns, name, object, row, say};
    use crate::base::stats::Estimate;

    fn answer() -> Answer {
        let gain = Estimate { value: 0.5, low: -0.001, high: 0.8 };
        let table = Table::new(columns!["pitch", ("speed", Unit::Mph)], [row![name("a|b <i>"), speed(79.46)]]);
        Answer::new(name("Zoë"), "throws left", "Add it")
            .before(vec!["pain is reported".into()])
            .lead(vec![say!("saves {} at {}", runs(gain), movement(-0.04))])
            .with(Section::new("Numbers").table(table))
            .with(Section::new("Nothing to say").bullets(Vec::<&str>::new()))
            .with(Section::next(vec![Step::ask(Command::arsenalfit(["plan", "my file.toml"]), "the weeks")]))
            .machine(object! { "gain": gain })
    }

    #[test]
    fn every_form_says_the_same_in_the_same_words_and_rounds_alike() {
        let (text, markdown) = (answer().text(80), answer().markdown());
        let page = answer().page().replace('\u{a0}', " ");
        for said in ["Zoë", "Add it", "pain is reported", "+0.50 (+0.00 to +0.80)", " at ", "+0.0", "79.5", "the weeks"]
        {
            for (form, shown) in [("text", &text), ("markdown", &markdown), ("page", &page)] {
                assert!(shown.to_lowercase().contains(&said.to_lowercase()), "{form} says {said}: {shown}");
            }
        }
        assert!(!text.contains("Nothing to say") && !page.contains("Nothing to say"));
        assert_eq!(
            answer().json(),
            "{\n  \"gain\": {\n    \"value\": 0.5,\n    \"low\": -0.001,\n    \"high\": 0.8\n  }\n}\n"
        );
    }

    #[test]
    fn a_text_of_somebody_elses_is_escaped_as_the_form_asks_and_a_command_quoted() {
        assert!(answer().text(80).contains("- `arsenalfit plan \"my file.toml\"`\n  the weeks\n"));
        assert!(
            answer().page().contains("a|b &lt;i&gt;") && answer().page().contains("<strong>plan</strong>: the weeks.")
        );
        assert!(answer().markdown().contains(r"| a\|b \<i\> | 79.5 |"));
    }
}
