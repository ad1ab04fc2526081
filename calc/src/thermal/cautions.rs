//! What warmth in a small closed body can do to those who sleep in it.

use crate::source::Source;
use crate::words::{Phrase, cautions_thermal as words};

/// A caution and where it comes from.
pub type Caution = (Phrase, Source);

/// Diffusion is the smaller part of the damp.
pub const AIR_LEAKAGE: Caution =
    (Phrase::Id(words::AIR_LEAKAGE), Source::transcribed("ISO 13788", "scope"));

/// Flames use up the air and make carbon monoxide.
pub const BURNING_FUEL: Caution = (
    Phrase::Id(words::BURNING_FUEL),
    Source::from_memory("EN 721; EN 1949", "ventilation; appliances without flue"),
);

/// Alarms for those who sleep.
pub const ALARMS: Caution = (Phrase::Id(words::ALARMS), Source::transcribed("NFPA 1192", "alarms"));

/// The way out.
pub const WAY_OUT: Caution =
    (Phrase::Id(words::WAY_OUT), Source::from_memory("NFPA 1192", "extinguisher, second exit"));

/// Linings must not burn fast.
pub const FLAMMABILITY: Caution = (
    Phrase::Id(words::FLAMMABILITY),
    Source::transcribed("49 CFR 571.302 (FMVSS 302)", "S4.2 and S4.3"),
);

/// Foam must be covered.
pub const EXPOSED_FOAM: Caution = (
    Phrase::Id(words::EXPOSED_FOAM),
    Source::transcribed("IBC chapter 26; IRC R316", "thermal barrier"),
);

/// Estimates, not a certification.
pub const ESTIMATE: Caution =
    (Phrase::Id(words::ESTIMATE), Source::practice_of(words::SOURCE_ESTIMATE));

/// What to show beside a build-up.
pub static INSULATION: [Caution; 4] = [AIR_LEAKAGE, EXPOSED_FOAM, FLAMMABILITY, ESTIMATE];

/// What to show beside a heater or a cooler.
pub static HEATING: [Caution; 4] = [BURNING_FUEL, ALARMS, WAY_OUT, ESTIMATE];
