/** The visit under way: its screen, its lesson, its larger type. At its end all of it is reset, with the scene and the address. */
import { type ReadonlySignal, type Signal, signal } from "@preact/signals";
import { setView } from "../../state/edit.ts";
import { START } from "../../state/scene-state.ts";
import { drawReader } from "../reader.ts";
import type { Context } from "../shared/mode.ts";
import { stopReading } from "../shared/words/aloud.ts";
import { organiser } from "./organiser-settings.ts";
import { startVisit, USUAL_IDLE_LIMITS, type Visit, type VisitEvent, visit } from "./visit.ts";

/** s, never jumping with the machine's clock */
const seconds = (): number => performance.now() / 1000;

export interface KioskVisit {
  readonly now: ReadonlySignal<Visit>;
  /** id of the lesson chosen */
  readonly lesson: ReadonlySignal<string | null>;
  readonly larger: Signal<boolean>;
  readonly reader: ReadonlySignal<number>;
  /** The start shows, and nobody has touched it for as long as a visit may rest. */
  readonly isQuiet: () => boolean;
  readonly touch: () => void;
  readonly tick: () => void;
  readonly leave: () => void;
  readonly openTopics: () => void;
  readonly openLesson: (id: string) => void;
}

export function kioskVisit({ session, address }: Pick<Context, "session" | "address">): KioskVisit {
  const now = signal(startVisit(seconds()));
  const lesson = signal<string | null>(null);
  const larger = signal(false);
  const reader = signal(drawReader());
  const send = (event: VisitEvent) => {
    const before = now.peek().screen;
    now.value = visit(now.peek(), event, { ...USUAL_IDLE_LIMITS, idle: organiser.value.idle });
    if (before === "welcome" || now.value.screen !== "welcome") return;
    // Back at the start: nothing of this visit may show in the next.
    stopReading();
    lesson.value = null;
    larger.value = false;
    reader.value = drawReader();
    session.show(START);
    address.go({ language: "", lesson: "", step: "" });
  };
  return {
    now,
    lesson,
    larger,
    reader,
    isQuiet: () => now.peek().screen === "welcome" && seconds() - now.peek().touched > organiser.value.idle,
    touch: () => send({ kind: "touch", at: seconds() }),
    tick: () => send({ kind: "tick", at: seconds() }),
    leave: () => send({ kind: "leave", at: seconds() }),
    openTopics() {
      // Beside a choice the body alone is seen, as large as can be, and without numbers.
      const scene = now.peek().screen === "welcome" ? session.scene.peek() : START;
      session.show(setView({ gradeLine: false, labels: false })(scene));
      send({ kind: "open", screen: "topics", at: seconds() });
    },
    openLesson(id) {
      lesson.value = id;
      send({ kind: "open", screen: "lesson", at: seconds() });
    },
  };
}
