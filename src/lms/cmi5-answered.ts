/** A typed number as an xAPI interaction (1.0.3); by cmi5 such a statement is allowed beside its own and has not its category. From memory of the specifications. */
import type { TypedAnswer } from "../lesson/typed-answers.ts";
import type { Launch } from "./cmi5-launch.ts";
import type { Template } from "./cmi5-store.ts";

/** Without what differs each time it is sent: its id and its moment. */
export function answeredStatement(launch: Launch, template: Template, answer: TypedAnswer) {
  const { lesson, step, given, truth, within, right } = answer;
  return {
    actor: launch.actor,
    verb: { id: "http://adlnet.gov/expapi/verbs/answered", display: { en: "answered" } },
    object: {
      objectType: "Activity",
      id: `${launch.activityId}/questions/${lesson}/${step}`,
      definition: {
        type: "http://adlnet.gov/expapi/activities/cmi.interaction",
        interactionType: "numeric",
        correctResponsesPattern: [`${truth - within}[:]${truth + within}`],
      },
    },
    result: { response: String(given), success: right },
    context: { ...template, registration: launch.registration },
  };
}
