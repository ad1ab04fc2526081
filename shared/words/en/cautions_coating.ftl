# What can hurt someone or ruin the job when filling, gluing, coating and sanding.

label-first =
    The label and the maker's safety data sheet come before everything here: amounts, times, protection, disposal.
    .source = the maker knows what is in the can
epoxy =
    Epoxy resin, hardener and thinner irritate and sensitize: every contact makes an allergy more likely and worse. Wear
    nitrile gloves (latex lets it through), change them often, keep it off your skin, and wash with soap, never with
    solvent.
isocyanates =
    Polyurethane adhesive, foam and two-part finish contain isocyanates, a leading cause of occupational asthma; skin
    contact alone may sensitize. Wear gloves, work in fresh air, and never spray them in a closed body without supplied
    air. Anyone sensitized must stay away.
ventilation =
    A vehicle body is a small closed room: open doors, windows and roof openings on two sides, and keep air moving
    through until the smell is gone. Solvent vapor builds up in it and has killed floor finishers: no flame, heater,
    pilot light, smoking or sparking switch.
foam-reentry =
    Keep a body with fresh spray foam ventilated and empty for as long as the maker says: the published study ran 10 air
    changes an hour for 3 h before it went down to 1.
respirator =
    Wear gloves, eye protection and covered skin for mixing, coating and sanding. Resin or solvent vapor: a respirator
    with organic vapor cartridges. Dust of wood or cured resin: N95 or better. Dust filters stop no vapor, and
    cartridges alone stop no dust: against both at once, wear both. No mask makes a closed room safe.
respirator-en = By European marks: type A cartridges against organic vapor, P3 filters or an FFP3 mask against dust.
batch-heat =
    Mixed epoxy in a cup heats itself: 100 g can reach 400 °F (204 °C), and more gets hotter. It melts the cup, burns
    skin and sets fire to what is near; the fumes are toxic, and a cartridge mask may not stop them. Mix small batches
    and pour them out wide and shallow at once. Carry a cup that gets warm outdoors, and watch it until it is cold.
mixing-cups =
    Mix in clean cups of plastic, metal or unwaxed paper, never glass or foam. Keep to the ratio: more hardener does not
    cure faster, it leaves soft resin. Parts by volume are not parts by weight.
no-sawdust =
    Never soak up spilled hardener with sawdust, and never throw it into a bin with sawdust or rags: they heat up and can
    ignite. Use sand or clay.
rags =
    Rags, pads and sanding dust with drying oil, stain or varnish heat up and can ignite by themselves within hours.
    Never leave them in a pile: hang them up or spread them flat outdoors, one by one, away from the vehicle; once dry,
    put them in a closed metal can filled with water and detergent.
sanding-dust =
    Wood dust irritates eyes and skin, causes asthma and may cause cancer of the nose (oak and beech dust does). NIOSH's
    limit is 1 mg/m³ over a day, and above it NIOSH trusts supplied air alone: keep the dust out of the air. Collect it at
    the tool, open the body, vacuum instead of sweeping; a mask is the last resort, not the first.
half-cured = Let filler and finish cure before you sand: dust of half-cured resin sensitizes.
lead-paint =
    Paint on an old body or its fittings may contain lead (homes: before 1978; on a vehicle only a test can tell). Test
    before you sand. If it has lead: no dry sanding, no grinding, no torch; work wet, use a HEPA vacuum, keep children and
    pregnant women away, and wash before you eat.
dew =
    A coat on a surface less than 3 °C (5 °F) above the dew point blushes, blisters or peels. Measure the metal or the
    board, not the air, and think of the night: a steel body is coldest before dawn.
wood-moisture =
    Finish and filler do not bond to wet wood: check it with a moisture meter, in the middle of the boards and near the
    doors, against the label's limit.
    .source = a moisture meter before every finish
rigid-filler =
    Cured epoxy does not stretch: in joints between boards that swell and shrink it cracks, or pushes the boards up. Rigid
    filler is for holes, cracks within a board and joints that do not move.
    .source = no rigid filler in joints that move
