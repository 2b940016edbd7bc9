//! The plan as dates and numbers: it fills its span, keeps the limits, rests, and refuses.
//!
//! Athletes are invented. The limits themselves are checked where they stand, in `plan::limits`.

use std::num::NonZeroUsize;

use arsenalfit::athlete::eligibility::{Reason, Scope};
use arsenalfit::athlete::profile::Profile;
use arsenalfit::ball::{Family, Shape};
use arsenalfit::base::stats::Estimate;
use arsenalfit::decide::model::Model;
use arsenalfit::files::profile_from_toml;
use arsenalfit::learn::plan::limits::DayLimit;
use arsenalfit::learn::plan::{
    Answer, Caution, Measured, Phase, PhaseKind, Plan, Request, Span, Step, Weekdays, first_step, plan,
};
use arsenalfit::learn::target::Target;
use jiff::civil::{Date, date};
use proptest::prelude::*;

fn profile(age: &str, health: &str) -> Profile {
    let text = format!(
        "[athlete]\nname = \"Sample Athlete\"\nthrows = \"right\"\n{age}\n[[pitch]]\nname = \"four-seam\"\nfamily = \
         \"four-seam\"\nspeed_mph = 78\nvertical_break_in = 15\nglove_side_break_in = -6\n[[pitch]]\nname = \
         \"changeup\"\nfamily = \"changeup\"\nspeed_mph = 70\nvertical_break_in = 8\nglove_side_break_in = -12\n\
         [health]\n{health}\n"
    );
    profile_from_toml(&text, "profile.toml").unwrap_or_else(|error| panic!("{error}"))
}

fn sweeper(profile: &Profile) -> Target {
    let shape = Shape { speed_mph: 69.0, vertical_break_in: 0.0, glove_side_break_in: 14.0 };
    Target::about(&Model::new(profile, NonZeroUsize::MIN, 1), Family::Sweeper, shape)
}

fn ask(profile: &Profile, target: &Target, dates: (Date, Date), days: &str, measured: Measured) -> Answer {
    let span = Span::new(dates.0, dates.1).expect("test dates are in order");
    let weekdays: Weekdays = days.parse().expect("test days are days");
    plan(&Request { profile, target, span, weekdays, measured })
}

fn planned(profile: &Profile, dates: (Date, Date), days: &str) -> Plan {
    match ask(profile, &sweeper(profile), dates, days, Measured::default()) {
        Answer::Plan(plan) => *plan,
        Answer::Refused(refusal) => panic!("{refusal:?}"),
        Answer::NoRest(dates) => panic!("too little rest: {dates:?}"),
    }
}

const OFF_SEASON: (Date, Date) = (date(2026, 11, 2), date(2027, 2, 28));

#[test]
fn an_off_season_takes_every_step_in_order_and_fills_every_day_of_the_span() {
    let plan = planned(&profile("age = 20", "months_off = 4"), OFF_SEASON, "mon,wed,fri");
    let kinds: Vec<PhaseKind> = plan.phases.iter().map(|phase| phase.kind).collect();
    assert_eq!(kinds, Step::ALL.map(PhaseKind::Step));
    assert_eq!(plan.phases[0].span.start(), OFF_SEASON.0);
    assert_eq!(plan.phases[4].span.end(), OFF_SEASON.1);
    for pair in plan.phases.windows(2) {
        assert_eq!(pair[0].span.end().tomorrow().unwrap(), pair[1].span.start());
    }
    assert!(plan.days.iter().all(|day| Weekdays::default().contains(day.date)));
    assert!(plan.days.iter().any(|day| day.deload) && plan.days.len() > 45);
    assert!(plan.phases.iter().all(|phase| !phase.gates.is_empty()));
}

#[test]
fn a_year_without_rest_begins_with_two_months_of_it_also_over_a_leap_day() {
    let tired = profile("age = 20", "months_off = 0");
    let plan = planned(&tired, (date(2027, 12, 31), date(2028, 6, 30)), "mon,thu");
    assert_eq!(plan.phases[0].kind, PhaseKind::Rest);
    assert_eq!(plan.phases[0].span.end(), date(2028, 2, 28), "two months from 31 December end on the leap day");
    assert!(plan.days.iter().all(|day| day.date >= date(2028, 2, 29)));
    assert!(plan.cautions.iter().any(|caution| matches!(caution, Caution::RestFirst { .. })));
}

#[test]
fn a_span_that_rest_eats_has_no_throwing_day_and_says_so() {
    let plan = planned(&profile("age = 20", "months_off = 0"), (date(2027, 1, 1), date(2027, 2, 15)), "mon");
    assert!(plan.days.is_empty());
    assert!(matches!(plan.phases.as_slice(), [Phase { kind: PhaseKind::Rest, .. }]));
    assert!(plan.cautions.contains(&Caution::NoDay));
}

#[test]
fn a_short_span_ends_early_and_says_at_which_step() {
    let plan = planned(&profile("age = 20", "months_off = 5"), (date(2027, 1, 4), date(2027, 1, 31)), "mon,wed,fri");
    assert_eq!(plan.phases.last().map(|phase| phase.kind), Some(PhaseKind::Step(Step::Shape)));
    assert!(plan.cautions.contains(&Caution::EndsAt { step: Step::Shape }));
}

#[test]
fn the_end_of_summer_time_moves_no_throwing_day() {
    let plan = planned(&profile("age = 20", "months_off = 4"), (date(2026, 10, 19), date(2026, 11, 15)), "sat,sun");
    let dates: Vec<Date> = plan.days.iter().map(|day| day.date).collect();
    let expected = [(10, 24), (10, 25), (10, 31), (11, 1), (11, 7), (11, 8), (11, 14), (11, 15)];
    assert_eq!(dates, expected.map(|(month, day)| date(2026, month, day)));
}

#[test]
fn what_is_already_measured_decides_where_the_plan_begins() {
    let athlete = profile("age = 20", "months_off = 4");
    let target = sweeper(&athlete);
    let exactly = |value: f64| Some(Estimate { value, low: value, high: value });
    let clean =
        Measured { active_fraction_spread: exactly(0.04), clock_spread_minutes: exactly(15.0), ..Measured::default() };
    assert_eq!(first_step(&target, &Measured::default()), Step::Spin);
    assert_eq!(first_step(&target, &clean), Step::Shape);
    let shaped = Measured { share_in_window: exactly(target.chance_at_best()), ..clean };
    assert_eq!(first_step(&target, &shaped), Step::Effort);
    let Answer::Plan(plan) = ask(&athlete, &target, OFF_SEASON, "tue,fri", shaped) else { panic!("refused") };
    assert_eq!(plan.phases[0].kind, PhaseKind::Step(Step::Effort));
    assert!(plan.phases[0].gates.iter().any(|gate| gate.is_met() == Some(true)));
}

fn refused(age: &str, health: &str, family: Family) -> Option<(Scope, Vec<Reason>)> {
    let athlete = profile(age, health);
    let target = Target { family, ..sweeper(&athlete) };
    match ask(&athlete, &target, OFF_SEASON, "mon", Measured::default()) {
        Answer::Plan(_) => None,
        Answer::NoRest(dates) => panic!("too little rest: {dates:?}"),
        Answer::Refused(bar) => Some((bar.scope, bar.reasons)),
    }
}

#[test]
fn pain_and_injury_refuse_the_work_and_youth_refuses_the_new_pitch() {
    let cases = [
        ("age = 20", "pain = true", Family::Changeup, Some((Scope::AllThrowing, Reason::Pain))),
        ("age = 20", "recent_injury = true", Family::Sweeper, Some((Scope::AllThrowing, Reason::RecentInjury))),
        (
            "age = 20",
            "no_new_breaking_ball = true",
            Family::Sweeper,
            Some((Scope::NewPitch, Reason::NoNewBreakingBall)),
        ),
        ("age = 20", "no_new_breaking_ball = true", Family::Cutter, None),
        (
            "age = 12",
            "",
            Family::Sweeper,
            Some((Scope::NewPitch, Reason::BasicsOnly { age: 12, family: Family::Sweeper })),
        ),
        ("age = 12", "", Family::Changeup, None),
        ("age = 13", "", Family::Sweeper, None),
        ("age = 14", "", Family::Sweeper, None),
        ("level = \"youth\"", "", Family::Sweeper, Some((Scope::NewPitch, Reason::AgeNeeded))),
    ];
    for (age, health, family, expected) in cases {
        let found = refused(age, health, family).map(|(refused, reasons)| (refused, reasons[0]));
        assert_eq!(found, expected, "{age} {health} {family}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]
    #[test]
    fn every_day_stays_below_the_limit_and_is_followed_by_the_rest_it_asks_for(
        age in 14_u8..30,
        offset in 0_i64..1500,
        length in 0_i64..365,
        days in proptest::sample::subsequence(vec!["mon", "tue", "wed", "thu", "fri", "sat", "sun"], 1..=7),
        months in 0_u8..=12,
    ) {
        use jiff::ToSpan as _;
        let start = date(2026, 1, 1).saturating_add(offset.days());
        let dates = (start, start.saturating_add(length.days()));
        let athlete = profile(&format!("age = {age}"), &format!("months_off = {months}"));
        let plan = match ask(&athlete, &sweeper(&athlete), dates, &days.join(","), Measured::default()) {
            Answer::Plan(plan) => plan,
            Answer::Refused(bar) => panic!("{bar:?}"),
            // A span too long to leave the months without throwing of its year is no plan.
            Answer::NoRest(no_rest) => {
                prop_assert!(no_rest.first <= no_rest.latest && no_rest.latest < no_rest.last);
                return Ok(());
            }
        };
        let limit = DayLimit::at_age(age).unwrap();
        prop_assert!(plan.days.iter().all(|day| day.throws() <= limit.most / 2));
        for pair in plan.days.windows(2) {
            let between = (pair[1].date - pair[0].date).get_days() - 1;
            prop_assert!(limit.rest_days(pair[0].throws()) <= u32::try_from(between).unwrap());
        }
        let covered: u32 = plan.phases.iter().map(|phase| phase.span.days()).sum();
        prop_assert_eq!(covered, plan.span.days());
    }
}
