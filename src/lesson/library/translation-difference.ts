/** A translated lesson as what it says otherwise than its source: scenes, answers and numbers are not carried twice. */

type Plain = string | number | boolean | null;

/** A value instead of the other (in brackets if it has parts), or what differs by key, of records and of lists of one length. */
export type Difference = Plain | readonly [unknown] | { readonly [key: string]: Difference };

/** What leads from `source` to `value`, both as JSON has them; undefined where they are equal. */
export function differenceOf(source: unknown, value: unknown): Difference | undefined {
  if (!hasParts(value)) return Object.is(source, value) ? undefined : (value as Plain);
  if (!hasParts(source) || !haveSameShape(source, value)) return [value];
  const parts = new Map(Object.entries(source));
  const found = Object.entries(value).flatMap(([key, part]) => {
    const difference = differenceOf(parts.get(key), part);
    return difference === undefined ? [] : [[key, difference] as const];
  });
  return found.length > 0 ? Object.fromEntries(found) : undefined;
}

/** `source` with what differs; parts that are equal are the source's own. */
export function withDifference<T>(source: T, difference: Difference | undefined): T;
export function withDifference(source: unknown, difference: Difference | undefined): unknown {
  if (difference === undefined) return source;
  if (!hasParts(difference)) return difference;
  if (Array.isArray(difference)) return difference[0];
  const parts = new Map(Object.entries(source as object));
  for (const [key, part] of Object.entries(difference as Record<string, Difference>))
    parts.set(key, withDifference(parts.get(key), part));
  return Array.isArray(source) ? [...parts.values()] : Object.fromEntries(parts);
}

const hasParts = (value: unknown): value is object => typeof value === "object" && value !== null;

/** All keys of the source are the value's too: a difference cannot take one away. */
const haveSameShape = (source: object, value: object): boolean =>
  Array.isArray(source) && Array.isArray(value)
    ? source.length === value.length
    : Array.isArray(source) === Array.isArray(value) &&
      Object.keys(source).every((key) => Object.hasOwn(value, key));
