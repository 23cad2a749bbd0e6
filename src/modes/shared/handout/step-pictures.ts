/** Pictures of a lesson's steps for paper: each drawn once, one after the other on the page's one stage, which is left as it was. */
import { type ReadonlySignal, signal } from "@preact/signals";
import type { Lesson } from "../../../lesson/lesson.ts";
import { stepState } from "../../../lesson/model/states.ts";
import type { SceneState } from "../../../state/scene-state.ts";
import type { Context } from "../mode.ts";
import { settled } from "../stage/settled.ts";
import { isWide } from "./handout-choice.ts";

/** px: sharp at 87 mm on paper, where `floor` is about 7 points */
const PICTURE = { width: 1200, height: 750, floor: 34 } as const;
/** px: the same over a whole row, 180 mm on paper */
const WIDE = { width: 1700, height: 560, floor: 24 } as const;

interface StepPictures {
  /** Addresses, by the step's place in the lesson. */
  readonly drawn: ReadonlySignal<ReadonlyMap<number, string>>;
  /** Draws these in their order, and nothing else that was wanted earlier. */
  want(steps: readonly number[]): void;
  stop(): void;
}

/** Ends when the stage is free again. */
let turn: Promise<void> = Promise.resolve();

export function stepPictures(context: Context, lesson: Lesson): StepPictures {
  const { session, stage } = context;
  const drawn = signal<ReadonlyMap<number, string>>(new Map());
  const cancel = new AbortController();
  let wanted: readonly number[] = [];
  let drawing = false;
  const next = () => (cancel.signal.aborted ? undefined : wanted.find((index) => !drawn.peek().has(index)));
  const drawAll = async () => {
    const before = session.scene.peek();
    const hide = stage.show(PICTURE.floor);
    try {
      for (let index = next(); index !== undefined; index = next()) {
        const { view, ...state } = stepState(lesson, index);
        // Arrows for paper; no dye, whose moment paper cannot show.
        const shown = { ...state, view: { ...view, streamlines: true, dye: before.view.dye } };
        const size = isWide(lesson, index) ? WIDE : PICTURE;
        const address = await picture(context, shown, size, cancel.signal);
        if (address !== null) drawn.value = new Map(drawn.peek()).set(index, address);
      }
    } finally {
      drawing = false;
      hide();
      session.show(before);
    }
  };
  return {
    drawn,
    want(steps) {
      wanted = steps;
      if (drawing || next() === undefined) return;
      drawing = true;
      turn = turn.then(drawAll, drawAll);
    },
    stop: () => cancel.abort(),
  };
}

/** null once it is cancelled */
async function picture(
  context: Context,
  state: SceneState,
  { width, height, floor }: typeof PICTURE | typeof WIDE,
  cancel: AbortSignal,
): Promise<string | null> {
  context.session.show(state);
  await settled(context, cancel);
  if (cancel.aborted) return null;
  const canvas = await context.stage.snapshot(width, height, { theme: "paper", floor });
  return canvas.toDataURL("image/png");
}
