//! What can hurt someone, or ruin the job, when mixing, gluing, coating and sanding.

use crate::source::Source;
use crate::words::Phrase;

/// One caution and where it comes from.
pub type Caution = (Phrase, Source);

/// Before anything else.
pub static LABEL_FIRST: Caution = (
    Phrase::Written(
        "The label and the maker's safety sheet come before everything here: amounts, times, \
     protection, disposal.",
    ),
    Source::common_practice("the maker knows what is in the tin"),
);

/// Epoxy and the skin.
pub static EPOXY_SENSITISES: Caution = (
    Phrase::Written(
        "Epoxy resin, hardener and thinners irritate and sensitise: every contact makes an allergy \
     likelier and worse. Wear nitrile gloves (latex lets it through), change them often, keep it off \
     the skin, wash with soap, never with solvent.",
    ),
    Source::transcribed(
        "Gougeon Brothers, Inc., Handling Epoxy; EU-OSHA, OSHwiki, Occupational exposure to epoxy \
         resins; cutaneousallergy.org, Epoxy resin",
        "repeated contact, soap and no solvent; allergic skin disease; gloves; the first read in \
         fusioncats.com's copy",
    ),
);

/// Isocyanates in polyurethane adhesive, foam and two-part finish.
pub static ISOCYANATES_SENSITISE: Caution = (
    Phrase::Written(
        "Polyurethane adhesives, foams and two-part finishes hold isocyanates, a leading cause of \
     occupational asthma; skin contact alone may sensitise. Gloves, fresh air; never spray \
     them in a closed body without supplied air. Whoever is sensitised must stay away.",
    ),
    Source::published(
        "Environmental Health Perspectives 115 (2007), Skin Exposure to Isocyanates: Reasons for \
         Concern (PMC1849909); NIOSH 96-111",
        "abstract and opening: asthma, and the skin as a way to it",
    ),
);

/// Fresh air in a small closed body.
pub static VENTILATION: Caution = (
    Phrase::Written(
        "A vehicle body is a small closed room: open doors, windows and roof openings on two \
     sides, and keep air moving through until the smell is gone. Vapour of solvent gathers in \
     it and has killed floor finishers: no flame, heater, pilot light, smoking or sparking \
     switch.",
    ),
    Source::published(
        "NIOSH FACE, Massachusetts case report 05-MA-044 (2006)",
        "summary: ventilate; ignition sources and pilot lights out before work begins",
    ),
);

/// Curing foam needs air as well.
pub static FOAM_REENTRY: Caution = (
    Phrase::Written(
        "Keep a body with fresh spray foam ventilated and empty for as long as the maker says: \
     the published study ran 10 air changes an hour for 3 h before it went down to 1.",
    ),
    Source::transcribed("ASTM STP 1589", "re-entry after spray foam"),
);

/// Which respirator for what.
pub static RESPIRATOR: Caution = (
    Phrase::Written(
        "Gloves, eye protection and covered skin for mixing, coating and sanding. Resin or solvent \
     vapour: a respirator with organic-vapour cartridges. Dust of wood or cured resin: N95 or \
     better. Filters against dust stop no vapour, cartridges alone no dust: for both at once, \
     both. No mask makes a closed room safe.",
    ),
    Source::transcribed(
        "Gougeon Brothers, Inc., Preventing Overexposure (westsystem.com/safety); University of \
         Houston, Types of Respirators",
        "the first read in a reprint of 2024 at muskegvalleyrabbitry.com",
    ),
);

/// The same by European names.
pub static RESPIRATOR_EN: Caution = (
    Phrase::Written(
        "By European marks: type A cartridges against organic vapour, P3 filters or an FFP3 mask \
     against dust.",
    ),
    Source::from_memory("EN 14387, EN 143 and EN 149", "filter types and classes"),
);

/// A large mass of mixed epoxy heats itself.
pub static LARGE_BATCH_HEAT: Caution = (
    Phrase::Written(
        "Mixed epoxy in a cup heats itself: 100 g can reach 400 F (204 C), more gets hotter. It melts \
     the cup, burns skin and sets fire to what is near; the fumes are toxic, and a cartridge mask \
     may not stop them. Mix small batches and pour them out wide and shallow at once; carry a cup \
     that grows warm outdoors and watch it until it is cold.",
    ),
    Source::published(
        "Gougeon Brothers, Inc., Uncontrolled Cure (westsystem.com/safety)",
        "a 100-gram mass of mixed epoxy can reach 400 F",
    ),
);

/// What to mix in.
pub static MIXING_CUPS: Caution = (
    Phrase::Written(
        "Mix in clean cups of plastic, metal or unwaxed paper, never of glass or foam. Keep to the \
     ratio: more hardener makes nothing faster, it leaves soft resin. Parts by volume are not parts \
     by mass.",
    ),
    Source::published(
        "Gougeon Brothers, Inc., Dispensing and Mixing (westsystem.com)",
        "containers; the cure time is never set by the ratio",
    ),
);

/// Hardener and sawdust.
pub static NO_SAWDUST_ON_HARDENER: Caution = (
    Phrase::Written(
        "Never soak up spilled hardener with sawdust, and throw none into a bin with sawdust or rags: \
     the two heat up and can ignite. Sand or clay takes it up.",
    ),
    Source::published(
        "Gougeon Brothers, Inc., Uncontrolled Cure (westsystem.com/safety)",
        "spontaneous combustion of hardener with cellulose",
    ),
);

/// Rags with drying oil ignite by themselves.
pub static RAGS_IGNITE: Caution = (
    Phrase::Written(
        "Rags, pads and sanding dust with drying oil, stain or varnish heat up and can ignite by \
     themselves within hours. Never leave them in a heap: hang them up or spread them flat \
     outdoors, each by itself, away from the vehicle; dry, into a closed metal can filled with water \
     and detergent.",
    ),
    Source::transcribed(
        "NFPA, Safety with Oily Rags (2017); 29 CFR 1926.252(e)",
        "the tip sheet read as the Village of Bellevue reprinted it; covered fire-resistant containers",
    ),
);

/// Dust of wood and of old finish.
pub static SANDING_DUST: Caution = (
    Phrase::Written(
        "Wood dust irritates eyes and skin, brings asthma and may cause cancer of the nose (dust of oak \
     and beech does). NIOSH's limit is 1 mg/m3 over a day, and above it NIOSH trusts supplied air \
     alone: keep the dust out of the air. Extract at the tool, open the body, vacuum instead of \
     sweeping; a mask is the last thing, not the first.",
    ),
    Source::published(
        "NIOSH Pocket Guide, Wood dust (0667, 2019); OSHA Chemical Sampling Information, wood dust",
        "limit, symptoms and respirators; ACGIH's A1 for oak and beech",
    ),
);

/// Dust of what has not cured.
pub static HALF_CURED_DUST: Caution = (
    Phrase::Written(
        "Let filler and finish cure before you sand them: the dust of half-cured resin sensitises.",
    ),
    Source::transcribed(
        "Gougeon Brothers, Inc., Handling Epoxy",
        "sanding dust of epoxy that has not fully cured; read in fusioncats.com's copy",
    ),
);

/// Lead in old paint.
pub static LEAD_PAINT: Caution = (
    Phrase::Written(
        "Paint on an old body or its fittings may hold lead (homes: before 1978; on a vehicle \
     only a test can tell). Test before you sand. With lead in it: no dry sanding, no \
     grinding, no torch; work wet, HEPA vacuum, keep children and pregnant people away, wash \
     before eating.",
    ),
    Source::transcribed(
        "EPA 747-K-97-001, Reducing Lead Hazards When Remodeling Your Home (1997); New York State \
         Department of Health",
        "work wet, work clean",
    ),
);

/// A coat below the dew point.
pub static DEW_ON_THE_SURFACE: Caution = (
    Phrase::Written(
        "A coat on a surface less than 3 C (5 F) above the dew point blushes, blisters or peels. \
     Measure the metal or the board, not the air, and think of the night: a body of steel is \
     coldest before dawn.",
    ),
    super::air::MARGIN_RULE,
);

/// Wet wood.
pub static WOOD_MOISTURE: Caution = (
    Phrase::Written(
        "Finish and filler do not hold on wet wood: check it with a moisture meter, in the middle of the \
     boards and near the doors, against the label's limit.",
    ),
    Source::common_practice("a moisture meter before every finish"),
);

/// Filler in joints that move.
pub static RIGID_FILLER: Caution = (
    Phrase::Written(
        "Cured epoxy does not stretch: in joints between boards that swell and shrink it cracks, or \
     pushes the boards up. Rigid filler is for holes, cracks within a board and joints that do not \
     move.",
    ),
    Source::common_practice("no rigid filler in joints that move"),
);

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
