//! Sources of the electrical formulas and tables.

use crate::source::Source;
use crate::words::electrical as words;

/// Stranded uncoated copper, resistance at 75 C, circular mils, bare diameter.
pub static NEC_TABLE_8: Source = Source::transcribed_of(words::SOURCE_TABLE_8);
/// R2 = R1 (1 + 0.00323 (T2 - 75)) for copper.
pub static NEC_TABLE_8_NOTE: Source = Source::transcribed_of(words::SOURCE_TABLE_8_NOTE);
/// Greatest resistance of flexible (class 5) plain copper conductors at 20 C.
pub static IEC_60228_CLASS_5: Source = Source::transcribed_of(words::SOURCE_CLASS_5);
/// Temperature coefficient of annealed copper, 0.00393 per K at 20 C.
pub static COPPER_TEMPERATURE_COEFFICIENT: Source =
    Source::transcribed_of(words::SOURCE_COEFFICIENT);
/// A circular mil is the area of a circle one thousandth of an inch across.
pub static CIRCULAR_MIL: Source = Source::identity("1 circular mil = pi/4 (0.0254 mm)^2");
/// A resistance typed by the person is taken as it is, at every temperature.
pub static GIVEN_RESISTANCE: Source = Source::identity_of(words::SOURCE_GIVEN);
/// Density of annealed copper.
pub static COPPER_DENSITY: Source = Source::from_memory_of(words::SOURCE_COPPER);
/// Bare diameter of fine-stranded conductors by the filling of concentric stranding.
pub static STRANDED_DIAMETER: Source = Source::practice_of(words::SOURCE_STRANDED);
/// Thickness of insulation by conductor area.
pub static INSULATION_WALL: Source = Source::from_memory_of(words::SOURCE_WALL);
/// Drop of a two-wire run: V = I * 2 L r.
pub static OHMS_LAW: Source = Source::identity_of(words::SOURCE_OHM);
/// Allowable current by AWG size and insulation rating.
pub static CFR_TABLE_5: Source = Source::transcribed_of(words::SOURCE_TABLE_5);
/// Least conductor sizes.
pub static CFR_LEAST_SIZE: Source = Source::transcribed_of(words::SOURCE_LEAST_BOATS);
/// Least conductor sizes in mm2.
pub static ISO_10133_LEAST_SIZE: Source = Source::transcribed_of(words::SOURCE_LEAST_METRIC);
/// A mm2 size takes the value of the AWG size next below it by copper area.
pub static METRIC_BY_AWG: Source = Source::transcribed_of(words::SOURCE_METRIC_BY_AWG);
/// A resistance takes the value of the nearest AWG size that resists at least as much.
pub static OHM_BY_AWG: Source = Source::transcribed_of(words::SOURCE_OHM_BY_AWG);
/// Fuses of the low-voltage circuits of park trailers.
pub static NEC_552_FUSE: Source = Source::from_memory_of(words::SOURCE_TRAILER_FUSE);
/// Fuses before small conductors.
pub static NEC_240_4_D: Source = Source::transcribed_of(words::SOURCE_SMALL_WIRE);
/// Fuses before the wire of boats.
pub static CFR_BOAT_FUSE: Source = Source::transcribed_of(words::SOURCE_BOAT_FUSE);
/// Half the current for a cable that runs through thermal insulation for half a metre or more.
pub static BS_7671_INSULATION: Source = Source::transcribed_of(words::SOURCE_BURIED);
/// A charging voltage that was typed.
pub static CHARGING_AS_GIVEN: Source = Source::identity_of(words::SOURCE_CHARGING);
/// Voltage of blade and strip fuses.
pub static FUSE_32_V: Source = Source::transcribed_of(words::SOURCE_FUSE_32);
/// Voltage of the higher blade fuses.
pub static ISO_8820_3_VOLTAGE: Source = Source::transcribed_of(words::SOURCE_FUSE_58);
/// Voltage of class T fuses.
pub static CLASS_T_VOLTAGE: Source = Source::from_memory_of(words::SOURCE_FUSE_125);
/// Allowable current of 0.75 mm2, below the smallest size of 33 CFR 183.425.
pub static ISO_10133: Source = Source::from_memory_of(words::SOURCE_THREE_QUARTERS);
/// Reduction for conductors bundled together.
pub static ABYC_BUNDLING: Source = Source::transcribed_of(words::SOURCE_BUNDLING);
/// Reduction for warm surroundings: sqrt((Tc - Ta') / (Tc - Ta)).
pub static AMBIENT: Source = Source::from_memory("NEC (NFPA 70)", "310.15(B)(2)");
/// Ratings of blade fuses.
pub static ISO_8820_3: Source = Source::transcribed_of(words::SOURCE_BLADE);
/// The 1 A blade fuse, which the transcription left out.
pub static ISO_8820_3_ONE_AMPERE: Source = Source::from_memory_of(words::SOURCE_BLADE_ONE);
/// Standard ratings of fuses beyond blade fuses.
pub static NEC_240_6: Source = Source::transcribed("NEC (NFPA 70)", "240.6(A)");
/// A device carries at least 125 % of a continuous load.
pub static NEC_CONTINUOUS: Source = Source::transcribed("NEC (NFPA 70)", "210.20(A), 215.3");
/// A load expected to last three hours or more is continuous.
pub static NEC_CONTINUOUS_MEANS: Source = Source::from_memory_of(words::SOURCE_CONTINUOUS);
/// A device is rated no more than the conductor it protects.
pub static FUSE_PROTECTS_CONDUCTOR: Source = Source::transcribed("NEC (NFPA 70)", "240.4");
/// The law's own wider limit below 50 V: 150 % of the table value. Not used, only told.
pub static CFR_FUSE_LIMIT: Source = Source::transcribed("33 CFR 183.455", "(c)");
/// Device at the source.
pub static CFR_FUSE_PLACE: Source = Source::transcribed("33 CFR 183.455", "(b)");
/// Sizing by circular mils: CM = 10.75 I L / E.
pub static ABYC_CIRCULAR_MILS: Source = Source::transcribed("ABYC E-11", "11.14.2.6");
/// Constant-power load behind a resistance: high root, and none beyond Vs^2 / (4 R).
pub static CONSTANT_POWER: Source = Source::identity_of(words::SOURCE_POWER);
/// Existence of the high-voltage solution of a network with constant-power loads.
pub static POWER_FLOW: Source = Source::published(
    "Jeeninga, De Persis, van der Schaft: DC power grids with constant-power loads",
    "arXiv:2010.01076",
);
/// Newton's method from above on a convex system falls monotonically to the greatest solution.
pub static MONOTONE_NEWTON: Source = Source::from_memory(
    "Ortega, Rheinboldt: Iterative Solution of Nonlinear Equations in Several Variables",
    "theorem 13.3",
);
/// Sizes of splicing connectors.
pub static CONNECTOR_WAYS: Source = Source::practice_of(words::SOURCE_WAYS);
/// Thickest wire that splicing connectors take.
pub static CONNECTOR_SIZES: Source = Source::practice_of(words::SOURCE_CONNECTOR_SIZES);
/// Studs for lugs.
pub static STUD_SIZES: Source = Source::practice_of(words::SOURCE_STUDS);
/// Least circle around equal circles.
pub static CIRCLE_PACKING: Source = Source::transcribed_of(words::SOURCE_PACKING);
/// Bundle rule of thumb.
pub static BUNDLE_RULE: Source = Source::practice_of(words::SOURCE_BUNDLE);
/// Colours of DC positive, negative and bonding conductors.
pub static ABYC_COLOURS: Source = Source::transcribed_of(words::SOURCE_COLORS);
/// Colours of DC branch circuits.
pub static ABYC_BRANCH_COLOURS: Source = Source::transcribed_of(words::SOURCE_BRANCH_COLORS);
/// Colours of small craft.
pub static ISO_COLOURS: Source = Source::from_memory("ISO 10133", "conductor colours");
/// Colours of DC conductors today.
pub static IEC_60445_COLOURS: Source = Source::transcribed("IEC 60445", "DC conductors");
/// Colours of DC conductors before.
pub static HD_308_COLOURS: Source =
    Source::transcribed("HD 308", "DC conductors, the older colours");
/// Brown as the chassis negative of vehicles.
pub static DIN_72551: Source = Source::from_memory("DIN 72551", "brown");
/// Mains colours of North America: black is the ungrounded conductor.
pub static US_MAINS_COLOURS: Source =
    Source::transcribed("ABYC E-11", "AC conductor colours, for contrast");
/// Caution: a battery fuse must break the battery's short-circuit current.
pub static ABYC_INTERRUPTING: Source = Source::transcribed_of(words::SOURCE_INTERRUPT);
/// Caution: blade fuses break no more than 1000 A.
pub static ISO_8820_3_BREAKING: Source = Source::transcribed_of(words::SOURCE_BREAKING);
/// Caution: stranded copper only.
pub static CFR_STRANDED_COPPER: Source = Source::transcribed("33 CFR 183.425", "(a)");
/// Caution: supports, chafe protection, grommets at sheet-metal edges.
pub static ISO_10133_PROTECTION: Source = Source::transcribed_of(words::SOURCE_PROTECTION);
/// Caution: DC wiring apart from mains wiring.
pub static ISO_10133_APART: Source = Source::transcribed("ISO 10133", "7.8");
/// Caution: mains and shore power only by a licensed or qualified electrician.
pub static IEC_CARAVANS: Source = Source::transcribed("IEC 60364-7-708, IEC 60364-7-721", "");
/// Caution: chassis return only where the vehicle maker allows it.
pub static NEC_CHASSIS_RETURN: Source = Source::transcribed_of(words::SOURCE_CHASSIS);
/// Caution: bonding of the battery.
pub static NEC_BONDING: Source = Source::transcribed_of(words::SOURCE_BONDING);
/// Caution: metal must not bridge battery terminals.
pub static ISO_10133_BATTERY: Source = Source::transcribed("ISO 10133", "5.2, 5.4");
/// Least drop limits by what is fed: 3 % for critical loads, 10 % for others.
pub static ABYC_DROP_LIMITS: Source = Source::transcribed("ABYC E-11", "11.14.2.6");
/// Caution: splices stay accessible.
pub static SPLICES_IN_REACH: Source = Source::from_memory_of(words::SOURCE_IN_REACH);
/// Caution: joints are tugged and polarity is measured.
pub static TUG_AND_MEASURE: Source = Source::practice_of(words::SOURCE_TUG);
/// The rules used here are those for less than 50 V.
pub static CFR_BELOW_50_V: Source = Source::transcribed_of(words::SOURCE_BELOW_50);

/// Wire laid square to the walls.
pub static SQUARE_ROUTE: Source = Source::practice_of(words::SOURCE_SQUARE);
