# What a label says of a filler or a finish, and the coming night: asked alike by filling, coating and schedule.

## Times.
times-filler = Times on the label
    .help = Only for a schedule that takes its passes from this sheet.
times-coat = Times on the label
    .help = Only for a schedule that takes its coats from this sheet.
work = Time for one
    .help = One pass or coat, from start to finish.
workable = Working time of a batch
    .help = On the label of a two-part product: pot life.
recoat-least = Recoat after
    .help = From the label: the shortest wait before the next pass or coat.
recoat-most = Recoat within
    .help = From the label: the longest wait before the next; after that, abrade first.
cure = Wait after the last one
    .help = Before it is sanded or gets another product. Left out: the same as between coats, or until it can be walked on.
traffic = Wait before walking on it
sand = Sanding between coats takes
    .help = If coats are abraded in between; then there is no longest wait.
prepare = Closing from below and masking takes
    .help = Before the first pass: tape or plugs below, edges masked, the wood checked with the moisture meter.
wash = Washing and drying takes
    .help = After the last pass has cured: amine blush comes off with water, before sanding.
at = At
    .help = The temperature that the label gives these times for.

## Limits.
limits = Limits on the label
    .help = On the label or the data sheet. Without them nobody can say that it may go on.
temperature-least = Lowest temperature
    .help = Of the air and of the surface.
temperature-most = Highest temperature
humidity-most-percent = Highest humidity
    .help = Relative humidity of the air.
moisture-most-percent = Wettest wood
    .help = By moisture meter. Many labels give it, some do not.
most-below-least = it must not be below the lowest temperature

## Air and surface.
night = The coming night, before dawn
    .help =
        Inside, at its coldest: what you read last night, or from the forecast and your heater. A steel body is coldest
        before dawn.
temperature = Air temperature
humidity-percent = Relative humidity
surface-temperature = Surface temperature
    .help = Of steel without a heater: as cold as the air outside, colder under a clear sky.
