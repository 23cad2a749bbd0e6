/** How a course system launches the page by cmi5: an address with endpoint, fetch, actor, registration and activityId. */
export interface Launch {
  readonly endpoint: string;
  readonly fetch: string;
  readonly actor: unknown;
  readonly registration: string;
  readonly activityId: string;
}

/** null when the page was not launched by a course system. */
export function readLaunch(query: string): Launch | null {
  const words = new URLSearchParams(query);
  const [endpoint, fetch, actor, registration, activityId] = [
    "endpoint",
    "fetch",
    "actor",
    "registration",
    "activityId",
  ].map((name) => words.get(name));
  if (!endpoint || !fetch || !actor || !registration || !activityId) return null;
  try {
    if (![endpoint, fetch].every((each) => /^https?:$/.test(new URL(each).protocol))) return null;
    return {
      endpoint: endpoint.replace(/\/?$/, "/"),
      fetch,
      actor: JSON.parse(actor),
      registration,
      activityId,
    };
  } catch {
    return null;
  }
}
