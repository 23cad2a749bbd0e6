/** Colours of skin, bone and tendon (cartilage too), on both stages; the leg's muscle has the heart's. */
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
  tendon: {
    dark: { shade: "#7d7470", body: "#c9beb4", light: "#efe7dc", edge: "#2a2226" },
    light: { shade: "#d6cabd", body: "#f6eee4", light: "#ffffff", edge: "#8a7a6e" },
  },
});
