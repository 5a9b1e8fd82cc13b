"""Makes crates/lettering/tests/data/glyphs.csv and kerns.csv: the shipped font read by other libraries than ours.

Outlines by fontTools, their overlaps united by skia-pathops, islands by the largest circle that GEOS finds in them
(curves as 64 chords each), kerning by HarfBuzz. All in font units. Run by hand from the root of the project:

    pip install fonttools==4.68.0 skia-pathops==0.9.2 shapely==2.2.0 uharfbuzz==0.57.0
    python tools/lettering_oracle.py
"""
import csv
import itertools
from pathlib import Path

import fontTools
import pathops
import shapely
import uharfbuzz as hb
from fontTools.pens.basePen import BasePen
from fontTools.ttLib import TTFont

CRATE = Path("crates/lettering")
WEIGHTS = ["Regular", "Medium", "SemiBold", "Bold"]
GLYPHS = [chr(c) for c in range(33, 127)] + list("ÄÖÜäöüßéèñçøåÆ×÷°€£½\N{EN DASH}\N{MINUS SIGN}")
KERNED = "ATVWYLPFRKaeovwyrtcsj.,-'x"
CHORDS = 64


class Chords(BasePen):
    """Closed contours as lists of points."""

    def __init__(self):
        super().__init__(None)
        self.contours = []

    def _moveTo(self, p):
        self.contours.append([p])

    def _lineTo(self, p):
        self.contours[-1].append(p)

    def _qCurveToOne(self, c, p):
        a = self.contours[-1][-1]
        for k in range(1, CHORDS + 1):
            t = k / CHORDS
            self.contours[-1].append(tuple((1 - t) ** 2 * x + 2 * t * (1 - t) * y + t * t * z for x, y, z in zip(a, c, p)))

    def _curveToOne(self, b, c, p):
        a = self.contours[-1][-1]
        for k in range(1, CHORDS + 1):
            t = k / CHORDS
            u = 1 - t
            self.contours[-1].append(tuple(u**3 * x + 3 * u * u * t * y + 3 * u * t * t * z + t**3 * w for x, y, z, w in zip(a, b, c, p)))


def island(path):
    """Diameter of the largest circle in the smallest hole; None without holes."""
    pen = Chords()
    path.draw(pen)
    land = shapely.Polygon()
    for contour in sorted((shapely.Polygon(c) for c in pen.contours), key=lambda c: -c.area):
        land = land.symmetric_difference(contour)
    parts = getattr(land, "geoms", [land])
    holes = [shapely.Polygon(ring) for part in parts for ring in part.interiors]
    circles = [2 * shapely.maximum_inscribed_circle(hole, tolerance=0.01).length for hole in holes]
    return min(circles, default=None)


def six(number):
    return "" if number is None else f"{number:.8g}"


def versions():
    return (
        f"fontTools {fontTools.version}, skia-pathops {pathops.__version__}, shapely {shapely.__version__}"
        f" (GEOS {shapely.geos_version_string}), uharfbuzz {hb.__version__} (HarfBuzz {hb.version_string()})"
    )


def main():
    glyphs, kerns = [], []
    for weight in WEIGHTS:
        file = CRATE / f"fonts/AtkinsonHyperlegibleNext-{weight}.ttf"
        font = TTFont(file)
        names, outlines = font.getBestCmap(), font.getGlyphSet()
        for character in GLYPHS:
            name = names[ord(character)]
            path = pathops.Path()
            outlines[name].draw(path.getPen(glyphSet=outlines))
            path.simplify(fix_winding=True)
            glyphs.append([weight, ord(character), outlines[name].width, *map(six, [abs(path.area), *path.bounds, island(path)])])
        shaper = hb.Font(hb.Face(hb.Blob.from_file_path(str(file))))
        for pair in itertools.product(KERNED, repeat=2):
            line = hb.Buffer()
            line.add_str("".join(pair))
            line.guess_segment_properties()
            hb.shape(shaper, line, {"kern": True})
            kern = line.glyph_positions[0].x_advance - outlines[names[ord(pair[0])]].width
            if kern or pair[0] == pair[1]:
                kerns.append([weight, "".join(pair), kern])
    for file, head, rows in [
        ("glyphs.csv", "weight,code point,advance,area,x0,y0,x1,y1,circle in the smallest island", glyphs),
        ("kerns.csv", "weight,pair,kern", kerns),
    ]:
        with open(CRATE / "tests/data" / file, "w", newline="", encoding="utf-8") as out:
            out.write(f"# {versions()}\n# {head}\n")
            csv.writer(out, delimiter="\t", lineterminator="\n", quoting=csv.QUOTE_NONE, quotechar=None).writerows(rows)
        print(file, len(rows))


if __name__ == "__main__":
    main()
