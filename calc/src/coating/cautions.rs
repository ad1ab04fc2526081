//! What can hurt someone, or ruin the job, when mixing, gluing, coating and sanding.

use crate::source::Source;

/// One caution and where it comes from.
pub type Caution = (&'static str, Source);

/// Before anything else.
pub static LABEL_FIRST: Caution = (
    "The label and the maker's safety sheet come before everything here: amounts, times, \
     protection, disposal.",
    Source::common_practice("the maker knows what is in the tin"),
);

/// Epoxy and the skin.
pub static EPOXY_SENSITISES: Caution = (
    "Epoxy resin, hardener and thinners irritate and sensitise: an allergy can follow one \
     contact and stays for life. Wear nitrile gloves (thin latex lets it through), change \
     them when soiled, keep it off the skin, wash with soap, never with solvent.",
    Source::transcribed("EU-OSHA, OSHwiki; CPWR; makers' safety texts", "epoxy resins and skin"),
);

/// Isocyanates in polyurethane adhesive, foam and two-part finish.
pub static ISOCYANATES_SENSITISE: Caution = (
    "Polyurethane adhesives, foams and two-part finishes hold isocyanates, a leading cause of \
     occupational asthma; skin contact alone may sensitise. Gloves, fresh air; never spray \
     them in a closed body without supplied air. Whoever is sensitised must stay away.",
    Source::transcribed("NIOSH on isocyanates; reviewed in PMC1849909", "skin exposure and asthma"),
);

/// Fresh air in a small closed body.
pub static VENTILATION: Caution = (
    "A vehicle body is a small closed room: open doors, windows and roof openings on two \
     sides, and keep air moving through until the smell is gone. Vapour of solvent gathers in \
     it and has killed floor finishers: no flame, heater, pilot light, smoking or sparking \
     switch.",
    Source::transcribed(
        "NIOSH FACE, Massachusetts case report 05-MA-044; Construction Safety Association of \
         Ontario on floor coatings",
        "ventilate; ignition sources and pilot lights out before work begins",
    ),
);

/// Curing foam needs air as well.
pub static FOAM_REENTRY: Caution = (
    "Keep a body with fresh spray foam ventilated and empty for as long as the maker says: \
     the published study ran 10 air changes an hour for 3 h before it went down to 1.",
    Source::transcribed("ASTM STP 1589", "re-entry after spray foam"),
);

/// Which respirator for what.
pub static RESPIRATOR: Caution = (
    "Solvent vapour: a half mask with organic-vapour cartridges (NIOSH OV; EN type A). \
     Sanding dust: N95/P100 (EN P2/P3). Both at once: combined OV/P100 (A2P3). A paper mask \
     stops no vapour, and a cartridge mask does not make a closed room safe.",
    Source::transcribed(
        "NIOSH 96-101 (42 CFR 84), appendix B; EN 14387 and EN 143",
        "cartridges and filter classes",
    ),
);

/// A large mass of mixed epoxy heats itself.
pub static LARGE_BATCH_HEAT: Caution = (
    "Mixed epoxy in a deep cup heats itself: makers' texts report 221 F (105 C) in a cup, and \
     a gallon hard within minutes. Mix small batches, pour them out wide and shallow at once; \
     carry a cup that grows hot outdoors. No foam or glass cups.",
    Source::transcribed("Epoxy makers' safety texts", "exothermic heat of a large mass"),
);

/// Never change the ratio.
pub static KEEP_THE_RATIO: Caution = (
    "Keep to the ratio: more hardener makes nothing faster, it leaves soft resin. Parts by \
     volume are not parts by mass.",
    Source::transcribed("Epoxy makers' handling texts", "mixing ratio"),
);

/// Rags with drying oil ignite by themselves.
pub static RAGS_IGNITE: Caution = (
    "Rags, pads and sanding dust with drying oil, stain or varnish heat up and can ignite by \
     themselves within hours. Never leave them in a heap: spread them flat outdoors to \
     harden, or keep them under water in a closed metal can until they leave the site.",
    Source::transcribed(
        "29 CFR 1926.252(e); an insurer's loss-control sheet on oily rags",
        "fire-resistant covered containers; under water in a closed metal can",
    ),
);

/// Dust of wood and of old finish.
pub static SANDING_DUST: Caution = (
    "Wood dust harms nose and lungs, and oak and beech dust causes cancer: the recommended \
     limit is 1 mg/m3. Extract at the tool, wear a P2 or N95 mask at least, vacuum instead of \
     sweeping.",
    Source::transcribed("NIOSH Pocket Guide, 0667; ACGIH: oak and beech A1", "wood dust"),
);

/// Dust of what has not cured.
pub static HALF_CURED_DUST: Caution = (
    "Let filler and finish cure before you sand them: the dust of half-cured resin sensitises.",
    Source::transcribed(
        "Epoxy makers' safety texts",
        "dust of half-cured epoxy; wait several days, or sand wet",
    ),
);

/// Lead in old paint.
pub static LEAD_PAINT: Caution = (
    "Paint on an old body or its fittings may hold lead (homes: before 1978; on a vehicle \
     only a test can tell). Test before you sand. With lead in it: no dry sanding, no \
     grinding, no torch; work wet, HEPA vacuum, keep children and pregnant people away, wash \
     before eating.",
    Source::transcribed(
        "EPA 747-K-97-001, Reducing Lead Hazards When Remodeling Your Home; New York State \
     Department of Health",
        "work wet, work clean",
    ),
);

/// A coat below the dew point.
pub static DEW_ON_THE_SURFACE: Caution = (
    "A coat on a surface less than 3 C (5 F) above the dew point blushes, blisters or peels. \
     Measure the metal or the board, not the air.",
    super::air::MARGIN_RULE,
);

/// For films: primer, paint, stain, floor finish.
pub static FOR_COATING: [Caution; 8] = [
    LABEL_FIRST,
    ISOCYANATES_SENSITISE,
    VENTILATION,
    RESPIRATOR,
    RAGS_IGNITE,
    SANDING_DUST,
    LEAD_PAINT,
    DEW_ON_THE_SURFACE,
];

/// For two-part fillers and epoxy.
pub static FOR_FILLING: [Caution; 9] = [
    LABEL_FIRST,
    EPOXY_SENSITISES,
    LARGE_BATCH_HEAT,
    KEEP_THE_RATIO,
    VENTILATION,
    RESPIRATOR,
    SANDING_DUST,
    HALF_CURED_DUST,
    LEAD_PAINT,
];

/// For adhesive, sealant and foam.
pub static FOR_GLUING: [Caution; 3] = [LABEL_FIRST, ISOCYANATES_SENSITISE, VENTILATION];
