/** Whether two frames show the same picture. */
import type { Frame } from "../../../chain/frame.ts";

/** frame, panes, pane, clots, clot: what lies deeper is made anew when it changes */
const DEPTH = 5;

/** Records and lists are compared by what they hold, all else by identity: an answer, a moment of a field, a tracer cloud is replaced when it changes. */
export const isSame = (one: Frame | null, other: Frame | null): boolean => isAlike(one, other, DEPTH);

function isAlike(one: unknown, other: unknown, depth: number): boolean {
  if (Object.is(one, other)) return true;
  if (depth === 0 || !isRecord(one) || !isRecord(other)) return false;
  const keys = Object.keys(one);
  return (
    keys.length === Object.keys(other).length && keys.every((key) => isAlike(one[key], other[key], depth - 1))
  );
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !ArrayBuffer.isView(value);
