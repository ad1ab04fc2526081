title = Insulation
purpose = See how much heat a wall, roof or floor lets through, how cold its lining gets, and where it gets wet.

layers = Layers, inside to outside
    .help = Start at the lining you touch; end at the skin.
    .row = layer
name = Material
    .help = Pick from the list to fill in what it knows, or type your own; the label comes first.
material = material
thickness = Thickness
    .help = As installed: compressed foam counts at its compressed thickness.
conductivity = Conductivity
    .help = On the label or data sheet, as λ or k.
vapour-factor = Vapor resistance factor
    .help =
        μ on the data sheet: 1 for still air, 1 000 000 for metal and glass. The dew planes need it for every layer.
        Of a range, the low figure is the careful one on the warm side, the high one outside the plane that gets wet.
surface-in = Resistance of the inside air film
    .help = 0.13 m2K/W for a wall, 0.10 for a roof and 0.17 for a floor in winter.
surface-out = Resistance of the outside air film
    .help = 0.04 m2K/W when parked; driving or a gale makes it smaller.

bridge = Battens or ribs through a layer
    .help = Wood by its share of the area; a steel rib by its widths and spacing.
bridge-layer = Layer they cross
    .help = Counted from 1 at the inside.
share = Wood: share of the area
    .help = Width of a batten divided by the spacing on center; leave blank for metal ribs.
metal-width = Steel rib: widest part
    .help = Across the flange that the lining rests on.
web = Steel rib: web thickness
    .help = Metal that reaches from the skin to the flange; for a hat section, both sides added.
spacing = Steel rib: spacing on center
    .help = From the center line of one rib to the next.
bridge-conductivity = Conductivity of batten or rib
    .help = Softwood 0.13 W/m/K, steel 50, stainless steel 17, aluminum 160.

inside = Inside air
outside = Outside air
    .help = The coldest night you will camp in it.
temperature = Temperature
    .help = Of the air.
humidity-percent = Relative humidity
    .help = Off a hygrometer; inside, read it in the morning before you air out.

layer = layer { $number }
share-or-rib = give the share of the area for wood, or widths and spacing for a steel rib, not both
share-missing =
    give the share of the area the wood takes up, for example 12 %; for a steel rib, give its width, web and
    spacing
rib-incomplete = a steel rib needs its width, its web and its spacing

## What is wrong between the inputs.
no-layers = a build-up needs at least one layer
thickness-range = layer { $layer }: the thickness must be from 0.01 mm to 5 m
conductivity-range = layer { $layer }: the conductivity must be from 0.001 to 1000 W/m/K
film-range = an air film's resistance must be from 0 to 1 m2K/W; 0.13 and 0.04 are usual
no-such-layer =
    { $layers ->
        [one] there is no layer { $layer }: there is only one
       *[other] there is no layer { $layer }: the layers go from 1 to { $layers }
    }
share-range = the share of the area must be above 0 and below 100 percent
metal-bridge =
    a bridge of { $conductivity } is metal, which ISO 6946 leaves out. Enter it as a steel rib: clear the share, and
    give its width, web and spacing
limits-apart =
    the upper limit is { $ratio } times the lower one; ISO 6946 holds up to { $most }: have it worked out by a
    two-dimensional calculation
rib-widths =
    the web must be at least 0.1 mm, the metal no narrower than the web, and the spacing wider than the metal and at
    most 5 m
rib-conductivity = the metal's conductivity must be from 1 to 1000 W/m/K; steel is about 50
zones-overlap =
    each rib draws heat from { $zone }, more than the spacing of { $spacing }: the zone method needs ribs farther apart
air-temperature = the air temperature must be from -60 to 80 C
air-humidity = the relative humidity must be from 0 to 100 percent; a dew point needs at least 1 percent
air-inside = inside: { $what }
air-outside = outside: { $what }
vapour-range =
    layer { $layer }: the vapor factor must be from 0.01 to 10 000 000; still air is 1, metal 1 000 000

## Answers.
u = Heat let through (U)
u-plain = R { $r }
u-crossed =
    { $by ->
        [ribs] R { $r }; without ribs U { $u }
       *[battens] R { $r }; without battens U { $u }
    }
lining = Lining, inside face
lining-over =
    { $by ->
        [ribs] over ribs about { $temperature }
       *[battens] over battens about { $temperature }
    }
gathering = Water collecting inside
    .none = none by diffusion
    .note = by diffusion only; leaking air brings far more
rate = { $grams } g/m² a day

## Remarks.
wet-everywhere =
    The lining is colder than the dew point of { $dew }: it gets wet everywhere. It takes more insulation, or more fresh
    air.
wet-over =
    { $by ->
        [ribs]
            Over the ribs the lining is colder than the dew point of { $dew }: it gets wet there. Insulate over the
            ribs, or bring in more fresh air.
       *[battens]
            Over the battens the lining is colder than the dew point of { $dew }: it gets wet there. Insulate over the
            battens, or bring in more fresh air.
    }
mold =
    The lining stays above the dew point of { $dew }, but at its coldest the air is at { $humidity } humidity: mold can
    grow from { $limit } up. It takes more insulation, or more fresh air.
dry =
    The lining stays above the dew point of { $dew }, and at its coldest below the { $limit } at which mold can start to
    grow.
dew-point = The dew point of the inside air is { $dew }.
wet-behind =
    { $frost ->
        [yes]
            Frost builds up behind { $layer } at { $temperature }: { $grams } g/m² a day by diffusion. A vapor
            retarder at the lining cuts it down.
       *[no]
            Water collects behind { $layer } at { $temperature }: { $grams } g/m² a day by diffusion. A vapor
            retarder at the lining cuts it down.
    }
wet-within =
    { $frost ->
        [yes] Frost builds up within { $layer }, down to { $temperature }: { $grams } g/m² a day by diffusion.
       *[no] Water collects within { $layer }, down to { $temperature }: { $grams } g/m² a day by diffusion.
    }
no-water =
    No water collects by diffusion. That does not clear the wall: air that leaks behind the lining brings far more.
outside-dew = Dew forms on the outside of the skin; it does no harm there.
factors-missing = For the dew planes, give the vapor factor of { $layers } too.
air-missing = Give the inside and outside air to see temperatures and where it gets wet.
humidity-limit =
    At these temperatures keep the inside humidity below { $humidity }: above that, the air at the coldest part of the
    lining is past { $limit }, and mold can grow (ISO 13788). You do not get to pick the humidity: two sleepers give
    off about 100 g of water an hour, and fresh air has to carry it off.
rib-temperature =
    The temperature over a rib is an estimate: it takes the heat to flow straight through a strip as wide as the metal.
    A strip of foam over the ribs, under the lining, helps most.
rib-estimate =
    The U value with ribs is an estimate. Against a two-dimensional model of 18 T ribs (flange 20 to 80 mm, web 1 to
    3 mm, insulation 20 to 80 mm, lining 3 to 20 mm) it read from 1.5 % low to 5.5 % high; hat sections and other sizes
    were not checked and can be farther off. Rivets, rails along the body, corners, door frames and wheel wells are
    left out: more heat goes there.
left-out =
    The dew planes leave out, above all, air that leaks behind the lining; also driving rain, sun, what materials soak
    up, and days that differ from the mean.

## Tables.
usual = Usual figures; the label comes first
    .material = Material
    .conductivity = Conductivity
    .factor = Vapor factor
    .conductivity-source = Source of the conductivity
    .factor-source = Source of the vapor factor
range = { $low } to { $high }
through = Through the layers
    .battens = Through the layers, between the battens
    .ribs = Through the layers, between the ribs
    .face = Face
    .temperature = Temperature
    .vapor = Vapor
    .saturated = Saturated at
face-lining = inside face of the lining
face-behind = behind { $layer }

## Drawings.
section = Section with temperatures
    .words =
        { $planes ->
            [0] { $layers } layers, { $thickness } thick, the lining on the left.
            [1] { $layers } layers, { $thickness } thick, the lining on the left; water collects at one place.
           *[other] { $layers } layers, { $thickness } thick, the lining on the left; water collects at { $planes } places.
        }
    .inside = inside
    .outside = outside
    .wood = wood, { $share } of the area
    .dew = dew point { $temperature }
    .water = water, { $temperature }
pitch = From rib to rib
    .words =
        One rib and the field beside it, the lining at the bottom. U { $zone } through the rib's zone, { $field } between
        ribs, { $all } overall.
    .width = { $width }: U { $u }
    .field = U { $u }
pressures = Section with vapor pressures
    .words =
        { $planes ->
            [0] Vapor pressure, the solid line, below saturation, the dashed line; they touch nowhere.
            [1] Vapor pressure, the solid line, below saturation, the dashed line; they touch at one place.
           *[other] Vapor pressure, the solid line, below saturation, the dashed line; they touch at { $planes } places.
        }
    .saturated = saturated { $pressure }
    .vapor = vapor { $pressure }

## Working.
step-all = All layers and both air films
step-upper = Upper limit: heat keeps to its path, through the wood or beside it
step-lower = Lower limit: every layer evens out sideways
step-mean = Resistance
step-zone = Zone that one rib draws heat from; d is the cover, at least { $least }
step-zone-r = Through that zone: flange, then web, each side by side with the filling
step-ribbed = U value with ribs
step-u = U value
step-dew = Dew point of the inside air
step-lining = Lining, inside face
    .battens = Lining between battens
    .ribs = Lining between ribs
step-over-rib = Lining over a rib
step-water = Water behind { $layer }; b is how fast the vapor pressure falls per meter of still air

## Materials.
material-xps = extruded polystyrene (XPS)
material-eps = expanded polystyrene (EPS)
material-polyiso = polyisocyanurate board
material-polyurethane = rigid polyurethane foam
material-spray-foam = closed-cell spray foam
material-mineral-wool = mineral wool
material-elastomeric = elastomeric foam
material-cork = cork board
material-softwood = softwood
material-hardwood = hardwood
material-softwood-plywood = softwood plywood
material-birch-plywood = birch plywood
material-gypsum = gypsum board
material-linoleum = linoleum
material-carpet = carpet
material-fiberglass = fiberglass polyester
material-glass = window glass
material-acrylic = acrylic sheet
material-steel = steel
material-stainless = stainless steel
material-aluminum = aluminum
material-copper = copper

## Sources.
source-factor = fRsi = (Tsi − Te) / (Ti − Te) = 1 − U Rsi where heat flows straight
source-strip = a strip as wide as the metal, heat flowing straight through
