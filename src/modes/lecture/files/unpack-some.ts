/** Files of a ZIP, within bounds that no header can lie about: counted as they unpack, and the page draws meanwhile. */

import { Unzip, type UnzipFile, UnzipInflate } from "fflate";
import { messageOf } from "../../../sim/checked/message-of.ts";

/** Bytes at a time: they unpack to a thousand times as many at most. */
const PIECE = 16_384;
/** ms after which the page may draw */
const TURN = 30;

const rest = () => new Promise<void>((done) => setTimeout(done));

/**
 * @param most bytes of all together; `largest`: of one by its name, 0 = not wanted
 * @returns in words why there are none, where the ZIP is broken or a file is larger than it may be
 */
export async function unpackSome(
  bytes: Uint8Array,
  most: number,
  largest: (name: string) => number,
): Promise<Readonly<Record<string, Uint8Array>> | string> {
  const files: Record<string, Uint8Array> = Object.create(null);
  let total = 0;
  const take = (file: UnzipFile) => {
    const bound = largest(file.name);
    if (bound === 0) return;
    const parts: Uint8Array[] = [];
    let size = 0;
    file.ondata = (error, part, isLast) => {
      if (error) throw error;
      size += part.length;
      total += part.length;
      if (size > bound) throw new Error(`${file.name}: more than ${bound} bytes`);
      if (total > most) throw new Error(`more than ${most} bytes`);
      parts.push(part);
      if (isLast) files[file.name] = joined(parts, size);
    };
    file.start();
  };
  const zip = new Unzip(take);
  zip.register(UnzipInflate);
  try {
    let begun = performance.now();
    for (let at = 0; at < bytes.length; at += PIECE) {
      zip.push(bytes.subarray(at, at + PIECE), at + PIECE >= bytes.length);
      if (performance.now() - begun < TURN) continue;
      await rest();
      begun = performance.now();
    }
    return files;
  } catch (reason) {
    return messageOf(reason);
  }
}

function joined(parts: readonly Uint8Array[], size: number): Uint8Array {
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
