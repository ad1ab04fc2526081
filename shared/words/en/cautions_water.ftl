# What can hurt someone or ruin the job where water is carried and drained.

tank-down =
    Strap the tank down on every side, low and between the axles, to the body and not to the paneling: its water is
    as heavy as a person, and it pushes forward under braking and far harder in a crash. Use straps and anchors as
    the tank's or the vehicle's maker says.
    .source = tanks strapped down on every side
trap =
    Put a trap or a waterless valve right below the sink; from there the drain falls all the way, with no second dip.
    Without it gases from the waste tank come up into the room.
vent =
    Vent both tanks to the open air, the waste tank above its inlet: a tank that cannot breathe bulges, collapses, or
    blows through the trap. Put a strainer ahead of the pump.
    .source = tanks vented to the open air, a strainer ahead of the pump
pump-fuse =
    Give the pump its own fuse, of the rating its maker prints, and a switch: a pump that runs dry or stalls burns out.
    .source = a pump on its own fuse, of the rating its maker prints
potable =
    Use a tank, hose and fittings rated for drinking water, and disinfect them as their makers say before the first
    fill and after the rig has stood unused.
frost = Drain the tank, pump, trap and pipes before it freezes.
    .source = water expands as it freezes and bursts what holds it
