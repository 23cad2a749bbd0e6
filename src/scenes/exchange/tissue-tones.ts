/** Colours of what only the tissue has, on both stages. */
import { tonesOf } from "../anatomy/tones.ts";

export const tissueTone = tonesOf({
  /** body: the interstitium; light: its fibres */
  ground: {
    dark: { shade: "#170f1b", body: "#241823", light: "#6d5560", edge: "#463440" },
    light: { shade: "#f0dfd6", body: "#f8ece5", light: "#d9b9ab", edge: "#d6bfb2" },
  },
  cell: {
    dark: { shade: "#4b2b33", body: "#6b434a", light: "#8c6064", edge: "#2a171f" },
    light: { shade: "#d9a99c", body: "#e8c3b7", light: "#f5ddd4", edge: "#a97466" },
  },
  nucleus: {
    dark: { shade: "#291a35", body: "#443057", light: "#64507a", edge: "#20142a" },
    light: { shade: "#84688f", body: "#a58bb0", light: "#c6b3ce", edge: "#684e73" },
  },
  endothelium: {
    dark: { shade: "#7a5f66", body: "#b3949a", light: "#dcc6c8", edge: "#2a1a22" },
    light: { shade: "#c79c93", body: "#e6c6bf", light: "#f7e8e3", edge: "#8a5f57" },
  },
  lymph: {
    dark: { shade: "#062b2e", body: "#0d4648", light: "#1c6b6b", edge: "#2fb5af" },
    light: { shade: "#a5cbc8", body: "#cbe4e1", light: "#eaf6f4", edge: "#1c6f6c" },
  },
});
