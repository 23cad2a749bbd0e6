/** The rules of cmi5 (Quartz; sections in brackets) for what one visit states, apart from the code that states it. */

export interface Statement {
  readonly id?: string;
  readonly actor?: unknown;
  readonly timestamp?: string;
  readonly verb: { readonly id: string };
  readonly object?: { readonly id: string };
  readonly result?: {
    readonly success?: boolean;
    readonly completion?: boolean;
    readonly duration?: string;
    readonly score?: { readonly scaled: number };
  };
  readonly context: {
    readonly registration?: string;
    readonly extensions?: Readonly<Record<string, unknown>>;
    readonly contextActivities?: {
      readonly category?: readonly { readonly id: string }[];
      readonly grouping?: readonly { readonly id: string }[];
    };
  };
}

export interface LaunchRules {
  readonly masteryScore?: number;
  readonly launchMode?: string;
  readonly activityId?: string;
}

const CATEGORY = "https://w3id.org/xapi/cmi5/context/categories/";
const EXTENSION = "https://w3id.org/xapi/cmi5/context/extensions/";
const DURATION = /^PT\d+(\.\d+)?S$/;

export const nameOf = ({ verb }: Statement): string => verb.id.split("/").pop()!;
const categories = ({ context }: Statement): string[] =>
  (context.contextActivities?.category ?? []).map(({ id }) => id.replace(CATEGORY, ""));
const isDefined = (statement: Statement): boolean => categories(statement).includes("cmi5");

/** In words, what breaks a rule; none where the visit keeps them all. `earlier`: kept in earlier visits of the registration. */
export function faultsOfVisit(
  statements: readonly Statement[],
  launch: LaunchRules,
  earlier: readonly Statement[] = [],
): readonly string[] {
  const faults = statements.flatMap((each, index) =>
    faultsOfStatement(each, { session: statements.slice(0, index), earlier }, launch),
  );
  return nameOf(statements.at(-1)!) === "terminated" ? faults : [...faults, "9.3: terminated is the last"];
}

interface Before {
  readonly session: readonly Statement[];
  readonly earlier: readonly Statement[];
}

/** In words, what breaks a rule in the next statement of a visit. */
export function faultsOfStatement(
  statement: Statement,
  before: Before,
  launch: LaunchRules,
): readonly string[] {
  const name = nameOf(statement);
  const rules: readonly Rule[] = [
    [before.session.length === 0 && name !== "initialized", "9.3: initialized is the first"],
    [before.session.some((each) => nameOf(each) === "terminated"), "9.3: terminated is the last"],
    ...rulesOfAll(statement),
    ...(isDefined(statement)
      ? [...rulesOfOrder(name, before, launch), ...rulesOfDefined(statement, launch)]
      : [[categories(statement).includes("moveon"), `9.6.2.2: ${name} has no moveOn`] as const]),
  ];
  return rules.filter(([broken]) => broken).map(([, rule]) => rule);
}

type Rule = readonly [broken: boolean, rule: string];

function rulesOfOrder(
  name: string,
  { session, earlier }: Before,
  { launchMode }: LaunchRules,
): readonly Rule[] {
  const said = session.filter(isDefined).map(nameOf);
  const saidBefore = earlier.filter(isDefined).map(nameOf);
  const judged = (verb: string) => verb === "passed" || verb === "failed";
  return [
    [said.includes(name), "9.3: no verb twice"],
    [judged(name) && said.some(judged), "9.3: passed or failed, not both"],
    [/^(completed|passed)$/.test(name) && saidBefore.includes(name), `9.3: ${name} once in a registration`],
    [name === "failed" && saidBefore.includes("passed"), "9.3: no failed after passed"],
    [
      (launchMode ?? "Normal") !== "Normal" && !/^(init|term)/.test(name),
      "10.0: nothing else when looking round or back",
    ],
  ];
}

const rulesOfAll = ({ id, timestamp, actor, context }: Statement): readonly Rule[] => [
  [!id, "9.1: an id"],
  [!/^\d{4}-\d\d-\d\dT[\d:.]+Z$/.test(timestamp ?? ""), "9.7: a moment in UTC"],
  [!actor, "9.2: the actor"],
  [!context.registration, "9.6.1: the registration"],
  [!context.extensions?.[`${EXTENSION}sessionid`], "9.6.3.1: the session"],
  [!context.contextActivities?.grouping?.length, "10.0: the template's grouping"],
];

function rulesOfDefined(
  statement: Statement,
  { masteryScore, activityId = "https://course.example/activity" }: LaunchRules,
): readonly Rule[] {
  const { result, context, object } = statement;
  const name = nameOf(statement);
  const judged = name === "passed" || name === "failed";
  const mark = context.extensions?.[`${EXTENSION}masteryscore`];
  const scaled = result?.score?.scaled;
  return [
    [object?.id !== activityId, "9.4: the object is the launched activity"],
    [
      categories(statement).includes("moveon") !== (judged || name === "completed"),
      `9.6.2.2: moveOn of ${name}`,
    ],
    [
      judged ? result?.success !== (name === "passed") : result?.success !== undefined,
      `9.5.2: success of ${name}`,
    ],
    [(result?.completion === true) !== (name === "completed"), `9.5.3: completion of ${name}`],
    [!judged && scaled !== undefined, "9.5.1: a score of passed and failed only"],
    [name !== "initialized" && !DURATION.test(result?.duration ?? ""), `9.5.4: duration of ${name}`],
    [judged && mark !== masteryScore, "9.6.3.2: the mark that decided"],
    [
      judged &&
        masteryScore !== undefined &&
        scaled !== undefined &&
        scaled >= masteryScore !== (name === "passed"),
      "9.3.4, 9.3.5: the score fits the mark",
    ],
  ];
}
