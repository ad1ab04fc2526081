//! What a line of a list is, apart from the words it is shown in.

use uom::si::length::millimeter;
use uom::si::volume::milliliter;

use crate::quantity::{LENGTH, Length, Measure, Volume, plain};
use crate::text::text;

/// What a line of the buy list is: its kind, quantities in SI and part ids, put together by `/`.
///
/// It is the same in every unit system, rounding and language, so ticks, prices, masses and places are
/// kept under it. Never put words of the program or text of a `Style` into it. A name that a person
/// typed may be part of it where it alone tells one thing from another (`Self::name`): a paint, a wood.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct LineId {
    text: String,
    own: bool,
}

impl LineId {
    /// A thing that is the same whichever sheet asks for it; such lines are merged over all sheets:
    /// `LineId::shared("wire/awg16/105c")`.
    pub fn shared(text: impl Into<String>) -> Self {
        Self { text: text.into(), own: false }
    }

    /// A thing of one sheet alone: the project puts the sheet's id in front.
    pub fn own(text: impl Into<String>) -> Self {
        Self { text: text.into(), own: true }
    }

    /// A wood screw by gauge and length: `screw/8/31.8mm`.
    pub fn screw(gauge: &str, length: Length) -> Self {
        Self::shared(text!("screw/{}/{}", gauge, Self::length(length)))
    }

    /// A screw as a person wrote it: by gauge and length where it says both (`#8 x 1 1/4 in`), else by
    /// that text.
    pub fn screw_as_typed(typed: &str) -> Self {
        let both = || {
            let (gauge, length) =
                typed.trim().strip_prefix('#')?.split_once([' ', 'x', 'X', '×'])?;
            let length = length.trim_start_matches([' ', 'x', 'X', '×']);
            let gauge: u8 = gauge.parse().ok()?;
            let length = Measure::read(length, &LENGTH, None).ok()?.si();
            Some(Self::screw(&gauge.to_string(), Length::new::<millimeter>(length * 1e3)))
        };
        both().unwrap_or_else(|| Self::shared(text!("screw/{}", Self::name(typed))))
    }

    /// A length as part of an id: `31.8mm`.
    pub fn length(length: Length) -> String {
        Self::mm(length.get::<millimeter>())
    }

    /// The same for a number. [mm]
    pub fn mm(mm: f64) -> String {
        text!("{}mm", plain(mm, 1))
    }

    /// A volume as part of an id: `3785ml`.
    pub fn volume(volume: Volume) -> String {
        text!("{}ml", plain(volume.get::<milliliter>(), 0))
    }

    /// A name that a person typed as part of an id, without what people write in several ways: capitals,
    /// spaces, × for x. Nothing that separates parts of an id or of a tick is left in it.
    pub fn name(typed: &str) -> String {
        let mut name = String::with_capacity(typed.len());
        for word in typed.split_whitespace() {
            if !name.is_empty() {
                name.push('-');
            }
            for letter in word.chars() {
                name.push(match letter {
                    '×' => 'x',
                    '/' | '|' | '+' | '@' | '#' => '_',
                    _ => letter.to_ascii_lowercase(),
                });
            }
        }
        name
    }

    /// The id in the project's list, of a line of this sheet.
    pub fn of_sheet(&self, sheet: &str) -> String {
        match self.own {
            true => text!("{}/{}", sheet, &self.text),
            false => self.text.clone(),
        }
    }

    /// The id without the sheet.
    pub fn text(&self) -> &str {
        &self.text
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_people_write_in_several_ways_is_one_name() {
        for typed in ["#8 × 1 1/4 in", " #8  X 1 1/4 IN"] {
            assert_eq!(LineId::name(typed), "_8-x-1-1_4-in");
        }
    }

    #[test]
    fn a_screw_is_known_by_gauge_and_length_in_any_unit() {
        for typed in ["#8 x 1 1/4 in", "#8 × 31.75 mm", "#8x1 1/4\""] {
            assert_eq!(LineId::screw_as_typed(typed).text(), "screw/8/31.8mm", "{typed}");
        }
        assert_eq!(LineId::screw_as_typed("trim head").text(), "screw/trim-head");
        assert_eq!(LineId::screw_as_typed("# x").text(), "screw/_-x");
    }

    #[test]
    fn an_own_line_has_its_sheet_in_front() {
        assert_eq!(LineId::own("lid").of_sheet("s3"), "s3/lid");
        assert_eq!(LineId::shared("lid").of_sheet("s3"), "lid");
    }
}
