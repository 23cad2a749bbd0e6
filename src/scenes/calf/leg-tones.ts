/** Colours of skin, fat, fascia, bone and tendon (cartilage too), on both stages; the leg's muscle has the heart's. */
import { tonesOf } from "../anatomy/tones.ts";

export const legTissue = tonesOf({
  skin: {
    dark: { shade: "#261b26", body: "#38272d", light: "#432e32", edge: "#a98283" },
    light: { shade: "#eacfc1", body: "#f5e3d8", light: "#faeee6", edge: "#a57a6a" },
  },
  bone: {
    dark: { shade: "#6a6255", body: "#b3a894", light: "#e2d8c4", edge: "#2a2226" },
    light: { shade: "#cdbb9c", body: "#eee3cd", light: "#fdf8ec", edge: "#7d6c52" },
  },
  /** under the skin */
  fat: {
    dark: { shade: "#6b5238", body: "#473528", light: "#5a4432", edge: "#2a2226" },
    light: { shade: "#d9b878", body: "#f3e1b4", light: "#fbf0d2", edge: "#b89a5e" },
  },
  /** the deep fascia, and within it the loose tissue between muscles */
  fascia: {
    dark: { shade: "#2c1f25", body: "#33242a", light: "#a99a92", edge: "#1c1418" },
    light: { shade: "#e2c3b6", body: "#f6e2d8", light: "#fffaf4", edge: "#b09888" },
  },
  tendon: {
    dark: { shade: "#7d7470", body: "#c9beb4", light: "#efe7dc", edge: "#2a2226" },
    light: { shade: "#d6cabd", body: "#f6eee4", light: "#ffffff", edge: "#8a7a6e" },
  },
});
