/** What the key has to say of the flow that moves the picture and of a map over it: that it is a plane's, over what it is a mean, and whether it settles still. */
import type { Pane } from "../../chain/frame.ts";
import type { Overlay } from "../../state/scene-state.ts";
import type { Theme } from "../theme/theme.ts";

export const mapShown = ({ field, means }: Pane, overlay: Overlay): boolean =>
  overlay !== "none" && !!means && field !== null;

/** The window of the field's readings, which is the circulation's own: a breath, or a beat while no breath is drawn. */
const windowOf = (panes: readonly Pane[]): "breath" | "beat" => {
  const traces = panes[0]?.circulation?.traces;
  return traces && traces.period < 1.5 * traces.heartPeriod ? "beat" : "breath";
};

export function mapRemarks(panes: readonly Pane[], overlay: Overlay, theme: Theme): string[] {
  const fields = panes.flatMap(({ field }) => field ?? []);
  const plane = fields.length > 0 ? [theme.say("scene.inPlane")] : [];
  if (overlay === "none") return plane;
  const mean = theme.say("scene.map.mean", { window: windowOf(panes) });
  const settling = fields.some(({ readings }) => !readings.settled) ? [theme.say("scene.map.settling")] : [];
  return [...plane, mean, ...settling];
}
