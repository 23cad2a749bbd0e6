/** A stop that comes next as a small picture: the speaker's own as it is, a scene as it will be drawn. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Context } from "../../shared/mode.ts";
import { type Pictures, pictureOf } from "../own-stops.ts";
import { sceneOfStop } from "../stop-state.ts";
import { StopThumb } from "../stop-thumb.tsx";
import type { FoundStop } from "../stops.ts";

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
    <ScenePicture key={JSON.stringify(scene)} context={context} scene={scene} />
  ) : (
    <StopThumb stop={stop} pictures={pictures} />
  );
}

interface ScenePictureProps {
  readonly context: Context;
  readonly scene: NonNullable<ReturnType<typeof sceneOfStop>>;
}

function ScenePicture({ context, scene }: ScenePictureProps) {
  const address = useSignal("");
  useEffect(() => {
    let wanted = true;
    const begin = setTimeout(() => {
      context.stage.still(scene, ...SIZE).then(
        (canvas) => {
          if (wanted) address.value = canvas.toDataURL();
        },
        () => {
          // Where nothing can be drawn the stop's name stands alone.
        },
      );
    }, LATER);
    return () => {
      wanted = false;
      clearTimeout(begin);
    };
  }, []);
  return (
    <span class="stop-thumb step" aria-hidden="true">
      {address.value && <img src={address.value} alt="" />}
    </span>
  );
}
