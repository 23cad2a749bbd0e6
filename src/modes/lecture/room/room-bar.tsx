/** The room's controls: seen while the mouse moves or focus is among them, gone otherwise. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import { Toolbar } from "../../../ui/toolbar.tsx";
import { isMoving } from "../../shared/handles/play.ts";
import type { Context } from "../../shared/mode.ts";
import type { Tool } from "../pen/pen-surface.tsx";
import type { LectureActs } from "../windows/lecture-keys.ts";
import type { RoomState } from "./room-state.ts";

/** s without a movement until the bar goes */
const SHOWN_FOR = 4;

export interface RoomBarProps {
  readonly context: Context;
  readonly room: RoomState;
  readonly acts: LectureActs;
  readonly tool: Tool | null;
  readonly onHelp: () => void;
}

export function RoomBar({ context, room, acts, tool, onHelp }: RoomBarProps) {
  const visible = useSignal(true);
  useEffect(() => {
    let sleep: ReturnType<typeof setTimeout>;
    const showBar = () => {
      visible.value = true;
      clearTimeout(sleep);
      sleep = setTimeout(() => {
        visible.value = false;
      }, SHOWN_FOR * 1000);
    };
    showBar();
    addEventListener("pointermove", showBar);
    return () => {
      clearTimeout(sleep);
      removeEventListener("pointermove", showBar);
    };
  }, [visible]);
  const talk = room.talk.value;
  const item = (name: string, label: string, onPress: () => void, disabled = false) => ({
    name,
    label: t(label),
    onPress,
    disabled,
  });
  const { say } = acts;
  return (
    <div class={visible.value ? "room-bar visible" : "room-bar"}>
      <Toolbar
        label={t("lecture.bar")}
        items={[
          item("back", "lecture.back", () => say({ kind: "back" }), talk.at === 0),
          item("next", "lecture.next", () => say({ kind: "next" }), talk.at === talk.count - 1),
          item("pause", isMoving(context) ? "transport.pause" : "transport.play", acts.pause),
          item("black", "lecture.black", () => say({ kind: "blank", to: "black" })),
          item("hold", talk.heldAt === null ? "lecture.hold" : "lecture.holding", () =>
            say({ kind: "hold" }),
          ),
          { ...item("point", "lecture.pointer", acts.point), pressed: tool === "pointer" },
          { ...item("pen", "lecture.pen", acts.pen), pressed: tool === "pen" },
          item("whatIf", "lecture.whatIf", acts.whatIf),
          item("script", "lecture.script", () => say({ kind: "script" })),
          item("speaker", "lecture.speaker", acts.speaker),
          item("fullScreen", "lecture.fullScreen", acts.fullScreen),
          item("help", "bench.help", onHelp),
        ]}
      />
    </div>
  );
}
