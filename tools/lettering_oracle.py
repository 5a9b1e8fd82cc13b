"""Makes crates/lettering/tests/data/fonttools.csv: areas and boxes of glyphs by fontTools, in font units.

Run by hand: python tools/lettering_oracle.py
"""
import fontTools
from fontTools.pens.areaPen import AreaPen
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont

with open("crates/lettering/tests/data/fonttools.csv", "w") as out:
    out.write(f"# fontTools {fontTools.version}; weight, character, area, x0, y0, x1, y1, advance; font units, 1000 an em\n")
    for weight in ["Regular", "Medium", "SemiBold", "Bold"]:
        font = TTFont(f"crates/lettering/fonts/AtkinsonHyperlegibleNext-{weight}.ttf")
        glyphs, names = font.getGlyphSet(), font.getBestCmap()
        for character in "123456789ABHMQgimors+−":
            glyph = glyphs[names[ord(character)]]
            area, box = AreaPen(glyphs), BoundsPen(glyphs)
            glyph.draw(area)
            glyph.draw(box)
            out.write(",".join([weight, character, *(f"{v:g}" for v in [round(abs(area.value), 3), *box.bounds, glyph.width])]) + "\n")
