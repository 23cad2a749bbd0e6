/** Draws the stops of a talk one after the other on the page's one stage, which is left as it was. */
import type { Library } from "../../../lesson/library/library.ts";
import { linkToState } from "../../shared/address/state-link.ts";
import { knownAnswers } from "../../shared/lesson/known-answers.ts";
import type { Context } from "../../shared/mode.ts";
import { settled } from "../../shared/stage/settled.ts";
import type { Pictures } from "../talk/own-stops.ts";
import { stateOfStop } from "../talk/stop-state.ts";
import { type FoundStop, isDrawn } from "../talk/stops.ts";
import type { Opened } from "./opened-picture.ts";
import { ownPage } from "./own-page.ts";
import type { DeckPage } from "./slide.ts";
import { readsFlow, requestsOfStop, slideWords } from "./slide-words.ts";
import { figuresOfStep } from "./step-figures.ts";

/** s of its own time that a flow gets to take shape where no number is measured in it: the numbers beside it are the circulation's */
const FLOW_SHAPES = 1;
/** blood seconds in a second of the wall clock: more than any machine here can do */
const AS_FAST_AS_IT_CAN = 4;

/** Nothing moves on paper: all that the machine can do goes into the flow. No dye, whose moment paper cannot show. */
const STILL = { paused: true, moment: undefined, playSpeed: AS_FAST_AS_IT_CAN } as const;

export interface DrawOptions<Picture> {
  readonly context: Context;
  readonly library: Library;
  readonly stops: readonly FoundStop[];
  /** Decides the places of the answers. */
  readonly reader: number;
  /** Takes the picture of what is shown. */
  readonly picture: () => Promise<Picture>;
  /** Of the speaker's own stops. */
  readonly pictures: Pictures;
  /** Gives a picture of one's own the form that the file needs. */
  readonly as: (opened: Opened) => Promise<Picture>;
  readonly onProgress: (done: number) => void;
  readonly cancel: AbortSignal;
}

/** Null when cancelled. */
export async function drawSlides<Picture>(
  options: DrawOptions<Picture>,
): Promise<readonly DeckPage<Picture>[] | null> {
  const { context, library, stops, reader, picture, pictures, as, onProgress, cancel } = options;
  const { session, stage } = context;
  const known = knownAnswers(session.chain);
  const before = session.scene.peek();
  const leave = stage.follow();
  const slides: DeckPage<Picture>[] = [];
  // The workers solve the next stop's states while this one is drawn.
  const ask = (index: number) => {
    const stop = stops[index];
    return known.fetch(stop && isDrawn(stop) ? requestsOfStop(stop) : []);
  };
  let answers = ask(0);
  try {
    for (const [index, stop] of stops.entries()) {
      onProgress(index);
      if (!isDrawn(stop)) {
        answers = ask(index + 1);
        slides.push(await ownPage(stop, pictures, as));
        if (cancel.aborted) return null;
        continue;
      }
      const state = stateOfStop(stop);
      session.show({ ...state, view: { ...state.view, ...STILL, dye: before.view.dye } });
      await answers;
      answers = ask(index + 1);
      await settled(context, cancel, readsFlow(stop) ? undefined : FLOW_SHAPES);
      if (cancel.aborted) return null;
      const fields = session.chain.readings.peek();
      const words = slideWords(stop, library, known, { fields, reader, link: linkToState(state) });
      slides.push({
        kind: "scene",
        ...words,
        id: stop.kind === "bench" ? "bench" : `${stop.lesson}-${stop.step}`,
        picture: await picture(),
        ownFigures: await figuresOfStep(stop, as),
      });
    }
    return cancel.aborted ? null : slides;
  } finally {
    leave();
    session.show(before);
  }
}
