/** `cmi5.xml`, the course structure of cmi5 (13.1): one assignable unit for each item. */
import { escaped, type Outline } from "./package-outline.ts";

export function courseStructure({ id, language, passMark, items, ...course }: Outline): string {
  const words = (name: string, text: string) =>
    `<${name}><langstring lang="${language}">${escaped(text)}</langstring></${name}>`;
  const judged =
    passMark === null
      ? 'moveOn="Completed"'
      : `moveOn="CompletedOrPassed" masteryScore="${Number(passMark.toFixed(4))}"`;
  const units = items.map(
    (item) => `  <au id="urn:${escaped(id)}:${escaped(item.id)}" ${judged}>
    ${words("title", item.title)}
    ${words("description", item.description)}
    <url>${escaped(item.page + item.query)}</url>
  </au>`,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>
<courseStructure xmlns="https://w3id.org/xapi/profiles/cmi5/v1/CourseStructure.xsd">
  <course id="urn:${escaped(id)}:course">
    ${words("title", course.title)}
    ${words("description", course.description)}
  </course>
${units.join("\n")}
</courseStructure>
`;
}
