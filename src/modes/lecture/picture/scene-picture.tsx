/** A scene as it will be drawn, as a small picture: one is drawn at a time, once it is in view. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { SceneState } from "../../../state/scene-state.ts";
import type { Context } from "../../shared/mode.ts";

interface ScenePictureProps {
  readonly context: Context;
  readonly scene: SceneState;
  /** px */
  readonly size: readonly [number, number];
  /** ms that it must be in view before it is drawn */
  readonly after: number;
}

/** By scene, size and theme, so that a row that moves is not drawn again. */
const drawn = new Map<string, string>();
const MAX_DRAWN = 300;
let turn: Promise<unknown> = Promise.resolve();

/** Between two pictures a press is heard. */
const pause = () => new Promise((resolve) => setTimeout(resolve, 100));

export function ScenePicture({ context, scene, size, after }: ScenePictureProps) {
  const name = JSON.stringify([scene, size, context.theme.value]);
  const address = useSignal("");
  const box = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    address.value = drawn.get(name) ?? "";
    if (address.value || !box.current) return;
    let wanted = true;
    const draw = async () => {
      await pause();
      if (!wanted) return;
      const picture = (await context.stage.still(scene, ...size)).toDataURL();
      if (drawn.size >= MAX_DRAWN) drawn.clear();
      drawn.set(name, picture);
      if (wanted) address.value = picture;
    };
    let timer: ReturnType<typeof setTimeout> | undefined;
    const seen = new IntersectionObserver(([entry]) => {
      clearTimeout(timer);
      if (!entry?.isIntersecting) return;
      timer = setTimeout(() => {
        seen.disconnect();
        // Where nothing can be drawn the stop's name stands alone.
        turn = turn.then(draw).catch(() => {});
      }, after);
    });
    seen.observe(box.current);
    return () => {
      wanted = false;
      clearTimeout(timer);
      seen.disconnect();
    };
  }, [name]);
  return (
    <span class="stop-thumb step" aria-hidden="true" ref={box}>
      {address.value && <img src={address.value} alt="" draggable={false} />}
    </span>
  );
}
