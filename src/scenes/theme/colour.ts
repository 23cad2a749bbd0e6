/**
 * The colours of both stages. Each pair that carries meaning stays apart by lightness alone (grey print) and under
 * simulated colour-vision deficiency; tests/scenes/theme hold the figures.
 */
import { entryAt } from "../../sim/checked/present.ts";

export interface Palette {
  /** behind everything, and its deepest corner */
  readonly stage: string;
  readonly stageDeep: string;
  /** inside a vessel, behind the tracers */
  readonly lumen: string;
  /** vessel wall: body and its lit inner edge */
  readonly wall: string;
  readonly wallEdge: string;
  /** quiet shapes behind: heart and lungs */
  readonly backdrop: string;
  readonly backdropEdge: string;
  /** text, secondary text, hairlines */
  readonly ink: string;
  readonly inkSoft: string;
  readonly hair: string;
  /** the plate on which words over the scene stand, and its rim */
  readonly plate: string;
  readonly plateRim: string;
  /** what is pointed at; handles; focus ring */
  readonly accent: string;
  /** ink on the accent */
  readonly onAccent: string;
  /** blood: poor in oxygen, mixed and rich; and the same as the ground of a drawn vessel, on which its marks stand out */
  readonly poor: string;
  readonly mixed: string;
  readonly rich: string;
  readonly poorGround: string;
  readonly mixedGround: string;
  readonly richGround: string;
  readonly dye: string;
  readonly clot: string;
  /** by index into ORIGINS: upper body, liver, legs; the same hues on both stages: blue, orange, teal */
  readonly origin: readonly [string, string, string];
  /** numbers and lines: static pressure, total pressure */
  readonly pressure: string;
  readonly totalPressure: string;
  /** faults and cautions */
  readonly caution: string;
}

export const DARK: Palette = {
  stage: "#0c1222",
  stageDeep: "#060912",
  lumen: "#0b1224",
  wall: "#8d7f8c",
  wallEdge: "#d9c6c6",
  backdrop: "#1a2338",
  backdropEdge: "#3a4766",
  ink: "#f0f3fa",
  inkSoft: "#b4bdd3",
  hair: "#9aa5c2",
  plate: "#0b1020",
  plateRim: "#39456a",
  accent: "#ffd166",
  onAccent: "#1a1405",
  poor: "#6e96fd",
  mixed: "#d493c4",
  rich: "#ffc4a9",
  poorGround: "#142a6e",
  mixedGround: "#561f52",
  richGround: "#7d2c19",
  dye: "#f7b6ff",
  clot: "#f2878f",
  origin: ["#def1ff", "#ffb45c", "#13aca9"],
  pressure: "#9ecbff",
  totalPressure: "#ffffff",
  caution: "#ffb38a",
};

export const LIGHT: Palette = {
  stage: "#f7f5f0",
  stageDeep: "#e9e5dc",
  lumen: "#ffffff",
  wall: "#8a7a76",
  wallEdge: "#3d2f2d",
  backdrop: "#ece7de",
  backdropEdge: "#a79f94",
  ink: "#12151f",
  inkSoft: "#434a5c",
  hair: "#6b7285",
  plate: "#ffffff",
  plateRim: "#9aa0b0",
  accent: "#8a3ffc",
  onAccent: "#ffffff",
  poor: "#1b3a98",
  mixed: "#8c2a66",
  rich: "#d0431b",
  poorGround: "#c0cbef",
  mixedGround: "#e6bcd4",
  richGround: "#f6cdbe",
  dye: "#9b1fa8",
  clot: "#8f0f24",
  origin: ["#3c88b8", "#884900", "#003c3f"],
  pressure: "#1f5fae",
  totalPressure: "#12151f",
  caution: "#9a3b00",
};

export type Rgb = readonly [red: number, green: number, blue: number];

/** "#rrggbb" as the number that a sprite's tint takes */
export const tintOf = (hex: string): number => Number.parseInt(hex.slice(1), 16);

/** "#rrggbb" -> 0..1 each */
export const rgb = (hex: string): Rgb => {
  const value = tintOf(hex);
  return [(value >> 16) / 255, ((value >> 8) & 255) / 255, (value & 255) / 255];
};

/** 0..255 as two digits of a colour */
export const byte = (part: number): string => part.toString(16).padStart(2, "0");

/** A colour of which so much (0..1) is seen. */
export const seeThrough = (hex: string, alpha: number): string => hex + byte(Math.round(255 * alpha));

/** Straight mixture in sRGB, `share` of `b` from 0 to 1. */
export function mix(a: string, b: string, share: number): string {
  const from = rgb(a);
  const to = rgb(b);
  const parts = from.map((value, i) => Math.round(255 * (value + (entryAt(to, i) - value) * share)));
  return `#${parts.map(byte).join("")}`;
}

/** Bend of the way from poor to rich: what a vein carries, up to some 75 %, stays blue to the eye; mixed blood turns violet and dusky red. */
const BEND = 2;

/** Percent: the span between veins and arteries; what lies beyond an end takes the end's colour. */
export const OXYGEN = { least: 55, most: 97 } as const;

/** From poor by way of mixed to rich. */
function between(poor: string, mixed: string, rich: string, saturation: number): string {
  const part = (saturation - OXYGEN.least) / (OXYGEN.most - OXYGEN.least);
  const way = 2 * Math.min(1, Math.max(0, part)) ** BEND;
  return way < 1 ? mix(poor, mixed, way) : mix(mixed, rich, way - 1);
}

/** Blood by oxygen saturation in percent, from blue to vermilion. */
export const bloodColour = ({ poor, mixed, rich }: Palette, saturation: number): string =>
  between(poor, mixed, rich, saturation);

/** The inside of a drawn vessel or chamber by its blood's saturation in percent. */
export const groundColour = ({ poorGround, mixedGround, richGround }: Palette, saturation: number): string =>
  between(poorGround, mixedGround, richGround, saturation);

/** A mark of blood on its own ground: the same hue, nearer to the ink. */
export const markColour = (palette: Palette, saturation: number): string =>
  mix(bloodColour(palette, saturation), palette.ink, 0.22);

/** Part of a heart chamber's colour that is its blood's, on the dark and the light stage. */
export const CHAMBER_BLOOD = { dark: 0.45, light: 0.6 } as const;

/** What the inside of a chamber of the heart looks like. */
export const chamberColour = (
  palette: Palette,
  stage: keyof typeof CHAMBER_BLOOD,
  saturation: number,
): string => mix(palette.backdrop, groundColour(palette, saturation), CHAMBER_BLOOD[stage]);
