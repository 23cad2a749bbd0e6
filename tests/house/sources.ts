/** The repository as the house tests see it: files, their lines and their imports. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";

interface Import {
  /** path from the repository's top for our own files, else the package's name */
  readonly target: string;
  readonly own: boolean;
  readonly typeOnly: boolean;
}

export interface Source {
  readonly path: string;
  readonly text: string;
  readonly lines: number;
  readonly imports: readonly Import[];
}

export const TOP = new URL("../..", import.meta.url).pathname;

export const filesBelow = (folder: string, ending: RegExp): string[] =>
  readdirSync(join(TOP, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && ending.test(entry.name))
    .map((entry) => relative(TOP, join(entry.parentPath, entry.name)))
    .sort();

const STATEMENT = /(?:^|\n)\s*(?:import|export)\s+(type\s+)?([^"';]*?\bfrom\s+)?["']([^"']+)["']/g;
const DYNAMIC = /\bimport\(\s*["']([^"']+)["']\s*\)|new URL\(\s*["'](\.[^"']+)["']/g;

/** `import { type A, type B }` brings no value either. */
const bringsOnlyTypes = (clause: string): boolean => {
  const [, before = "", names] = /^([^{]*)\{([^}]*)\}/.exec(clause) ?? [];
  if (/\w/.test(before)) return false;
  return (names ?? "value").split(",").every((name) => !name.trim() || name.trim().startsWith("type "));
};

function importsOf(path: string, text: string): Import[] {
  const found: Import[] = [];
  const add = (specifier: string, typeOnly: boolean) => {
    const bare = specifier.replace(/\?.*$/, "");
    const own = bare.startsWith(".");
    const target = own
      ? normalize(join(dirname(path), bare))
      : bare
          .split("/")
          .slice(0, bare.startsWith("@") ? 2 : 1)
          .join("/");
    found.push({ target, own, typeOnly });
  };
  for (const [, type, clause = "", specifier] of text.matchAll(STATEMENT))
    add(specifier!, Boolean(type) || bringsOnlyTypes(clause));
  for (const [, dynamic, url] of text.matchAll(DYNAMIC)) add((dynamic ?? url)!, false);
  return found;
}

export const sourceOf = (path: string, text: string): Source => ({
  path,
  text,
  lines: text.split("\n").length - 1,
  imports: importsOf(path, text),
});

export const readSources = (folder: string): Source[] =>
  filesBelow(folder, /\.tsx?$/)
    .filter((path) => !path.includes("/kernel/"))
    .map((path) => sourceOf(path, readFileSync(join(TOP, path), "utf8")));
