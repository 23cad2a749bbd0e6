"""Makes the faces of the plain zero from the slashed one (needs fonttools): plain-zero.py FONT_FILES OUT_FOLDER"""
import sys

from fontTools.ttLib import TTFont
from fontTools import subset
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.pens.transformPen import TransformPen
from fontTools.pens.reverseContourPen import ReverseContourPen
src,out=sys.argv[1:]
for w in ("400","700"):
    f=TTFont(f'{src}/atkinson-hyperlegible-latin-{w}-normal.woff2')
    options=subset.Options(); options.layout_features=["tnum"]; options.name_IDs=[0,13,14]; options.flavor="woff2"; options.notdef_outline=False; options.hinting=False
    s=subset.Subsetter(options); s.populate(unicodes=[0x30]); s.subset(f)
    gs=f.getGlyphSet()
    for g in [n for n in f.getGlyphOrder() if n.startswith("zero")]:
        pen=DecomposingRecordingPen(gs); gs[g].draw(pen)
        contours=[[]]
        for op,a in pen.value:
            contours[-1].append((op,a))
            if op=="closePath": contours.append([])
        outer,*holes=[c for c in contours if c]
        def bounds(cs):
            b=BoundsPen(gs)
            for c in cs:
                for op,a in c: getattr(b,op)(*a)
            return b.bounds
        ob,hb=bounds([outer]),bounds(holes)
        sx=(hb[2]-hb[0])/(ob[2]-ob[0]); sy=(hb[3]-hb[1])/(ob[3]-ob[1])
        tt=TTGlyphPen(gs)
        for op,a in outer: getattr(tt,op)(*a)
        inner=TransformPen(ReverseContourPen(tt),(sx,0,0,sy,hb[0]-sx*ob[0],hb[1]-sy*ob[1]))
        for op,a in outer: getattr(inner,op)(*a)
        f["glyf"][g]=tt.glyph()
    name=f["name"]
    for i,v in ((1,"Lungward Zero"),(2,"Bold" if w=="700" else "Regular"),(4,f"Lungward Zero {w}"),(6,f"LungwardZero-{w}")):
        name.setName(v,i,3,1,0x409)
    f.flavor="woff2"; f.save(f"{out}/plain-zero-{w}.woff2")
