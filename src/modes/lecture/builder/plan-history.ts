/** A talk's plan with undo: edits of one kind that follow each other are one. */
import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { TalkPlan } from "../talk/own-stops.ts";

const LONGEST = 100;

export interface PlanHistory {
  readonly plan: ReadonlySignal<TalkPlan>;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  /** `subject`: what a run of edits is about, such as one field's words; null = an edit of its own. */
  edit(subject: string | null, change: (plan: TalkPlan) => TalkPlan): void;
  undo(): void;
  redo(): void;
}

export function planHistory(first: TalkPlan): PlanHistory {
  const plan = signal(first);
  const past = signal<readonly TalkPlan[]>([]);
  const future = signal<readonly TalkPlan[]>([]);
  let last: string | null = null;
  const step = (from: typeof past, to: typeof past) => () => {
    const there = from.value.at(-1);
    if (!there) return;
    from.value = from.value.slice(0, -1);
    to.value = [...to.value, plan.value];
    plan.value = there;
    last = null;
  };
  return {
    plan,
    canUndo: computed(() => past.value.length > 0),
    canRedo: computed(() => future.value.length > 0),
    edit(subject, change) {
      const before = plan.peek();
      const after = change(before);
      if (after === before) return;
      if (subject === null || subject !== last) past.value = [...past.peek(), before].slice(-LONGEST);
      last = subject;
      future.value = [];
      plan.value = after;
    },
    undo: step(past, future),
    redo: step(future, past),
  };
}
