/** A course system's run-time object, found in a parent or opener window as SCORM 1.2 and 2004 say. */

/** Parent windows to try; SCORM 1.2 recommends seven, SCORM 2004 asks for five hundred. */
const HIGHEST = 500;

/** The names under which SCORM 1.2 and 2004 look for it. */
export type ApiName = "API" | "API_1484_11";

/** A page around may have an object of such a name that is something else. */
const FIRST_CALL = { API: "LMSInitialize", API_1484_11: "Initialize" } as const;

const isRunTime = (found: unknown, name: ApiName): boolean =>
  typeof (found as Readonly<Record<string, unknown>> | null | undefined)?.[FIRST_CALL[name]] === "function";

export type Windowed = { readonly [name in ApiName]?: unknown } & {
  readonly parent: Windowed;
  readonly opener?: Windowed | null;
};

/** Parents first, then the opener and its parents. Windows of another origin cannot be read and are skipped. */
export function findApi(start: Windowed, name: ApiName): unknown {
  return climb(start, name) ?? (start.opener ? climb(start.opener, name) : null);
}

function climb(start: Windowed, name: ApiName): unknown {
  let window = start;
  for (let level = 0; level <= HIGHEST; level++) {
    try {
      if (isRunTime(window[name], name)) return window[name];
    } catch {
      return null;
    }
    if (window.parent === window) return null;
    window = window.parent;
  }
  return null;
}
