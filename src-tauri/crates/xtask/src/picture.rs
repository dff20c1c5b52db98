//! What stands on a screen, read from the file that its server draws into.

use crate::call::Done;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// Bytes of the part of the X window dump's header (X11/XWDFile.h) that every server writes.
const HEADER: usize = 100;
/// Bytes of one entry of its table of colours.
const COLOUR: usize = 12;

/// A rectangle of pixels, each `0xRRGGBB`, row by row.
#[derive(Clone, PartialEq, Eq)]
pub struct Picture {
    /// Pixels side by side.
    pub width: usize,
    pixels: Vec<u32>,
}

impl Picture {
    /// Every `nth` pixel of every `nth` row of an X window dump of 32 bits a pixel, as Xvfb keeps it.
    ///
    /// # Errors
    /// In words, when it is not such a dump.
    pub fn of_dump(dump: &[u8], nth: usize) -> Done<Self> {
        let no = || "The screen's server keeps its picture in another form than was thought.".to_owned();
        let word = |at: usize| {
            let bytes = dump.get(4 * at..4 * at + 4).and_then(|bytes| bytes.try_into().ok());
            bytes.map(|bytes| u32::from_be_bytes(bytes) as usize).ok_or_else(no)
        };
        let (header, width, height, little_end) = (word(0)?, word(4)?, word(5)?, word(7)? == 0);
        let (bits, row, colours) = (word(11)?, word(12)?, word(19)?);
        let whole = header + colours * COLOUR + row * height;
        if header < HEADER || bits != 32 || !little_end || row < 4 * width || dump.len() < whole || nth == 0 {
            return Err(no());
        }
        let rows = dump[header + colours * COLOUR..whole].chunks_exact(row).step_by(nth);
        let pixels = rows.flat_map(|row| row[..4 * width].chunks_exact(4).step_by(nth));
        let pixels = pixels.map(|of| u32::from_be_bytes([0, of[2], of[1], of[0]])).collect();
        Ok(Self { width: width.div_ceil(nth), pixels })
    }

    /// Rows of pixels.
    pub fn height(&self) -> usize {
        self.pixels.len() / self.width.max(1)
    }

    /// The part that begins at column `x` and row `y`; what would lie outside is left out.
    pub fn part(&self, x: usize, y: usize, width: usize, height: usize) -> Self {
        let (left, right) = (x.min(self.width), (x + width).min(self.width));
        let rows = self.pixels.chunks_exact(self.width.max(1)).skip(y).take(height);
        Self { width: right - left, pixels: rows.flat_map(|row| &row[left..right]).copied().collect() }
    }

    /// True when something stands on it: more colours than a frame and a bar have, and ink on a fiftieth of it at least. A
    /// blank page of one colour is not drawn, nor is an empty screen.
    pub fn is_drawn(&self) -> bool {
        let mut colours = BTreeMap::new();
        for pixel in &self.pixels {
            *colours.entry(*pixel).or_insert(0_usize) += 1;
        }
        let ink = self.pixels.len() - colours.values().max().unwrap_or(&0);
        colours.len() >= 64 && 50 * ink >= self.pixels.len()
    }

    /// Share of the pixels that are another in `other`, 0 to 1; all of them when it has another size.
    pub fn differs(&self, other: &Self) -> f64 {
        if self.width != other.width || self.pixels.len() != other.pixels.len() {
            return 1.0;
        }
        let differ = self.pixels.iter().zip(&other.pixels).filter(|(a, b)| a != b).count();
        differ as f64 / self.pixels.len().max(1) as f64
    }

    /// Writes it for a person to look at, in the portable pixmap format, which needs no library.
    ///
    /// # Errors
    /// When the file cannot be written.
    pub fn write(&self, file: &Path) -> Done {
        let mut bytes = format!("P6 {} {} 255\n", self.width, self.height()).into_bytes();
        bytes.extend(self.pixels.iter().flat_map(|pixel| pixel.to_be_bytes().into_iter().skip(1)));
        fs::write(file, bytes).map_err(|error| format!("{} could not be written: {error}.", file.display()))
    }
}

#[cfg(test)]
mod tests {
    use super::{COLOUR, HEADER, Picture};

    /// A dump as Xvfb writes it, with one entry in its table of colours.
    fn dump(width: usize, height: usize, pixel: impl Fn(usize, usize) -> u32) -> Vec<u8> {
        let mut words = [0_u32; HEADER / 4];
        let number = |of: usize| u32::try_from(of).expect("a small number");
        (words[0], words[4], words[5]) = (number(HEADER), number(width), number(height));
        (words[11], words[12], words[19]) = (32, number(4 * width), 1);
        let mut bytes: Vec<u8> = words.iter().flat_map(|word| word.to_be_bytes()).chain([0; COLOUR]).collect();
        for (y, x) in (0..height).flat_map(|y| (0..width).map(move |x| (y, x))) {
            bytes.extend(pixel(x, y).to_le_bytes());
        }
        bytes
    }

    fn picture(width: usize, height: usize, pixel: impl Fn(usize, usize) -> u32) -> Picture {
        Picture::of_dump(&dump(width, height, pixel), 1).expect("a dump")
    }

    #[test]
    fn pixels_stand_where_they_were() {
        let whole = picture(4, 2, |x, y| (x + 10 * y) as u32);
        assert_eq!((whole.width, whole.height()), (4, 2));
        assert_eq!(whole.part(1, 1, 2, 9).pixels, [11, 12]);
        assert_eq!(whole.part(3, 0, 9, 1).pixels, [3]);
        assert_eq!(Picture::of_dump(&dump(4, 2, |x, y| (x + 10 * y) as u32), 2).expect("a dump").pixels, [0, 2]);
        assert!(Picture::of_dump(&[0; 7], 1).is_err());
        assert!(Picture::of_dump(&dump(4, 2, |_, _| 0)[..130], 1).is_err(), "a dump that was cut off");
    }

    #[test]
    fn a_blank_window_is_not_drawn() {
        let frame = |x: usize, y: usize| x == 0 || y < 12 || x == 99;
        let blank = picture(100, 100, |x, y| if frame(x, y) { (x % 40) as u32 } else { 0xff_ff_ff });
        assert!(!blank.is_drawn(), "a frame with a bar of forty shades about an empty page");
        assert!(!picture(100, 100, |_, _| 0).is_drawn());
        let text = picture(100, 100, |x, y| if y % 10 == 0 { x as u32 } else { 0xff_ff_ff });
        assert!(text.is_drawn());
    }

    #[test]
    fn what_differs_is_counted() {
        let (one, other) = (picture(10, 10, |_, _| 0), picture(10, 10, |x, y| u32::from(x == 0 && y < 5)));
        assert!((one.differs(&other) - 0.05).abs() < 1e-12);
        assert!((one.differs(&picture(5, 20, |_, _| 0)) - 1.0).abs() < 1e-12, "of another shape");
    }
}
