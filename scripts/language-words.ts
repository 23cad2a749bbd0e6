/** All messages of a language as one module, `./de/units.json?all`: named file by file they weigh more in the page than all that fetches them. */
import { readdirSync } from "node:fs";
import { dirname } from "node:path";
import type { Plugin } from "vite";

const ASKED = /\?all$/;
const MARK = "\0words:";
/** It is of an entry of its own. */
const ELSEWHERE = "phone.json";

export function languageWords(): Plugin {
  return {
    name: "language-words",
    enforce: "pre",
    async resolveId(source, importer) {
      if (!ASKED.test(source)) return undefined;
      const file = await this.resolve(source.replace(ASKED, ""), importer, { skipSelf: true });
      return file && MARK + dirname(file.id);
    },
    load(id) {
      if (!id.startsWith(MARK)) return undefined;
      const folder = id.slice(MARK.length);
      const names = readdirSync(folder).filter((name) => name.endsWith(".json") && name !== ELSEWHERE);
      const imports = names.map((name, i) => `import words${i} from ${JSON.stringify(`${folder}/${name}`)};`);
      return `${imports.join("\n")}\nexport default { ${names.map((_, i) => `...words${i}`).join()} };`;
    },
  };
}
