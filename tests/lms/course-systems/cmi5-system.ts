/** A small course system by cmi5: takes a package, enrols one learner, launches its units, and knows when one is satisfied. */
import { randomUUID } from "node:crypto";
import { nameOf } from "../cmi5-rules.ts";
import { type CourseSession, courseSession, type Enrolled } from "./cmi5-session.ts";
import { readStructure, type Unit } from "./cmi5-structure.ts";

/** What the course system says to one launch beside what the package says. */
export interface LaunchOptions {
  readonly launchMode?: "Normal" | "Browse" | "Review";
  readonly returnURL?: string;
}

interface Launch {
  /** The page within the package with its query, the launch's words in it. */
  readonly address: string;
  readonly session: CourseSession;
}

export interface Cmi5System {
  readonly units: readonly Unit[];
  launch(unit: Unit, options?: LaunchOptions): Launch;
  /** By the unit's moveOn criterion (13.1.4). */
  isSatisfied(unit: Unit): boolean;
}

const MOVE_ON: Readonly<Record<string, (passed: boolean, completed: boolean) => boolean>> = {
  Passed: (passed) => passed,
  Completed: (_, completed) => completed,
  CompletedAndPassed: (passed, completed) => passed && completed,
  CompletedOrPassed: (passed, completed) => passed || completed,
  NotApplicable: () => true,
};

/** @param structure text of `cmi5.xml`; `home`: where this course system answers, such as `https://course.example` */
export function cmi5System(structure: string, home: string): Cmi5System {
  const { units } = readStructure(structure);
  const registration = randomUUID();
  const actor = { objectType: "Agent", account: { homePage: home, name: "learner-1" } };
  const enrolled = new Map<Unit, Enrolled>(
    units.map((unit, index) => [
      unit,
      {
        activityId: `${home}/activities/${index + 1}`,
        registration,
        actor,
        documents: new Map(),
        statements: [],
      },
    ]),
  );
  return {
    units,
    launch(unit, options = {}) {
      const place = enrolled.get(unit)!;
      const token = Buffer.from(randomUUID()).toString("base64");
      const paths = { fetchPath: `/token/${randomUUID()}`, endpoint: `/${randomUUID()}/xapi/`, token };
      const launchMode = options.launchMode ?? "Normal";
      const data = { ...options, launchMode, ...launchDataOf(unit) };
      place.documents.set("LMS.LaunchData", JSON.stringify(data));
      const words = new URLSearchParams({
        endpoint: home + paths.endpoint,
        fetch: home + paths.fetchPath,
        actor: JSON.stringify(actor),
        registration,
        activityId: place.activityId,
      });
      const rules = {
        launchMode,
        ...(unit.masteryScore === null ? {} : { masteryScore: unit.masteryScore }),
      };
      // 13.1.4: a query of the unit's own is merged with the launch's words.
      const between = unit.url.includes("?") ? "&" : "?";
      return { address: `${unit.url}${between}${words}`, session: courseSession(place, rules, paths) };
    },
    isSatisfied(unit) {
      const said = enrolled.get(unit)!.statements.map(nameOf);
      return MOVE_ON[unit.moveOn]!(said.includes("passed"), said.includes("completed"));
    },
  };
}

/** 10.0, with the session and the publisher's id in the template (9.6.2.3, 9.6.3.1). */
const launchDataOf = ({ id, moveOn, masteryScore }: Unit) => ({
  moveOn,
  ...(masteryScore === null ? {} : { masteryScore }),
  contextTemplate: {
    extensions: { "https://w3id.org/xapi/cmi5/context/extensions/sessionid": randomUUID() },
    contextActivities: { grouping: [{ id }] },
  },
});
