/** What a speaker can do in the room, by key or by the bar. */
import type { Signal } from "@preact/signals";
import { togglePlay } from "../../shared/handles/play.ts";
import type { Context } from "../../shared/mode.ts";
import type { Tool } from "../pen/pen-surface.tsx";
import type { LectureActs } from "../windows/lecture-keys.ts";
import { typedStop } from "../windows/typed-stop.ts";
import { toggleFullScreen } from "./full-screen.ts";
import type { RoomState } from "./room-state.ts";

export type RoomPanel = "help" | "keys" | "whatIf";

export interface RoomView {
  readonly open: Signal<RoomPanel | null>;
  /** What the mouse does on the stage; null = nothing. */
  readonly tool: Signal<Tool | null>;
  /** Digits of the step to go to. */
  readonly typed: Signal<string>;
}

export interface RoomActs extends LectureActs {
  readonly help: () => void;
}

export function roomActs(context: Context, room: RoomState, view: RoomView): RoomActs {
  const { open, tool, typed } = view;
  const show = (name: RoomPanel) => () => {
    open.value = open.value === name ? null : name;
  };
  return {
    say(event) {
      typed.value = "";
      room.begin();
      room.say(event);
    },
    fullScreen: toggleFullScreen,
    start(fromHere) {
      // A remote's one button sends F5 and Esc in turn: only the first F5 of a talk goes to its start.
      if (!fromHere && !room.hasBegun()) room.say({ kind: "first" });
      room.begin();
      if (!document.fullscreenElement) toggleFullScreen();
    },
    pause: () => togglePlay(context),
    point() {
      tool.value = tool.value === "pointer" ? null : "pointer";
      if (!tool.value) room.mark({ kind: "unpoint" });
    },
    pen() {
      tool.value = tool.value === "pen" ? null : "pen";
      room.mark({ kind: "unpoint" });
    },
    clearPen: () => room.mark({ kind: "clear" }),
    help: show("help"),
    whatIf: show("whatIf"),
    speaker: room.openSpeaker,
    theme() {
      const { theme } = context;
      theme.value = theme.value === "dark" ? "light" : "dark";
    },
    ...typedStop(typed, (number) => room.say({ kind: "go", at: number - 1 })),
    escape() {
      typed.value = "";
      open.value = null;
    },
    keyList: show("keys"),
  };
}
