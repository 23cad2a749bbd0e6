/** The words of a step as a slide has them: plain text, with the model's numbers written out. */
import { formatQuantity, t } from "../../../i18n/index.ts";
import { dealAnswers } from "../../../lesson/judge/deal.ts";
import type { Question, Step } from "../../../lesson/lesson.ts";
import type { Library } from "../../../lesson/library/library.ts";
import { namesRead, requestsOf, situationOf } from "../../../lesson/model/situation.ts";
import { statesAround } from "../../../lesson/model/states.ts";
import { firstOf, type Inline, type Prose } from "../../../lesson/prose.ts";
import { entryAt } from "../../../sim/checked/present.ts";
import type { Circulation } from "../../../sim/circulation/answer/answer.ts";
import type { FieldReadings } from "../../../sim/flow-field/flow-field.ts";
import type { CirculationRequest } from "../../../sim/parameters/request.ts";
import { paneRequests, type SceneState } from "../../../state/scene-state.ts";
import { figuresOf } from "../../../ui/figures.ts";
import type { Voice } from "../../../ui/lesson/voice.ts";
import { figuresThatMatter } from "../../shared/lesson/figures-that-matter.ts";
import type { KnownAnswers } from "../../shared/lesson/known-answers.ts";
import { voiceOf } from "../../shared/lesson/voice-of.ts";
import { personSentence } from "../talk/own-person.ts";
import { stateOfStop } from "../talk/stop-state.ts";
import type { DrawnStop, FoundStep } from "../talk/stops.ts";
import { paneCaptions } from "./pane-captions.ts";
import { plainText } from "./plain-text.ts";
import type { SlidePane, SlideWords } from "./slide.ts";

/** Every state whose answer the slide's words and numbers need. */
export function requestsOfStop(stop: DrawnStop): readonly CirculationRequest[] {
  if (stop.kind === "bench") return paneRequests(stateOfStop(stop));
  const { lesson, index, step } = stop.found;
  const states = statesAround(lesson, index);
  return [...requestsOf(namesOnSlide(step), states), ...paneRequests(states.own)];
}

/** A slide has the plain text alone. */
const namesOnSlide = (step: Step): readonly string[] => namesRead({ ...step, technical: null });

/** No dye runs through a picture that stands still, so nothing washes out of it. */
const NEVER_ON_PAPER = "washOutSeconds";

/** Whether a number of its words is measured in the flow. */
export const readsFlow = (stop: DrawnStop): boolean =>
  stop.kind === "step" &&
  namesOnSlide(stop.found.step).some((name) => {
    const path = name.split(".");
    return path.includes("field") && !path.includes(NEVER_ON_PAPER);
  });

interface SlideOptions {
  readonly fields: readonly (FieldReadings | null)[];
  readonly reader: number;
  readonly link: string;
}

export function slideWords(
  stop: DrawnStop,
  library: Pick<Library, "glossary" | "sources">,
  { exactly }: Pick<KnownAnswers, "exactly">,
  options: SlideOptions,
): SlideWords {
  const { link } = options;
  if (stop.kind === "step") return stepWords(stop, library, exactly, options);
  const { title, notes } = stop;
  return {
    title,
    body: personLines(stop),
    caution: "",
    panes: panesOf(null, stateOfStop(stop), exactly),
    notes,
    link,
  };
}

function stepWords(
  found: FoundStep,
  library: Pick<Library, "glossary" | "sources">,
  exactly: KnownAnswers["exactly"],
  { fields, reader, link }: SlideOptions,
): SlideWords {
  const {
    found: { lesson, index, step },
    notes: own,
  } = found;
  const states = statesAround(lesson, index);
  const settled = fields.map((field) => (field?.settled ? field : null));
  const voice = onPaper(voiceOf(library, situationOf(states, exactly, settled), "plain", null));
  const say = (content: Prose | readonly Inline[]) => plainText(content, voice);
  const question = entryAt(dealAnswers(lesson, reader).steps, index).question;
  const asked = question && question.room !== false ? question : null;
  const whole = say(step.plain.prose);
  const notes = step.notes ? say(step.notes.prose) : "";
  return {
    title: step.title,
    body: [
      ...(asked
        ? questionLines(asked, voice)
        : [say(firstOf(step.plain.prose, 1).filter(({ kind }) => kind !== "picture"))]),
      ...personLines(found),
    ],
    caution: step.caution ? say(step.caution.prose) : "",
    panes: panesOf(step, states.own, exactly),
    notes: [own, notes, whole].filter(Boolean).join("\n\n"),
    link,
  };
}

/** A number that the flow has not given waits on a screen; on paper the words say where it is to be had. */
const onPaper = (voice: Voice): Voice => ({
  ...voice,
  number(figure) {
    const written = voice.number(figure);
    return written === t("lesson.measuring") ? t("lecture.deck.measured") : written;
  },
});

const personLines = (stop: DrawnStop): readonly string[] =>
  stop.person ? [personSentence(stop.person, stateOfStop(stop).request)] : [];

function questionLines(question: Question, voice: Voice): readonly string[] {
  const choices = "answers" in question ? question.answers : "items" in question ? question.items : [];
  return [
    plainText(question.ask, voice),
    ...choices.map(({ say }, place) => `${String.fromCharCode(65 + place)}  ${plainText(say, voice)}`),
  ];
}

/** Alone, the numbers that stand beside every scene; side by side, the one that a hall compares. */
function panesOf(
  step: Step | null,
  state: SceneState,
  exactly: (request: CirculationRequest) => Circulation | null,
): readonly SlidePane[] {
  const captions = paneCaptions(state);
  const circulations = paneRequests(state).map(exactly);
  const figures =
    captions.length === 1
      ? figuresOf(circulations[0] ?? null).map((figure) => ({
          ...figure,
          values: [figure.value],
          bands: [figure.band],
        }))
      : figuresThatMatter(step, state, circulations);
  return captions.map((caption, pane) => ({
    caption,
    figures: figures.flatMap(({ name, values, bands, unit, digits, note }) => {
      const value = values[pane] ?? null;
      if (value === null) return [];
      const written = formatQuantity(value, unit, digits, bands[pane]);
      return [t("sheet.figure", { name: t(`figure.${name}`), value: written }), ...(note ? [t(note)] : [])];
    }),
  }));
}
