/** English that the start page does not say at once, in a piece of its own: path such as `./en/bench.json` -> its messages. */
export const modeWords = import.meta.glob<Readonly<Record<string, string>>>(
  "./en/{accounts,author,bench,erase,further,help,kiosk,lecture,lesson,study,take-away,technical,traces}.json",
  { eager: true, import: "default" },
);
