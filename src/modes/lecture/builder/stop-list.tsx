/** The stops of a talk in the making, in their order. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import type { Lesson } from "../../../lesson/lesson.ts";
import { announce } from "../../../ui/announce.tsx";
import type { Context } from "../../shared/mode.ts";
import { type Drag, dragOrder, movedTo, shiftOf } from "./drag-order.ts";
import { keyOf } from "./stop-keys.ts";
import { StopRow, titleOf } from "./stop-row.tsx";
import type { TalkDraft } from "./talk-draft.ts";

export interface StopListProps {
  readonly context: Context;
  readonly draft: TalkDraft;
  readonly lessons: readonly Lesson[];
}

export function StopList({ context, draft, lessons }: StopListProps) {
  const list = useRef<HTMLOListElement>(null);
  const drag = useSignal<Drag | null>(null);
  const { stops } = draft.plan.value;
  const known = useRef(lessons);
  known.current = lessons;
  const move = (from: number, to: number) => {
    const present = draft.plan.peek().stops;
    const held = present[from];
    if (!held || movedTo(present, from, to) === present) return;
    draft.setStops(null, (all) => movedTo(all, from, to));
    const item = titleOf(held, known.current);
    announce(t("lesson.moved", { item, place: to + 1, count: present.length }));
  };
  useEffect(() => (list.current ? dragOrder(list.current, drag, move) : undefined), [draft]);
  return (
    <ol ref={list} class={drag.value ? "dragging" : ""}>
      {stops.map((stop, index) => (
        <StopRow
          key={keyOf(stop)}
          held={drag.value?.from === index}
          shift={drag.value ? shiftOf(drag.value, index) : 0}
          onMove={(to) => move(index, to)}
          {...{ context, draft, lessons, stop, index }}
        />
      ))}
    </ol>
  );
}
