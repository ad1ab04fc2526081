//! Times of day as people write them, and as they are written back.

use crate::coating::schedule::clock;
use crate::quantity::{Style, UnitSystem, from_digits};
use crate::text::text;

const HOUR: f64 = 60.0;
const DAY: f64 = 24.0 * HOUR;
const RIGHT: &str = "write a time of day such as 8:30 or 2:15 pm";

/// Minutes since midnight of a time of day: `8:30`, `14:05`, `2:15 pm`, `8 am`.
pub fn time_of_day(text: &str) -> Result<f64, String> {
    let text = text.trim().to_ascii_lowercase().replace("a.m.", "am").replace("p.m.", "pm");
    let (time, half) = match (text.strip_suffix("am"), text.strip_suffix("pm")) {
        (Some(time), _) => (time.trim(), Some(0.0)),
        (_, Some(time)) => (time.trim(), Some(12.0)),
        _ => (text.as_str(), None),
    };
    let (hours, minutes) = match time.split_once(':') {
        Some((hours, minutes)) if minutes.len() == 2 => (hours, minutes),
        Some(_) => return Err(format!("the minutes need two digits; {RIGHT}")),
        None => (time, "00"),
    };
    let number = |text: &str, most: f64| {
        let digits =
            !text.is_empty() && text.len() <= 2 && text.bytes().all(|b| b.is_ascii_digit());
        let number = from_digits(text).filter(|number| digits && *number <= most);
        number.ok_or_else(|| format!("this is no time of day; {RIGHT}"))
    };
    let (hours, minutes) = (number(hours, 24.0)?, number(minutes, 59.0)?);
    let hours = match half {
        None => hours,
        Some(_) if !(1.0..=12.0).contains(&hours) => {
            return Err(format!("with am or pm the hours go from 1 to 12; {RIGHT}"));
        }
        Some(half) => half + if hours == 12.0 { 0.0 } else { hours },
    };
    let time = hours * HOUR + minutes;
    if time > DAY { Err(format!("a day ends at 24:00; {RIGHT}")) } else { Ok(time) }
}

/// Minutes since midnight before the first day: a time of day, with `tomorrow` or `day 3` before it.
pub fn day_and_time(text: &str) -> Result<f64, String> {
    let text = text.trim().to_ascii_lowercase();
    let (day, time) = if let Some(time) = text.strip_prefix("today") {
        (0.0, time)
    } else if let Some(time) = text.strip_prefix("tomorrow") {
        (1.0, time)
    } else if let Some(rest) = text.strip_prefix("day") {
        let (day, time) = rest
            .trim_start()
            .split_once([' ', ','])
            .ok_or_else(|| "name the day and the time, such as day 3 8:30".to_owned())?;
        let day = day.parse::<u8>().ok().filter(|day| (1..=60).contains(day));
        let day = day.ok_or_else(|| "days are counted from 1, the first day, to 60".to_owned())?;
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

/// `8:30`, `8:30 am`: without the day.
pub fn hour_of_day(time_min: f64, style: Style) -> String {
    let (_, hour, minute) = clock(time_min);
    match style.system {
        UnitSystem::Metric => format!("{hour}:{minute:02}"),
        UnitSystem::Imperial => {
            let half = if hour < 12 { "am" } else { "pm" };
            let hour = if hour % 12 == 0 { 12 } else { hour % 12 };
            format!("{hour}:{minute:02} {half}")
        }
    }
}

/// `Today`, `Tomorrow`, `Day 3`; the first day is 0.
pub fn day_name(day: f64) -> String {
    match day as u32 {
        0 => "Today".to_owned(),
        1 => "Tomorrow".to_owned(),
        day => text!("Day {}", day + 1),
    }
}

/// `8:30`, `tomorrow 8:30`, `day 3, 8:30`; am and pm where units are imperial.
pub fn written(time_min: f64, style: Style) -> String {
    let time = hour_of_day(time_min, style);
    match clock(time_min).0 {
        0 => time,
        1 => text!("tomorrow {}", &time),
        day => text!("day {}, {}", day + 1, &time),
    }
}

/// `45 min`, `3 h`, `1 h 30 min`.
pub fn span(minutes: f64) -> String {
    let whole = minutes.round().max(0.0);
    let hours = (whole / HOUR).floor();
    let rest = whole - hours * HOUR;
    match (hours == 0.0, rest == 0.0) {
        (true, _) => text!("{} min", &rest),
        (false, true) => text!("{} h", &hours),
        (false, false) => text!("{} h {} min", &hours, &rest),
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
            assert_eq!(time_of_day(text), Ok(minutes), "{text}");
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
            assert_eq!(written(day_and_time(text).unwrap(), metric), text);
        }
        let imperial = Style::new(UnitSystem::Imperial);
        assert_eq!(written(day_and_time("tomorrow 0:15").unwrap(), imperial), "tomorrow 12:15 am");
        for text in ["day 0 8:00", "day 8:00", "day x 8:00", "yesterday 8:00", "day 61 8:00"] {
            assert!(day_and_time(text).is_err(), "{text}");
        }
    }

    #[test]
    fn spans() {
        assert_eq!([span(45.0), span(180.0), span(90.2)], ["45 min", "3 h", "1 h 30 min"]);
    }
}
