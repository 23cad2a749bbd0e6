/** The learner's record handed out: a page to hand in, or progress to go on with elsewhere. */
import type { Chain } from "../../chain/contract.ts";
import type { Lesson } from "../../lesson/lesson.ts";
import { type Answered, namesRead, requestsOf, statesOfQuestion } from "../../lesson/model/situation.ts";
import { statesAround } from "../../lesson/model/states.ts";
import type { Progress } from "../../lesson/progress/progress.ts";
import { writeProgressFile } from "../../lesson/progress/progress-file.ts";
import { VERSION } from "../../ui/app-version.ts";
import { cautionSentences } from "../../ui/cautions.tsx";
import { saveFile } from "../../ui/take-away/save-file.ts";
import { knownAnswers } from "../shared/lesson/known-answers.ts";
import { needsModel } from "./record-answers.ts";
import { recordPage } from "./record-page.ts";

export async function saveRecord(
  chain: Chain,
  progress: Progress,
  lessons: readonly Lesson[],
  name: string,
): Promise<void> {
  const date = new Date().toISOString();
  const answered = await unkept(chain, progress, lessons);
  const page = recordPage({ progress, lessons, date, answered, name });
  saveFile(`lungward-record-${date.slice(0, 10)}.html`, page, "text/html");
}

export function saveProgress(progress: Progress): void {
  const date = new Date().toISOString();
  const text = writeProgressFile(progress, { kit: VERSION, date, cautions: cautionSentences() });
  saveFile(`lungward-progress-${date.slice(0, 10)}.json`, text, "application/json");
}

/** What the model says now, for questions whose numbers or right answer were not kept. */
async function unkept(chain: Chain, progress: Progress, lessons: readonly Lesson[]): Promise<Answered> {
  const known = knownAnswers(chain);
  const requests = lessons.flatMap((lesson) =>
    lesson.steps.flatMap((step, index) => {
      const attempt = progress.lessons[lesson.id]?.answers[step.id];
      if (!attempt || !step.question || !needsModel(step.question, attempt)) return [];
      const names = namesRead(step);
      return [statesAround(lesson, index), statesOfQuestion(lesson, index)].flatMap((states) =>
        requestsOf(names, states),
      );
    }),
  );
  await known.fetch(requests);
  return known.exactly;
}
