/** Colours of what only the tissue has, on both stages. */
import { tonesOf } from "../anatomy/tones.ts";

export const tissueTone = tonesOf({
  /** body: the interstitium; light: its fibres */
  ground: {
    dark: { shade: "#170f1b", body: "#241823", light: "#6d5560", edge: "#94767f" },
    light: { shade: "#f0dfd6", body: "#f8ece5", light: "#d9b9ab", edge: "#b98f7e" },
  },
  cell: {
    dark: { shade: "#4a2c3a", body: "#5d3b4b", light: "#704a5a", edge: "#8d6474" },
    light: { shade: "#e6bfb9", body: "#efd0ca", light: "#f8e2dd", edge: "#bf8f8a" },
  },
  /** light: its upper part, body: its lower one */
  cavity: {
    dark: { shade: "#0e141d", body: "#141d29", light: "#1b2634", edge: "#2b3a4c" },
    light: { shade: "#dde6ea", body: "#e8eff2", light: "#f5f8f9", edge: "#9db2bd" },
  },
  /** gold, as nothing else is here */
  protein: {
    dark: { shade: "#b98a1c", body: "#ffd66b", light: "#fff0c2", edge: "#5c430a" },
    light: { shade: "#8a5f00", body: "#e8a90c", light: "#ffdf8a", edge: "#6a4800" },
  },
  /** a drain's wall; light: its inside */
  drain: {
    dark: { shade: "#5d6f80", body: "#8fa3b5", light: "#2a3947", edge: "#c4d3e0" },
    light: { shade: "#8ea4b3", body: "#c3d3dd", light: "#edf4f8", edge: "#4d6472" },
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
