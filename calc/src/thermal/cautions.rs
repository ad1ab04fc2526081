//! What warmth in a small closed body can do to those who sleep in it.

use crate::source::Source;
use crate::words::Phrase;

/// A caution and where it comes from.
pub type Caution = (Phrase, Source);

/// Diffusion is the smaller part of the damp.
pub const AIR_LEAKAGE: Caution = (
    Phrase::Written(
        "The dew planes know vapour diffusion alone. Air that leaks behind the lining carries far more water: make the \
     lining airtight towards the room, ventilate, and take \"no dew plane\" for no clearance. Ribs and bare metal get \
     wet first.",
    ),
    Source::transcribed("ISO 13788", "scope"),
);

/// Flames use up the air and make carbon monoxide.
pub const BURNING_FUEL: Caution = (
    Phrase::Written(
        "Whatever burns fuel needs fixed ventilation to the open air. Never sleep with a heater that has no flue running, \
     and never heat with a cooker.",
    ),
    Source::from_memory("EN 721; EN 1949", "ventilation; appliances without flue"),
);

/// Alarms for those who sleep.
pub const ALARMS: Caution = (
    Phrase::Written(
        "Fit a smoke alarm (UL 217), a carbon monoxide alarm marked for recreational vehicles (UL 2034) and, where propane \
     is aboard, a propane detector low down (UL 1484).",
    ),
    Source::transcribed("NFPA 1192", "alarms"),
);

/// The way out.
pub const WAY_OUT: Caution = (
    Phrase::Written(
        "Keep a fire extinguisher by the door, and a second way out that opens from inside without a tool.",
    ),
    Source::from_memory("NFPA 1192", "extinguisher, second exit"),
);

/// Linings must not burn fast.
pub const FLAMMABILITY: Caution = (
    Phrase::Written(
        "Interior materials within 13 mm of the cabin's air must burn no faster than 102 mm a minute.",
    ),
    Source::transcribed("49 CFR 571.302 (FMVSS 302)", "S4.2 and S4.3"),
);

/// Foam must be covered.
pub const EXPOSED_FOAM: Caution = (
    Phrase::Written(
        "Cover foam: bare foam burns fast and with poisonous smoke. Dwellings must part it from the room by a thermal \
     barrier that holds 15 minutes, such as 1/2 in gypsum board; the rule does not bind a vehicle, the fire is the same.",
    ),
    Source::transcribed("IBC chapter 26; IRC R316", "thermal barrier"),
);

/// Estimates, not a certification.
pub const ESTIMATE: Caution = (
    Phrase::Written(
        "These are estimates and certify nothing. Local rules and the makers' instructions come first.",
    ),
    Source::common_practice("estimates defer to local rules and makers"),
);

/// What to show beside a build-up.
pub static INSULATION: [Caution; 4] = [AIR_LEAKAGE, EXPOSED_FOAM, FLAMMABILITY, ESTIMATE];

/// What to show beside a heater or a cooler.
pub static HEATING: [Caution; 4] = [BURNING_FUEL, ALARMS, WAY_OUT, ESTIMATE];
