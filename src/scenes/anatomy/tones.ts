/** Colours of tissue on both stages, and of a vessel's round by what its blood carries. */
import { entryAt } from "../../sim/checked/present.ts";
import { bloodColour, byte, groundColour, mix, rgb } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** From shade to light; an edge is drawn around it. */
export interface Tissue {
  readonly shade: string;
  readonly body: string;
  readonly light: string;
  readonly edge: string;
}

/** Looks up the colours of a part on a stage. */
export const tonesOf =
  <Part extends string>(table: Readonly<Record<Part, Readonly<Record<Theme["name"], Tissue>>>>) =>
  (part: Part, { name }: Pick<Theme, "name">): Tissue =>
    table[part][name];

const of = (shade: string, body: string, light: string, edge: string): Tissue => ({
  shade,
  body,
  light,
  edge,
});

export const tissue = tonesOf({
  lung: {
    dark: of("#1c1730", "#2e2642", "#453a5c", "#7a6a92"),
    light: of("#e3c9c8", "#f3dedb", "#fbefec", "#a8838a"),
  },
  muscle: {
    dark: of("#3d1318", "#85342f", "#c06a58", "#e2a58f"),
    light: of("#a8554c", "#d08a7c", "#eeb8a8", "#7c2f2a"),
  },
  atrium: {
    dark: of("#43181c", "#6d2e2e", "#99534a", "#c58a7c"),
    light: of("#c88478", "#e2aa9d", "#f4cfc4", "#8c443c"),
  },
  liver: {
    dark: of("#2a100e", "#5a281e", "#8a4a36", "#a96a52"),
    light: of("#a87260", "#cf9d88", "#e6c0ae", "#7a4434"),
  },
  diaphragm: {
    dark: of("#4a2428", "#8a4f4c", "#c08a7e", "#d8a898"),
    light: of("#b07a70", "#cc9a8c", "#e4bcb0", "#7e4a42"),
  },
  tendon: {
    dark: of("#7a6a70", "#a8949a", "#d6c6c8", "#5a4448"),
    light: of("#b9a09a", "#ecdcd4", "#fbf3ee", "#8d665e"),
  },
  /** the sac around the heart, with its fat */
  sac: {
    dark: of("#30241a", "#463626", "#5f4b36", "#8f7452"),
    light: of("#e0c7a0", "#edd9b8", "#f6ead2", "#b3906a"),
  },
  fat: {
    dark: of("#8d6830", "#c2974f", "#e2c285", "#5a3c18"),
    light: of("#dcb566", "#f0d28c", "#fae9b8", "#a47a34"),
  },
  valve: {
    dark: of("#5c2a28", "#f1dcc8", "#fff4e6", "#e8cdb8"),
    light: of("#7c2f2a", "#fff8ee", "#ffffff", "#8c5a50"),
  },
});

/** What a surgeon sews in. */
export interface Cloth {
  readonly body: string;
  readonly fold: string;
  readonly thread: string;
}

export const CLOTH: Readonly<Record<Theme["name"], Omit<Cloth, "thread">>> = {
  dark: { body: "#d8d2c4", fold: "#6f6a60" },
  light: { body: "#f4efe2", fold: "#8d8676" },
};

/** Suture: darker and greyer than any blood beside it. */
export const threadOf = ({ name }: Pick<Theme, "name">): string => (name === "dark" ? "#eef3f6" : "#16233c");

/** How a vessel is shaded across: wall, edge of the lumen, body, and the light along it. */
export interface Round {
  readonly wall: string;
  readonly edge: string;
  readonly body: string;
  readonly light: string;
  /** cut open: the wall's cut face from the outside inwards, by parts of its thickness; the light lies on the far side of the inside */
  readonly cut?: readonly (readonly [part: number, colour: string])[];
}

/** A vessel's blood as an organ is painted: darkest at its edge. */
export const asTissue = ({ edge, body, light }: Round): Tissue => ({ shade: edge, body, light, edge });

/** The inside of a vein's back wall: pale and bluish, so that marks of blood stand out; towards its edges it turns into the shade. */
export const inside = ({ name }: Pick<Theme, "name">): Pick<Round, "edge" | "body" | "light"> =>
  name === "dark"
    ? { edge: "#060a18", body: "#17213f", light: "#2a3766" }
    : { edge: "#a3a9cf", body: "#eceef9", light: "#fdfdff" };

/** A wall where it is cut: parts of its thickness from its outside to the edge of its lining, and their colours. */
export const cutFace = ({ name }: Pick<Theme, "name">): NonNullable<Round["cut"]> =>
  name === "dark"
    ? [
        [1.14, "#3c2f45"],
        [1, "#a48d98"],
        [0.86, "#cdb6bb"],
        [0.46, "#a48d98"],
        [0.15, "#ecdcdb"],
      ]
    : [
        [1.14, "#5d4550"],
        [1, "#c3a09f"],
        [0.86, "#e6cdc8"],
        [0.46, "#c3a09f"],
        [0.15, "#5b4450"],
      ];

/** The inside of an opened vessel with its blood: of the closed one's hue, and as pale (on the dark stage as deep) as marks in it need. */
export function opened({ body, edge }: Pick<Round, "body" | "edge">, { name }: Pick<Theme, "name">) {
  const [away, light, flat, turned] = OPENED[name];
  return { edge: mix(away, edge, turned), body: mix(away, body, flat), light: mix(away, body, light) };
}

/** What the closed vessel's tones are mixed into, and their parts in the light, on the flat and towards the edges. */
const OPENED = { dark: ["#000000", 0.84, 0.64, 0.6], light: ["#ffffff", 0.3, 0.34, 0.8] } as const;

/** A vein whose blood is shown by its own marks, as in the pathway. */
export const hollow = (saturation: number, theme: Theme): Round => ({
  ...opened(roundOf(saturation, theme), theme),
  wall: entryAt(cutFace(theme), 0)[1],
  cut: cutFace(theme),
});

/** A vessel that no blood fills any longer: its wall alone. */
export const emptied = ({ name }: Pick<Theme, "name">): Round =>
  name === "dark"
    ? { wall: "#e0cdd0", edge: "#4e3f4d", body: "#8f7783", light: "#c3abb0" }
    : { wall: "#7a4a48", edge: "#c6958d", body: "#ecc9c1", light: "#fdeee9" };

/** The portal vein and its branches: set off from the veins that leave the liver. */
export const portal = ({ name }: Theme): Round =>
  name === "dark"
    ? { wall: "#8d7286", edge: "#33203a", body: "#5d4366", light: "#7d6288" }
    : { wall: "#6a4763", edge: "#92708f", body: "#b396b0", light: "#cdb6c9" };

/** The same hue, lighter by a factor. */
const brighter = (hex: string, factor: number): string =>
  `#${rgb(hex)
    .map((part) => Math.min(255, Math.round(255 * part * factor)))
    .map(byte)
    .join("")}`;

/** A closed vessel: its body has the colour that the key's bar has for its saturation in percent. */
export function roundOf(saturation: number, { colour, name }: Theme): Round {
  const ground = groundColour(colour, saturation);
  const blood = bloodColour(colour, saturation);
  return name === "dark"
    ? {
        wall: mix(mix(ground, blood, 0.36), colour.wallEdge, 0.2),
        edge: mix(ground, "#000000", 0.34),
        body: mix(brighter(ground, 1.16), blood, 0.06),
        light: mix(brighter(ground, 1.5), blood, 0.22),
      }
    : {
        wall: mix(mix(blood, "#000000", 0.2), ground, 0.2),
        edge: mix(ground, blood, 0.36),
        body: mix(ground, blood, 0.2),
        light: mix(ground, "#ffffff", 0.3),
      };
}
