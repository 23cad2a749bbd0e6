"""Makes the faces of the plain zero from the slashed one (needs fonttools): plain-zero.py FONT_FILES OUT_FOLDER"""
import sys

from fontTools.ttLib import TTFont
from fontTools import subset
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.pens.transformPen import TransformPen
from fontTools.pens.reverseContourPen import ReverseContourPen

source, out = sys.argv[1:]
for weight in ("400", "700"):
    font = TTFont(f"{source}/atkinson-hyperlegible-latin-{weight}-normal.woff2")

    # The digit alone, with its tabular form and the notices of copyright and licence.
    options = subset.Options()
    options.layout_features = ["tnum"]
    options.name_IDs = [0, 13, 14]
    options.flavor = "woff2"
    options.notdef_outline = False
    options.hinting = False
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=[0x30])
    subsetter.subset(font)

    glyphs = font.getGlyphSet()
    for zero in [name for name in font.getGlyphOrder() if name.startswith("zero")]:
        recording = DecomposingRecordingPen(glyphs)
        glyphs[zero].draw(recording)
        contours = [[]]
        for step, points in recording.value:
            contours[-1].append((step, points))
            if step == "closePath":
                contours.append([])
        outer, *holes = [contour for contour in contours if contour]

        def bounds(contours):
            pen = BoundsPen(glyphs)
            for contour in contours:
                for step, points in contour:
                    getattr(pen, step)(*points)
            return pen.bounds

        # The stroke parts the hole in two: in their place the outer contour, shrunk to the bounds of both.
        around, within = bounds([outer]), bounds(holes)
        wide = (within[2] - within[0]) / (around[2] - around[0])
        tall = (within[3] - within[1]) / (around[3] - around[1])
        pen = TTGlyphPen(glyphs)
        for step, points in outer:
            getattr(pen, step)(*points)
        inner = TransformPen(
            ReverseContourPen(pen),
            (wide, 0, 0, tall, within[0] - wide * around[0], within[1] - tall * around[1]),
        )
        for step, points in outer:
            getattr(inner, step)(*points)
        font["glyf"][zero] = pen.glyph()

    names = font["name"]
    for key, text in (
        (1, "Lungward Zero"),
        (2, "Bold" if weight == "700" else "Regular"),
        (4, f"Lungward Zero {weight}"),
        (6, f"LungwardZero-{weight}"),
    ):
        names.setName(text, key, 3, 1, 0x409)
    font.flavor = "woff2"
    font.save(f"{out}/plain-zero-{weight}.woff2")
