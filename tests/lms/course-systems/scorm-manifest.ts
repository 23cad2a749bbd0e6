/**
 * Reads `imsmanifest.xml` as SCORM 1.2 (ADL 2001) and SCORM 2004, 4th edition (ADL 2009) say in their books on content aggregation, and throws
 * where it says otherwise: order, names and spaces of elements, identifiers, references. Rules from memory of the books, as far as our
 * manifests use them.
 */

export interface Item {
  readonly title: string;
  /** Within the package, with its query. */
  readonly href: string;
}

interface Edition {
  readonly packaging: string;
  readonly adl: string;
  readonly type: string;
  readonly version: string;
  /** What may follow the items of an organization. */
  readonly after: readonly string[];
}

const EDITIONS = {
  scorm12: {
    packaging: "http://www.imsproject.org/xsd/imscp_rootv1p1p2",
    adl: "http://www.adlnet.org/xsd/adlcp_rootv1p2",
    type: "scormtype",
    version: "1.2",
    after: [],
  },
  scorm2004: {
    packaging: "http://www.imsglobal.org/xsd/imscp_v1p1",
    adl: "http://www.adlnet.org/xsd/adlcp_v1p3",
    type: "scormType",
    version: "2004 4th Edition",
    after: ["http://www.imsglobal.org/xsd/imsss sequencing"],
  },
} as const satisfies Record<string, Edition>;

/** XML's name without a colon. */
const NAME = /^[\p{L}_][\p{L}\p{N}._-]*$/u;
/** characters (SCORM 1.2: smallest that a system must take) */
const LONGEST = { title: 200, version: 20 };

/** @param files paths of all files of the package */
export function readManifest(
  text: string,
  standard: keyof typeof EDITIONS,
  files: readonly string[],
): readonly Item[] {
  const edition: Edition = EDITIONS[standard];
  const root = new DOMParser().parseFromString(text, "application/xml").documentElement;
  need(nameOf(root) === `${edition.packaging} manifest`, "the root manifest", nameOf(root));
  need((root.getAttribute("version") ?? "").length <= LONGEST.version, "a short version", root.outerHTML);
  const identifiers = [root, ...root.querySelectorAll("[identifier]")].map(
    (each) => each.getAttribute("identifier") ?? "",
  );
  for (const each of identifiers) need(NAME.test(each), "an identifier that is a name", each);
  need(new Set(identifiers).size === identifiers.length, "unique identifiers", identifiers.join());
  const [metadata, organizations, resources] = childrenOf(root, edition, [
    "metadata",
    "organizations",
    "resources",
  ]);
  const [schema, version] = childrenOf(metadata!, edition, ["schema", "schemaversion"]);
  need(schema!.textContent === "ADL SCORM", "ADL SCORM", schema!.textContent);
  need(version!.textContent === edition.version, edition.version, version!.textContent);
  const known = new Map([...resources!.children].map((each) => resourceOf(each, edition, files)));
  for (const each of resources!.querySelectorAll("dependency"))
    need(known.has(each.getAttribute("identifierref")!), "a dependency that is there", each.outerHTML);
  const [organization] = childrenOf(organizations!, edition, ["organization"]);
  need(
    organizations!.getAttribute("default") === organization!.getAttribute("identifier"),
    "a default that is there",
    organizations!.getAttribute("default"),
  );
  return itemsOf(organization!, edition, known);
}

function itemsOf(organization: Element, edition: Edition, known: ReadonlyMap<string, string>): Item[] {
  const [title, ...rest] = [...organization.children];
  titleOf(title, edition);
  const items = rest.filter((each) => nameOf(each) === `${edition.packaging} item`);
  need(items.length > 0, "one item or more", organization.outerHTML);
  const after = rest.slice(items.length).map(nameOf);
  need(after.join() === edition.after.join(), `after the items: ${edition.after.join()}`, after.join());
  return items.map((item) => {
    const href = known.get(item.getAttribute("identifierref") ?? "");
    need(href !== undefined && href !== "", "an item that opens a page", item.outerHTML);
    need(/^(true|false)?$/.test(item.getAttribute("isvisible") ?? ""), "isvisible", item.outerHTML);
    return { title: titleOf(item.children[0], edition), href: href! };
  });
}

/** Its identifier and its page; "" for an asset without one. */
function resourceOf(
  resource: Element,
  { packaging, adl, type }: Edition,
  files: readonly string[],
): readonly [string, string] {
  need(nameOf(resource) === `${packaging} resource`, "resource", nameOf(resource));
  need(resource.getAttribute("type") === "webcontent", "webcontent", resource.getAttribute("type"));
  const kind = attributeIn(resource, adl, type);
  need(kind === "sco" || kind === "asset", `${type} sco or asset`, kind);
  const parts = [...resource.children].map((each) => each.localName).join(" ");
  need(/^(file )*file( dependency)*$/.test(parts), "files, then dependencies", parts);
  const listed = [...resource.querySelectorAll("file")].map((file) => file.getAttribute("href")!);
  for (const each of listed) need(files.includes(each), "a file of the package", each);
  const href = resource.getAttribute("href") ?? "";
  need(kind === "asset" || listed.includes(href.replace(/\?.*/, "")), "a page among its files", href);
  return [resource.getAttribute("identifier")!, href];
}

function titleOf(element: Element | undefined, { packaging }: Edition): string {
  need(element && nameOf(element) === `${packaging} title`, "the title first", element?.outerHTML);
  const text = element!.textContent!.trim();
  need(text.length > 0 && text.length <= LONGEST.title, "a title of 200 characters at most", text);
  return text;
}

function childrenOf(element: Element, { packaging }: Edition, names: readonly string[]): Element[] {
  const found = [...element.children];
  const wanted = names.map((name) => `${packaging} ${name}`);
  need(found.map(nameOf).join() === wanted.join(), wanted.join(), found.map(nameOf).join());
  return found;
}

/** The tests' document knows the spaces of elements alone; those of attributes are declared at the root. */
function attributeIn(element: Element, space: string, name: string): string | null {
  const root = element.ownerDocument.documentElement;
  const prefix = [...root.attributes].find((each) => each.value === space && each.name.startsWith("xmlns:"));
  return prefix ? element.getAttribute(`${prefix.name.slice("xmlns:".length)}:${name}`) : null;
}

const nameOf = ({ namespaceURI, localName }: Element): string => `${namespaceURI} ${localName}`;

function need(kept: unknown, allowed: string, found: unknown): asserts kept {
  if (!kept) throw new Error(`imsmanifest.xml: found ${String(found).slice(0, 200)}; allowed: ${allowed}`);
}
