//! The build-up in section to scale: its temperature line over it, and the vapour pressure lines.

use uom::si::f64::{Length, ThermodynamicTemperature};
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::thermal_conductivity::watt_per_meter_kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::found::Found;
use super::{Crossing, Inputs};
use crate::drawing::{Anchor, Drawing, Fill, Pen, Point};
use crate::formula::Formula as _;
use crate::quantity::Style;
use crate::thermal::build_up::METAL_CONDUCTIVITY;
use crate::words::{Arg, insulation as words};

/// Below this, W/(m K), a layer is drawn as insulation.
const INSULATES: f64 = 0.06;

pub(super) fn drawings(inputs: &Inputs, found: &Found, style: Style) -> Vec<Drawing> {
    let frame = Frame::of(inputs);
    let mut drawings = vec![temperatures(inputs, found, &frame, style)];
    drawings.extend(pitch(inputs, found, &frame, style));
    drawings.extend(pressures(inputs, found, &frame, style));
    drawings
}

/// Where the layers lie on the drawing: x from the lining to the skin.
#[derive(Clone)]
struct Frame {
    /// Faces, the lining's first. [m]
    faces: Vec<f64>,
    /// Height of the part with the lines. [m]
    height: f64,
    /// Height of the part below with what crosses. [m]
    below: f64,
    /// Room for the air on either side. [m]
    air: f64,
}

impl Frame {
    fn of(inputs: &Inputs) -> Self {
        let mut faces = vec![0.0];
        let mut at = 0.0;
        for layer in &inputs.layers {
            at += layer.thickness.get::<meter>();
            faces.push(at);
        }
        let below = match &inputs.bridge {
            None => 0.0,
            Some(Crossing::Timber(_)) => at * 0.25,
            Some(Crossing::Steel(rib)) => rib.metal_width.get::<meter>().min(at) * 1.3,
        };
        Self { faces, height: at * 0.8, below, air: at * 0.18 }
    }

    fn total(&self) -> f64 {
        self.faces.last().copied().unwrap_or_default()
    }

    fn bottom(&self) -> f64 {
        self.height + self.below
    }

    /// A height for a value between two ends, the higher value higher up.
    fn y(&self, value: f64, low: f64, high: f64) -> f64 {
        let span = if high - low > 1e-9 { high - low } else { 1.0 };
        self.height * (0.92 - 0.84 * (value - low) / span)
    }

    fn layers(&self, inputs: &Inputs, style: Style, drawing: &mut Drawing) {
        for (index, (layer, pair)) in inputs.layers.iter().zip(self.faces.windows(2)).enumerate() {
            let fill = fill_of(layer.conductivity.get::<watt_per_meter_kelvin>());
            drawing.rectangle(
                Pen::Solid,
                fill,
                Point::metres(pair[0], 0.0),
                Point::metres(pair[1], self.bottom()),
            );
            drawing.text(
                Point::metres((pair[0] + pair[1]) / 2.0, -self.total() * 0.03),
                Anchor::Middle,
                inputs.name(index, style),
            );
        }
        let gap = self.total() * 0.03;
        for (x, anchor, text) in [
            (-gap, Anchor::End, words::SECTION_INSIDE),
            (self.total() + gap, Anchor::Start, words::SECTION_OUTSIDE),
        ] {
            drawing.text(Point::metres(x, self.height * 0.98), anchor, style.say(text));
        }
    }

    fn crossing(&self, inputs: &Inputs, style: Style, drawing: &mut Drawing) {
        let Some(crossing) = &inputs.bridge else { return };
        let layer = crossing.layer();
        let (Some(from), Some(to)) = (self.faces.get(layer), self.faces.get(layer + 1)) else {
            return;
        };
        match crossing {
            Crossing::Timber(bridge) => {
                drawing.rectangle(
                    Pen::Solid,
                    Fill::Stock,
                    Point::metres(*from, self.height),
                    Point::metres(*to, self.bottom()),
                );
                drawing.text(
                    Point::metres((from + to) / 2.0, self.height + self.below / 2.0),
                    Anchor::Middle,
                    style.say(words::SectionWood { share: Arg::share(bridge.share) }),
                );
            }
            Crossing::Steel(rib) => {
                let middle = self.height + self.below / 2.0;
                let web = rib.web.get::<meter>() / 2.0;
                let half = (rib.metal_width.get::<meter>() / 2.0).min(self.below / 2.0);
                let flange = (2.0 * web).min(to - from);
                let fill = Fill::Level(4);
                for (a, b) in [
                    ((*from, middle - half), (from + flange, middle + half)),
                    ((*from, middle - web), (*to, middle + web)),
                ] {
                    drawing.rectangle(
                        Pen::Solid,
                        fill,
                        Point::metres(a.0, a.1),
                        Point::metres(b.0, b.1),
                    );
                }
            }
        }
    }
}

fn temperatures(inputs: &Inputs, found: &Found, frame: &Frame, style: Style) -> Drawing {
    let total = inputs.layers.iter().fold(Length::default(), |sum, layer| sum + layer.thickness);
    let mut drawing = Drawing::new(
        style.say(words::SECTION),
        style.say(words::SectionWords {
            planes: found.wet(),
            layers: inputs.layers.len(),
            thickness: Arg::small(total),
        }),
    );
    frame.layers(inputs, style, &mut drawing);
    frame.crossing(inputs, style, &mut drawing);
    if let (Some(inside), Some(outside)) = (inputs.inside, inputs.outside) {
        temperature_lines(
            found,
            frame,
            [inside.temperature, outside.temperature],
            style,
            &mut drawing,
        );
    }
    drawing.dimension(
        Point::metres(frame.total(), frame.bottom()),
        Point::metres(0.0, frame.bottom()),
        2.0,
        style.small(total),
    );
    drawing
}

fn temperature_lines(
    found: &Found,
    frame: &Frame,
    [inside, outside]: [ThermodynamicTemperature; 2],
    style: Style,
    drawing: &mut Drawing,
) {
    let celsius = |t: ThermodynamicTemperature| t.get::<degree_celsius>();
    let ends = [celsius(inside), celsius(outside)];
    let (low, high) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
    let y = |t: ThermodynamicTemperature| frame.y(celsius(t), low, high);
    let (left, right) = (-frame.air, frame.total() + frame.air);
    let mut line = vec![Point::metres(left, y(inside))];
    line.extend(frame.faces.iter().zip(&found.faces).map(|(x, t)| Point::metres(*x, y(*t))));
    line.push(Point::metres(right, y(outside)));
    drawing.line(Pen::Solid, &line);
    drawing.text(
        Point::metres(left, y(inside)),
        Anchor::End,
        style.write(&Arg::typed_temperature(inside)),
    );
    drawing.text(
        Point::metres(right, y(outside)),
        Anchor::Start,
        style.write(&Arg::typed_temperature(outside)),
    );
    if let Some(dew) =
        found.dew_point.map(|dew| dew.value()).filter(|dew| (low..=high).contains(&celsius(*dew)))
    {
        drawing.line(
            Pen::Hidden,
            &[Point::metres(left, y(dew)), Point::metres(frame.total(), y(dew))],
        );
        drawing.text(
            Point::metres(left, y(dew)),
            Anchor::End,
            style.say(words::SectionDew { temperature: Arg::temperature(dew) }),
        );
    }
    for plane in found.profile.iter().flat_map(|profile| &profile.planes) {
        let Some(x) = frame.faces.get(plane.after_layer) else { continue };
        let at = Point::metres(*x, y(plane.temperature));
        drawing.line(Pen::Mark, &[Point::metres(*x, 0.0), Point::metres(*x, frame.bottom())]);
        drawing.cross(Pen::Mark, at);
        drawing.text(
            Point::metres(at.x - frame.total() * 0.03, at.y + frame.height * 0.06),
            Anchor::End,
            style.say(words::SectionWater { temperature: Arg::temperature(plane.temperature) }),
        );
    }
}

/// One rib and what lies between it and the next, the lining below: what the zone method counts,
/// with its figure beside the one without ribs.
fn pitch(inputs: &Inputs, found: &Found, frame: &Frame, style: Style) -> Option<Drawing> {
    let (Some(Crossing::Steel(rib)), Some(ribbed)) = (&inputs.bridge, &found.rib) else {
        return None;
    };
    let metre = |length: Length| length.get::<meter>();
    let width = ribbed.zone_width.value();
    let (spacing, zone, total) = (metre(rib.spacing), metre(width), frame.total());
    let u = |r: f64| Arg::transmittance(1.0 / r);
    let through = ribbed.zone.value();
    let field = found.field.value();
    let mut drawing = Drawing::new(
        style.say(words::PITCH),
        style.say(words::PitchWords { zone: u(through), field: u(field), all: u(found.r_m2k_w) }),
    );
    // The lining lies at the bottom, so a depth counts upwards from there.
    let rectangle = |drawing: &mut Drawing, fill, x: [f64; 2], depth: [f64; 2]| {
        drawing.rectangle(
            Pen::Solid,
            fill,
            Point::metres(x[0], total - depth[0]),
            Point::metres(x[1], total - depth[1]),
        );
    };
    for (layer, pair) in inputs.layers.iter().zip(frame.faces.windows(2)) {
        let fill = fill_of(layer.conductivity.get::<watt_per_meter_kelvin>());
        rectangle(&mut drawing, fill, [-spacing / 2.0, spacing / 2.0], [pair[0], pair[1]]);
    }
    if let (Some(from), Some(to)) = (frame.faces.get(rib.layer), frame.faces.get(rib.layer + 1)) {
        let (half, web) = (metre(rib.metal_width) / 2.0, metre(rib.web) / 2.0);
        let flange = (2.0 * web).min(to - from);
        rectangle(&mut drawing, Fill::Level(4), [-half, half], [*from, from + flange]);
        rectangle(&mut drawing, Fill::Level(4), [-web, web], [*from, *to]);
    }
    for side in [-0.5, 0.5] {
        let x = zone * side;
        drawing.line(Pen::Hidden, &[Point::metres(x, 0.0), Point::metres(x, total)]);
    }
    drawing.dimension(
        Point::metres(-zone / 2.0, 0.0),
        Point::metres(zone / 2.0, 0.0),
        1.5,
        style.say(words::PitchWidth { width: Arg::small(width), u: u(through) }),
    );
    drawing.dimension(
        Point::metres(spacing / 2.0, total),
        Point::metres(-spacing / 2.0, total),
        2.0,
        style.say(words::PitchWidth { width: Arg::small(rib.spacing), u: u(found.r_m2k_w) }),
    );
    drawing.text(
        Point::metres((spacing + zone) / 4.0, total * 0.5),
        Anchor::Middle,
        style.say(words::PitchField { u: u(field) }),
    );
    Some(drawing)
}

/// How a layer of a conductivity is drawn. [W/(m K)]
fn fill_of(conductivity: f64) -> Fill {
    if conductivity >= METAL_CONDUCTIVITY {
        Fill::Level(4)
    } else if conductivity < INSULATES {
        Fill::Level(0)
    } else {
        Fill::Stock
    }
}

/// Vapour pressure against saturation, over the same section.
fn pressures(inputs: &Inputs, found: &Found, frame: &Frame, style: Style) -> Option<Drawing> {
    let profile = found.profile.as_ref()?;
    let frame = &Frame { below: 0.0, ..frame.clone() };
    let mut drawing = Drawing::new(
        style.say(words::PRESSURES),
        style.say(words::PressuresWords { planes: found.wet() }),
    );
    frame.layers(inputs, style, &mut drawing);
    let highest =
        profile.faces.iter().map(|face| face.saturation.get::<pascal>()).fold(1.0, f64::max);
    let y = |pa: f64| frame.y(pa, 0.0, highest);
    let line = |pressure: &dyn Fn(usize) -> f64| -> Vec<Point> {
        frame
            .faces
            .iter()
            .enumerate()
            .take(profile.faces.len())
            .map(|(index, x)| Point::metres(*x, y(pressure(index))))
            .collect()
    };
    let saturation = line(&|face| profile.faces[face].saturation.get::<pascal>());
    let vapour = line(&|face| profile.faces[face].vapour.get::<pascal>());
    drawing.line(Pen::Hidden, &saturation);
    drawing.line(Pen::Solid, &vapour);
    if let (Some(face), Some(high), Some(low)) =
        (profile.faces.first(), saturation.first(), vapour.first())
    {
        let (saturated, pressure) = (Arg::pressure(face.saturation), Arg::pressure(face.vapour));
        for (at, text) in [
            (high, style.say(words::PressuresSaturated { pressure: saturated })),
            (low, style.say(words::PressuresVapor { pressure })),
        ] {
            drawing.text(Point::metres(-frame.total() * 0.03, at.y), Anchor::End, text);
        }
    }
    for plane in &profile.planes {
        if let Some(at) = saturation.get(plane.after_layer) {
            drawing.cross(Pen::Mark, *at);
        }
    }
    Some(drawing)
}
