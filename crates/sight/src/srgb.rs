//! sRGB colours: coded values, light, lightness.

use std::error::Error;
use std::fmt;
use std::str::FromStr;

/// A colour of a screen, one byte for each channel (IEC 61966-2-1).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Srgb {
    /// Red.
    pub red: u8,
    /// Green.
    pub green: u8,
    /// Blue.
    pub blue: u8,
}

/// What is not a colour; the text speaks to the maker.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SrgbError(String);

/// Light of a coded value from 0 to 1, linear, 0 to 1 (IEC 61966-2-1; the same constants in WCAG 2.2, “relative
/// luminance”).
pub fn decode(coded: f64) -> f64 {
    if coded <= 0.04045 { coded / 12.92 } else { ((coded + 0.055) / 1.055).powf(2.4) }
}

/// The coded value of linear light, the inverse of [`decode`] (IEC 61966-2-1).
pub fn encode(light: f64) -> f64 {
    if light <= 0.003_130_8 { 12.92 * light } else { 1.055 * light.powf(1.0 / 2.4) - 0.055 }
}

/// CIE 1976 lightness L*, 0 to 100, of a luminance relative to white, 0 to 1 (CIE 15, ISO 11664-4, from memory).
pub fn lightness(luminance: f64) -> f64 {
    let cut: f64 = 216.0 / 24389.0;
    if luminance > cut { 116.0 * luminance.cbrt() - 16.0 } else { 24389.0 / 27.0 * luminance }
}

impl Srgb {
    /// Linear light of the three channels, each 0 to 1.
    pub fn light(self) -> [f64; 3] {
        [self.red, self.green, self.blue].map(|code| decode(f64::from(code) / 255.0))
    }

    /// Relative luminance, 0 for black to 1 for white (WCAG 2.2, “relative luminance”).
    pub fn luminance(self) -> f64 {
        let [red, green, blue] = self.light();
        0.2126 * red + 0.7152 * green + 0.0722 * blue
    }
}

impl fmt::Display for Srgb {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "#{:02x}{:02x}{:02x}", self.red, self.green, self.blue)
    }
}

impl FromStr for Srgb {
    type Err = SrgbError;

    /// Reads `#rrggbb` or `rrggbb`, in either case.
    fn from_str(text: &str) -> Result<Srgb, SrgbError> {
        let wrong = || SrgbError(text.trim().to_owned());
        let digits = text.trim().trim_start_matches('#');
        if digits.len() != 6 || !digits.bytes().all(|byte| byte.is_ascii_hexdigit()) {
            return Err(wrong());
        }
        let channel = |at: usize| u8::from_str_radix(&digits[at..at + 2], 16).map_err(|_| wrong());
        Ok(Srgb { red: channel(0)?, green: channel(2)?, blue: channel(4)? })
    }
}

impl fmt::Display for SrgbError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "“{}” is not a colour: write it as #rrggbb, such as #0072b2", self.0)
    }
}

impl Error for SrgbError {}

#[cfg(test)]
mod tests {
    use super::*;

    /// Luminances worked from the definition in WCAG 2.2.
    #[test]
    fn luminance_is_that_of_wcag() {
        for (colour, luminance) in
            [("#767676", 0.18116), ("#777777", 0.18447), ("#FF0000", 0.2126), ("0000ff", 0.0722), ("#ffffff", 1.0)]
        {
            let colour: Srgb = colour.parse().expect("a colour");
            assert!((colour.luminance() - luminance).abs() < 6e-6, "{colour} {}", colour.luminance());
        }
    }

    /// Coding and decoding are each other's inverse for every code there is.
    #[test]
    fn codes_come_back() {
        for code in 0..=255u8 {
            let back = 255.0 * encode(decode(f64::from(code) / 255.0));
            assert!((back - f64::from(code)).abs() < 1e-3, "{code} {back}");
        }
    }

    #[test]
    fn what_is_no_colour_is_told() {
        for text in ["", "#12345", "#12345g", "#1234567", "red", "#é234", "ééé"] {
            assert!(text.parse::<Srgb>().is_err_and(|error| error.to_string().contains("#rrggbb")), "{text}");
        }
    }
}
