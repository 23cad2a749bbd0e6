/** The kit as its server has it: its files by the list that the build wrote. */
import * as v from "valibot";
import type { Kit } from "../../../lms/package/course-package.ts";

const listSchema = v.object({ version: v.string(), files: v.pipe(v.array(v.string()), v.maxLength(5000)) });

export type Get = (url: string) => Promise<Response>;

/** null where there is no list, as in the single file and while the kit is developed. */
export async function servedKit(get: Get): Promise<Kit | null> {
  const answer = await get("files.json").catch(() => null);
  const list = v.safeParse(
    v.pipe(v.string(), v.parseJson(), listSchema),
    answer?.ok ? await answer.text() : "",
  );
  if (!list.success) return null;
  return {
    version: list.output.version,
    paths: list.output.files,
    async read(path) {
      const file = await get(path.split("/").map(encodeURIComponent).join("/"));
      if (!file.ok) throw new Error(`${path}: ${file.status}`);
      return new Uint8Array(await file.arrayBuffer());
    },
  };
}
