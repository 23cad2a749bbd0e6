/** Reads `cmi5.xml` as the course structure's data model says (cmi5, 13.1), and throws where it says otherwise. */

export interface Unit {
  /** The publisher's. */
  readonly id: string;
  readonly title: string;
  readonly url: string;
  readonly moveOn: string;
  readonly masteryScore: number | null;
}

const NAMESPACE = "https://w3id.org/xapi/profiles/cmi5/v1/CourseStructure.xsd";
const IRI = /^[a-z][a-z0-9+.-]*:[^\s<>"{}|\\^`]+$/i;
const LANGUAGE = /^[a-z]{2,3}(-[a-z0-9]{2,8})*$/i;
const MOVE_ON = /^(Passed|Completed|CompletedAndPassed|CompletedOrPassed|NotApplicable)$/;
/** Decimal from 0 to 1 with up to four places. */
const MARK = /^(0(\.\d{1,4})?|1(\.0{1,4})?)$/;
/** In the order of the schema; the rest of it (blocks, objectives) our packages do not use. */
const OF_COURSE = ["title", "description"];
const OF_UNIT = ["title", "description", "url"];

export function readStructure(text: string): { readonly id: string; readonly units: readonly Unit[] } {
  const document = new DOMParser().parseFromString(text, "application/xml");
  const root = document.documentElement;
  need(root.localName === "courseStructure" && root.namespaceURI === NAMESPACE, "root", root.outerHTML);
  const [course, ...units] = [...root.children];
  need(course?.localName === "course", "the course first", course?.localName);
  const id = idOf(course!, OF_COURSE);
  const read = units.map(unitOf);
  need(read.length > 0, "one unit or more", "none");
  need(new Set(read.map((unit) => unit.id)).size === read.length, "a unique id of each unit", text);
  return { id, units: read };
}

function unitOf(element: Element): Unit {
  need(element.localName === "au", "au", element.localName);
  const id = idOf(element, OF_UNIT);
  const moveOn = element.getAttribute("moveOn") ?? "NotApplicable";
  need(MOVE_ON.test(moveOn), "moveOn", moveOn);
  const mark = element.getAttribute("masteryScore");
  need(mark === null || MARK.test(mark), "masteryScore", mark);
  const [title, , url] = [...element.children].map(({ textContent }) => textContent!.trim());
  // In a ZIP, relative addresses alone (14.1).
  need(url !== "" && !IRI.test(url!) && !url!.startsWith("/"), "a relative url", url);
  return { id, title: title!, url: url!, moveOn, masteryScore: mark === null ? null : Number(mark) };
}

function idOf(element: Element, parts: readonly string[]): string {
  const id = element.getAttribute("id");
  need(id !== null && IRI.test(id), `an IRI as id of ${element.localName}`, id);
  const found = [...element.children].map(({ localName }) => localName);
  need(found.join() === parts.join(), `${parts.join(", ")} in ${element.localName}`, found.join());
  for (const words of [...element.children].slice(0, 2)) {
    const strings = [...words.children];
    need(strings.length > 0, `langstring in ${words.localName}`, words.outerHTML);
    for (const string of strings)
      need(
        string.localName === "langstring" && LANGUAGE.test(string.getAttribute("lang") ?? ""),
        `langstring with a language in ${words.localName}`,
        string.outerHTML,
      );
  }
  return id!;
}

function need(kept: boolean, allowed: string, found: unknown): asserts kept {
  if (!kept) throw new Error(`cmi5.xml: found ${String(found).slice(0, 200)}; allowed: ${allowed}`);
}
