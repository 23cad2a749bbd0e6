/** What the files that describe a package to a course system are made from. */
import { present } from "../../sim/checked/present.ts";

export interface Outline {
  /** Letters, digits and hyphens; another course has another one. */
  readonly id: string;
  /** Of the kit. */
  readonly version: string;
  readonly title: string;
  readonly description: string;
  /** BCP 47 tag of all words here. */
  readonly language: string;
  readonly items: readonly OutlineItem[];
  /** Share right, 0 to 1; null = nothing is to be passed. */
  readonly passMark: number | null;
  /** Every file of the package but the manifest. */
  readonly files: readonly string[];
}

/** What a course system lists, opens and records by itself. */
export interface OutlineItem {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  /** The page within the package, and its query with the question mark. */
  readonly page: string;
  readonly query: string;
}

const SIGNS: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
export const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => present(SIGNS[sign]));

/** Resources of a SCORM manifest: each item's page, and what they share. `type`: the attribute's name, which the editions write differently. */
export function resources({ items, files }: Outline, type: string): string {
  const pages = new Set(items.map(({ page }) => page));
  const list = (paths: readonly string[]) =>
    paths.map((path) => `      <file href="${escaped(path)}"/>`).join("\n");
  const each = items.map(
    ({
      id,
      page,
      query,
    }) => `    <resource identifier="page-${id}" type="webcontent" adlcp:${type}="sco" href="${escaped(page + query)}">
${list([page])}
      <dependency identifierref="kit"/>
    </resource>`,
  );
  return `  <resources>
${each.join("\n")}
    <resource identifier="kit" type="webcontent" adlcp:${type}="asset">
${list(files.filter((path) => !pages.has(path)))}
    </resource>
  </resources>`;
}
