/** The lecture as a mode: the builder of a talk, the room, or the speaker's window. */
import { render } from "preact";
import { useRef } from "preact/hooks";
import { useLibrary } from "../shared/lesson/use-library.ts";
import type { Context, Mode } from "../shared/mode.ts";
import { Builder } from "./builder/builder.tsx";
import { useKeptTalk } from "./files/use-kept-talk.ts";
import { Room } from "./room/room.tsx";
import type { LeftTalk } from "./room/room-state.ts";
import { Speaker } from "./speaker/speaker.tsx";
import { MINUTES, writeStops } from "./talk/playlist.ts";
import { findStops, KEPT_TALK, secondsOf, stopsOf, stopsOfList } from "./talk/stops.ts";
import "./hall/hall.css";
import "./lecture.css";
import "./room/own-slide.css";
import "./pen/pen.css";
import "./room/room-question.css";
import "./speaker/speaker.css";
import "./talk.css";

function Lecture({ context }: { readonly context: Context }) {
  const library = useLibrary();
  const left = useRef<LeftTalk | null>(null);
  const { lesson, step, more } = context.place.value;
  const kept = useKeptTalk(more.talk === KEPT_TALK);
  if (!library.value || kept === "waiting") return null;
  if (more.window === "speaker") return <Speaker context={context} library={library.value} kept={kept} />;
  // A lesson alone is a talk of all its steps; without a step to begin at, the list is still being made.
  const whole = library.value.lessons.find(({ id }) => id === lesson);
  const list = more.list ?? (whole ? writeStops(stopsOf(whole)) : "");
  const { found } = findStops(kept?.plan.stops ?? stopsOfList(list), library.value.lessons);
  if (found.length === 0 || (!step && !whole)) return <Builder context={context} library={library.value} />;
  const asked = kept?.plan.minutes ?? Number(more.minutes);
  const minutes = asked >= MINUTES.min && asked <= MINUTES.max ? asked : Math.ceil(secondsOf(found) / 60);
  return (
    <Room
      key={`${library.value.language} ${kept ? KEPT_TALK : list}`}
      context={context}
      library={library.value}
      stops={found}
      list={kept ? "" : writeStops(found.flatMap((stop) => (stop.kind === "step" ? [stop] : [])))}
      pictures={kept?.pictures ?? NO_PICTURES}
      minutes={minutes}
      left={left}
    />
  );
}

const NO_PICTURES = new Map<string, Blob>();

export const mode: Mode = {
  mount(host, context) {
    render(<Lecture context={context} />, host);
    return () => render(null, host);
  },
};
