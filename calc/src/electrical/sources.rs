//! Sources of the electrical formulas and tables.

use crate::source::Source;

/// Stranded uncoated copper, resistance at 75 C, circular mils, bare diameter.
pub static NEC_TABLE_8: Source = Source::transcribed("NEC (NFPA 70)", "chapter 9, table 8");
/// R2 = R1 (1 + 0.00323 (T2 - 75)) for copper.
pub static NEC_TABLE_8_NOTE: Source =
    Source::transcribed("NEC (NFPA 70)", "chapter 9, table 8, note 2");
/// Greatest resistance of flexible (class 5) plain copper conductors at 20 C.
pub static IEC_60228_CLASS_5: Source =
    Source::transcribed("IEC 60228", "class 5, plain copper, 20 C");
/// Temperature coefficient of annealed copper, 0.00393 per K at 20 C.
pub static COPPER_TEMPERATURE_COEFFICIENT: Source =
    Source::transcribed("IEC 60287-1-1", "table 1, copper");
/// A circular mil is the area of a circle one thousandth of an inch across.
pub static CIRCULAR_MIL: Source = Source::identity("1 circular mil = pi/4 (0.0254 mm)^2");
/// A resistance typed by the person is taken as it is, at every temperature.
pub static GIVEN_RESISTANCE: Source =
    Source::identity("resistance per length as typed, no temperature correction");
/// Density of annealed copper.
pub static COPPER_DENSITY: Source = Source::from_memory("IEC 60028", "8.89 g/cm3 at 20 C");
/// Bare diameter of fine-stranded conductors by the filling of concentric stranding.
pub static STRANDED_DIAMETER: Source = Source::common_practice(
    "a stranded conductor is 1.14 times as wide as solid wire of its area, as in NEC chapter 9 table 8",
);
/// Thickness of insulation by conductor area.
pub static INSULATION_WALL: Source = Source::from_memory("UL 1426", "insulation thickness");
/// Drop of a two-wire run: V = I * 2 L r.
pub static OHMS_LAW: Source = Source::identity("Ohm's law, both conductors of the run counted");
/// Allowable current by AWG size and insulation rating.
pub static CFR_TABLE_5: Source = Source::transcribed("33 CFR 183.425", "table 5");
/// Least conductor sizes.
pub static CFR_LEAST_SIZE: Source = Source::transcribed("33 CFR 183.425", "(d), (e), boats");
/// Least conductor sizes in mm2.
pub static ISO_10133_LEAST_SIZE: Source =
    Source::transcribed("ISO 10133", "small craft: 1 mm2 single, 0.75 mm2 in a sheath");
/// A mm2 size takes the value of the AWG size next below it by copper area.
pub static METRIC_BY_AWG: Source = Source::transcribed(
    "33 CFR 183.425",
    "table 5, the AWG size next below by copper area (conservative)",
);
/// A resistance takes the value of the nearest AWG size that resists at least as much.
pub static OHM_BY_AWG: Source = Source::transcribed(
    "33 CFR 183.425",
    "table 5, the AWG size that resists at least as much at 20 C, NEC chapter 9 table 8 (conservative)",
);
/// Fuses of the low-voltage circuits of park trailers.
pub static NEC_552_FUSE: Source =
    Source::from_memory("NEC (NFPA 70)", "table 552.10(E)(1), park trailers: 6, 8, 15, 20, 30 A");
/// Fuses before small conductors.
pub static NEC_240_4_D: Source = Source::transcribed(
    "NEC (NFPA 70)",
    "240.4(D): 15, 20, 30 A for 14, 12, 10 AWG; 7 and 10 A for 18 and 16 AWG from memory",
);
/// Fuses before the wire of boats.
pub static CFR_BOAT_FUSE: Source =
    Source::transcribed("33 CFR 183.455", "(c), boats: up to 150 % of table 5 below 50 V");
/// Half the current for a cable that runs through thermal insulation for half a metre or more.
pub static BS_7671_INSULATION: Source =
    Source::transcribed("BS 7671", "523.9: 0.5 for 0.5 m or more in thermal insulation");
/// A charging voltage that was typed.
pub static CHARGING_AS_GIVEN: Source = Source::identity("charging voltage as given");
/// Voltage of blade and strip fuses.
pub static FUSE_32_V: Source = Source::transcribed(
    "ISO 8820-3, ISO 8820-5",
    "blade fuses up to 100 A and strip fuses up to 500 A, 32 V",
);
/// Voltage of the higher blade fuses.
pub static ISO_8820_3_VOLTAGE: Source =
    Source::transcribed("ISO 8820-3", "blade fuses up to 100 A, 58 V");
/// Voltage of class T fuses.
pub static CLASS_T_VOLTAGE: Source =
    Source::from_memory("UL 248-15", "class T, up to 1200 A, 125 V DC");
/// Allowable current of 0.75 mm2, below the smallest size of 33 CFR 183.425.
pub static ISO_10133: Source = Source::from_memory("ISO 10133", "small craft, table A.1, 0.75 mm2");
/// Reduction for conductors bundled together.
pub static ABYC_BUNDLING: Source =
    Source::transcribed("ABYC E-11", "bundling factors, 105 C insulation");
/// Reduction for warm surroundings: sqrt((Tc - Ta') / (Tc - Ta)).
pub static AMBIENT: Source = Source::from_memory("NEC (NFPA 70)", "310.15(B)(2)");
/// Ratings of blade fuses.
pub static ISO_8820_3: Source = Source::transcribed("ISO 8820-3", "type C ratings");
/// The 1 A blade fuse, which the transcription left out.
pub static ISO_8820_3_ONE_AMPERE: Source = Source::from_memory("ISO 8820-3", "type C ratings, 1 A");
/// Standard ratings of fuses beyond blade fuses.
pub static NEC_240_6: Source = Source::transcribed("NEC (NFPA 70)", "240.6(A)");
/// A device carries at least 125 % of a continuous load.
pub static NEC_CONTINUOUS: Source = Source::transcribed("NEC (NFPA 70)", "210.20(A), 215.3");
/// A load expected to last three hours or more is continuous.
pub static NEC_CONTINUOUS_MEANS: Source = Source::from_memory("NEC (NFPA 70)", "article 100");
/// A device is rated no more than the conductor it protects.
pub static FUSE_PROTECTS_CONDUCTOR: Source = Source::transcribed("NEC (NFPA 70)", "240.4");
/// The law's own wider limit below 50 V: 150 % of the table value. Not used, only told.
pub static CFR_FUSE_LIMIT: Source = Source::transcribed("33 CFR 183.455", "(c)");
/// Device at the source.
pub static CFR_FUSE_PLACE: Source = Source::transcribed("33 CFR 183.455", "(b)");
/// Sizing by circular mils: CM = 10.75 I L / E.
pub static ABYC_CIRCULAR_MILS: Source = Source::transcribed("ABYC E-11", "11.14.2.6");
/// Constant-power load behind a resistance: high root, and none beyond Vs^2 / (4 R).
pub static CONSTANT_POWER: Source =
    Source::identity("V = (Vs + sqrt(Vs^2 - 4 R P)) / 2, the upper root of V (Vs - V) = R P");
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
pub static CONNECTOR_WAYS: Source =
    Source::common_practice("splicing connectors are sold with 2, 3 and 5 ways");
/// Thickest wire that splicing connectors take.
pub static CONNECTOR_SIZES: Source =
    Source::common_practice("splicing connectors take wire up to about 10 AWG or 6 mm2");
/// Studs for lugs.
pub static STUD_SIZES: Source = Source::common_practice(
    "lugs up to 6 AWG or 16 mm2 on M6 or 1/4 in studs, thicker ones on M8 or 5/16 in",
);
/// Least circle around equal circles.
pub static CIRCLE_PACKING: Source =
    Source::transcribed("table of circle packings in a circle", "1 to 20 equal circles");
/// Bundle rule of thumb.
pub static BUNDLE_RULE: Source =
    Source::common_practice("a bundle of wires is 1.2 sqrt(sum of d^2) across");
/// Colours of DC positive, negative and bonding conductors.
pub static ABYC_COLOURS: Source = Source::transcribed("ABYC E-11", "table XIV");
/// Colours of DC branch circuits.
pub static ABYC_BRANCH_COLOURS: Source = Source::transcribed("ABYC E-11", "table XV");
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
pub static ABYC_INTERRUPTING: Source =
    Source::transcribed("ABYC E-11", "ampere interrupting capacity");
/// Caution: blade fuses break no more than 1000 A.
pub static ISO_8820_3_BREAKING: Source =
    Source::transcribed("ISO 8820-3", "scope, breaking capacity 1000 A");
/// Caution: stranded copper only.
pub static CFR_STRANDED_COPPER: Source = Source::transcribed("33 CFR 183.425", "(a)");
/// Caution: supports, chafe protection, grommets at sheet-metal edges.
pub static ISO_10133_PROTECTION: Source = Source::transcribed("ISO 10133", "7.3 to 7.5");
/// Caution: DC wiring apart from mains wiring.
pub static ISO_10133_APART: Source = Source::transcribed("ISO 10133", "7.8");
/// Caution: mains and shore power only by a licensed or qualified electrician.
pub static IEC_CARAVANS: Source = Source::transcribed("IEC 60364-7-708, IEC 60364-7-721", "");
/// Caution: chassis return only where the vehicle maker allows it.
pub static NEC_CHASSIS_RETURN: Source =
    Source::transcribed("NEC (NFPA 70)", "552.10(B)(1) exception, park trailers");
/// Caution: bonding of the battery.
pub static NEC_BONDING: Source =
    Source::transcribed("NEC (NFPA 70)", "552.10(C)(4), park trailers");
/// Caution: metal must not bridge battery terminals.
pub static ISO_10133_BATTERY: Source = Source::transcribed("ISO 10133", "5.2, 5.4");
/// Least drop limits by what is fed: 3 % for critical loads, 10 % for others.
pub static ABYC_DROP_LIMITS: Source = Source::transcribed("ABYC E-11", "11.14.2.6");
/// Caution: splices stay accessible.
pub static SPLICES_IN_REACH: Source =
    Source::from_memory("NEC (NFPA 70)", "300.15, 314.29 (accessible connections)");
/// Caution: joints are tugged and polarity is measured.
pub static TUG_AND_MEASURE: Source =
    Source::common_practice("a joint that holds a tug, polarity by meter");
/// The rules used here are those for less than 50 V.
pub static CFR_BELOW_50_V: Source = Source::transcribed("33 CFR 183.455", "(c), less than 50 V");

/// Wire laid square to the walls.
pub static SQUARE_ROUTE: Source = Source::common_practice(
    "wire along the body and across it, |dx| + |dy|, and the way up and over once",
);
