# What can hurt someone or ruin the job when a roof-opening trim is cut.

which-side-stays =
    The flange and whatever hangs on it stay; the strip along the roof-side edge comes off. Hatch the strip before you
    cut, and check both numbers at every corner: the cut-off height from the roof-side edge, the kept height from the
    flange.
cut-less-first =
    A trim cut too short is scrap. Cut on the waste side of the line, try it, and trim off the rest; when in doubt cut
    less.
saw-blade =
    Thin plastic takes a fine blade (18 teeth per inch or finer) at low speed, so it does not melt or chip; clamp it to
    a board along the line, with tape over it. Thin metal: snips or a fine metal blade, then deburr; the edge is sharp,
    so wear gloves when you handle it.
eye-protection =
    Wear eye protection, above all overhead: chips fall in your face. Cut the trim on a bench, not in the opening.
what-lies-behind =
    Before a saw or screw goes into the lining around the opening, look behind it: wires, the vent's own leads, roof
    bows. Switch off and disconnect the battery. Roof bows carry load: never cut one without a replacement that the
    body's maker allows.
