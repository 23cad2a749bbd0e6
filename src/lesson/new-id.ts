/** Small letters, digits and hyphens made of a title, unlike all others. */
export function newId(title: string, taken: readonly string[]): string {
  const made = title
    .normalize("NFKD")
    .toLowerCase()
    .replaceAll(/\p{M}/gu, "")
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-|-$/g, "")
    .slice(0, 30)
    .replace(/-$/, "");
  const base = made || "step";
  let id = base;
  for (let count = 2; taken.includes(id); count++) id = `${base}-${count}`;
  return id;
}
