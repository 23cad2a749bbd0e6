/** A cross to be moved through the blood by pointer, finger or arrows, and what is found where it stands. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { formatQuantity, speakQuantity, t } from "../../../i18n/index.ts";
import {
  type OriginShare,
  originShares,
  type ProbeReading,
  probeAt,
} from "../../../scenes/pathway/probe-reading.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { announce } from "../../../ui/announce.tsx";
import type { Context } from "../mode.ts";
import type { StageLoop } from "../stage/stage-loop.ts";

/** Where the cross stands: mm in a pane's plane, so that it stays with its place. */
interface Spot {
  readonly pane: number;
  readonly at: Point;
}

interface Found extends ProbeReading {
  readonly shares: readonly OriginShare[] | null;
}

/** ms between two looks */
const LOOK = 250;
/** mm that an arrow moves the cross; with Shift */
const STEP = 1;
const STRIDE = 5;

const MOVES: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

export function Probe({ stage }: Pick<Context, "stage">) {
  const cross = useRef<HTMLDivElement>(null);
  const spot = useSignal<Spot | null>(null);
  const found = useSignal<Found | null>(null);
  const meter = useRef(originShares());
  /** Until it has been: what is hidden, before there is a flow, cannot be focused. */
  const toFocus = useRef(true);
  const look = (): void => {
    const { pane, at } = spot.peek() ?? {};
    const here = pane === undefined ? undefined : stage.frame()?.panes[pane];
    const reading = here && at ? probeAt(here, at) : null;
    found.value = reading && { ...reading, shares: meter.current.add(reading.counts) };
  };
  const put = (next: Spot | null): void => {
    spot.value = next;
    meter.current.forget();
    look();
  };
  useEffect(() => {
    put(firstSpot(stage));
    const timer = setInterval(() => {
      if (!spot.peek()) put(firstSpot(stage));
      look();
    }, LOOK);
    return () => clearInterval(timer);
  }, [stage]);
  useEffect(
    () =>
      stage.afterFrame(() => {
        const here = spot.peek();
        const to = here && stage.toScreen(here.at, here.pane);
        if (!cross.current) return;
        cross.current.style.visibility = to ? "visible" : "hidden";
        if (to) cross.current.style.translate = `${to[0]}px ${to[1]}px`;
        if (to && toFocus.current) {
          toFocus.current = false;
          cross.current.focus();
        }
        cross.current.dataset.side = to && to[0] > innerWidth / 2 ? "end" : "start";
      }),
    [stage, spot],
  );
  const point = ({ clientX, clientY, buttons, pointerType }: PointerEvent) => {
    if (pointerType !== "mouse" && buttons === 0) return;
    const next = spotUnder(stage, clientX, clientY);
    if (next) put(next);
  };
  const move = (event: KeyboardEvent) => {
    const way = MOVES[event.key];
    const from = spot.peek();
    if (!way || !from) return;
    event.preventDefault();
    const reach = event.shiftKey ? STRIDE : STEP;
    const at: Point = [from.at[0] + reach * way[0], from.at[1] + reach * way[1]];
    const pane = stage.frame()?.panes[from.pane];
    if (!pane || !probeAt(pane, at)) return;
    put({ ...from, at });
    if (found.value) announce(sentences(found.value, speakQuantity).join(" "));
  };
  return (
    <>
      <div class="probe-surface" aria-hidden="true" onPointerMove={point} onPointerDown={point} />
      <div
        class="probe-cross"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: arrows move it
        tabIndex={0}
        ref={cross}
        aria-label={t("probe.name")}
        onKeyDown={move}
      >
        <svg viewBox="-12 -12 24 24" aria-hidden="true">
          <path d="M-11 0H-3M3 0H11M0-11V-3M0 3V11" />
        </svg>
        <div class="probe-tag" data-probe={found.value?.element ?? ""}>
          {found.value ? (
            sentences(found.value, formatQuantity).map((each) => <p key={each}>{each}</p>)
          ) : (
            <p>{t("probe.hint")}</p>
          )}
        </div>
      </div>
    </>
  );
}

/** In the blood of the first pane that has a flow. */
function firstSpot(stage: StageLoop): Spot | null {
  const panes = stage.frame()?.panes ?? [];
  for (const [pane, each] of panes.entries())
    for (const { area } of each.geometry?.path ?? [])
      if (area && probeAt(each, area.centre)) return { pane, at: area.centre };
  return null;
}

/** Null where the pointer is not in blood. */
function spotUnder(stage: StageLoop, x: number, y: number): Spot | null {
  const divider = stage.divider();
  for (const [pane, each] of (stage.frame()?.panes ?? []).entries()) {
    if (divider && x > divider.x !== pane > 0) continue;
    const [origin, unit] = [stage.toScreen([0, 0], pane), stage.toScreen([1, 1], pane)];
    if (!origin || !unit) continue;
    const scale = unit[0] - origin[0];
    const at: Point = [(x - origin[0]) / scale, (origin[1] - y) / scale];
    if (probeAt(each, at)) return { pane, at };
  }
  return null;
}

function sentences(
  { speed, shares, element, pressure }: Found,
  write: typeof formatQuantity,
): readonly string[] {
  const list = shares
    ?.map(({ origin, share }) =>
      t("probe.share", { share: write(share, "%", 0), origin: t(`scene.origin.${origin}`) }),
    )
    .join(t("probe.between"));
  return [
    t("probe.speed", { speed: write(speed, "m/s", 2) }),
    list === undefined ? t("probe.few") : t("probe.from", { list }),
    ...(element && pressure !== null
      ? [t("probe.pressure", { part: t(`element.${element}`), pressure: write(pressure, "mmHg", 1) })]
      : []),
  ];
}
