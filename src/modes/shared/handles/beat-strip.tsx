/** One cycle of beat and breath as a strip: where it is now, any moment of it to hold, and slow motion. */
import { useEffect, useRef } from "preact/hooks";
import { formatNumber, formatQuantity, speakQuantity, t } from "../../../i18n/index.ts";
import { ecgOver } from "../../../scenes/drawing/ecg.ts";
import type { Circulation } from "../../../sim/circulation/answer/answer.ts";
import { setView } from "../../../state/edit.ts";
import { Choice } from "../../../ui/choice.tsx";
import type { Context } from "../mode.ts";

const SPEEDS = ["1", "0.5", "0.2", "0.1"] as const;
type Speed = (typeof SPEEDS)[number];
/** Units of the drawing: its width, and the height of each of its two curves with the air between. */
const WIDTH = 1000;
const ROW = 40;
const AIR = 10;
/** Points of each curve: enough for the narrowest wave. */
const POINTS = 1200;
/** s between two positions of the scrubber */
const STEP = 0.01;

export function BeatStrip({ context }: { readonly context: Context }) {
  const { session } = context;
  const circulation = session.chain.circulations.value[0] ?? null;
  const { playSpeed } = session.scene.value.view;
  return (
    <section class="beat-strip" aria-label={t("beat.title")}>
      {circulation && <Strip context={context} circulation={circulation} />}
      <Choice<Speed | "">
        label={t("control.playSpeed")}
        quietLabel
        value={SPEEDS.find((each) => Number(each) === playSpeed) ?? ""}
        words={SPEEDS}
        nameOf={(speed) => t("beat.speed", { speed: formatNumber(Number(speed), speed === "1" ? 0 : 1) })}
        onChoose={(speed) => {
          session.edit("playSpeed", setView({ playSpeed: Number(speed) }));
          session.settle();
        }}
      />
    </section>
  );
}

interface StripProps {
  readonly context: Context;
  readonly circulation: Circulation;
}

function Strip({ context: { session, stage }, circulation }: StripProps) {
  const scrubber = useRef<HTMLInputElement>(null);
  const cursor = useRef<SVGPathElement>(null);
  const { period } = circulation.traces;
  useEffect(
    () =>
      stage.afterFrame(() => {
        const time = (stage.frame()?.time ?? 0) % period;
        cursor.current?.setAttribute("transform", `translate(${(WIDTH * time) / period} 0)`);
        const { current } = scrubber;
        if (!current) return;
        current.value = String(time);
        current.setAttribute("aria-valuetext", sayMoment(circulation, time));
      }),
    [stage, circulation, period],
  );
  return (
    <div class="beat-curves">
      <svg viewBox={`0 0 ${WIDTH} ${2 * ROW + AIR}`} preserveAspectRatio="none" aria-hidden="true">
        <path d={line(ecgOver(circulation, POINTS), 0)} />
        <path class="beat-breath" d={line(breathOf(circulation), ROW + AIR)} />
        <path class="beat-now" ref={cursor} d={`M0 0V${2 * ROW + AIR}`} />
      </svg>
      <span class="beat-name">{t("beat.ecg")}</span>
      <span class="beat-name beat-name-breath">{t("beat.breath")}</span>
      <input
        ref={scrubber}
        type="range"
        min={0}
        max={period}
        step={STEP}
        aria-label={t("beat.scrub")}
        onInput={({ currentTarget }) =>
          session.edit("moment", setView({ moment: currentTarget.valueAsNumber }))
        }
      />
    </div>
  );
}

/** Pressure around the lungs: it falls as they are filled. */
const breathOf = ({ traces }: Circulation): readonly number[] => [...(traces.pressures.pleural ?? [])];

/** An SVG path through evenly spaced values, the greatest at the top of its row. */
function line(values: readonly number[], top: number): string {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const span = most - least || 1;
  return values
    .map((value, i) => {
      const x = (WIDTH * i) / (values.length - 1);
      const y = top + ROW * (1 - (value - least) / span);
      return `${i === 0 ? "M" : "L"}${x.toFixed(1)} ${y.toFixed(1)}`;
    })
    .join("");
}

function sayMoment({ traces: { period, heartPeriod } }: Circulation, time: number): string {
  return t("beat.moment", {
    time: speakQuantity(time, "s", 1),
    period: formatQuantity(period, "s", 1),
    beat: Math.min(Math.round(period / heartPeriod), Math.floor(time / heartPeriod) + 1),
    beats: Math.round(period / heartPeriod),
  });
}
