/** Writes `files.json`: every file of a built kit, so that its page can put the kit into a course package. */
import { readdirSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import type { Plugin } from "vite";

export function fileList(version: string): Plugin {
  let folder = "";
  return {
    name: "file-list",
    apply: "build",
    configResolved(config) {
      folder = join(config.root, config.build.outDir);
    },
    closeBundle: {
      sequential: true,
      order: "post",
      handler() {
        const files = readdirSync(folder, { recursive: true, withFileTypes: true })
          .filter((entry) => entry.isFile())
          .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join("/"))
          .sort();
        writeFileSync(join(folder, "files.json"), `${JSON.stringify({ version, files })}\n`);
      },
    },
  };
}
