/** The persons over the curves of the exercise scene as buttons: pressing one sets its effort, as the lever does. */
import { useEffect, useRef } from "preact/hooks";
import { EFFORTS } from "../../../chain/running-sweep.ts";
import { formatNumber, t } from "../../../i18n/index.ts";
import { numberSetting } from "../../../sim/parameters/parameters.ts";
import { setParameter } from "../../../state/edit.ts";
import type { Context } from "../mode.ts";
import "./effort-figures.css";

const NAME = "metabolicEquivalents";
/** Part of its height that a person takes to either side. */
const WIDE = 0.26;

export function EffortFigures({ context }: { readonly context: Context }) {
  const now = numberSetting(context.session.scene.value.request, NAME);
  return (
    <>
      {EFFORTS.map((effort) => (
        <EffortFigure key={effort} {...{ context, effort, now }} />
      ))}
    </>
  );
}

interface EffortFigureProps {
  readonly context: Context;
  readonly effort: number;
  readonly now: number;
}

function EffortFigure({ context: { session, stage }, effort, now }: EffortFigureProps) {
  const button = useRef<HTMLButtonElement>(null);
  useEffect(
    () =>
      stage.afterFrame(() => {
        const [foot, head] = [stage.toScreen([effort, 0]), stage.toScreen([effort, 1])];
        if (!button.current) return;
        button.current.hidden = !foot || !head;
        if (!foot || !head) return;
        const height = foot[1] - head[1];
        button.current.style.translate = `calc(${foot[0]}px - 50%) calc(${foot[1]}px - 100%)`;
        button.current.style.width = `${2 * WIDE * height}px`;
        button.current.style.height = `${height}px`;
      }),
    [stage, effort],
  );
  return (
    <button
      type="button"
      class="effort-figure"
      ref={button}
      hidden
      aria-pressed={now === effort}
      aria-label={
        effort === 1
          ? t("further.exercise.setRest")
          : t("further.exercise.set", { effort: formatNumber(effort, 0) })
      }
      onClick={() => {
        session.edit(NAME, setParameter(NAME, effort));
        session.settle();
      }}
    />
  );
}
