/** Whom a stop shows instead of the lesson's person, and that nobody real is meant. */
import { personSentence } from "./own-person.ts";
import { personAt } from "./own-stops.ts";
import { sceneOfStop } from "./stop-state.ts";
import type { FoundStop } from "./stops.ts";

export function PersonOf({ stop }: { readonly stop: FoundStop }) {
  const person = personAt(stop);
  const scene = person && sceneOfStop(stop);
  return scene && <p class="person-words">{personSentence(person, scene.request)}</p>;
}
