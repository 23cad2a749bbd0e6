/** A talk under way as a pure state machine: where it is, what the room sees. It knows no lesson, no page and no clock. */

type Blank = "none" | "black" | "white";

export interface Talk {
  /** Stop of the playlist that the speaker is at. */
  readonly at: number;
  /** How many stops there are. */
  readonly count: number;
  readonly blank: Blank;
  /** The stop that the room goes on seeing while the speaker moves; null = the room follows. */
  readonly heldAt: number | null;
  /** Short text of a scene shown instead of the script's; null = the script's own. */
  readonly aside: string | null;
}

export type TalkEvent =
  | { readonly kind: "next" | "back" | "first" | "last" | "hold" | "script" }
  | { readonly kind: "go"; readonly at: number }
  | { readonly kind: "blank"; readonly to: Exclude<Blank, "none"> }
  | { readonly kind: "aside"; readonly state: string };

export const startTalk = (count: number, at = 0): Talk => ({
  at: within(at, count),
  count,
  blank: "none",
  heldAt: null,
  aside: null,
});

const within = (at: number, count: number): number => Math.min(Math.max(0, count - 1), Math.max(0, at));

/** A step while the screen is blank only brings the picture back; the same blank key does too. */
export function speak(talk: Talk, event: TalkEvent): Talk {
  const to = (at: number): Talk =>
    talk.blank === "none" ? { ...talk, at: within(at, talk.count), aside: null } : { ...talk, blank: "none" };
  switch (event.kind) {
    case "next":
      return to(talk.at + 1);
    case "back":
      return to(talk.at - 1);
    case "first":
      return to(0);
    case "last":
      return to(talk.count - 1);
    case "go":
      return to(event.at);
    case "blank":
      return { ...talk, blank: talk.blank === event.to ? "none" : event.to };
    case "hold":
      return { ...talk, heldAt: talk.heldAt === null ? talk.at : null };
    case "script":
      return { ...talk, aside: null, blank: "none", heldAt: null };
    case "aside":
      return { ...talk, aside: event.state };
  }
}

/** The stop that the room sees. */
export const shownAt = (talk: Talk): number => talk.heldAt ?? talk.at;
