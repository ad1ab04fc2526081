//! Times of day as people write them, and as they are written back.

use crate::coating::schedule::clock;
use crate::quantity::{Style, UnitSystem, from_digits};
use crate::reader::Notation;
use crate::text::text;
use crate::words::{Arg, Msg, schedule as words};

const HOUR: f64 = 60.0;
const DAY: f64 = 24.0 * HOUR;

/// A time of day, in minutes since midnight: `8:30`, `14:05`, `2:15 pm`, `8 am`.
#[derive(Clone, Copy, Debug)]
pub struct TimeOfDay(pub f64);

impl Notation for TimeOfDay {
    /// No time at all: no other is the same, nor before or after it.
    fn stand_in() -> Self {
        Self(f64::NAN)
    }

    fn read(text: &str) -> Result<Self, Msg> {
        time_of_day(text).map(Self)
    }
}

/// Minutes since midnight before the first day: a time of day, with `tomorrow` or `day 3` before it.
#[derive(Clone, Copy, Debug)]
pub struct DayAndTime(pub f64);

impl Notation for DayAndTime {
    fn stand_in() -> Self {
        Self(0.0)
    }

    fn read(text: &str) -> Result<Self, Msg> {
        day_and_time(text).map(Self)
    }
}

fn time_of_day(text: &str) -> Result<f64, Msg> {
    let text = text.trim().to_ascii_lowercase().replace("a.m.", "am").replace("p.m.", "pm");
    let (time, half) = match (text.strip_suffix("am"), text.strip_suffix("pm")) {
        (Some(time), _) => (time.trim(), Some(0.0)),
        (_, Some(time)) => (time.trim(), Some(12.0)),
        _ => (text.as_str(), None),
    };
    let (hours, minutes) = match time.split_once(':') {
        Some((hours, minutes)) if minutes.len() == 2 => (hours, minutes),
        Some(_) => return Err(words::MINUTES_DIGITS.into()),
        None => (time, "00"),
    };
    let number = |text: &str, most: f64| {
        let digits =
            !text.is_empty() && text.len() <= 2 && text.bytes().all(|b| b.is_ascii_digit());
        let number = from_digits(text).filter(|number| digits && *number <= most);
        number.ok_or_else(|| Msg::from(words::NO_TIME))
    };
    let (hours, minutes) = (number(hours, 24.0)?, number(minutes, 59.0)?);
    let hours = match half {
        None => hours,
        Some(_) if !(1.0..=12.0).contains(&hours) => return Err(words::HALF_DAY.into()),
        Some(half) => half + if hours == 12.0 { 0.0 } else { hours },
    };
    let time = hours * HOUR + minutes;
    if time > DAY { Err(words::AFTER_MIDNIGHT.into()) } else { Ok(time) }
}

/// How a day is named before a time: notation, which is read alike whatever the page is shown in.
const TODAY: [&str; 2] = ["today", "hoy"];
const TOMORROW: [&str; 2] = ["tomorrow", "mañana"];
const NTH_DAY: [&str; 3] = ["day", "día", "dia"];

fn day_and_time(text: &str) -> Result<f64, Msg> {
    let text = text.trim().to_ascii_lowercase();
    let behind = |names: &[&str]| names.iter().find_map(|name| text.strip_prefix(name));
    let (day, time) = if let Some(time) = behind(&TODAY) {
        (0.0, time)
    } else if let Some(time) = behind(&TOMORROW) {
        (1.0, time)
    } else if let Some(rest) = behind(&NTH_DAY) {
        let (day, time) = rest
            .trim_start()
            .split_once([' ', ','])
            .ok_or_else(|| Msg::from(words::DAY_AND_TIME))?;
        let day = day.parse::<u8>().ok().filter(|day| (1..=60).contains(day));
        let day = day.ok_or_else(|| Msg::from(words::DAYS_RANGE))?;
        (f64::from(day) - 1.0, time)
    } else {
        (0.0, text.as_str())
    };
    Ok(day * DAY + time_of_day(time.trim_start_matches([',', ' ']))?)
}

/// Minutes since the midnight before.
pub fn of_day(time_min: f64) -> f64 {
    time_min - (time_min / DAY).floor() * DAY
}

/// Hour and minute as they are written without the half of the day, and whether it is the second half; the halves
/// are told apart where units are imperial.
fn on_dial(time_min: f64, style: &Style) -> (String, Option<bool>) {
    let (_, hour, minute) = clock(time_min);
    let (hour, half) = match style.system {
        UnitSystem::Metric => (hour, None),
        UnitSystem::Imperial => (if hour % 12 == 0 { 12 } else { hour % 12 }, Some(hour >= 12)),
    };
    (format!("{hour}:{minute:02}"), half)
}

fn with_half(time: String, half: Option<bool>, style: &Style) -> String {
    match half {
        None => time,
        Some(false) => style.say(words::Am { time }),
        Some(true) => style.say(words::Pm { time }),
    }
}

/// `8:30`, `8:30 am`: without the day.
pub fn hour_of_day(time_min: f64, style: &Style) -> String {
    let (time, half) = on_dial(time_min, style);
    with_half(time, half, style)
}

/// `8:30–10:00`, `8:30–10:00 am`, `11:00 am–1:00 pm`: without the days.
pub fn from_to(from_min: f64, to_min: f64, style: &Style) -> String {
    let ((from, half), (to, other)) = (on_dial(from_min, style), on_dial(to_min, style));
    let from = if half == other { from } else { with_half(from, half, style) };
    text!("{}–{}", &from, with_half(to, other, style))
}

/// `Today`, `Tomorrow`, `Day 3`; the first day is 0.
pub fn day_name(day: usize) -> Msg {
    match day {
        0 => words::TODAY.into(),
        1 => words::TOMORROW.into(),
        day => words::Day { day: day + 1 }.into(),
    }
}

/// `8:30`, `tomorrow 8:30`, `day 3, 8:30`; am and pm where units are imperial.
pub fn moment(time_min: f64) -> Arg {
    let time = Arg::Quantity(time_min, |style, time| hour_of_day(time, style));
    match clock(time_min).0 {
        0 => time,
        1 => Msg::from(words::TomorrowAt { time }).into(),
        day => Msg::from(words::DayAt { day: day + 1, time }).into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_of_day() {
        for (text, minutes) in [
            ("8:30", 510.0),
            ("08:05", 485.0),
            ("2:15 pm", 855.0),
            ("12:00 am", 0.0),
            ("12 p.m.", 720.0),
            ("8am", 480.0),
            ("24:00", 1440.0),
        ] {
            assert_eq!(time_of_day(text).ok(), Some(minutes), "{text}");
        }
        for text in [
            "", "8:3", "25:00", "24:01", "13 pm", "noon", "8:60", "-1:00", "1e1:00", "0 am", "é:00",
        ] {
            assert!(time_of_day(text).is_err(), "{text}");
        }
    }

    #[test]
    fn days_and_times_come_back_as_written() {
        for text in ["8:30", "tomorrow 8:30", "day 3, 14:05", "day 60, 0:00"] {
            let metric = Style::new(UnitSystem::Metric);
            assert_eq!(metric.write(&moment(day_and_time(text).unwrap())), text);
        }
        let imperial = Style::new(UnitSystem::Imperial);
        let early = moment(day_and_time("tomorrow 0:15").unwrap());
        assert_eq!(imperial.write(&early), "tomorrow 12:15 am");
        for (typed, same) in [("mañana 8:00", "tomorrow 8:00"), ("día 3 9:30", "day 3 9:30")] {
            assert_eq!(day_and_time(typed).ok(), day_and_time(same).ok(), "{typed}");
        }
        for text in ["day 0 8:00", "day 8:00", "day x 8:00", "yesterday 8:00", "day 61 8:00"] {
            assert!(day_and_time(text).is_err(), "{text}");
        }
    }

    #[test]
    fn halves_of_the_day_are_named_once_where_they_are_the_same() {
        let imperial = Style::new(UnitSystem::Imperial);
        assert_eq!(from_to(510.0, 600.0, &imperial), "8:30–10:00 am");
        assert_eq!(from_to(660.0, 780.0, &imperial), "11:00 am–1:00 pm");
        assert_eq!(from_to(510.0, 600.0, &Style::new(UnitSystem::Metric)), "8:30–10:00");
    }
}
