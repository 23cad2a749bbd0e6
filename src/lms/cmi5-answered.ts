/** An answered question as an xAPI interaction (1.0.3); by cmi5 such a statement is allowed beside its own and has not its category. */
import type { Launch } from "./cmi5-launch.ts";
import type { LaunchData } from "./cmi5-store.ts";
import type { ReportedAnswer } from "./record-adapter.ts";
import { patternOf } from "./scorm-interactions.ts";

/** Without what differs each time it is sent: its id and its moment. */
export function answeredStatement(
  launch: Launch,
  template: LaunchData["contextTemplate"],
  answer: ReportedAnswer,
) {
  const { lesson, step, kind, asked, language, options, given, correct, right } = answer;
  const choices = options.map(({ id, say }) => ({ id, description: { [language]: say } }));
  return {
    actor: launch.actor,
    verb: { id: "http://adlnet.gov/expapi/verbs/answered", display: { en: "answered" } },
    object: {
      objectType: "Activity",
      id: `${launch.activityId}/questions/${lesson}/${step}`,
      definition: {
        type: "http://adlnet.gov/expapi/activities/cmi.interaction",
        description: { [language]: asked },
        interactionType: kind,
        ...(choices.length > 0 ? { choices } : {}),
        ...(correct === null ? {} : { correctResponsesPattern: [patternOf(correct)] }),
      },
    },
    result: { response: patternOf(given), success: right },
    context: { ...template, registration: launch.registration },
  };
}
