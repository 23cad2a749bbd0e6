/** The keys of a lecture: what presentation remotes send, and a few more for the speaker at the keyboard. */
import type { Key } from "../../../ui/keys.ts";
import type { TalkEvent } from "../talk/talk.ts";

export interface LectureActs {
  readonly say: (event: TalkEvent) => void;
  readonly fullScreen: () => void;
  /** Full screen as from a remote's start button: never reloads the page. */
  readonly start: (fromHere: boolean) => void;
  readonly pause: () => void;
  readonly point: () => void;
  readonly pen: () => void;
  /** Takes the pen's lines away. */
  readonly clearPen: () => void;
  readonly whatIf: () => void;
  readonly speaker: () => void;
  readonly theme: () => void;
  readonly digit: (digit: string) => void;
  /** Goes to the number typed; false when none was. */
  readonly enter: () => boolean;
  readonly escape: () => void;
  readonly keyList: () => void;
}

export function lectureKeys(acts: LectureActs): readonly Key[] {
  const { say } = acts;
  const act = (
    keys: readonly string[],
    name: string,
    run: (key: string) => void,
    held: Partial<Key> = {},
  ): Key => ({
    keys,
    does: `lecture.does.${name}`,
    run,
    ...held,
  });
  return [
    act(["PageDown"], "next", () => say({ kind: "next" }), { always: true }),
    act(["ArrowRight", "ArrowDown", " ", "n"], "next", () => say({ kind: "next" })),
    act(["PageUp"], "back", () => say({ kind: "back" }), { always: true }),
    act(["ArrowLeft", "ArrowUp", "Backspace", "p"], "back", () => say({ kind: "back" })),
    act(["Enter"], "enter", () => {
      if (!acts.enter()) say({ kind: "next" });
    }),
    act([".", "b", "/"], "black", () => say({ kind: "blank", to: "black" })),
    act([",", "w"], "white", () => say({ kind: "blank", to: "white" })),
    act(["Home"], "first", () => say({ kind: "first" })),
    act(["End"], "last", () => say({ kind: "last" })),
    act(["F5"], "start", () => acts.start(false), { shift: false }),
    act(["F5"], "startHere", () => acts.start(true), { shift: true }),
    act(["f"], "fullScreen", acts.fullScreen),
    act(["k"], "pause", acts.pause),
    act(["l"], "point", acts.point),
    act(["d"], "pen", acts.pen),
    act(["x"], "clearPen", acts.clearPen),
    act(["h"], "hold", () => say({ kind: "hold" })),
    act(["a"], "whatIf", acts.whatIf),
    act(["r"], "script", () => say({ kind: "script" })),
    act(["s"], "speaker", acts.speaker),
    act(["t"], "theme", acts.theme),
    act(["Escape"], "escape", acts.escape),
    act(["?"], "keys", acts.keyList),
    act([..."0123456789"], "digit", acts.digit),
  ];
}
