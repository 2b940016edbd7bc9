use arsenalfit::{session::*, sorting::*, pitch::Shape};
#[test]
fn quick(){
 let text=std::fs::read_to_string("/work/shared/reference/left-hander-first-half.csv").unwrap();
 let full=FullFlight::new(Measured{speed_at_ft:Some(50.0),vertical_from_ft:Some(40.0),glove_side_from_ft:Some(40.0)});
 let mut s=Session::default();
 for (i,l) in text.lines().enumerate().skip(1){ let f:Vec<&str>=l.split(',').collect();
  let day=f[0].to_string(); let d=s.days.iter().position(|x|*x==day).unwrap_or_else(||{s.days.push(day);s.days.len()-1}) as u16;
  let lab=f[1].to_string(); let lb=s.labels.iter().position(|x|*x==lab).unwrap_or_else(||{s.labels.push(lab);s.labels.len()-1}) as u16;
  let n=|k:usize|f[k].parse::<f64>().unwrap();
  let (v,u,g)=full.restore(n(5),n(8),-n(7));
  s.throws.push(Throw{place:Place{file:0,row:i as u32+1},day:d,shape:Shape{speed_mph:v,vertical_break_in:u,glove_side_break_in:g},spin:Default::default(),release:Default::default(),plate:PlateReading{side_in:Some(-n(9)),height_in:Some(n(10))},label:Some(lb),grip:None,batter_side:None,outcome:None});
 }
 let t=std::time::Instant::now();
 let r=sort(&s,Options::default());
 eprintln!("{:?}",t.elapsed());
 for c in &r.candidates{eprintln!("{c:?}");}
 for g in &r.groups{eprintln!("{} {:?} n={} mv={} {:?} {:?} {:?} {:?}",g.naming.family,g.naming,g.throws,g.movement_throws,g.speed_mph,g.vertical_break_in,g.glove_side_break_in,g.spread);}
 for d in &r.days{eprintln!("{d:?}");}
 for d in &r.drifts{eprintln!("{d:?}");}
 let a=r.agreement.as_ref().unwrap();
 eprintln!("ari {} n={} {:?} {:?} unsorted {} aside {:?}",a.adjusted_rand,a.throws,a.labels,a.table,r.unsorted(),r.set_aside.iter().map(|s|s.reason.to_string()).collect::<Vec<_>>());
 eprintln!("{:?}",r.cautions);
}
