/** The ways of blood around heart and lungs where these fill the picture: neck, liver, and the lower vein on its way up. */
import { anatomyOf } from "../../anatomy/chest-anatomy.ts";
import type { Tube } from "../../anatomy/great-vessels.ts";
import { CHEST_AT, chestFrame, onPlane } from "../chest-plan.ts";
import type { Blood, Vessel } from "../vessel.ts";
import { coverOf, heartVessels } from "./heart-courses.ts";
import { greatVessels } from "./heart-vessels.ts";

/** Which stream a vein carries, and which part of it (common textbook shares). */
const FED: readonly (readonly [name: RegExp, flow: string, share: number])[] = [
  [/BrachiocephalicVein/, "svc", 0.5],
  [/ugular|ubclavianVein/, "svc", 0.25],
  [/lowerInferiorVenaCava/, "legs", 1],
  [/^rightHepaticVein/, "splanchnic", 0.5],
  [/^(middle|left)HepaticVein/, "splanchnic", 0.25],
  [/^portalVein/, "splanchnic", 0.75],
];

/** mm: above, blood from both sides keeps to its own vein, and below it is the upper vein's. */
const CONFLUENCE = 20;

function along(
  { name, line, from, to, fades }: Tube,
  [flow, blood]: readonly [string, Blood],
  share: number,
): Vessel {
  const way = flow === "svc" ? line.filter(([, y]) => y > CONFLUENCE) : line;
  const points = way.filter((_, i) => i % 5 === 0 || i === way.length - 1);
  const width = CHEST_AT.scale * ((from + to) / 2);
  const ends = fades ? { fades } : {};
  return { name, flow, blood, width, share, points: points.map(onPlane), painted: true, ...ends };
}

/** Those that the whole body draws around the chest are painted here, and others leave the picture. */
export function closeVessels(): readonly Vessel[] {
  const anatomy = anatomyOf(chestFrame("two-ventricle", true));
  const { veins, abdomen } = anatomy;
  const { branches, aorta } = greatVessels(anatomy);
  const covers = [aorta, ...veins.filter(({ group }) => group === "brachiocephalic")].map(coverOf);
  const wide = branches.reduce((sum, { from }) => sum + from, 0);
  return [
    ...[...veins, ...abdomen.portal].flatMap((vein) => {
      const fed = FED.find(([name]) => name.test(vein.name));
      if (!fed) return [];
      const [, flow, share] = fed;
      const blood = flow === "svc" ? "svc" : "ivc";
      const own = along(vein, [flow, blood], share);
      return [flow === "svc" ? own : ({ ...own, behind: true } as const)];
    }),
    ...branches.map((tube) => ({ ...along(tube, ["upper", "arterial"], tube.from / wide), covers })),
    ...heartVessels(true).map((each) =>
      each.name === "svc" ? { ...each, points: [onPlane([0, CONFLUENCE]), ...each.points.slice(1)] } : each,
    ),
  ];
}
