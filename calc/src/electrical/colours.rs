//! Colours of low-voltage conductors, and where two of them contradict each other.
//!
//! A colour never settles a polarity: the same colour is positive under one standard and negative
//! under another. Sheets print the polarity in words and measure before joining.

use std::fmt;
use std::str::FromStr;

use super::sources;
use crate::source::Source;
use crate::text::{lower, text};
use crate::words::{Arg, Id, Msg, electrical as words};

/// Plain colours of insulation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Hue {
    Black,
    White,
    Red,
    Yellow,
    Green,
    Blue,
    Brown,
    Grey,
    Orange,
    Violet,
    Pink,
    Tan,
}

/// Colour of a lead: its ground colour and its stripe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Colour {
    /// Colour of most of it.
    pub ground: Hue,
    /// Colour of the stripe, where it has one.
    pub stripe: Option<Hue>,
}

/// What a conductor is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Use {
    /// DC positive.
    Positive,
    /// DC negative.
    Negative,
    /// Bonding or protective conductor.
    Bonding,
    /// Mains, not grounded: live.
    MainsLive,
    /// Mains neutral.
    MainsNeutral,
}

/// One colour as a standard has it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Convention {
    /// The colour.
    pub colour: Colour,
    /// What it is for.
    pub means: Use,
    /// On which circuits, where only on some.
    pub on: &'static str,
    /// The standard.
    pub source: &'static Source,
}

/// The two leads of a device or of a run, as found: which colour is positive, which negative.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Leads {
    /// Colour of the positive lead.
    pub positive: Colour,
    /// Colour of the negative lead.
    pub negative: Colour,
}

/// What is misleading where leads of a device are joined to a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clash {
    /// A colour is positive on the device and negative on the run, or the other way round: joining
    /// colour to colour would reverse the polarity.
    Opposite {
        /// The colour.
        colour: Colour,
        /// Whether it is the positive one on the device (and the negative one on the run).
        positive_on_device: bool,
    },
    /// The same, but told apart by the stripe alone.
    OppositeButForStripe {
        /// Colour on the device.
        device: Colour,
        /// Colour on the run.
        run: Colour,
        /// Whether it is the positive one on the device (and the negative one on the run).
        positive_on_device: bool,
    },
    /// Both leads of the device have the same colour: it says nothing.
    BothAlike {
        /// The colour.
        colour: Colour,
    },
}

/// The colours that standards give to DC conductors, with the mains colours that are mistaken for
/// them.
pub static CONVENTIONS: [Convention; 25] = [
    row(plain(Hue::Red), Use::Positive, "", &sources::ABYC_COLOURS),
    row(plain(Hue::Yellow), Use::Negative, "preferred", &sources::ABYC_COLOURS),
    row(plain(Hue::Black), Use::Negative, "", &sources::ABYC_COLOURS),
    row(striped(Hue::Black, Hue::Yellow), Use::Negative, "", &sources::ABYC_COLOURS),
    row(plain(Hue::Green), Use::Bonding, "", &sources::ABYC_COLOURS),
    row(striped(Hue::Green, Hue::Yellow), Use::Bonding, "", &sources::ABYC_COLOURS),
    row(plain(Hue::Blue), Use::Positive, "cabin lights (dark blue)", &sources::ABYC_BRANCH_COLOURS),
    row(plain(Hue::Brown), Use::Positive, "pumps", &sources::ABYC_BRANCH_COLOURS),
    row(plain(Hue::Yellow), Use::Positive, "blowers", &sources::ABYC_BRANCH_COLOURS),
    row(striped(Hue::Brown, Hue::Yellow), Use::Positive, "blowers", &sources::ABYC_BRANCH_COLOURS),
    row(plain(Hue::Grey), Use::Positive, "navigation lights", &sources::ABYC_BRANCH_COLOURS),
    row(plain(Hue::Orange), Use::Positive, "accessory feed", &sources::ABYC_BRANCH_COLOURS),
    row(plain(Hue::Violet), Use::Positive, "ignition", &sources::ABYC_BRANCH_COLOURS),
    row(plain(Hue::Red), Use::Positive, "", &sources::ISO_COLOURS),
    row(plain(Hue::Black), Use::Negative, "", &sources::ISO_COLOURS),
    row(plain(Hue::Yellow), Use::Negative, "", &sources::ISO_COLOURS),
    row(plain(Hue::Red), Use::Positive, "", &sources::IEC_60445_COLOURS),
    row(plain(Hue::White), Use::Negative, "", &sources::IEC_60445_COLOURS),
    row(plain(Hue::Brown), Use::Positive, "", &sources::HD_308_COLOURS),
    row(plain(Hue::Grey), Use::Negative, "not earthed", &sources::HD_308_COLOURS),
    row(plain(Hue::Blue), Use::Negative, "earthed", &sources::HD_308_COLOURS),
    row(plain(Hue::Brown), Use::Negative, "vehicle chassis", &sources::DIN_72551),
    row(plain(Hue::Black), Use::MainsLive, "", &sources::US_MAINS_COLOURS),
    row(plain(Hue::White), Use::MainsNeutral, "", &sources::US_MAINS_COLOURS),
    row(plain(Hue::Green), Use::Bonding, "mains", &sources::US_MAINS_COLOURS),
];

/// What standards say of a colour, its stripe counted.
pub fn conventions(colour: Colour) -> impl Iterator<Item = &'static Convention> {
    CONVENTIONS.iter().filter(move |row| row.colour == colour)
}

/// Whether standards disagree about a colour: DC positive to one, DC negative or live mains to
/// another.
pub fn is_ambiguous(colour: Colour) -> bool {
    let any = |wanted: &[Use]| conventions(colour).any(|row| wanted.contains(&row.means));
    let (positive, negative) = (any(&[Use::Positive]), any(&[Use::Negative]));
    positive && negative || (positive || negative) && any(&[Use::MainsLive, Use::MainsNeutral])
}

/// Where the colours of a device and of the run it is joined to contradict each other.
///
/// The device's positive lead is joined to the run's positive conductor, whatever their colours.
/// Where the positive of the one has the colour of the negative of the other, someone will join
/// colour to colour: the sheet warns, and the splice list prints both colours.
///
/// # Source
/// A rule of this project, from the conventions' own contradictions.
pub fn clashes(device: Leads, run: Leads) -> Vec<Clash> {
    let mut clashes = Vec::new();
    if device.positive == device.negative {
        clashes.push(Clash::BothAlike { colour: device.positive });
    }
    for (on_device, on_run, positive_on_device) in
        [(device.positive, run.negative, true), (device.negative, run.positive, false)]
    {
        if on_device == on_run {
            clashes.push(Clash::Opposite { colour: on_device, positive_on_device });
        } else if on_device.ground == on_run.ground {
            clashes.push(Clash::OppositeButForStripe {
                device: on_device,
                run: on_run,
                positive_on_device,
            });
        }
    }
    clashes
}

impl Hue {
    /// Every hue with its name as it is typed, and as it is shown.
    pub const ALL: [(Self, &'static str, Id); 12] = [
        (Self::Black, "black", words::HUE_BLACK),
        (Self::White, "white", words::HUE_WHITE),
        (Self::Red, "red", words::HUE_RED),
        (Self::Yellow, "yellow", words::HUE_YELLOW),
        (Self::Green, "green", words::HUE_GREEN),
        (Self::Blue, "blue", words::HUE_BLUE),
        (Self::Brown, "brown", words::HUE_BROWN),
        (Self::Grey, "gray", words::HUE_GRAY),
        (Self::Orange, "orange", words::HUE_ORANGE),
        (Self::Violet, "violet", words::HUE_VIOLET),
        (Self::Pink, "pink", words::HUE_PINK),
        (Self::Tan, "tan", words::HUE_TAN),
    ];

    fn named(name: &str) -> Option<Self> {
        let name = match name {
            "grey" | "gris" => "gray",
            "purple" | "violeta" | "morado" => "violet",
            "negro" => "black",
            "blanco" => "white",
            "rojo" => "red",
            "amarillo" => "yellow",
            "verde" => "green",
            "azul" => "blue",
            "marrón" | "marron" | "café" | "cafe" => "brown",
            "naranja" | "anaranjado" => "orange",
            "rosa" | "rosado" => "pink",
            "canela" | "beige" => "tan",
            other => other,
        };
        Self::ALL.iter().find(|(_, n, _)| *n == name).map(|(hue, ..)| *hue)
    }
}

/// Why a text is no colour.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotAColour {
    /// What was typed, cut to 40 characters.
    pub typed: String,
}

impl FromStr for Colour {
    type Err = NotAColour;

    /// Reads `black`, `black/white`, `black with white stripe`, `dark blue`; in Spanish too, whatever a page is
    /// shown in: a file is read the same everywhere.
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let refused = || NotAColour { typed: text.trim().chars().take(40).collect() };
        let lower: String = text.chars().take(60).map(lower).collect();
        let mut hues = Vec::new();
        for word in lower.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty()) {
            match word {
                "with" | "and" | "stripe" | "striped" | "dark" | "light" | "a" => {}
                "con" | "y" | "franja" | "raya" | "oscuro" | "claro" => {}
                _ => hues.push(Hue::named(word).ok_or_else(refused)?),
            }
        }
        match hues[..] {
            [ground] => Ok(plain(ground)),
            [ground, stripe] if ground == stripe => Ok(plain(ground)),
            [ground, stripe] => Ok(striped(ground, stripe)),
            _ => Err(refused()),
        }
    }
}

impl From<&NotAColour> for Msg {
    fn from(NotAColour { typed }: &NotAColour) -> Self {
        words::NotAColor {
            typed: typed.as_str(),
            plain: Arg::from(Hue::Black),
            striped: Arg::from(striped(Hue::Black, Hue::White)),
            colors: Arg::each(Hue::ALL.map(|(hue, ..)| hue)),
        }
        .into()
    }
}

/// In English, for tests.
impl fmt::Display for NotAColour {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Msg::from(self).fmt(f)
    }
}

impl std::error::Error for NotAColour {}

impl Leads {
    /// The colours as part of an id, in numbers, not in words.
    pub fn id(self) -> String {
        let one = |colour: Colour| match colour.stripe {
            Some(stripe) => text!("{}.{}", colour.ground as usize, stripe as usize),
            None => (colour.ground as usize).to_string(),
        };
        text!("{}-{}", one(self.positive), one(self.negative))
    }
}

impl Default for Colour {
    /// Stands in where another was typed wrong.
    fn default() -> Self {
        plain(Hue::Red)
    }
}

impl From<Hue> for Arg {
    fn from(hue: Hue) -> Self {
        Hue::ALL.iter().find(|(known, ..)| *known == hue).map_or("".into(), |(.., id)| (*id).into())
    }
}

impl From<Colour> for Arg {
    fn from(Colour { ground, stripe }: Colour) -> Self {
        match stripe {
            None => ground.into(),
            Some(stripe) => Msg::from(words::Striped { ground, stripe }).into(),
        }
    }
}

impl From<Clash> for Msg {
    fn from(clash: Clash) -> Self {
        match clash {
            Clash::Opposite { colour: color, positive_on_device: true } => {
                words::ClashOpposite { color }.into()
            }
            Clash::Opposite { colour: color, .. } => words::ClashOppositeNegative { color }.into(),
            Clash::OppositeButForStripe { device, run, positive_on_device: true } => {
                words::ClashStripe { device, run }.into()
            }
            Clash::OppositeButForStripe { device, run, .. } => {
                words::ClashStripeNegative { device, run }.into()
            }
            Clash::BothAlike { colour: color } => words::ClashAlike { color }.into(),
        }
    }
}

const fn plain(ground: Hue) -> Colour {
    Colour { ground, stripe: None }
}

const fn striped(ground: Hue, stripe: Hue) -> Colour {
    Colour { ground, stripe: Some(stripe) }
}

const fn row(colour: Colour, means: Use, on: &'static str, source: &'static Source) -> Convention {
    Convention { colour, means, on, source }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Style, UnitSystem};
    use proptest::prelude::*;

    fn leads(positive: &str, negative: &str) -> Leads {
        Leads { positive: positive.parse().unwrap(), negative: negative.parse().unwrap() }
    }

    fn shown_as(colour: Colour) -> String {
        Style::new(UnitSystem::Metric).write(&colour.into())
    }

    #[test]
    fn a_black_positive_joined_to_a_black_negative() {
        let run = leads("red", "black");
        let found = clashes(leads("black", "white"), run);
        assert_eq!(
            found,
            [Clash::Opposite { colour: plain(Hue::Black), positive_on_device: true }]
        );
        assert!(Msg::from(found[0]).to_string().contains("do not join black to black"));
        assert!(clashes(leads("red", "black"), run).is_empty());
        assert!(clashes(leads("white", "black"), run).is_empty());
        let found = clashes(leads("black/white", "black"), run);
        assert!(matches!(
            found[..],
            [Clash::OppositeButForStripe { positive_on_device: true, .. }]
        ));
        let found = clashes(leads("blue", "red"), run);
        assert!(matches!(found[..], [Clash::Opposite { positive_on_device: false, .. }]));
        // Both leads black: nothing tells them apart, and one of them contradicts the run.
        assert_eq!(clashes(leads("black", "black"), run).len(), 2);
    }

    #[test]
    fn colours_that_standards_disagree_about() {
        for (colour, ambiguous) in [
            ("black", true),
            ("yellow", true),
            ("brown", true),
            ("white", true),
            ("blue", true),
            ("red", false),
            ("orange", false),
            ("green", false),
        ] {
            assert_eq!(is_ambiguous(colour.parse().unwrap()), ambiguous, "{colour}");
        }
        assert!(conventions(plain(Hue::Red)).all(|row| row.means == Use::Positive));
    }

    #[test]
    fn reads_colours() {
        for (text, shown) in [
            ("Black", "black"),
            ("black with white stripe", "black/white"),
            ("green/yellow", "green/yellow"),
            ("dark blue", "blue"),
            ("GRAY", "gray"),
            ("negro con franja blanco", "black/white"),
            ("Marrón", "brown"),
        ] {
            assert_eq!(shown_as(text.parse().unwrap()), shown);
        }
        for text in ["", "12", "ultraviolet", "red green blue"] {
            let error = text.parse::<Colour>().unwrap_err();
            assert!(error.to_string().contains("write black"), "{text}");
        }
    }

    proptest! {
        #[test]
        fn any_text_is_read_or_refused(text in "\\PC{0,80}") {
            let _ = text.parse::<Colour>().map_err(|error| error.to_string());
        }

        #[test]
        fn what_is_shown_is_read_again(a in 0usize..12, b in 0usize..12) {
            let colour = striped(Hue::ALL[a].0, Hue::ALL[b].0);
            let again: Colour = shown_as(colour).parse().unwrap();
            prop_assert_eq!(again.ground, colour.ground);
        }

        /// Swapping device and run finds the same contradictions.
        #[test]
        fn clashes_are_mutual(hues in prop::collection::vec(0usize..12, 4)) {
            let lead = |i: usize| plain(Hue::ALL[hues[i]].0);
            let (one, two) = (
                Leads { positive: lead(0), negative: lead(1) },
                Leads { positive: lead(2), negative: lead(3) },
            );
            let opposite = |a, b| clashes(a, b).iter().filter(|c| matches!(c, Clash::Opposite { .. })).count();
            prop_assert_eq!(opposite(one, two), opposite(two, one));
        }
    }
}
