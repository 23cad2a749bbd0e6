/** Slide-size pictures of every step of a talk, each with its numbers and cautions, in one ZIP. */
import { zip } from "fflate";
import { stepState } from "../../lesson/states.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { saveFile } from "../../ui/take-away/save-file.ts";
import type { Context } from "../shared/mode.ts";
import { settled } from "../shared/settled.ts";
import { stillOf } from "../shared/stills-and-clips.ts";
import type { FoundStep } from "./stops.ts";

/** px */
const HEIGHT = 1080;
/** CSS px */
const FLOOR = 24;

/** Shows each step in turn; null when cancelled. The scene is left as it was. */
export async function saveStills(
  context: Context,
  stops: readonly FoundStep[],
  onProgress: (done: number) => void,
  cancel: AbortSignal,
): Promise<void> {
  const { session, stage } = context;
  const before = session.scene.peek();
  const hide = stage.show(FLOOR);
  const files: Record<string, Uint8Array> = {};
  try {
    for (const [
      index,
      {
        found: { lesson, index: step },
      },
    ] of stops.entries()) {
      if (cancel.aborted) return;
      onProgress(index);
      session.show(stepState(lesson, step));
      await settled(context, cancel);
      const name = `${String(index + 1).padStart(3, "0")}-${lesson.id}-${entryAt(lesson.steps, step).id}.png`;
      files[name] = new Uint8Array(await (await stillOf(context, HEIGHT)).arrayBuffer());
    }
  } finally {
    hide();
    session.show(before);
  }
  const packed = await new Promise<Uint8Array>((resolve, reject) =>
    // Pictures are packed already: store them.
    zip(files, { level: 0 }, (error, data) => (error ? reject(error) : resolve(data))),
  );
  saveFile("lungward-stills.zip", new Blob([packed as BlobPart], { type: "application/zip" }));
}
