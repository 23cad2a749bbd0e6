import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import type { Plugin } from "vite";

const packageOf = (id: string): string | undefined =>
  /^(.*\/node_modules\/(?:@[^/]+\/[^/]+|[^/]+))\//.exec(id.replace(/^\0/, ""))?.[1];

function notice(folder: string): string {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const file = readdirSync(folder).find((each) => /^licen[cs]e/i.test(each));
  const text = file
    ? readFileSync(join(folder, file), "utf8").trim()
    : "(the package brings no licence text)";
  return `${name} ${version} (${license ?? "licence not stated"})\n\n${text}\n`;
}

/** Writes `third-party-notices.txt`: every package of which something is in the build, with its licence. */
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
      // Fonts come by way of style sheets, as assets that remember their file.
      for (const file of Object.values(bundle))
        if (file.type === "asset") for (const name of file.originalFileNames) take(resolve(name));
      const rule = `\n${"-".repeat(78)}\n\n`;
      const source = [...folders].sort().map(notice).join(rule);
      this.emitFile({ type: "asset", fileName: "third-party-notices.txt", source });
    },
  };
};
