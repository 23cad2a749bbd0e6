/** A stop that comes next as a small picture: the speaker's own as it is, a scene as it will be drawn. */
import type { Context } from "../../shared/mode.ts";
import { StopThumb } from "../builder/stop-thumb.tsx";
import { type Pictures, pictureOf } from "../talk/own-stops.ts";
import { sceneOfStop } from "../talk/stop-state.ts";
import type { FoundStop } from "../talk/stops.ts";
import { ScenePicture } from "./scene-picture.tsx";

export interface NextPictureProps {
  readonly context: Context;
  readonly stop: FoundStop;
  readonly pictures: Pictures;
}

/** px */
const SIZE = [480, 270] as const;
/** ms: the answer of the scene in view comes first, and a speaker may be stepping on */
const LATER = 1200;

export function NextPicture({ context, stop, pictures }: NextPictureProps) {
  const scene = pictureOf(stop) ? null : sceneOfStop(stop);
  return scene ? (
    <ScenePicture {...{ context, scene }} size={SIZE} after={LATER} />
  ) : (
    <StopThumb stop={stop} pictures={pictures} />
  );
}
