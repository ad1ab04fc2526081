//! The nearest free spot on a ceiling: exact, by trying every spot where the way to it can end.

use crate::sorting::sort_by;

/// Sides as least and greatest coordinate, mm.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rectangle {
    pub x: (f64, f64),
    pub y: (f64, f64),
}

/// What is free for the centre of a lamp, mm.
#[derive(Clone, Debug)]
pub(super) struct Free {
    /// The ceiling, wall to wall.
    pub area: Rectangle,
    /// From the lamp's centre to whatever it must keep clear of.
    pub reach: f64,
    /// Strips across the whole width, by their edges along x.
    pub supports: Vec<(f64, f64)>,
    /// Openings.
    pub openings: Vec<Rectangle>,
    /// If given, x must be one of these.
    pub allowed_x: Option<Vec<f64>>,
    /// If given, y must be one of these.
    pub allowed_y: Option<Vec<f64>>,
    /// Centres of lamps that are placed already.
    pub lamps: Vec<(f64, f64)>,
    /// From the lamp's centre to theirs.
    pub apart: f64,
}

impl Free {
    /// The same with everything in the way mirrored as well: about half of `length` along x, of `width` along y.
    pub fn mirrored(&self, length: Option<f64>, width: Option<f64>) -> Self {
        let mut free = self.clone();
        if let Some(length) = length {
            let flip = |(from, to): (f64, f64)| (length - to, length - from);
            free.supports.extend(self.supports.iter().map(|&edges| flip(edges)));
            let images: Vec<_> =
                free.openings.iter().map(|r| Rectangle { x: flip(r.x), y: r.y }).collect();
            free.openings.extend(images);
        }
        if let Some(width) = width {
            let flip = |(from, to): (f64, f64)| (width - to, width - from);
            let images: Vec<_> =
                free.openings.iter().map(|r| Rectangle { x: r.x, y: flip(r.y) }).collect();
            free.openings.extend(images);
            // A board counts where its image is a board too.
            if let Some(lines) = &self.allowed_y {
                let has_image = |line: &f64| {
                    lines.iter().any(|other| (width - other - line).abs() < SAME_LINE_MM)
                };
                free.allowed_y = Some(lines.iter().copied().filter(has_image).collect());
            }
        }
        free
    }

    /// The same held to a line along x or y; a line that the boards do not allow leaves nothing.
    pub fn held(&self, x: Option<f64>, y: Option<f64>) -> Self {
        let mut free = self.clone();
        if let Some(x) = x {
            free.allowed_x = Some(vec![x]);
        }
        if let Some(y) = y {
            let on_board = |line: &&f64| (**line - y).abs() < SAME_LINE_MM;
            free.allowed_y = Some(match &self.allowed_y {
                None => vec![y],
                Some(lines) => lines.iter().filter(on_board).take(1).map(|_| y).collect(),
            });
        }
        free
    }

    /// The same kept half of `spacing` off a line along x or y, so that a lamp and its image across the line stand
    /// that far apart.
    pub fn off_line(&self, x: Option<f64>, y: Option<f64>, spacing: f64) -> Self {
        // A band that lamps' centres, not their rims, keep out of: as an opening it loses the reach again, and may
        // be narrower than nothing.
        let band = |line: f64| {
            let half = spacing / 2.0 - self.reach;
            (line - half, line + half)
        };
        let mut free = self.clone();
        free.openings.extend(x.map(|x| Rectangle { x: band(x), y: self.area.y }));
        free.openings.extend(y.map(|y| Rectangle { x: self.area.x, y: band(y) }));
        free
    }

    /// The free spot nearest to the wanted one; of several as near, the one with the least x, then the least y.
    ///
    /// The way to the nearest spot ends at the wanted spot itself, straight across an edge, radially at a rounded
    /// corner or at another lamp's circle, or where two of these meet. All such spots are tried.
    pub fn nearest(&self, x: f64, y: f64) -> Option<(f64, f64)> {
        if self.is_free(x, y) {
            return Some((x, y));
        }
        let xs = self.allowed_x.clone().unwrap_or_else(|| self.edges_x(x));
        let ys = self.allowed_y.clone().unwrap_or_else(|| self.edges_y(y));
        let mut circles = self.circles();
        // The nearest first: the farther ones are left out once a spot is found.
        let off = |c: &Circle| (libm::hypot(x - c.x, y - c.y) - c.radius).abs();
        sort_by(&mut circles, |a, b| off(a).total_cmp(&off(b)));
        let mut best = Best::default();
        let consider = |best: &mut Best, cx: f64, cy: f64| {
            let away = libm::hypot(cx - x, cy - y);
            if best.gives_way_to(away, cx, cy) && self.is_free(cx, cy) {
                best.0 = Some((away, cx, cy));
            }
        };
        for &cx in &xs {
            for &cy in &ys {
                consider(&mut best, cx, cy);
            }
        }
        let anywhere = self.allowed_x.is_none() && self.allowed_y.is_none();
        if anywhere {
            for circle in &circles {
                let away = libm::hypot(x - circle.x, y - circle.y);
                if away > SLACK_MM {
                    let out = circle.radius / away;
                    let (dx, dy) = (x - circle.x, y - circle.y);
                    consider(&mut best, circle.x + dx * out, circle.y + dy * out);
                }
            }
        }
        // A circle farther off than the best spot so far holds no better one.
        let near = |best: &Best, circle: &Circle| match best.0 {
            None => true,
            Some((least, ..)) => off(circle) <= least + SLACK_MM,
        };
        for circle in &circles {
            if !near(&best, circle) {
                break;
            }
            if self.allowed_x.is_none() {
                for &cy in &ys {
                    if let Some(half) = half_chord(circle.radius, cy - circle.y) {
                        consider(&mut best, circle.x - half, cy);
                        consider(&mut best, circle.x + half, cy);
                    }
                }
            }
            if self.allowed_y.is_none() {
                for &cx in &xs {
                    if let Some(half) = half_chord(circle.radius, cx - circle.x) {
                        consider(&mut best, cx, circle.y - half);
                        consider(&mut best, cx, circle.y + half);
                    }
                }
            }
        }
        if anywhere {
            for (index, one) in circles.iter().enumerate() {
                if !near(&best, one) {
                    break;
                }
                for other in &circles[index + 1..] {
                    if !near(&best, other) {
                        break;
                    }
                    for (cx, cy) in one.meets(other).into_iter().flatten() {
                        consider(&mut best, cx, cy);
                    }
                }
            }
        }
        best.0.map(|(_, cx, cy)| (cx, cy))
    }

    /// Free spots that edges or circles hold from two sides, the least x first: where lamps lie when they are packed.
    pub fn held_spots(&self) -> Vec<(f64, f64)> {
        // Lines of the ceiling's own edges only.
        let xs = self.allowed_x.clone().unwrap_or_else(|| self.edges_x(self.area.x.0));
        let ys = self.allowed_y.clone().unwrap_or_else(|| self.edges_y(self.area.y.0));
        let circles = self.circles();
        let mut spots: Vec<(f64, f64)> =
            xs.iter().flat_map(|&x| ys.iter().map(move |&y| (x, y))).collect();
        for (index, one) in circles.iter().enumerate() {
            if self.allowed_x.is_none() {
                for &y in &ys {
                    if let Some(half) = half_chord(one.radius, y - one.y) {
                        spots.extend([(one.x - half, y), (one.x + half, y)]);
                    }
                }
            }
            if self.allowed_y.is_none() {
                for &x in &xs {
                    if let Some(half) = half_chord(one.radius, x - one.x) {
                        spots.extend([(x, one.y - half), (x, one.y + half)]);
                    }
                }
            }
            if self.allowed_x.is_none() && self.allowed_y.is_none() {
                for other in &circles[index + 1..] {
                    spots.extend(one.meets(other).into_iter().flatten());
                }
            }
        }
        spots.retain(|&(x, y)| self.is_free(x, y));
        sort_by(&mut spots, |a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
        spots.dedup_by(|a, b| libm::hypot(a.0 - b.0, a.1 - b.1) < SLACK_MM);
        spots
    }

    /// The same with lamps placed at these spots too.
    pub fn beside(&self, lamps: &[(f64, f64)]) -> Self {
        let mut free = self.clone();
        free.lamps.extend_from_slice(lamps);
        free
    }

    /// Whether a lamp's centre may sit there.
    pub fn is_free(&self, x: f64, y: f64) -> bool {
        let reach = self.reach - SLACK_MM;
        let on = |lines: &Option<Vec<f64>>, at: f64| {
            lines.as_ref().is_none_or(|lines| lines.iter().any(|line| (line - at).abs() < SLACK_MM))
        };
        on(&self.allowed_x, x)
            && on(&self.allowed_y, y)
            && x >= self.area.x.0 + reach
            && x <= self.area.x.1 - reach
            && y >= self.area.y.0 + reach
            && y <= self.area.y.1 - reach
            && self.supports.iter().all(|&edges| gap(edges, x) >= reach)
            && self.openings.iter().all(|o| libm::hypot(gap(o.x, x), gap(o.y, y)) >= reach)
            && self.lamps.iter().all(|l| libm::hypot(l.0 - x, l.1 - y) >= self.apart - SLACK_MM)
    }

    fn edges_x(&self, wanted: f64) -> Vec<f64> {
        let mut xs = vec![wanted, self.area.x.0 + self.reach, self.area.x.1 - self.reach];
        for &(from, to) in self.supports.iter().chain(self.openings.iter().map(|o| &o.x)) {
            xs.extend([from - self.reach, to + self.reach]);
        }
        xs
    }

    fn edges_y(&self, wanted: f64) -> Vec<f64> {
        let mut ys = vec![wanted, self.area.y.0 + self.reach, self.area.y.1 - self.reach];
        for &(from, to) in self.openings.iter().map(|o| &o.y) {
            ys.extend([from - self.reach, to + self.reach]);
        }
        ys
    }

    /// What a lamp's centre may lie on the rim of: the corners of the openings, and the lamps placed already.
    fn circles(&self) -> Vec<Circle> {
        let corners =
            self.openings.iter().flat_map(|o| {
                [(o.x.0, o.y.0), (o.x.1, o.y.0), (o.x.0, o.y.1), (o.x.1, o.y.1)]
                    .map(|(x, y)| Circle { x, y, radius: self.reach })
            });
        let lamps = self.lamps.iter().map(|&(x, y)| Circle { x, y, radius: self.apart });
        corners.chain(lamps).collect()
    }
}

/// A round edge of what is free.
struct Circle {
    x: f64,
    y: f64,
    radius: f64,
}

impl Circle {
    /// Where two circles cross.
    fn meets(&self, other: &Self) -> Option<[(f64, f64); 2]> {
        let (dx, dy) = (other.x - self.x, other.y - self.y);
        let apart = libm::hypot(dx, dy);
        if apart <= SLACK_MM {
            return None;
        }
        let squares = self.radius * self.radius - other.radius * other.radius;
        let along = (apart + squares / apart) / 2.0;
        let half = half_chord(self.radius, along)?;
        let (mx, my) = (self.x + dx / apart * along, self.y + dy / apart * along);
        let (nx, ny) = (-dy / apart * half, dx / apart * half);
        Some([(mx + nx, my + ny), (mx - nx, my - ny)])
    }
}

/// The best spot so far: how far it is, and where.
#[derive(Default)]
struct Best(Option<(f64, f64, f64)>);

impl Best {
    /// Whether another spot is nearer, or as near and earlier.
    fn gives_way_to(&self, away: f64, x: f64, y: f64) -> bool {
        match self.0 {
            None => true,
            Some((least, bx, by)) => {
                away < least - SLACK_MM || (away < least + SLACK_MM && (x, y) < (bx, by))
            }
        }
    }
}

/// A hair that rounding may take.
pub(super) const SLACK_MM: f64 = 1e-6;
/// Centre lines as close as this are one.
const SAME_LINE_MM: f64 = 0.5;

/// Distance from a span; 0 within it.
fn gap((from, to): (f64, f64), at: f64) -> f64 {
    (from - at).max(at - to).max(0.0)
}

/// Half the chord of a circle at a distance from its middle.
fn half_chord(radius: f64, distance: f64) -> Option<f64> {
    let square = radius * radius - distance * distance;
    // A circle that just touches still meets.
    (square >= -SLACK_MM * radius).then(|| square.max(0.0).sqrt())
}
