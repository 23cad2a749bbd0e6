/** Every message file, read at once: bundled into the page by vite, from disk on the command line. */

type Messages = Readonly<Record<string, string>>;

/** Path such as `./en/units.json` -> its messages. */
export const messageFiles: Readonly<Record<string, Messages>> = import.meta.env
  ? import.meta.glob<Messages>("./*/*.json", { eager: true, import: "default" })
  : fromDisk();

// `getBuiltinModule` keeps node:fs out of the page's bundle.
function fromDisk(): Record<string, Messages> {
  const files = process.getBuiltinModule("node:fs");
  const { fileURLToPath } = process.getBuiltinModule("node:url");
  const here = fileURLToPath(new URL(".", import.meta.url));
  const found: Record<string, Messages> = {};
  for (const folder of files.readdirSync(here, { withFileTypes: true })) {
    if (!folder.isDirectory()) continue;
    for (const name of files.readdirSync(`${here}${folder.name}`)) {
      if (!name.endsWith(".json")) continue;
      found[`./${folder.name}/${name}`] = JSON.parse(
        files.readFileSync(`${here}${folder.name}/${name}`, "utf8"),
      ) as Messages;
    }
  }
  return found;
}
