# What can hurt someone or ruin the job when lamps are cut into a ceiling.

look-above =
    Before you cut a hole, check above the ceiling for wires, { -rib }s, airbags and the roof skin, and drill a small
    hole first.
overhead = Cutting overhead drops dust in your eyes and lungs: wear goggles and a dust mask.
warm-lamps =
    A recessed lamp needs air behind it: keep foam and batts off it unless its maker allows contact with insulation.
fused-circuit =
    Fuse the lamp circuit at its source, as the circuit sheet says; line-voltage lamps are work for a licensed or
    qualified electrician.
direct-light =
    The map is direct light from ideal beams, an estimate: finishes, dirt and aging lamps change it.

source-overhead = goggles and a dust mask where dust falls on you
source-warm-lamps = recessed lamps kept clear of insulation
source-direct-light = estimates defer to the maker's photometry
