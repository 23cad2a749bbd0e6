import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import type { Plugin } from "vite";

const packageOf = (id: string): string | undefined =>
  /^(.*\/node_modules\/(?:@[^/]+\/[^/]+|[^/]+))\//.exec(id.replace(/^\0/, ""))?.[1];

/** Texts for packages that name a licence and contain no file: as their authors publish them with the source. */
const APART: Readonly<Record<string, string>> = {
  // A fork; the licence is that of the package it was made from (colord 2.9.3, LICENSE.md).
  "@pixi/colord": "pixi-colord.txt",
  // MIT by its package.json, which names the authors; the package holds no text of it.
  "normalize-strings": "normalize-strings.txt",
  // LICENSE.txt at the top of its repository, which its own package leaves out.
};

/** The package's name, version and licence with the licence's text. A build without the text would violate that licence. */
export function notice(folder: string): string {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const own = readdirSync(folder).find((each) => /^licen[cs]e/i.test(each));
  if (!own && !APART[name])
    throw new Error(`${name} ${version}: no licence text, neither its own nor in APART`);
  const file = own ? join(folder, own) : join(import.meta.dirname, "licences", APART[name]!);
  return `${name} ${version} (${license ?? "licence not stated"})\n\n${readFileSync(file, "utf8").trim()}\n`;
}

/** Writes `LICENSE.txt`, and `third-party-notices.txt`: every package with code in the build, with its licence. */
export const notices = (): Plugin => {
  const folders = new Set<string>();
  const take = (id: string) => {
    const folder = packageOf(id);
    if (folder && existsSync(join(folder, "package.json"))) folders.add(folder);
  };
  return {
    name: "third-party-notices",
    apply: "build",
    moduleParsed: ({ id }) => take(id),
    generateBundle(_options, bundle) {
      // Fonts are loaded by style sheets, as assets that keep their file name.
      for (const file of Object.values(bundle))
        if (file.type === "asset") for (const name of file.originalFileNames) take(resolve(name));
      const rule = `\n${"-".repeat(78)}\n\n`;
      const source = [...folders].sort().map(notice).join(rule);
      this.emitFile({ type: "asset", fileName: "third-party-notices.txt", source });
      const licence = readFileSync(join(import.meta.dirname, "../LICENSE"), "utf8");
      this.emitFile({ type: "asset", fileName: "LICENSE.txt", source: licence });
    },
  };
};
