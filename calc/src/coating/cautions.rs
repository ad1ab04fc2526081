//! What can hurt someone, or ruin the job, when mixing, gluing, coating and sanding.

use crate::source::Source;
use crate::words::{Phrase, cautions_coating as words};

/// One caution and where it comes from.
pub type Caution = (Phrase, Source);

/// Before anything else.
pub static LABEL_FIRST: Caution =
    (Phrase::Id(words::LABEL_FIRST), Source::practice_of(words::LABEL_FIRST_SOURCE));

/// Epoxy and the skin.
pub static EPOXY_SENSITISES: Caution = (
    Phrase::Id(words::EPOXY),
    Source::transcribed(
        "Gougeon Brothers, Inc., Handling Epoxy; EU-OSHA, OSHwiki, Occupational exposure to epoxy \
         resins; cutaneousallergy.org, Epoxy resin",
        "repeated contact, soap and no solvent; allergic skin disease; gloves; the first read in \
         fusioncats.com's copy",
    ),
);

/// Isocyanates in polyurethane adhesive, foam and two-part finish.
pub static ISOCYANATES_SENSITISE: Caution = (
    Phrase::Id(words::ISOCYANATES),
    Source::published(
        "Environmental Health Perspectives 115 (2007), Skin Exposure to Isocyanates: Reasons for \
         Concern (PMC1849909); NIOSH 96-111",
        "abstract and opening: asthma, and the skin as a way to it",
    ),
);

/// Fresh air in a small closed body.
pub static VENTILATION: Caution = (
    Phrase::Id(words::VENTILATION),
    Source::published(
        "NIOSH FACE, Massachusetts case report 05-MA-044 (2006)",
        "summary: ventilate; ignition sources and pilot lights out before work begins",
    ),
);

/// Curing foam needs air as well.
pub static FOAM_REENTRY: Caution = (
    Phrase::Id(words::FOAM_REENTRY),
    Source::transcribed("ASTM STP 1589", "re-entry after spray foam"),
);

/// Which respirator for what.
pub static RESPIRATOR: Caution = (
    Phrase::Id(words::RESPIRATOR),
    Source::transcribed(
        "Gougeon Brothers, Inc., Preventing Overexposure (westsystem.com/safety); University of \
         Houston, Types of Respirators",
        "the first read in a reprint of 2024 at muskegvalleyrabbitry.com",
    ),
);

/// The same by European names.
pub static RESPIRATOR_EN: Caution = (
    Phrase::Id(words::RESPIRATOR_EN),
    Source::from_memory("EN 14387, EN 143 and EN 149", "filter types and classes"),
);

/// A large mass of mixed epoxy heats itself.
pub static LARGE_BATCH_HEAT: Caution = (
    Phrase::Id(words::BATCH_HEAT),
    Source::published(
        "Gougeon Brothers, Inc., Uncontrolled Cure (westsystem.com/safety)",
        "a 100-gram mass of mixed epoxy can reach 400 F",
    ),
);

/// What to mix in.
pub static MIXING_CUPS: Caution = (
    Phrase::Id(words::MIXING_CUPS),
    Source::published(
        "Gougeon Brothers, Inc., Dispensing and Mixing (westsystem.com)",
        "containers; the cure time is never set by the ratio",
    ),
);

/// Hardener and sawdust.
pub static NO_SAWDUST_ON_HARDENER: Caution = (
    Phrase::Id(words::NO_SAWDUST),
    Source::published(
        "Gougeon Brothers, Inc., Uncontrolled Cure (westsystem.com/safety)",
        "spontaneous combustion of hardener with cellulose",
    ),
);

/// Rags with drying oil ignite by themselves.
pub static RAGS_IGNITE: Caution = (
    Phrase::Id(words::RAGS),
    Source::transcribed(
        "NFPA, Safety with Oily Rags (2017); 29 CFR 1926.252(e)",
        "the tip sheet read as the Village of Bellevue reprinted it; covered fire-resistant containers",
    ),
);

/// Dust of wood and of old finish.
pub static SANDING_DUST: Caution = (
    Phrase::Id(words::SANDING_DUST),
    Source::published(
        "NIOSH Pocket Guide, Wood dust (0667, 2019); OSHA Chemical Sampling Information, wood dust",
        "limit, symptoms and respirators; ACGIH's A1 for oak and beech",
    ),
);

/// Dust of what has not cured.
pub static HALF_CURED_DUST: Caution = (
    Phrase::Id(words::HALF_CURED),
    Source::transcribed(
        "Gougeon Brothers, Inc., Handling Epoxy",
        "sanding dust of epoxy that has not fully cured; read in fusioncats.com's copy",
    ),
);

/// Lead in old paint.
pub static LEAD_PAINT: Caution = (
    Phrase::Id(words::LEAD_PAINT),
    Source::transcribed(
        "EPA 747-K-97-001, Reducing Lead Hazards When Remodeling Your Home (1997); New York State \
         Department of Health",
        "work wet, work clean",
    ),
);

/// A coat below the dew point.
pub static DEW_ON_THE_SURFACE: Caution = (Phrase::Id(words::DEW), super::air::MARGIN_RULE);

/// Wet wood.
pub static WOOD_MOISTURE: Caution =
    (Phrase::Id(words::WOOD_MOISTURE), Source::practice_of(words::WOOD_MOISTURE_SOURCE));

/// Filler in joints that move.
pub static RIGID_FILLER: Caution =
    (Phrase::Id(words::RIGID_FILLER), Source::practice_of(words::RIGID_FILLER_SOURCE));

/// For films: primer, paint, stain, floor finish.
pub static FOR_COATING: [Caution; 10] = [
    LABEL_FIRST,
    ISOCYANATES_SENSITISE,
    VENTILATION,
    RESPIRATOR,
    RESPIRATOR_EN,
    RAGS_IGNITE,
    SANDING_DUST,
    LEAD_PAINT,
    DEW_ON_THE_SURFACE,
    WOOD_MOISTURE,
];

/// For two-part fillers and epoxy.
pub static FOR_FILLING: [Caution; 13] = [
    LABEL_FIRST,
    EPOXY_SENSITISES,
    LARGE_BATCH_HEAT,
    MIXING_CUPS,
    NO_SAWDUST_ON_HARDENER,
    VENTILATION,
    RESPIRATOR,
    RESPIRATOR_EN,
    SANDING_DUST,
    HALF_CURED_DUST,
    LEAD_PAINT,
    WOOD_MOISTURE,
    RIGID_FILLER,
];

/// For adhesive, sealant and foam.
pub static FOR_GLUING: [Caution; 3] = [LABEL_FIRST, ISOCYANATES_SENSITISE, VENTILATION];
