/** Access that is checked where the compiler cannot know: a broken promise throws at once instead of going on as undefined. */

/** The value, which must be there. @throws when it is null or undefined */
export function present<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error("a value that must be there is missing");
  return value;
}

/** The entry at `index`. @throws RangeError beyond either end */
export function entryAt<T>(list: ArrayLike<T>, index: number): T {
  const value = list[index];
  if (value === undefined) throw new RangeError(`no entry ${index} in a list of ${list.length}`);
  return value;
}

/** The last entry. @throws RangeError when the list is empty */
export const lastOf = <T>(list: ArrayLike<T>): T => entryAt(list, list.length - 1);
