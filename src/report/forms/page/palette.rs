//! The colours: chalk and clay by day, a lit field by night, and ten inks for the families.
//!
//! Own choice, with two rules that a test holds: words reach a contrast of 4.5 to 1 and marks 3 to
//! 1 on the sheet (WCAG 2.1, criteria 1.4.3 and 1.4.11), and the inks of any two families stay
//! apart for eyes with normal, red-weak, green-weak and blue-weak sight. Shapes carry the meaning
//! all the same.

use std::fmt::Write as _;

/// One colour by day and by night.
type Pair = (&'static str, u32, u32);

/// Paper, words and lines.
const GROUND: [Pair; 9] = [
    ("page", 0x00ec_efe9, 0x000c_1512),
    ("sheet", 0x00fa_fbf7, 0x0014_211d),
    ("ink", 0x0016_2420, 0x00eb_f1ea),
    ("soft", 0x004a_5a54, 0x00a9_bab1),
    ("hair", 0x00d3_dad2, 0x002b_3d36),
    ("line", 0x0093_a39b, 0x005f_766c),
    ("clay", 0x00a8_4522, 0x00f0_8a5b),
    ("grass", 0x00dd_e9da, 0x0018_2e24),
    ("leather", 0x00ff_ffff, 0x0020_3029),
];

/// Inks of the families, in their order.
const INKS: [(u32, u32); 10] = [
    (0x0000_166a, 0x0083_cfff),
    (0x0031_7cf0, 0x0023_7eb6),
    (0x001d_787b, 0x0009_a9c2),
    (0x009b_7b00, 0x00fc_e559),
    (0x0058_1532, 0x00ff_afa9),
    (0x00b5_1c43, 0x00f0_7183),
    (0x0074_23cf, 0x009c_73ff),
    (0x0027_5c00, 0x00a3_bd2e),
    (0x00dc_3db1, 0x00da_3577),
    (0x006f_326c, 0x00c5_f1f2),
];

/// The colours as a style sheet: day for screen and paper, night for a dark screen.
pub(super) fn style() -> String {
    let mut style = format!(":root{{color-scheme:light dark;{}}}", variables(|pair| pair.0));
    // Writing to a string cannot fail.
    let _ = write!(style, "@media screen and (prefers-color-scheme:dark){{:root{{{}}}}}", variables(|pair| pair.1));
    for index in 0..INKS.len() {
        let _ = write!(style, ".f{index}{{fill:var(--p{index})}}.s{index}{{stroke:var(--p{index})}}");
    }
    style
}

fn variables(pick: fn((u32, u32)) -> u32) -> String {
    let mut text = String::new();
    for (name, day, night) in GROUND {
        let _ = write!(text, "--{name}:#{:06x};", pick((day, night)));
    }
    for (index, ink) in INKS.into_iter().enumerate() {
        let _ = write!(text, "--p{index}:#{:06x};", pick(ink));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    fn channels(colour: u32) -> [f64; 3] {
        [16, 8, 0].map(|shift| {
            let c = f64::from((colour >> shift) & 0xff) / 255.0;
            if c <= 0.040_45 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
        })
    }

    /// WCAG 2.1, "contrast ratio".
    fn contrast(a: u32, b: u32) -> f64 {
        let luminance = |colour: u32| {
            let [r, g, b] = channels(colour);
            0.2126 * r + 0.7152 * g + 0.0722 * b + 0.05
        };
        let (a, b) = (luminance(a), luminance(b));
        a.max(b) / a.min(b)
    }

    fn of(name: &str) -> (u32, u32) {
        let (_, day, night) = GROUND.into_iter().find(|(other, ..)| *other == name).expect("a colour");
        (day, night)
    }

    #[test]
    fn words_and_marks_stand_out_by_day_and_by_night() {
        for paper in ["page", "sheet", "grass", "leather"] {
            let paper = of(paper);
            for word in ["ink", "soft", "clay"] {
                let word = of(word);
                assert!(
                    contrast(word.0, paper.0) >= 4.5 && contrast(word.1, paper.1) >= 4.5,
                    "{word:06x?} {paper:06x?}"
                );
            }
            for (index, ink) in INKS.into_iter().enumerate() {
                assert!(
                    contrast(ink.0, paper.0) >= 3.0 && contrast(ink.1, paper.1) >= 3.0,
                    "ink {index} on {paper:06x?}"
                );
            }
        }
    }

    /// Matrices of G. M. Machado, M. M. Oliveira and L. A. F. Fernandes, IEEE Trans. Vis. Comput.
    /// Graph. 15 (2009) 1291, full severity (from memory); distances in Oklab (B. Ottosson 2020, from
    /// memory).
    const SIGHTS: [[[f64; 3]; 3]; 4] = [
        [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
        [[0.152_286, 1.052_583, -0.204_868], [0.114_503, 0.786_281, 0.099_216], [-0.003_882, -0.048_116, 1.051_998]],
        [[0.367_322, 0.860_646, -0.227_968], [0.280_085, 0.672_501, 0.047_413], [-0.011_820, 0.042_940, 0.968_881]],
        [[1.255_528, -0.076_749, -0.178_779], [-0.078_411, 0.930_809, 0.147_602], [0.004_733, 0.691_367, 0.303_900]],
    ];

    fn times(matrix: [[f64; 3]; 3], v: [f64; 3]) -> [f64; 3] {
        matrix.map(|row| row[0] * v[0] + row[1] * v[1] + row[2] * v[2])
    }

    fn seen(colour: u32, sight: [[f64; 3]; 3]) -> [f64; 3] {
        let linear = times(sight, channels(colour)).map(|c| c.clamp(0.0, 1.0));
        let cones = times(
            [
                [0.412_221_47, 0.536_332_54, 0.051_445_99],
                [0.211_903_50, 0.680_699_55, 0.107_396_96],
                [0.088_302_46, 0.281_718_84, 0.629_978_70],
            ],
            linear,
        );
        times(
            [
                [0.210_454_26, 0.793_617_79, -0.004_072_05],
                [1.977_998_50, -2.428_592_21, 0.450_593_71],
                [0.025_904_04, 0.782_771_77, -0.808_675_77],
            ],
            cones.map(f64::cbrt),
        )
    }

    #[test]
    fn no_two_inks_look_alike_to_any_eyes() {
        const LEAST: f64 = 0.08;
        for pick in [|ink: (u32, u32)| ink.0, |ink: (u32, u32)| ink.1] {
            for sight in SIGHTS {
                let all = INKS.map(|ink| seen(pick(ink), sight));
                for (one, a) in all.iter().enumerate() {
                    for (other, b) in all[..one].iter().enumerate() {
                        let far = a.iter().zip(b).map(|(a, b)| (a - b) * (a - b)).sum::<f64>().sqrt();
                        assert!(far >= LEAST, "inks {one} and {other}: {far:.3}");
                    }
                }
            }
        }
    }
}
