/** What a map's key has to say beside its scale: over what it is a mean, and whether it can be trusted yet. */
import type { Pane } from "../../chain/frame.ts";
import { type EnergyBudget, energyBudget } from "../../sim/flow-field/energy-book.ts";
import type { Overlay } from "../../state/scene-state.ts";
import type { Theme } from "../theme/theme.ts";

/** Whether the map may be shown: no loss is read from a flow whose energy budget is not closed. */
export const mapShown = ({ field, means }: Pane, overlay: Overlay): boolean =>
  overlay !== "none" &&
  !!means &&
  field !== null &&
  (overlay !== "loss" || energyBudget(field.readings) === "closed");

/** The window of the field's readings, which is the circulation's own: a breath, or a beat while no breath is drawn. */
const windowOf = (panes: readonly Pane[]): "breath" | "beat" => {
  const traces = panes[0]?.circulation?.traces;
  return traces && traces.period < 1.5 * traces.heartPeriod ? "beat" : "breath";
};

export function mapRemarks(panes: readonly Pane[], overlay: Overlay, theme: Theme): string[] {
  if (overlay === "none") return [];
  const mean = theme.say("scene.map.mean", { window: windowOf(panes) });
  const books = panes.flatMap(({ field }) => (field ? [energyBudget(field.readings)] : []));
  const worst = (["open", "settling"] satisfies EnergyBudget[]).find((book) => books.includes(book));
  if (worst === undefined || (worst === "open" && overlay !== "loss")) return [mean];
  return [mean, theme.say(overlay === "loss" ? `scene.map.noLoss.${worst}` : "scene.map.settling")];
}
