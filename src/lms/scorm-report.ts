/** What SCORM 1.2 and SCORM 2004 report alike, each by its own names. */
import type { Score } from "../lesson/progress.ts";
import { shareRight } from "./record-adapter.ts";

export type Values = readonly (readonly [element: string, value: string])[];

/** In per cent; none where nothing is asked. @param element such as `cmi.score` */
export const scoreValues = (element: string, score: Score): Values =>
  score.asked === 0
    ? []
    : [
        [`${element}.min`, "0"],
        [`${element}.max`, "100"],
        [`${element}.raw`, String(Math.round(100 * shareRight(score)))],
      ];
