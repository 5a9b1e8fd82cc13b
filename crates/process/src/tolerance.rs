//! How far the thickness of a panel may be from its nominal one.

/// Kinds of sheet whose thickness a standard limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Panel {
    /// Plywood, sanded.
    SandedPlywood,
    /// Plywood, not sanded.
    UnsandedPlywood,
    /// Medium-density fibreboard up to 19 mm.
    Fibreboard,
    /// Cast acrylic sheet.
    CastAcrylic,
    /// Anything without a standard: a tenth of its thickness, at least 0.05 mm (our own proposal: measure it).
    Other,
}

impl Panel {
    /// How much thinner and how much thicker than nominal a sheet of thickness `t` may be, in mm.
    ///
    /// EN 315 (plywood): sanded +(0.2 + 0.03 t) / -(0.4 + 0.03 t), unsanded +(0.8 + 0.03 t) / -(0.4 + 0.03 t), formula from memory,
    /// it reproduces mill tables; EN 622-1 (fibreboard): 0.2 mm, from memory; ISO 7823-1 (cast acrylic): 0.4 + 0.1 t, from memory.
    /// The standards' formulas are for sheets of some millimetres: below, at most half the thickness is taken off.
    pub fn tolerance(self, t: f64) -> (f64, f64) {
        let (thinner, thicker) = match self {
            Panel::SandedPlywood => (0.4 + 0.03 * t, 0.2 + 0.03 * t),
            Panel::UnsandedPlywood => (0.4 + 0.03 * t, 0.8 + 0.03 * t),
            Panel::Fibreboard => (0.2, 0.2),
            Panel::CastAcrylic => (0.4 + 0.1 * t, 0.4 + 0.1 * t),
            Panel::Other => ((0.1 * t).max(0.05), (0.1 * t).max(0.05)),
        };
        (thinner.min(0.5 * t), thicker)
    }

    /// Where its figures come from.
    pub fn source(self) -> &'static str {
        match self {
            Panel::SandedPlywood | Panel::UnsandedPlywood => "EN 315",
            Panel::Fibreboard => "EN 622-1",
            Panel::CastAcrylic => "ISO 7823-1",
            Panel::Other => "our own proposal: a tenth",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Panel;

    /// Limits as mill tables give them for EN 315: 3 mm 2.51 to 3.29, 4 mm 3.48 to 4.32, 6 mm 5.42 to 6.38; and the
    /// deviations +0.3 / -0.5 at 4 mm and +1.1 / -1.3 at 30 mm, rounded to a tenth.
    #[test]
    fn plywood_keeps_the_limits_of_en_315() {
        for (t, low, high) in [(3.0, 2.51, 3.29), (4.0, 3.48, 4.32), (6.0, 5.42, 6.38)] {
            let (thinner, thicker) = Panel::SandedPlywood.tolerance(t);
            assert!((t - thinner - low).abs() < 1e-9 && (t + thicker - high).abs() < 1e-9, "{t}");
        }
        for (t, minus, plus) in [(4.0, 0.5, 0.3), (30.0, 1.3, 1.1)] {
            let (thinner, thicker) = Panel::SandedPlywood.tolerance(t);
            assert!((thinner - minus).abs() < 0.05 && (thicker - plus).abs() < 0.05, "{t}");
        }
    }

    /// Deviations of other sheets at 3 mm: unsanded plywood +0.89 / -0.49 by EN 315, fibreboard 0.2 by EN 622-1, cast acrylic
    /// 0.7 by ISO 7823-1 (the standards' formulas from memory, worked by hand).
    #[test]
    fn other_sheets_keep_the_limits_of_their_standards() {
        for (panel, minus, plus) in
            [(Panel::UnsandedPlywood, 0.49, 0.89), (Panel::Fibreboard, 0.2, 0.2), (Panel::CastAcrylic, 0.7, 0.7)]
        {
            let (thinner, thicker) = panel.tolerance(3.0);
            assert!(
                (thinner - minus).abs() < 1e-9 && (thicker - plus).abs() < 1e-9,
                "{panel:?}: -{thinner} +{thicker}"
            );
        }
    }

    /// No sheet, however thin, may be thought to vanish.
    #[test]
    fn a_thin_sheet_keeps_some_thickness() {
        for panel in [Panel::SandedPlywood, Panel::UnsandedPlywood, Panel::Fibreboard, Panel::CastAcrylic, Panel::Other]
        {
            for t in [0.01, 0.05, 0.2, 0.4, 1.0] {
                assert!(panel.tolerance(t).0 < t, "{panel:?} of {t} mm");
            }
        }
    }
}
