//! stub
use crate::ball::{Family, Shape};
use crate::base::Movement;
use crate::base::stats::Cholesky;
use super::profile::Profile;
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Likeness([f64; 8]);
pub const NATURAL: [Family; 8] = [Family::FourSeam, Family::Sinker, Family::Cutter, Family::Slider, Family::Sweeper, Family::Curveball, Family::Changeup, Family::Splitter];
impl Likeness {
    pub fn weigh(&self, f: impl Fn(Family) -> f64) -> f64 { NATURAL.iter().zip(&self.0).map(|(k, w)| w * f(*k)).sum() }
}
#[derive(Debug, Clone)]
pub struct NaturalShape { pub family: Family, pub mean: [f64; 4], pub cov: [[f64; 4]; 4], fastball: f64 }
pub struct ShapeSd { pub speed_mph: f64, pub movement: Movement }
impl NaturalShape {
    pub fn shape(&self) -> Shape { Shape { speed_mph: self.mean[0] * self.fastball / 100.0, vertical_break_in: self.mean[1], glove_side_break_in: self.mean[2] } }
    pub fn effort(&self, s: Shape) -> f64 {
        let d = [s.speed_mph / self.fastball * 100.0 - self.mean[0], s.vertical_break_in - self.mean[1], s.glove_side_break_in - self.mean[2]];
        let m: [[f64; 3]; 3] = std::array::from_fn(|i| std::array::from_fn(|j| self.cov[i][j]));
        let x = Cholesky::of(&m).forward(&d);
        x.iter().map(|v| v * v).sum::<f64>().sqrt()
    }
    pub fn sd(&self) -> ShapeSd { ShapeSd { speed_mph: self.cov[0][0].sqrt() * self.fastball / 100.0, movement: Movement { glove_side_in: self.cov[2][2].sqrt(), up_in: self.cov[1][1].sqrt() } } }
}
#[derive(Debug, Clone)]
pub struct Arm { shapes: Vec<NaturalShape> }
struct Block { name: String, mean: Vec<f64>, scale: Vec<f64>, load: Vec<[f64; 2]>, resid: Vec<Vec<f64>> }
fn blocks() -> Vec<Block> {
    let mut out: Vec<Block> = Vec::new();
    for line in include_str!("natural_factors.csv").lines().skip(1) {
        let c: Vec<&str> = line.split(',').collect();
        if out.last().map(|b| b.name.as_str()) != Some(c[0]) { out.push(Block { name: c[0].into(), mean: vec![], scale: vec![], load: vec![], resid: vec![] }); }
        let b = out.last_mut().unwrap();
        b.mean.push(c[3].parse().unwrap()); b.scale.push(c[4].parse().unwrap());
        b.load.push([c[5].parse().unwrap(), c[6].parse().unwrap()]);
        b.resid.push(c[7..].iter().filter(|x| !x.is_empty()).map(|x| x.parse().unwrap()).collect());
    }
    out
}
fn inv(m: &[Vec<f64>]) -> Vec<Vec<f64>> {
    let n = m.len(); let mut a: Vec<Vec<f64>> = m.iter().enumerate().map(|(i, r)| { let mut r = r.clone(); r.extend((0..n).map(|j| f64::from(u8::from(i == j)))); r }).collect();
    for i in 0..n { let p = a[i][i]; for v in &mut a[i] { *v /= p; } for k in 0..n { if k != i { let f = a[k][i]; for j in 0..2 * n { let x = a[i][j]; a[k][j] -= f * x; } } } }
    a.into_iter().map(|r| r[n..].to_vec()).collect()
}
fn known(f: Family) -> Family { if f == Family::TwoSeam { Family::Sinker } else { f } }
impl Arm {
    pub fn of(profile: &Profile) -> Self {
        let fb = profile.pitches.iter().filter(|p| p.family.is_fastball()).map(|p| p.shape.speed_mph).fold(f64::NAN, f64::max);
        let fb = if fb.is_nan() { profile.pitches.iter().map(|p| p.shape.speed_mph).fold(0.0, f64::max) } else { fb };
        let bs = blocks();
        let mut prec = vec![vec![1.0, 0.0], vec![0.0, 1.0]]; let mut b = [0.0; 2];
        let mut add = |bl: &Block, y: &[(usize, f64)]| {
            let sub: Vec<Vec<f64>> = y.iter().map(|(i, _)| y.iter().map(|(j, _)| bl.resid[*i][*j]).collect()).collect();
            let p = inv(&sub);
            for (a, (i, yi)) in y.iter().enumerate() { let _ = yi; for (c, (j, yj)) in y.iter().enumerate() { let d = (yj - bl.mean[*j]) / bl.scale[*j];
                for k in 0..2 { b[k] += bl.load[*i][k] * p[a][c] * d; for l in 0..2 { prec[k][l] += bl.load[*i][k] * p[a][c] * bl.load[*j][l]; } } } }
        };
        for pitch in &profile.pitches {
            if let Some(bl) = bs.iter().find(|x| x.name == known(pitch.family).name()) {
                let mut y = vec![(0, pitch.shape.speed_mph / fb * 100.0), (1, pitch.shape.vertical_break_in), (2, pitch.shape.glove_side_break_in)];
                if let Some(r) = pitch.spin_rpm { y.push((3, r / 100.0)); }
                add(bl, &y);
            }
        }
        let arm = bs.iter().find(|x| x.name == "arm").unwrap();
        add(arm, &[(0, profile.release.height_ft), (1, profile.release.side_ft), (2, fb)]);
        let v = inv(&prec); let z = [v[0][0] * b[0] + v[0][1] * b[1], v[1][0] * b[0] + v[1][1] * b[1]];
        let shapes = NATURAL.iter().map(|f| {
            let bl = bs.iter().find(|x| x.name == f.name()).unwrap();
            let mean = std::array::from_fn(|i| { let own = bl.mean[i] + bl.scale[i] * (bl.load[i][0] * z[0] + bl.load[i][1] * z[1]); if i == 0 || i == 2 { bl.mean[i] } else { own } });
            let cov = std::array::from_fn(|i| std::array::from_fn(|j| { let mut s = bl.resid[i][j]; for k in 0..2 { for l in 0..2 { s += bl.load[i][k] * v[k][l] * bl.load[j][l]; } } s * bl.scale[i] * bl.scale[j] }));
            NaturalShape { family: *f, mean, cov, fastball: fb }
        }).collect();
        Self { shapes }
    }
    pub fn natural(&self, family: Family) -> Option<NaturalShape> { self.shapes.iter().find(|s| s.family == known(family)).cloned() }
    pub fn likeness(&self, shape: Shape) -> Likeness {
        let w: Vec<f64> = self.shapes.iter().map(|s| (-0.5 * s.effort(shape).powi(2)).exp() / (s.cov[0][0] * s.cov[1][1] * s.cov[2][2]).sqrt() + 1e-12).collect();
        let t: f64 = w.iter().sum();
        Likeness(std::array::from_fn(|i| w[i] / t))
    }
    pub fn alike(&self, a: Shape, b: Shape) -> f64 {
        let d2 = ((a.speed_mph - b.speed_mph) / 2.0).powi(2) + ((a.vertical_break_in - b.vertical_break_in) / 4.0).powi(2) + ((a.glove_side_break_in - b.glove_side_break_in) / 4.0).powi(2);
        (-0.5 * d2).exp()
    }
}
