/** What the lines and words of one picture are laid on, and how they look. */
import type { Graphics } from "pixi.js";
import type { Theme } from "../theme/theme.ts";
import type { Sizes } from "../theme/type.ts";
import type { Lettering } from "./lettering.ts";

export interface Look {
  readonly sizes: Sizes;
  readonly theme: Theme;
}

export interface Sheet extends Look {
  readonly ink: Graphics;
  readonly words: Lettering;
}
