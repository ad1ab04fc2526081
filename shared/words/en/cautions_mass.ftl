# What overloading does, and whose figures come first.

weigh-each-axle =
    These are sums, not a weighing. Before you drive off weigh each axle, and where you can each wheel, with
    everything and everyone aboard, fuel and water full: a vehicle below its gross limit can still overload one axle,
    one side or one tire.
    .source = each axle weighed as it is driven
ratings =
    The limits are those on the vehicle's plate: gross vehicle weight rating for the whole vehicle, gross axle weight
    rating for one axle, measured where its tires meet the ground. Tires and wheels have ratings of their own, at the
    pressure on the plate.
water =
    Water moves from the fresh tank to the waste tank: count whichever loads an axle more. If you fill up before you
    dump the waste tank, count both full.
    .source = both tanks counted as they are driven
on-the-road =
    Carry nothing heavy loose or behind the rear axle: load there lifts the front axle, and steering and braking go
    with it. Bolt or strap everything down for a hard stop. Do not drive an overloaded vehicle.
    .source = load held down, low and between the axles
