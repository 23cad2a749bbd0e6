/** Pictures of the stage apart from the screen: at any size, in another theme, of another state. */
import type { Chain } from "../../../chain/contract.ts";
import type { Frame } from "../../../chain/frame.ts";
import type { Look as Drawn, Stage } from "../../../scenes/stage.ts";
import { setView } from "../../../state/edit.ts";
import type { SceneState } from "../../../state/scene-state.ts";
import { type ThemeName, themeNamed } from "./themes.ts";

/** How a picture differs from the screen. */
interface Look {
  readonly theme: ThemeName;
  /** px of the picture: its smallest type */
  readonly floor: number;
}

export interface StagePictures {
  /** The present moment at this size, in px. Rejects where nothing can be drawn. */
  snapshot(width: number, height: number, look?: Look): Promise<HTMLCanvasElement>;
  /** A small picture of another state, without words. Rejects where nothing can be drawn or the state is not solved. */
  still(state: SceneState, width: number, height: number): Promise<HTMLCanvasElement>;
  /** The same as the inside of an SVG element of this size. */
  drawing(width: number, height: number, look?: Look): Promise<string>;
}

interface Sources {
  readonly chain: Chain;
  /** The last one drawn. */
  readonly frame: () => Frame | null;
  /** the screen's own look at the moment */
  readonly own: () => Look;
  /** Rejects where nothing can be drawn. */
  readonly stage: () => Promise<Stage>;
}

/** A small picture of a state is all picture. */
const WITHOUT_WORDS = {
  labels: false,
  handles: false,
  gradeLine: false,
  focus: null,
  camera: "whole",
  swipe: null,
  overlay: "none",
} as const;

/** Nobody drags a picture's handles; on paper nobody knows what was there before the last change. */
const pictureOf = (frame: Frame, theme: ThemeName): Frame => ({
  ...frame,
  state: setView({ handles: false })(frame.state),
  panes: theme === "paper" ? frame.panes.map((pane) => ({ ...pane, before: undefined })) : frame.panes,
});

export function stagePictures({ chain, frame, own, stage }: Sources): StagePictures {
  const pictured = async <Taken>(
    { theme, floor }: Look,
    take: (stage: Stage, frame: Frame, look: Drawn) => Promise<Taken>,
  ): Promise<Taken> =>
    take(await stage(), pictureOf(frame() ?? chain.frame(), theme), { theme: themeNamed(theme), floor });
  return {
    snapshot: (width, height, asked = own()) =>
      pictured(asked, (of, now, look) => of.snapshot(now, [width, height], look)),
    async still(state, width, height) {
      const there = await chain.still(setView(WITHOUT_WORDS)(state));
      return pictured(own(), (of, _, look) => of.snapshot(there, [width, height], look));
    },
    drawing: (width, height, asked = own()) =>
      pictured(asked, (of, now, look) => of.drawing(now, [width, height], look)),
  };
}
