/** Small pictures of all scenes, drawn by the stage itself and kept for each pathway and theme. */
import { effect, type ReadonlySignal, signal } from "@preact/signals";
import { SCENES, type SceneName } from "../../state/scene-state.ts";
import type { Context } from "../shared/mode.ts";

/** px drawn, and the part of it that is kept: lines thin out instead of breaking */
const SIZE = { width: 480, height: 270 } as const;
const SHRINK = 2.4;
/** ms before the first picture, for what the first view fetches and draws, and before each: one that moves hardly notices, one that stands still has nothing to lose */
const WAITS = { moving: { first: 1000, each: 100 }, still: { first: 400, each: 20 } } as const;

/** ms without a press or a key before each: while a person works, the processor is theirs */
const REST = 600;

export type ScenePictures = Readonly<Partial<Record<SceneName, string>>>;

const kept = new Map<string, string>();

/** Fills up one by one while the bench is open, until the returned function is called. */
export function scenePictures(context: Pick<Context, "session" | "stage" | "theme">): {
  readonly pictures: ReadonlySignal<ScenePictures>;
  readonly release: () => void;
} {
  const { session, stage, theme } = context;
  const pictures = signal<ScenePictures>({});
  const input = watchInput();
  let turn = 0;
  const waits = () => WAITS[stage.frame()?.still ? "still" : "moving"];

  const draw = async (stageName: string, mine: number) => {
    const keyOf = (scene: SceneName) => `${stageName} ${theme.peek()} ${scene}`;
    const show = () => {
      pictures.value = Object.fromEntries(SCENES.flatMap((scene) => pairOf(scene, kept.get(keyOf(scene)))));
    };
    show();
    await passed(waits().first);
    // The one that is shown comes last: by then blood moves in it.
    const shown = session.scene.peek().scene;
    for (const scene of [...SCENES.filter((each) => each !== shown), shown]) {
      if (kept.has(keyOf(scene))) continue;
      await passed(waits().each);
      for (let left = input.left(); left > 0; left = input.left()) await passed(left);
      if (turn !== mine) return;
      const picture = await stage.preview(scene, SIZE.width, SIZE.height);
      if (turn !== mine || !picture) return;
      kept.set(keyOf(scene), shrunk(picture));
      show();
    }
  };

  const stop = effect(() => {
    const [circulation] = session.chain.circulations.value;
    void theme.value;
    const asked = session.scene.value.request.stage;
    if (stage.way.value === "starting" || stage.way.value === "none") return;
    if (circulation?.request.stage !== asked) return;
    // Where one cannot be drawn the scene's name stands alone.
    draw(asked, ++turn).catch(() => {});
  });
  return {
    pictures,
    release() {
      turn++;
      stop();
      input.release();
    },
  };
}

/** How long it is until a person has rested for long enough, ms. */
function watchInput(): { readonly left: () => number; readonly release: () => void } {
  let last = Number.NEGATIVE_INFINITY;
  const acted = () => {
    last = Date.now();
  };
  const kinds = ["pointerdown", "pointermove", "wheel", "keydown", "input"];
  for (const kind of kinds) addEventListener(kind, acted, { passive: true, capture: true });
  return {
    left: () => last + REST - Date.now(),
    release() {
      for (const kind of kinds) removeEventListener(kind, acted, { capture: true });
    },
  };
}

const passed = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

const pairOf = (scene: SceneName, picture: string | undefined): readonly [SceneName, string][] =>
  picture ? [[scene, picture]] : [];

function shrunk(picture: HTMLCanvasElement): string {
  const small = document.createElement("canvas");
  small.width = picture.width / SHRINK;
  small.height = picture.height / SHRINK;
  const ink = small.getContext("2d");
  if (!ink) throw new Error("no picture can be made smaller here");
  ink.imageSmoothingQuality = "high";
  ink.drawImage(picture, 0, 0, small.width, small.height);
  return small.toDataURL("image/png");
}
