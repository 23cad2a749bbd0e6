/** Muscle and bone of the legs, as soft groups under the skin, and the red of muscle at work. Common anatomy, from memory; plane of `anatomy.ts`. */
import { paintOrgan } from "../anatomy/paint-organ.ts";
import { laidOver, scratch } from "../anatomy/paint-tube.ts";
import { type Bounds, eraseAlong, type Ink, trace } from "../anatomy/painted-sheet.ts";
import type { Tissue } from "../anatomy/tones.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { mirrored } from "./figure-shape.ts";
import { upright } from "./paint-figure.ts";
import type { Proportions } from "./proportions.ts";

const onBoth = (points: readonly Spot[]): readonly (readonly Spot[])[] => [points, mirrored(points)];
const table = (...ways: readonly string[]): readonly (readonly Spot[])[] =>
  ways.flatMap((way) => onBoth(spots(way)));

/** The thigh from hip to knee; the calf on either side of the shin. */
const GROUPS = table(
  "640 1010, 730 1000, 772 1060, 787 1150, 775 1240, 749 1336, 717 1414, 698 1446, 684 1434, 672 1410, 654 1400, 634 1412, 624 1442, 606 1460, 590 1450, 582 1404, 565 1330, 546 1240, 528 1150, 517 1098, 526 1076, 570 1040, 640 1010",
  "592 1508, 614 1534, 619 1620, 617 1720, 610 1800, 600 1880, 596 1930, 590 1880, 584 1780, 570 1690, 563 1608, 567 1548, 592 1508",
  "656 1506, 682 1516, 704 1530, 713 1570, 712 1636, 699 1726, 680 1822, 664 1900, 650 1926, 643 1890, 643 1790, 645 1690, 643 1590, 646 1530, 656 1506",
);
/** Between muscles: either border of the sartorius, then vastus lateralis, rectus, vastus medialis, adductors; and of the shin's muscles. */
const FURROWS = table(
  "752 1050, 706 1124, 654 1210, 614 1300, 592 1384, 588 1446",
  "728 1030, 680 1112, 630 1202, 594 1292, 576 1366",
  "750 1066, 747 1150, 730 1240, 704 1330, 683 1408",
  "668 1196, 655 1260, 648 1330, 645 1390",
  "560 1110, 582 1180, 598 1244",
  "690 1532, 692 1620, 684 1720, 666 1826, 654 1890",
  "600 1650, 602 1730, 598 1810",
);
const SHINS = table(
  "624 1504, 642 1520, 640 1580, 634 1680, 624 1800, 616 1900, 612 1960, 602 1956, 604 1880, 610 1760, 610 1640, 612 1560, 608 1516, 624 1504",
);

/** All of them; y up. */
const ROOM: Bounds = [180, -1980, 820, -990];
/** Heights between which the thighs come out of the hips. */
const BEGINS = { from: -1016, to: -1150 } as const;

/** What is painted on a sheet of its own, its upper end lost in the skin. */
function faded(ink: Ink, paint: (own: Ink) => void): void {
  const own = scratch(ink, ROOM);
  paint(own);
  eraseAlong(own, [0, BEGINS.to], [0, BEGINS.from], ROOM);
  laidOver(ink, own, ROOM);
}

export function paintLegs(ink: Ink, { carry }: Proportions, muscle: Tissue, bone: Tissue): void {
  const lain = (points: readonly Spot[]) => upright(points.map(carry));
  for (const shin of SHINS) paintOrgan(ink, lain(shin), bone, { depth: 8, edge: 1.2 });
  faded(ink, (own) => {
    for (const group of GROUPS) paintOrgan(own, lain(group), muscle, { depth: 22, edge: 1 });
    for (const [width, colour, alpha] of [
      [9, muscle.shade, 0.3],
      [4, muscle.shade, 0.5],
      [1.4, muscle.edge, 0.55],
    ] as const) {
      own.lineWidth = width;
      own.strokeStyle = colour;
      own.globalAlpha = alpha;
      for (const furrow of FURROWS) {
        trace(own, lain(furrow));
        own.stroke();
      }
    }
    own.globalAlpha = 1;
  });
}

/** How red muscle becomes at the greatest flow. */
const FLUSH = { dark: 0.5, light: 0.3 } as const;

/** @param part 0 as at rest .. 1 */
export function paintFlush(ink: Ink, part: number, { carry }: Proportions, { name, colour }: Theme): void {
  faded(ink, (own) => {
    own.globalAlpha = FLUSH[name] * part;
    own.fillStyle = name === "dark" ? mix(colour.richGround, colour.rich, 0.15) : colour.rich;
    for (const group of GROUPS) {
      trace(own, upright(group.map(carry)), true);
      own.fill();
    }
  });
}
