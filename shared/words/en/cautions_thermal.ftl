# What warmth in a small closed body can do to those who sleep in it.

air-leakage =
    The dew planes count vapor diffusion only. Air that leaks behind the lining carries far more water: make the lining
    airtight toward the room, ventilate, and do not read "no dew plane" as safe. Ribs and bare metal get wet first.
burning-fuel =
    Anything that burns fuel needs fixed ventilation to the open air. Never sleep with an unvented heater running, and
    never heat with a cooktop.
alarms =
    Install a smoke alarm (UL 217), a carbon monoxide alarm listed for recreational vehicles (UL 2034) and, where propane
    is aboard, a propane detector low down (UL 1484).
way-out = Keep a fire extinguisher by the door, and a second way out that opens from inside without a tool.
flammability = Interior materials within 13 mm of the cabin air must burn no faster than 102 mm a minute.
exposed-foam =
    Cover foam: bare foam burns fast, with poisonous smoke. In a dwelling it must be separated from the room by a
    15-minute thermal barrier, such as 1/2 in gypsum board; the rule does not cover a vehicle, but the fire is the same.
estimate = These are estimates and certify nothing. Local code and the manufacturers' instructions come first.

source-estimate = estimates defer to local code and manufacturers
