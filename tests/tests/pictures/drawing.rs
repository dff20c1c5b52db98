//! A picture as SVG text: a few shapes in the colours of the house, with a title for whoever cannot see it.

use std::fmt::Write as _;

/// Colours: ink on paper white, one blue, one amber, and a grey for what only guides the eye.
pub const INK: &str = "#16181d";
pub const BLUE: &str = "#134a9e";
pub const AMBER: &str = "#c97a00";
pub const GREY: &str = "#8a8d94";

/// Where a text stands to its point.
#[derive(Clone, Copy)]
pub enum At {
    Start,
    Middle,
    End,
}

pub struct Drawing {
    width: f64,
    height: f64,
    text: String,
}

impl Drawing {
    pub fn new(width: f64, height: f64, title: &str) -> Self {
        let mut text = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" width=\"{width}\" \
             height=\"{height}\" font-family=\"'Atkinson Hyperlegible Next', 'DejaVu Sans', sans-serif\" \
             role=\"img\">\n<title>{title}</title>\n"
        );
        let _ = writeln!(text, "<rect width=\"{width}\" height=\"{height}\" fill=\"#fcfbf8\"/>");
        let mut drawing = Self { width, height, text };
        drawing.text(24.0, 38.0, 20.0, At::Start, INK, title);
        drawing
    }

    pub fn line(&mut self, from: (f64, f64), to: (f64, f64), colour: &str, thick: f64) {
        self.path(&[from, to], colour, thick, "");
    }

    pub fn dashed(&mut self, from: (f64, f64), to: (f64, f64), colour: &str) {
        self.path(&[from, to], colour, 1.5, " stroke-dasharray=\"6 5\"");
    }

    /// A line through all points.
    pub fn curve(&mut self, points: &[(f64, f64)], colour: &str) {
        self.path(points, colour, 3.0, "");
    }

    fn path(&mut self, points: &[(f64, f64)], colour: &str, thick: f64, more: &str) {
        points.iter().for_each(|(x, y)| self.holds(*x, *y));
        let places = points.iter().map(|(x, y)| format!("{x:.1},{y:.1}")).collect::<Vec<_>>().join(" ");
        let _ = writeln!(
            self.text,
            "<polyline points=\"{places}\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"{thick}\"{more}/>"
        );
    }

    /// A bar from the level `y0` to the level `y1`.
    pub fn bar(&mut self, x: f64, width: f64, y0: f64, y1: f64, colour: &str) {
        self.holds(x, y0.min(y1));
        self.holds(x + width, y0.max(y1));
        let (top, height) = (y0.min(y1), (y1 - y0).abs());
        let _ = writeln!(
            self.text,
            "<rect x=\"{x:.1}\" y=\"{top:.1}\" width=\"{width:.1}\" height=\"{height:.1}\" fill=\"{colour}\"/>"
        );
    }

    pub fn dot(&mut self, x: f64, y: f64, radius: f64, colour: &str) {
        self.holds(x, y);
        let _ = writeln!(self.text, "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"{radius}\" fill=\"{colour}\"/>");
    }

    pub fn text(&mut self, x: f64, y: f64, size: f64, at: At, colour: &str, says: &str) {
        self.holds(x, y);
        let anchor = match at {
            At::Start => "start",
            At::Middle => "middle",
            At::End => "end",
        };
        let _ = writeln!(
            self.text,
            "<text x=\"{x:.1}\" y=\"{y:.1}\" font-size=\"{size}\" text-anchor=\"{anchor}\" fill=\"{colour}\">{says}</text>"
        );
    }

    /// A point outside the picture would not be seen.
    fn holds(&self, x: f64, y: f64) {
        let inside = (0.0..=self.width).contains(&x) && (0.0..=self.height).contains(&y);
        assert!(inside, "({x}, {y}) is outside of {} by {}", self.width, self.height);
    }

    pub fn svg(self) -> String {
        self.text + "</svg>\n"
    }
}
