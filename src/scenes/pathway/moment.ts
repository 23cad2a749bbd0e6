/** What of a frame every pane of the pathway scene shares. */
import type { Frame } from "../../chain/frame.ts";
import type { View } from "../../state/scene-state.ts";
import type { Viewport } from "../scene.ts";

export interface Moment {
  readonly view: View;
  /** s of blood time */
  readonly time: number;
  readonly still: boolean;
  /** panes stand side by side: each keeps to its box and never dims */
  readonly compared: boolean;
  /** one of a scene's first drawings, in which blood is to be seen moving before all else */
  readonly first: boolean;
  readonly viewport: Viewport;
}

export const momentOf = (
  { state, time, still, panes }: Frame,
  viewport: Viewport,
  first = false,
): Moment => ({
  view: state.view,
  time,
  still,
  compared: panes.length > 1,
  first,
  viewport,
});
