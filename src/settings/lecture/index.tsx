/** The lecture as a setting: the builder of a talk, the room, or the speaker's window. */
import { render } from "preact";
import { useShelf } from "../lesson/use-shelf.ts";
import type { Context, Setting } from "../setting.ts";
import { Builder } from "./builder.tsx";
import { MINUTES, readStops, writeStops } from "./playlist.ts";
import { Room } from "./room.tsx";
import { Speaker } from "./speaker.tsx";
import { findStops, secondsOf, stopsOf } from "./stops.ts";

function Lecture({ context }: { readonly context: Context }) {
  const shelf = useShelf();
  if (!shelf.value) return null;
  const { lesson, step, more } = context.place.value;
  if (more.window === "speaker") return <Speaker context={context} shelf={shelf.value} />;
  // A lesson alone is a talk of all its steps; without a step to begin at, the list is still being made.
  const whole = shelf.value.lessons.find(({ id }) => id === lesson);
  const list = more.list ?? (whole ? writeStops(stopsOf(whole)) : "");
  const { found } = findStops(readStops(list), shelf.value.lessons);
  if (found.length === 0 || (!step && !whole)) return <Builder context={context} shelf={shelf.value} />;
  const asked = Number(more.minutes);
  const minutes = asked >= MINUTES.min && asked <= MINUTES.max ? asked : Math.ceil(secondsOf(found) / 60);
  return (
    <Room
      key={`${shelf.value.language} ${list}`}
      context={context}
      shelf={shelf.value}
      stops={found}
      list={writeStops(found.map((stop) => ({ lesson: stop.lesson.id, step: stop.step.id })))}
      minutes={minutes}
    />
  );
}

export const setting: Setting = {
  mount(host, context) {
    render(<Lecture context={context} />, host);
    return () => render(null, host);
  },
};
