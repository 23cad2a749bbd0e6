/** Colours of tissue on both stages, and of a vessel's round by what its blood carries. */
import { bloodColour, groundColour, mix, rgb } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** From shade to light; an edge is drawn around it. */
export interface Tissue {
  readonly shade: string;
  readonly body: string;
  readonly light: string;
  readonly edge: string;
}

type Organ = "lung" | "muscle" | "atrium" | "liver" | "diaphragm" | "valve";

const DARK: Readonly<Record<Organ, Tissue>> = {
  lung: { shade: "#1c1730", body: "#2e2642", light: "#453a5c", edge: "#7a6a92" },
  muscle: { shade: "#3d1318", body: "#85342f", light: "#c06a58", edge: "#e2a58f" },
  atrium: { shade: "#43181c", body: "#6d2e2e", light: "#99534a", edge: "#c58a7c" },
  liver: { shade: "#2a100e", body: "#5a281e", light: "#8a4a36", edge: "#a96a52" },
  diaphragm: { shade: "#4a2428", body: "#8a4f4c", light: "#c08a7e", edge: "#d8a898" },
  valve: { shade: "#5c2a28", body: "#f1dcc8", light: "#fff4e6", edge: "#e8cdb8" },
};

const LIGHT: Readonly<Record<Organ, Tissue>> = {
  lung: { shade: "#e3c9c8", body: "#f3dedb", light: "#fbefec", edge: "#a8838a" },
  muscle: { shade: "#a8554c", body: "#d08a7c", light: "#eeb8a8", edge: "#7c2f2a" },
  atrium: { shade: "#c88478", body: "#e2aa9d", light: "#f4cfc4", edge: "#8c443c" },
  liver: { shade: "#a87260", body: "#cf9d88", light: "#e6c0ae", edge: "#7a4434" },
  diaphragm: { shade: "#b07a70", body: "#cc9a8c", light: "#e4bcb0", edge: "#7e4a42" },
  valve: { shade: "#7c2f2a", body: "#fff8ee", light: "#ffffff", edge: "#8c5a50" },
};

export const tissue = (organ: Organ, { name }: Theme): Tissue => (name === "dark" ? DARK : LIGHT)[organ];

/** How a vessel is shaded across: wall, edge of the lumen, body, and the light along it. */
export interface Round {
  readonly wall: string;
  readonly edge: string;
  readonly body: string;
  readonly light: string;
}

/** A vein whose blood is shown by its own marks, as in the pathway. */
export const hollow = ({ colour, name }: Theme): Round => ({
  wall: colour.wall,
  edge: mix(colour.lumen, "#000000", name === "dark" ? 0.15 : 0.06),
  body: colour.lumen,
  light: mix(colour.lumen, name === "dark" ? "#4a5f9a" : "#ffffff", name === "dark" ? 0.3 : 1),
});

/** The same hue, lighter by a factor. */
const brighter = (hex: string, factor: number): string =>
  `#${rgb(hex)
    .map((part) => Math.min(255, Math.round(255 * part * factor)))
    .map((part) => part.toString(16).padStart(2, "0"))
    .join("")}`;

export function roundOf(saturation: number, { colour, name }: Theme): Round {
  const ground = groundColour(colour, saturation);
  const blood = bloodColour(colour, saturation);
  return name === "dark"
    ? {
        wall: mix(mix(ground, blood, 0.42), colour.wallEdge, 0.2),
        edge: mix(ground, "#000000", 0.45),
        body: mix(brighter(ground, 1.12), blood, 0.05),
        light: mix(brighter(ground, 1.7), blood, 0.3),
      }
    : {
        wall: mix(blood, "#000000", 0.28),
        edge: mix(ground, blood, 0.52),
        body: mix(ground, blood, 0.24),
        light: mix(ground, "#ffffff", 0.45),
      };
}
