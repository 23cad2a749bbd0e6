/** The version that every export carries. */
declare const __LUNGWARD_VERSION__: string | undefined;

/** From package.json when built; "source" when run without a build (tests). */
export const VERSION = typeof __LUNGWARD_VERSION__ === "string" ? __LUNGWARD_VERSION__ : "source";
