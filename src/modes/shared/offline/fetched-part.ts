/** A part of the page that is fetched when it is asked for. */
import { type Signal, useSignal } from "@preact/signals";
import type { FunctionComponent } from "preact";

/** null: not here yet; false: it did not come */
type Part<Props> = FunctionComponent<Props> | false | null;

export function useFetchedPart<Props>(
  load: () => Promise<FunctionComponent<Props>>,
): readonly [part: Signal<Part<Props>>, ask: () => Promise<void>] {
  const part = useSignal<Part<Props>>(null);
  const ask = async () => {
    part.value = await load().catch(() => false as const);
  };
  return [part, ask];
}
