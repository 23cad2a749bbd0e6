/** Files into one ZIP, one at a time, so that a page goes on moving meanwhile. */
import { deflateSync, Zip, ZipPassThrough } from "fflate";
import type { PackageFile } from "./course-package.ts";

/** Packed already. */
const STORED = /\.(png|jpe?g|webp|woff2|zip)$/i;
/** A fixed date, so that equal input gives an equal package. */
const STAMP = new Date("2000-01-01T00:00:00Z");
/** Of a ZIP's entries: deflated. */
const DEFLATED = 8;

/** Packed in one piece: what the library packs in a stream comes out broken for some files, such as fonts (fflate 0.8.3). */
function packedEntry(path: string): ZipPassThrough {
  const entry = new ZipPassThrough(path);
  entry.compression = DEFLATED;
  Object.assign(entry, {
    process: (chunk: Uint8Array, final: boolean) =>
      entry.ondata(null, deflateSync(chunk, { level: 6 }), final),
  });
  return entry;
}

export async function zipOf(
  files: AsyncIterable<PackageFile>,
  onFile: (done: number) => void = () => {},
): Promise<Uint8Array[]> {
  const chunks: Uint8Array[] = [];
  let failed: Error | null = null;
  const zip = new Zip((error, chunk) => {
    if (error) failed = error;
    else chunks.push(chunk);
  });
  let done = 0;
  for await (const [path, bytes] of files) {
    const entry = STORED.test(path) ? new ZipPassThrough(path) : packedEntry(path);
    entry.mtime = STAMP;
    zip.add(entry);
    entry.push(bytes, true);
    if (failed) throw failed;
    onFile(++done);
  }
  zip.end();
  return chunks;
}
