/**
 * What a window keeps of the visit that it was launched for, until it closes. The address of the launch is gone after the first
 * link within the page, and its token is given once: a page that was thrown out of memory goes on with both, and one that was
 * left or loaded again, which ends a visit (cmi5 9.3.8), knows that it is over.
 */
import * as v from "valibot";
import { type Launch, readLaunch } from "./cmi5-launch.ts";
import { SAID, type Verb, webAddress } from "./cmi5-store.ts";

const NAME = "lungward.launch";

const keptVisit = v.strictObject({
  registration: v.string(),
  /** Where the token was fetched: each launch has its own. */
  fetch: v.string(),
  wayBack: v.nullable(webAddress),
  /** null once it is over: then nothing is left that could write a record. */
  open: v.nullable(
    v.strictObject({
      endpoint: webAddress,
      actor: v.record(v.string(), v.unknown()),
      activityId: v.string(),
      token: v.string(),
      said: v.array(v.picklist(SAID)),
    }),
  ),
});
type KeptVisit = v.InferOutput<typeof keptVisit>;

/** A visit that goes on: its token, what it has stated by cmi5's verbs. */
export interface OpenVisit {
  readonly token: string;
  readonly said: readonly Verb[];
}

export type Launched =
  | { readonly kind: "launch"; readonly launch: Launch; readonly goesOn: OpenVisit | null }
  | { readonly kind: "over"; readonly wayBack: string | null };

/**
 * null where no course system has launched the page. An address names what is kept by its registration and its launch, and
 * changes nothing of it: a launch with another endpoint or person is a visit of its own.
 */
export function launched(query: string, storage: () => Storage): Launched | null {
  const kept = read(storage);
  const asked = readLaunch(query);
  const registration = asked?.registration ?? new URLSearchParams(query).get("registration");
  if (!kept || kept.registration !== registration)
    return asked && { kind: "launch", launch: asked, goesOn: null };
  if (asked && asked.fetch !== kept.fetch) return { kind: "launch", launch: asked, goesOn: null };
  if (!kept.open) return { kind: "over", wayBack: kept.wayBack };
  const { token, said, ...rest } = kept.open;
  const launch = { ...rest, registration: kept.registration, fetch: kept.fetch };
  if (asked && !isSame(asked, launch)) return { kind: "launch", launch: asked, goesOn: null };
  return { kind: "launch", launch, goesOn: { token, said } };
}

const isSame = (one: Launch, other: Launch): boolean =>
  one.endpoint === other.endpoint &&
  one.activityId === other.activityId &&
  JSON.stringify(one.actor) === JSON.stringify(other.actor);

/** Without storage a page loaded anew knows of no visit. */
export interface VisitKeeper {
  going(visit: OpenVisit, wayBack: string | null): void;
  over(wayBack: string | null): void;
}

export function visitKeeper({ registration, fetch, ...rest }: Launch, storage: () => Storage): VisitKeeper {
  const keep = (visit: object) => {
    try {
      storage().setItem(NAME, JSON.stringify({ registration, fetch, ...visit }));
    } catch {
      // Denied or full.
    }
  };
  return {
    going: (visit, wayBack) => keep({ wayBack, open: { ...rest, ...visit } }),
    over: (wayBack) => keep({ wayBack, open: null }),
  };
}

function read(storage: () => Storage): KeptVisit | null {
  try {
    const found = v.safeParse(keptVisit, JSON.parse(storage().getItem(NAME) ?? "null"));
    return found.success ? found.output : null;
  } catch {
    return null;
  }
}
