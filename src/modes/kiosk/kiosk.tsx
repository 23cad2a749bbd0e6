/** The kiosk: invites, responds, returns to the start when left; nothing of a visitor stays. */
import { useComputed, useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { language } from "../../i18n/index.ts";
import { AT_HOME } from "../shared/address/place.ts";
import { useLibrary } from "../shared/lesson/use-library.ts";
import type { Context } from "../shared/mode.ts";
import { lookForNewer } from "../shared/offline/keep-offline.ts";
import { newerVersion } from "../shared/offline/offline.ts";
import { StageView } from "../shared/stage/stage-view.tsx";
import { closePage } from "./closed.ts";
import { count } from "./counts.ts";
import { debouncePresses } from "./debounce-presses.ts";
import { logError } from "./error-log.ts";
import { KioskLesson } from "./kiosk-lesson.tsx";
import { type KioskVisit, kioskVisit } from "./kiosk-visit.ts";
import { Organiser } from "./organiser.tsx";
import { OrganiserDoor } from "./organiser-door.tsx";
import { largerType, offeredOf, organiser } from "./organiser-settings.ts";
import { StillThere } from "./still-there.tsx";
import { takeNewer } from "./take-newer.ts";
import { Topics } from "./topics.tsx";
import { watchVisitor } from "./watch-visitor.ts";
import { Welcome } from "./welcome.tsx";

/** CSS px: nothing at a kiosk is smaller */
const FLOOR = 24;

export function Kiosk({ context }: { readonly context: Context }) {
  const { address } = context;
  const visit = useMemo(() => kioskVisit(context), [context]);
  const library = useLibrary();
  const organising = useSignal(false);
  useEffect(() => guard(context, visit), [context, visit]);
  useEffect(
    () =>
      takeNewer({
        isQuiet: () => visit.isQuiet() && !organising.peek(),
        look: lookForNewer,
        take: () => newerVersion.peek(),
      }),
    [organising, visit],
  );

  const lessons = useComputed(() => {
    const all = library.value?.lessons ?? [];
    const offered = offeredOf(
      all.map(({ id }) => id),
      organiser.value.lessons,
    );
    return all.filter(({ id }) => offered.includes(id));
  });
  const open = lessons.value.find(({ id }) => id === visit.lesson.value);
  const { screen, left } = visit.now.value;
  const { larger } = visit;
  // px: the scene's own words grow with the page's
  const words = larger.value ? Math.max(FLOOR, largerType(organiser.value, innerWidth, innerHeight)) : FLOOR;
  if (organising.value)
    return (
      <Organiser
        lessons={library.value?.lessons ?? []}
        onClose={() => {
          organising.value = false;
          visit.leave();
        }}
        onExit={() => address.go({ ...AT_HOME, language: context.place.value.language })}
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
            onLanguage={(language) => {
              address.go({ language });
              visit.openTopics();
            }}
          />
        )}
        {screen === "topics" && (
          <Topics
            lessons={lessons.value}
            contact={organiser.value.contact}
            larger={larger}
            onLesson={(id) => {
              visit.openLesson(id);
              if (organiser.value.counting)
                count(new Date().toISOString().slice(0, 10), `${id} ${language()}`);
            }}
            onLeave={visit.leave}
          />
        )}
        {screen === "lesson" && library.value && open && (
          <KioskLesson
            key={`${open.id} ${open.language}`}
            context={context}
            library={library.value}
            lesson={open}
            larger={larger}
            reader={visit.reader.value}
            onTopics={visit.openTopics}
            onLeave={visit.leave}
          />
        )}
        {left !== null && <StillThere left={left} onStay={visit.touch} />}
      </div>
    </StageView>
  );
}

/** Keeps the page closed and follows the visitor until the returned function is called. */
function guard({ address }: Context, visit: KioskVisit): () => void {
  const releases = [
    address.closeWayOut(),
    closePage(),
    debouncePresses(),
    watchVisitor({
      onTouch: visit.touch,
      onTick: visit.tick,
      onError(reason) {
        logError(reason);
        visit.leave();
      },
    }),
  ];
  return () => {
    for (const release of releases) release();
  };
}
