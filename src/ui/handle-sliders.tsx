/** The handles of the scene as sliders laid over the canvas: dragged, tapped and stepped, keyed, or typed. */
import { type ReadonlySignal, useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { digitsOfStep, formatQuantity, speakQuantity, t } from "../i18n/index.ts";
import type { Handle } from "../sim/geometry/geometry.ts";
import type { NumberParameter } from "../sim/parameters/parameter.ts";
import { findParameter, settingOf } from "../sim/parameters/parameters.ts";
import { setParameter } from "../state/edit.ts";
import type { Editing } from "./editing.ts";
import { NumberField } from "./number-field.tsx";

/** Where the scene is drawn. */
interface Surface {
  toScreen(point: readonly [number, number]): readonly [number, number] | null;
  afterFrame(listener: () => void): () => void;
  /** Beyond it another pane is seen. */
  divider(): { readonly x: number } | null;
}

export interface HandleSlidersProps {
  readonly editing: Editing;
  readonly handles: ReadonlySignal<readonly Handle[]>;
  readonly surface: Surface;
}

export function HandleSliders({ editing, handles, surface }: HandleSlidersProps) {
  return (
    <div class="handles">
      {handles.value.map((handle) => {
        const parameter = findParameter(handle.edits);
        if (parameter?.kind !== "number") return null;
        return <HandleSlider key={handle.edits} {...{ editing, handle, parameter, surface }} />;
      })}
    </div>
  );
}

interface HandleSliderProps {
  readonly editing: Editing;
  readonly handle: Handle;
  readonly parameter: NumberParameter;
  readonly surface: Surface;
}

/** Steps that a key makes; Home and End go to the ends of the range. */
const STEPS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: 10,
  PageDown: -10,
  Home: Number.NEGATIVE_INFINITY,
  End: Number.POSITIVE_INFINITY,
};

/** CSS px: less than this is a tap, not a drag */
const TAP = 4;

function HandleSlider({ editing, handle, parameter, surface }: HandleSliderProps) {
  const element = useRef<HTMLDivElement>(null);
  const open = useSignal(false);
  const latest = useRef(handle);
  latest.current = handle;
  useEffect(
    () =>
      surface.afterFrame(() => {
        const at = surface.toScreen(latest.current.at);
        if (!element.current) return;
        const seen = at !== null && at[0] <= (surface.divider()?.x ?? Number.POSITIVE_INFINITY);
        element.current.hidden = !seen;
        if (!seen) return;
        element.current.style.translate = `${at[0]}px ${at[1]}px`;
        element.current.dataset.side = sideFor(at[0]);
      }),
    [surface],
  );
  const { name, min, max, step, unit } = parameter;
  const digits = digitsOfStep(step);
  const label = t(`parameter.${name}`);
  const value = Number(settingOf(editing.scene.value.request, parameter));
  const change = (to: number) => editing.edit(name, setParameter(name, Math.min(max, Math.max(min, to))));
  const stepBy = (steps: number) => {
    change(value + steps * step);
    editing.settle();
  };
  const drag = dragging(surface, () => latest.current, {
    from: () => Number(settingOf(editing.scene.peek().request, parameter)),
    to: change,
    end: (moved) => {
      editing.settle();
      if (!moved) open.value = !open.value;
    },
  });
  return (
    <div class="handle" ref={element} hidden>
      <div
        class="handle-grip"
        role="slider"
        tabIndex={0}
        aria-label={label}
        aria-valuemin={min}
        aria-valuemax={max}
        aria-valuenow={value}
        aria-valuetext={speakQuantity(value, unit, digits)}
        onPointerDown={drag}
        onKeyDown={(event) => {
          const steps = STEPS[event.key];
          if (event.key === "Enter") open.value = true;
          if (event.key === "Escape" && open.value) open.value = false;
          else if (steps === undefined) return;
          event.preventDefault();
          if (steps !== undefined) stepBy(steps);
        }}
      />
      <span class="handle-tag" aria-hidden="true" hidden={open.value}>
        {label} <bdi>{formatQuantity(value, unit, digits)}</bdi>
      </span>
      {open.value && (
        <div class="handle-steps">
          <button type="button" aria-label={t("handle.less", { label })} onClick={() => stepBy(-1)}>
            −
          </button>
          <NumberField
            {...{ label, value, min, max, digits, unit }}
            onChange={change}
            onSettle={() => editing.settle()}
          />
          <button type="button" aria-label={t("handle.more", { label })} onClick={() => stepBy(1)}>
            +
          </button>
          <button
            type="button"
            onClick={() => {
              open.value = false;
            }}
          >
            {t("dialog.close")}
          </button>
        </div>
      )}
    </div>
  );
}

/** CSS px that a handle's name may need to either side */
const ROOM = 130;

/** Where the name hangs so that it stays on the screen. */
const sideFor = (x: number): "start" | "middle" | "end" =>
  x < ROOM ? "start" : x > innerWidth - ROOM ? "end" : "middle";

interface Drag {
  readonly from: () => number;
  readonly to: (value: number) => void;
  /** `moved` is false for a tap. */
  readonly end: (moved: boolean) => void;
}

/** Follows the pointer along the handle's own direction, whatever the scale of the picture. */
const dragging = (surface: Surface, handle: () => Handle, drag: Drag) => (down: PointerEvent) => {
  const grip = down.currentTarget;
  if (!(grip instanceof HTMLElement) || down.button !== 0) return;
  const { at, along, perMillimetre } = handle();
  const here = surface.toScreen(at);
  const there = surface.toScreen([at[0] + along[0], at[1] + along[1]]);
  if (!here || !there) return;
  const [dx, dy] = [there[0] - here[0], there[1] - here[1]];
  const start = drag.from();
  let moved = false;
  grip.setPointerCapture(down.pointerId);
  const move = (event: PointerEvent) => {
    const [px, py] = [event.clientX - down.clientX, event.clientY - down.clientY];
    moved ||= Math.hypot(px, py) > TAP;
    if (moved) drag.to(start + ((px * dx + py * dy) / (dx * dx + dy * dy)) * perMillimetre);
  };
  const up = () => {
    grip.removeEventListener("pointermove", move);
    grip.removeEventListener("pointerup", up);
    grip.removeEventListener("pointercancel", up);
    drag.end(moved);
  };
  grip.addEventListener("pointermove", move);
  grip.addEventListener("pointerup", up);
  grip.addEventListener("pointercancel", up);
};
