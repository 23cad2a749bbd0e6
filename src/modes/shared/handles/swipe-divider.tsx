/** The divider between two pathways that lie one over the other: dragged, or moved by keys; the scene draws its line. */
import { useEffect, useRef } from "preact/hooks";
import { formatQuantity, speakQuantity, t } from "../../../i18n/index.ts";
import { namesIn } from "../../../scenes/drawing/apart.ts";
import { setView } from "../../../state/edit.ts";
import { paneRequests, SWIPES, swipeOf } from "../../../state/scene-state.ts";
import { differences } from "../../../ui/difference.ts";
import type { Context } from "../mode.ts";
import "./swipe-divider.css";

/** % that a key moves it */
const STEPS: Readonly<Record<string, number>> = {
  ArrowRight: 2,
  ArrowUp: 2,
  ArrowLeft: -2,
  ArrowDown: -2,
  PageUp: 10,
  PageDown: -10,
  Home: Number.NEGATIVE_INFINITY,
  End: Number.POSITIVE_INFINITY,
};

export function SwipeDivider({ context: { session, stage } }: { readonly context: Context }) {
  const grip = useRef<HTMLDivElement>(null);
  useEffect(
    () =>
      stage.afterFrame(() => {
        const divider = stage.divider();
        if (!grip.current) return;
        grip.current.hidden = divider === null;
        if (!divider) return;
        const { x, top, bottom } = divider;
        grip.current.style.translate = `${x}px ${top}px`;
        grip.current.style.height = `${bottom - top}px`;
      }),
    [stage],
  );
  const state = session.scene.value;
  const value = swipeOf(state) ?? 0;
  const [first, second] = namesIn(paneRequests(state), t);
  const names = { first: first ?? "", second: second ?? "" };
  const set = (to: number) => {
    const swipe = Math.round(Math.min(SWIPES.max, Math.max(SWIPES.min, to)));
    session.edit("divider", setView({ swipe }));
  };
  const drag = (event: PointerEvent) => {
    const divider = stage.divider();
    if (!divider || event.buttons === 0) return;
    grip.current?.setPointerCapture(event.pointerId);
    const { from, to } = divider;
    set((100 * (event.clientX - from)) / (to - from));
  };
  return (
    <>
      <div
        class="swipe-divider"
        role="slider"
        tabIndex={0}
        ref={grip}
        hidden
        aria-label={t("swipe.divider")}
        aria-describedby="swipe-difference"
        aria-orientation="horizontal"
        aria-valuemin={SWIPES.min}
        aria-valuemax={SWIPES.max}
        aria-valuenow={value}
        aria-valuetext={t("swipe.value", {
          ...names,
          left: speakQuantity(value, "%", 0),
          right: speakQuantity(100 - value, "%", 0),
        })}
        onPointerDown={drag}
        onPointerMove={drag}
        onKeyDown={(event) => {
          const step = STEPS[event.key];
          if (step === undefined) return;
          event.preventDefault();
          set(value + step);
        }}
      >
        <span class="swipe-grip" aria-hidden="true" title={formatQuantity(value, "%", 0)} />
      </div>
      <p class="unseen" id="swipe-difference">
        {differences(session.chain.circulations.value, [names.first, names.second]).join(" ")}
      </p>
    </>
  );
}
