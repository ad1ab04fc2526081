//! The nearest free spot on a ceiling: exact, by trying every spot where the way to it can end.

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
    /// corner, or where two of these meet. All such spots are tried.
    pub fn nearest(&self, x: f64, y: f64) -> Option<(f64, f64)> {
        if self.is_free(x, y) {
            return Some((x, y));
        }
        let xs = self.allowed_x.clone().unwrap_or_else(|| self.edges_x(x));
        let ys = self.allowed_y.clone().unwrap_or_else(|| self.edges_y(y));
        let corners = self.corners();
        let mut best: Option<(f64, f64, f64)> = None;
        let mut consider = |cx: f64, cy: f64| {
            let away = libm::hypot(cx - x, cy - y);
            let better = match best {
                None => true,
                Some((least, bx, by)) => {
                    away < least - SLACK_MM || (away < least + SLACK_MM && (cx, cy) < (bx, by))
                }
            };
            if better && self.is_free(cx, cy) {
                best = Some((away, cx, cy));
            }
        };
        for &cx in &xs {
            for &cy in &ys {
                consider(cx, cy);
            }
        }
        if self.allowed_x.is_none() {
            for &cy in &ys {
                for &(ox, oy) in &corners {
                    if let Some(half) = half_chord(self.reach, cy - oy) {
                        consider(ox - half, cy);
                        consider(ox + half, cy);
                    }
                }
            }
        }
        if self.allowed_y.is_none() {
            for &cx in &xs {
                for &(ox, oy) in &corners {
                    if let Some(half) = half_chord(self.reach, cx - ox) {
                        consider(cx, oy - half);
                        consider(cx, oy + half);
                    }
                }
            }
        }
        if self.allowed_x.is_none() && self.allowed_y.is_none() {
            for (index, &(ox, oy)) in corners.iter().enumerate() {
                let away = libm::hypot(x - ox, y - oy);
                if away > SLACK_MM {
                    consider(ox + (x - ox) * self.reach / away, oy + (y - oy) * self.reach / away);
                }
                for &(px, py) in &corners[index + 1..] {
                    let (dx, dy) = (px - ox, py - oy);
                    let apart = libm::hypot(dx, dy);
                    let Some(half) =
                        half_chord(self.reach, apart / 2.0).filter(|_| apart > SLACK_MM)
                    else {
                        continue;
                    };
                    let (mx, my) = ((ox + px) / 2.0, (oy + py) / 2.0);
                    let (nx, ny) = (-dy / apart * half, dx / apart * half);
                    consider(mx + nx, my + ny);
                    consider(mx - nx, my - ny);
                }
            }
        }
        best.map(|(_, cx, cy)| (cx, cy))
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

    /// Corners of the openings.
    fn corners(&self) -> Vec<(f64, f64)> {
        self.openings
            .iter()
            .flat_map(|o| [(o.x.0, o.y.0), (o.x.1, o.y.0), (o.x.0, o.y.1), (o.x.1, o.y.1)])
            .collect()
    }
}

/// A hair that rounding may take.
const SLACK_MM: f64 = 1e-6;
/// Centre lines as close as this are one.
const SAME_LINE_MM: f64 = 0.5;

/// Distance from a span; 0 within it.
fn gap((from, to): (f64, f64), at: f64) -> f64 {
    (from - at).max(at - to).max(0.0)
}

/// Half the chord of a circle at a distance from its middle.
fn half_chord(radius: f64, distance: f64) -> Option<f64> {
    let square = radius * radius - distance * distance;
    (square >= 0.0).then(|| square.sqrt())
}
