/** The search box of the docs' pages. The list of sections is fetched when the box is first used. */
import MiniSearch from "minisearch";
import "./docs.css";

interface Section {
  readonly id: string;
  readonly page: string;
  readonly title: string;
  readonly text: string;
}

const MAX = 8;
/** characters shown on each side of the first word that was found */
const AROUND = 70;

// Nothing is shared with the kit's page: its file begins the kit.
const box = document.querySelector<HTMLInputElement>("#search");
const found = document.querySelector<HTMLElement>("#found");
if (!box || !found) throw new Error("a page of the docs without its search");

async function makeIndex() {
  const sections: readonly Section[] = await (await fetch("sections.json")).json();
  const index = new MiniSearch<Section>({
    fields: ["title", "page", "text"],
    storeFields: ["title", "page", "text"],
    searchOptions: { prefix: true, fuzzy: 0.15, combineWith: "AND", boost: { title: 4, page: 2 } },
  });
  index.addAll(sections);
  return index;
}
let index: ReturnType<typeof makeIndex> | undefined;

function excerpt(text: string, terms: readonly string[]): string {
  const at = Math.max(0, ...terms.map((term) => text.toLowerCase().indexOf(term)));
  const words = text.slice(Math.max(0, at - AROUND), at + AROUND);
  return `${at > AROUND ? "…" : ""}${words}${at + AROUND < text.length ? "…" : ""}`;
}

function hit(id: string, title: string, page: string, words: string): HTMLLIElement {
  const item = document.createElement("li");
  const link = document.createElement("a");
  link.href = id;
  link.textContent = title === page ? title : `${page}: ${title}`;
  const text = document.createElement("p");
  text.textContent = words;
  item.append(link, text);
  return item;
}

box.addEventListener("input", async () => {
  index ??= makeIndex();
  const made = await index;
  const words = box.value.trim();
  const hits = words ? made.search(words).slice(0, MAX) : [];
  const list = document.createElement("ol");
  list.append(...hits.map(({ id, title, page, text, terms }) => hit(id, title, page, excerpt(text, terms))));
  found.replaceChildren(...(hits.length ? [list] : words ? [found.dataset.nothing ?? ""] : []));
});
box.addEventListener("keydown", ({ key }) => {
  if (key === "Enter") found.querySelector("a")?.click();
});
