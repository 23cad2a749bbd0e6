/** The lecture as a mode: the builder of a talk, the room, or the speaker's window. */
import { render } from "preact";
import { useLibrary } from "../shared/lesson/use-library.ts";
import type { Context, Mode } from "../shared/mode.ts";
import { Builder } from "./builder.tsx";
import { MINUTES, readStops, writeStops } from "./playlist.ts";
import { Room } from "./room.tsx";
import { Speaker } from "./speaker.tsx";
import { findStops, secondsOf, stopsOf } from "./stops.ts";
import "./hall.css";
import "./lecture.css";
import "./talk.css";

function Lecture({ context }: { readonly context: Context }) {
  const library = useLibrary();
  if (!library.value) return null;
  const { lesson, step, more } = context.place.value;
  if (more.window === "speaker") return <Speaker context={context} library={library.value} />;
  // A lesson alone is a talk of all its steps; without a step to begin at, the list is still being made.
  const whole = library.value.lessons.find(({ id }) => id === lesson);
  const list = more.list ?? (whole ? writeStops(stopsOf(whole)) : "");
  const { found } = findStops(readStops(list), library.value.lessons);
  if (found.length === 0 || (!step && !whole)) return <Builder context={context} library={library.value} />;
  const asked = Number(more.minutes);
  const minutes = asked >= MINUTES.min && asked <= MINUTES.max ? asked : Math.ceil(secondsOf(found) / 60);
  return (
    <Room
      key={`${library.value.language} ${list}`}
      context={context}
      library={library.value}
      stops={found}
      list={writeStops(found.map((stop) => ({ lesson: stop.lesson.id, step: stop.step.id })))}
      minutes={minutes}
    />
  );
}

export const mode: Mode = {
  mount(host, context) {
    render(<Lecture context={context} />, host);
    return () => render(null, host);
  },
};
