/** Draws the stops of a talk one after the other on the page's one stage, which is left as it was. */

import type { Library } from "../../../lesson/library.ts";
import { knownAnswers } from "../../shared/lesson/known-answers.ts";
import type { Context } from "../../shared/mode.ts";
import { settled } from "../../shared/settled.ts";
import { stateLink } from "../../shared/state-link.ts";
import { stateOfStop } from "../stop-state.ts";
import type { DrawnStop } from "../stops.ts";
import type { Slide } from "./slide.ts";
import { readsFlow, requestsOfStop, slideWords } from "./slide-words.ts";

/** s that a flow gets to take shape where no number is measured in it: the numbers beside it are the circulation's */
const FLOW_SHAPES = 1;

/** CSS px */
const FLOOR = 24;

export interface DrawOptions<Picture> {
  readonly context: Context;
  readonly library: Library;
  readonly stops: readonly DrawnStop[];
  /** Decides the places of the answers. */
  readonly reader: number;
  /** Takes the picture of what is shown. */
  readonly picture: () => Promise<Picture>;
  readonly onProgress: (done: number) => void;
  readonly cancel: AbortSignal;
}

/** Null when cancelled. */
export async function drawSlides<Picture>(
  options: DrawOptions<Picture>,
): Promise<readonly Slide<Picture>[] | null> {
  const { context, library, stops, reader, picture, onProgress, cancel } = options;
  const { session, stage } = context;
  const known = knownAnswers(session.chain);
  const before = session.scene.peek();
  const hide = stage.show(FLOOR);
  const slides: Slide<Picture>[] = [];
  // The workers solve the next stop's states while this one is drawn.
  const ask = (index: number) => known.fetch(stops[index] ? requestsOfStop(stops[index]) : []);
  let answers = ask(0);
  try {
    for (const [index, stop] of stops.entries()) {
      onProgress(index);
      const state = stateOfStop(stop);
      // No dye: paper and slides cannot show its moment.
      session.show({ ...state, view: { ...state.view, dye: before.view.dye } });
      await answers;
      answers = ask(index + 1);
      await settled(context, cancel, readsFlow(stop) ? undefined : FLOW_SHAPES);
      if (cancel.aborted) return null;
      const fields = session.chain.readings.peek();
      const words = slideWords(stop, library, known, { fields, reader, link: stateLink(context) });
      slides.push({
        ...words,
        id: stop.kind === "bench" ? "bench" : `${stop.lesson}-${stop.step}`,
        picture: await picture(),
      });
    }
    return cancel.aborted ? null : slides;
  } finally {
    hide();
    session.show(before);
  }
}
