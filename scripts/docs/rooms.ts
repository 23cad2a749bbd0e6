/** The folders of `src` and which imports which, read from the files' import lines. */
import { readSources } from "../../tests/house/sources.ts";

export interface Arrow {
  readonly from: string;
  readonly to: string;
  readonly typeOnly: boolean;
}

/** `src/lesson/read/read.ts` -> "lesson"; a folder of sim counts separately, and files directly in sim are its records. */
function roomOf(path: string): string {
  const [, room, inner] = path.split("/") as [string, string, string?];
  if (room === "sim") return /\.tsx?$/.test(inner!) ? "sim: records" : `sim: ${inner}`;
  return room.replace(/\.tsx?$/, "");
}

/** One arrow for each pair of folders; type-only where no value is imported. */
export function readArrows(): readonly Arrow[] {
  const arrows = new Map<string, Arrow>();
  for (const { path, imports } of readSources("src"))
    for (const { own, target, typeOnly } of imports) {
      if (!own || !/^src\/.*\.tsx?$/.test(target)) continue;
      const [from, to] = [roomOf(path), roomOf(target)];
      const key = `${from} -> ${to}`;
      if (from !== to && (!arrows.has(key) || !typeOnly)) arrows.set(key, { from, to, typeOnly });
    }
  return [...arrows.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, arrow]) => arrow);
}

/** Folder -> level: 0 imports no value of another folder, else one above the highest that it imports. @throws Error at a circle */
export function levels(arrows: readonly Arrow[]): ReadonlyMap<string, number> {
  const below = new Map<string, string[]>();
  for (const { from, to, typeOnly } of arrows) {
    below.set(from, [...(below.get(from) ?? []), ...(typeOnly ? [] : [to])]);
    if (!below.has(to)) below.set(to, []);
  }
  const known = new Map<string, number>();
  const level = (room: string, trail: readonly string[]): number => {
    if (trail.includes(room)) throw new Error(`rooms in a circle: ${[...trail, room].join(" -> ")}`);
    const found = known.get(room);
    if (found !== undefined) return found;
    const height = Math.max(-1, ...below.get(room)!.map((next) => level(next, [...trail, room]))) + 1;
    known.set(room, height);
    return height;
  };
  for (const room of below.keys()) level(room, []);
  return known;
}
