# What can hurt someone or ruin the job when boards and strips are cut and put up.

look-behind =
    Before you drive a screw, look behind the wall and above the ceiling for wires, fuel and brake lines and
    airbags; keep screws too short to reach them and the outer skin.
dust =
    Drill and cut outdoors or with extraction, and wear a dust mask and eye protection; under a ceiling everything
    falls in your face.
saw =
    Support both sides of every cut so that it cannot close on the blade, keep your hands off the line, and let the
    saw stop before you move the offcut.
measure-again = Cut and fit one piece of each kind before you cut the rest: a body is rarely straight.
overhead =
    What hangs overhead must stay up in a crash and on rough roads: screw into steel or solid framing, count only
    the screws that bite, and never rely on adhesive alone.
drilled-steel = Drilled steel rusts: brush away every chip, then prime and paint the edges of the holes.

source-look-behind = Vehicle body builders' guides, drilling
source-dust = extraction, dust mask and eye protection; wood dust has an exposure limit in the NIOSH Pocket Guide
source-saw = support the work on both sides of the cut
source-measure-again = try one before cutting all
source-overhead = overhead parts are held by screws, not by glue
source-drilled-steel = bare edges of holes in steel are primed and painted
