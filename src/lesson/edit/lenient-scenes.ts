/** The scenes of a text that is being written: a block that cannot be read changes nothing, all others still do. */
import * as v from "valibot";
import { currentIds } from "../../sim/parameters/aliases.ts";
import { patchSchema, type ScenePatch, sceneSchema } from "../format/scene-patch.ts";
import type { Scenes } from "../model/states.ts";
import { type Lines, type Outline, outlineOf } from "./text-outline.ts";
import { readLeniently } from "./yaml-edit.ts";

export function lenientScenes(text: string): Scenes {
  const outline = outlineOf(text);
  const front = recordAt(outline, outline.front);
  const states = typeof front.states === "object" ? Object.entries(front.states ?? {}) : [];
  return {
    start: patchOf(patchSchema, front.start),
    states: Object.fromEntries(states.map(([name, patch]) => [name, patchOf(patchSchema, patch)])),
    steps: outline.steps.map(({ blocks }) => ({
      patch: patchOf(sceneSchema, recordAt(outline, blocks.scene)),
    })),
  };
}

export const recordAt = (
  { lines }: Outline,
  place: Lines | null | undefined,
): Readonly<Record<string, unknown>> =>
  (place && readLeniently(lines.slice(place.from, place.to).join("\n"))?.value) ?? {};

function patchOf(schema: typeof patchSchema | typeof sceneSchema, raw: unknown): ScenePatch {
  const read = v.safeParse(schema, currentIds(raw ?? {}));
  return read.success ? read.output : {};
}
