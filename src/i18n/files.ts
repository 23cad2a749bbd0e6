/** Every message file but the phone page's, which has its own: in the page English comes with it, but for what the start page does not say, and the other languages when asked for; on the command line all come from disk. */

type Messages = Readonly<Record<string, string>>;

const onDisk = typeof process !== "undefined";

/** Path such as `./en/units.json` -> its messages, there from the start. */
export const messageFiles: Readonly<Record<string, Messages>> = onDisk
  ? fromDisk()
  : import.meta.glob<Messages>(
      [
        "./en/*.json",
        "!./en/{phone,accounts,author,bench,erase,further,help,kiosk,lecture,lesson,study,take-away,technical,traces}.json",
      ],
      {
        eager: true,
        import: "default",
      },
    );

/** English that the start page does not say at once; fetched before another mode opens, another scene, or the list of what to erase. */
export const modeFiles = async (): Promise<Readonly<Record<string, Messages>>> =>
  onDisk ? {} : (await import("./mode-words.ts")).modeWords;

/** Path such as `./de/units.json` -> fetches all messages of its language. */
export const laterFiles: Readonly<Record<string, () => Promise<Messages>>> = onDisk
  ? {}
  : import.meta.glob<Messages>(["./*/units.json", "!./en/units.json"], { import: "default", query: "?all" });

// `getBuiltinModule` keeps node:fs out of the page's bundle.
function fromDisk(): Record<string, Messages> {
  const files = process.getBuiltinModule("node:fs");
  const { fileURLToPath } = process.getBuiltinModule("node:url");
  const here = fileURLToPath(import.meta.url).replace(/[^/\\]*$/, "");
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
