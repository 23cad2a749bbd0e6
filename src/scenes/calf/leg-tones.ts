/** Colours of what only the leg has, on both stages; the muscle's are the heart's. */
import type { Tissue } from "../anatomy/tones.ts";
import type { Theme } from "../theme/theme.ts";

type LegTissue = "skin" | "bone" | "tendon";

const TONES: Readonly<Record<LegTissue, Readonly<Record<Theme["name"], Tissue>>>> = {
  skin: {
    dark: { shade: "#261b26", body: "#38272d", light: "#432e32", edge: "#a98283" },
    light: { shade: "#eacfc1", body: "#f5e3d8", light: "#faeee6", edge: "#a57a6a" },
  },
  bone: {
    dark: { shade: "#6a6255", body: "#b3a894", light: "#e2d8c4", edge: "#2a2226" },
    light: { shade: "#cdbb9c", body: "#eee3cd", light: "#fdf8ec", edge: "#7d6c52" },
  },
  tendon: {
    dark: { shade: "#7d7470", body: "#c9beb4", light: "#efe7dc", edge: "#2a2226" },
    light: { shade: "#d6cabd", body: "#f6eee4", light: "#ffffff", edge: "#8a7a6e" },
  },
};

export const legTissue = (name: LegTissue, theme: Pick<Theme, "name">): Tissue => TONES[name][theme.name];
