#[path = "common/league_day.rs"]
mod league_day;
#[path = "common/usual.rs"]
mod usual;
use arsenalfit::ball::Against;
use league_day::*;
use usual::*;
#[test]
fn print() {
    let spun: Vec<Spun> = pitches(Against::DragFree).iter().filter_map(|(t, r)| Spun::of(t, r)).collect();
    for family in FAMILIES {
        let own: Vec<&Spun> = spun.iter().filter(|t| t.family == family).collect();
        println!("{family}: {:?}", found(&own));
        let (mut p, mut m) = (0.0, 0.0);
        for game in 1..=15 {
            let train: Vec<&Spun> = own.iter().copied().filter(|t| t.game != game).collect();
            let s = share_of(&train);
            for t in own.iter().filter(|t| t.game == game) { p += t.along_given(s); m += t.along_in; }
        }
        println!("   held out {:.3}  full-active ratio {:.3} mean along {:.2}", p / m, m/own.iter().map(|t| t.along_given(1.0)).sum::<f64>(), m/own.len() as f64);
    }
}
