/** The kiosk: invites, responds, returns to the start when left; nothing of a visitor stays. */
import { useComputed, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { START } from "../../state/scene-state.ts";
import { Dialog } from "../../ui/dialog.tsx";
import { drawReader } from "../reader.ts";
import { stopReading } from "../shared/aloud.ts";
import { useLibrary } from "../shared/lesson/use-library.ts";
import type { Context } from "../shared/mode.ts";
import { StageView } from "../shared/stage-view.tsx";
import { closePage } from "./closed.ts";
import { count } from "./counts.ts";
import { logError } from "./error-log.ts";
import { KioskLesson } from "./kiosk-lesson.tsx";
import { Organiser } from "./organiser.tsx";
import { OrganiserDoor } from "./organiser-door.tsx";
import { largerType, organiser } from "./organiser-settings.ts";
import { Topics } from "./topics.tsx";
import { startVisit, USUAL_PATIENCE, type VisitEvent, visit } from "./visit.ts";
import { Welcome } from "./welcome.tsx";

/** CSS px: nothing at a kiosk is smaller */
const FLOOR = 24;
/** s between two presses of the same button (EN 301 549, 5.8) */
const DOUBLE_STRIKE = 0.3;

/** s, never jumping with the machine's clock */
const seconds = (): number => performance.now() / 1000;

export function Kiosk({ context }: { readonly context: Context }) {
  const { session, place } = context;
  const now = useSignal(startVisit(seconds()));
  const library = useLibrary();
  const lesson = useSignal<string | null>(null);
  const larger = useSignal(false);
  const reader = useSignal(drawReader());
  const organising = useSignal(false);
  const send = (event: VisitEvent) => {
    const before = now.peek().screen;
    now.value = visit(now.peek(), event, { ...USUAL_PATIENCE, idle: organiser.value.idle });
    if (before === "welcome" || now.value.screen !== "welcome") return;
    // Back at the start: nothing of this visit may show in the next.
    stopReading();
    lesson.value = null;
    larger.value = false;
    reader.value = drawReader();
    session.show(START);
    place.value = { ...place.peek(), language: "", lesson: "", step: "" };
  };
  const leave = () => send({ kind: "leave", at: seconds() });

  useEffect(() => {
    const touch = () => send({ kind: "touch", at: seconds() });
    const tick = setInterval(() => send({ kind: "tick", at: seconds() }), 250);
    const entry = (event: ErrorEvent | PromiseRejectionEvent) => {
      logError(String("reason" in event ? event.reason : event.message));
      leave();
    };
    const reopen = closePage();
    const calm = calmPresses();
    addEventListener("pointerdown", touch, { capture: true });
    addEventListener("keydown", touch, { capture: true });
    addEventListener("error", entry);
    addEventListener("unhandledrejection", entry);
    return () => {
      clearInterval(tick);
      reopen();
      calm();
      removeEventListener("pointerdown", touch, { capture: true });
      removeEventListener("keydown", touch, { capture: true });
      removeEventListener("error", entry);
      removeEventListener("unhandledrejection", entry);
    };
  }, []);

  const lessons = useComputed(
    () =>
      library.value?.lessons.filter(
        ({ id }) => organiser.value.lessons.length === 0 || organiser.value.lessons.includes(id),
      ) ?? [],
  );
  const open = lessons.value.find(({ id }) => id === lesson.value);
  const { screen, left } = now.value;
  // px: the scene's own words grow with the page's
  const words = larger.value ? Math.max(FLOOR, largerType(organiser.value, innerWidth, innerHeight)) : FLOOR;
  if (organising.value)
    return (
      <Organiser
        lessons={library.value?.lessons ?? []}
        onClose={() => {
          organising.value = false;
          leave();
        }}
      />
    );
  return (
    <StageView context={context} floor={words}>
      <div
        class={larger.value ? "kiosk larger" : "kiosk"}
        style={larger.value ? { fontSize: `${words}px` } : undefined}
      >
        <OrganiserDoor
          onOpen={() => {
            organising.value = true;
          }}
        />
        {screen === "welcome" && (
          <Welcome
            context={context}
            onLanguage={(chosen) => {
              place.value = { ...place.peek(), language: chosen };
              send({ kind: "open", screen: "topics", at: seconds() });
            }}
          />
        )}
        {screen === "topics" && (
          <Topics
            lessons={lessons.value}
            larger={larger}
            onLesson={(id) => {
              lesson.value = id;
              if (organiser.value.counting) count(new Date().toISOString().slice(0, 10), id);
              send({ kind: "open", screen: "lesson", at: seconds() });
            }}
            onLeave={leave}
          />
        )}
        {screen === "lesson" && library.value && open && (
          <KioskLesson
            key={`${open.id} ${open.language}`}
            context={context}
            library={library.value}
            lesson={open}
            larger={larger}
            reader={reader.value}
            onTopics={() => send({ kind: "open", screen: "topics", at: seconds() })}
            onLeave={leave}
          />
        )}
      </div>
      {left !== null && (
        <Dialog
          title={t("kiosk.still")}
          urgent
          ownButtons
          onClose={() => send({ kind: "touch", at: seconds() })}
        >
          <p class="kiosk-count" role="timer">
            {t("kiosk.returning", { seconds: left })}
          </p>
          <button type="button" class="main" onClick={() => send({ kind: "touch", at: seconds() })}>
            {t("kiosk.stay")}
          </button>
        </Dialog>
      )}
    </StageView>
  );
}

/** Of two presses of one button within 0.3 s the second is not heard. */
function calmPresses(): () => void {
  let last: { target: EventTarget | null; at: number } = { target: null, at: 0 };
  const press = (event: MouseEvent) => {
    const target = event.target instanceof Element ? event.target.closest("button") : null;
    if (target && target === last.target && event.timeStamp - last.at < DOUBLE_STRIKE * 1000) {
      event.preventDefault();
      event.stopPropagation();
    }
    if (target) last = { target, at: event.timeStamp };
  };
  addEventListener("click", press, { capture: true });
  return () => removeEventListener("click", press, { capture: true });
}
