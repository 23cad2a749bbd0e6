/** What if it were bigger: a parameter run over its range, as a curve; against a second one, as a map. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { createSweep, type RunningSweep, type Sweep } from "../../chain/running-sweep.ts";
import { type Band, digitsOfStep, LOSS_DIGITS, t, unitSymbol } from "../../i18n/index.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { NumberParameter } from "../../sim/parameters/parameter.ts";
import { numberSetting } from "../../sim/parameters/parameters.ts";
import { setParameter } from "../../state/edit.ts";
import { ParameterMap, SweepChart, SweepProgress } from "../../ui/traces/index.ts";
import type { Context } from "../shared/mode.ts";
import { themeNamed } from "../shared/stage/themes.ts";
import { SmallMultiples } from "./small-multiples.tsx";
import { nearestIndex, numberParameters, planVary } from "./vary-plan.ts";

const FIGURES = [
  {
    name: "pressureDrop",
    unit: "mmHg",
    digits: LOSS_DIGITS.pressureDrop,
    read: ({ pathway }: Circulation) => pathway.pressureDrop,
  },
  {
    name: "powerLoss",
    unit: "mW",
    digits: LOSS_DIGITS.powerLoss,
    read: ({ pathway }: Circulation) => pathway.powerLoss,
  },
  {
    name: "pathwayPressure",
    unit: "mmHg",
    digits: 1,
    read: ({ pressures }: Circulation) => pressures.pathway,
  },
  {
    name: "arterialSaturation",
    unit: "%",
    digits: 0,
    read: ({ saturations }: Circulation) => saturations.arterial,
  },
  { name: "output", unit: "L/min", digits: 2, read: ({ flows }: Circulation) => flows.systemic },
] as const;

interface Shown {
  readonly across: NumberParameter;
  readonly down: NumberParameter | null;
  readonly running: RunningSweep;
}

const named = ({ name }: { readonly name: string }) => t(`parameter.${name}`);

export function Vary({ context }: { readonly context: Context }) {
  const { chain } = context.session;
  const { request } = chain.scene.value;
  const parameters = numberParameters(request.stage);
  const across = useSignal("");
  const down = useSignal("");
  const figure = useSignal<string>(FIGURES[0].name);
  const shown = useSignal<Shown | null>(null);
  useEffect(() => () => shown.peek()?.running.cancel(), [shown]);
  const find = (name: string) => parameters.find((each) => each.name === name) ?? null;

  const compute = () => {
    const over = find(across.value) ?? parameters[0];
    if (!over) return;
    const against = down.value === over.name ? null : find(down.value);
    shown.peek()?.running.cancel();
    const pool = chain.pool();
    const running = createSweep(planVary(chain.scene.peek().request, over, against), pool.answer, {
      lanes: pool.size,
      onEnd: pool.release,
    });
    shown.value = { across: over, down: against, running };
  };
  const picker = (
    label: string,
    value: string,
    choices: readonly { readonly value: string; readonly words: string }[],
    onChoose: (value: string) => void,
  ) => (
    <label class="vary-choice">
      <span>{label}</span>
      <select value={value} onChange={(event) => onChoose(event.currentTarget.value)}>
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.words}
          </option>
        ))}
      </select>
    </label>
  );
  const choices = parameters.map((each) => ({ value: each.name, words: named(each) }));
  const figures = FIGURES.map(({ name }) => ({ value: name, words: t(`figure.${name}`) }));

  return (
    <details class="vary">
      <summary>{t("traces.vary")}</summary>
      {picker(t("traces.vary.across"), across.value || (parameters[0]?.name ?? ""), choices, (value) => {
        across.value = value;
      })}
      {picker(
        t("traces.vary.down"),
        down.value,
        [{ value: "", words: t("traces.vary.nothing") }, ...choices],
        (value) => {
          down.value = value;
        },
      )}
      {picker(t("traces.vary.figure"), figure.value, figures, (value) => {
        figure.value = value;
      })}
      <div class="actions">
        <button type="button" onClick={compute}>
          {t("traces.vary.compute")}
        </button>
      </div>
      {shown.value && <Result shown={shown.value} figure={figure.value} context={context} />}
    </details>
  );
}

function Result({
  shown,
  figure,
  context,
}: {
  readonly shown: Shown;
  readonly figure: string;
  readonly context: Context;
}) {
  const { across, down, running } = shown;
  const { session } = context;
  const sweep = running.sweep.value;
  const { name, unit, digits, read } = present(FIGURES.find((each) => each.name === figure));
  const title = `${t(`figure.${name}`)}, ${unitSymbol(unit)}`;
  const [request] = entryAt(sweep.curves, 0).points.map((point) => point.request);
  const here = numberSetting(session.chain.scene.value.request, across.name);
  if (!down)
    return (
      <>
        <SweepChart
          sweep={sweep}
          title={title}
          unit={unit}
          foot={`${named(across)}, ${unitSymbol(across.unit)}`}
          read={read}
          nameOf={() => t(`stage.${present(request).stage}`)}
          mark={here}
          palette={themeNamed(context.theme.value).colour}
          type={14}
          height={200}
        />
        <SmallMultiples
          curve={entryAt(sweep.curves, 0)}
          parameter={across}
          here={here}
          figure={(of) => ({ value: read(of), band: bandOf(name, of) })}
          {...{ unit, digits }}
          onChoose={(value) => {
            session.edit(across.name, setParameter(across.name, value));
            session.settle();
          }}
        />
        <SweepProgress running={running} />
      </>
    );
  const side = (parameter: NumberParameter, values: readonly number[]) => ({
    name: named(parameter),
    unit: parameter.unit,
    digits: digitsOfStep(parameter.step),
    values,
  });
  const downs = downValues(sweep, down.name);
  const acrosses = entryAt(sweep.curves, 0).points.map(({ at }) => at);
  return (
    <>
      <ParameterMap
        title={title}
        across={side(across, acrosses)}
        down={side(down, downs)}
        cells={sweep.curves.map(({ points }) =>
          points.map(({ circulation }) => (circulation ? read(circulation) : null)),
        )}
        digits={digits}
        map="pressure"
        here={{
          across: nearestIndex(acrosses, here),
          down: nearestIndex(downs, numberSetting(session.chain.scene.value.request, down.name)),
        }}
        type={13}
      />
      <SweepProgress running={running} />
    </>
  );
}

/** Drop and loss of the pathway have a band. */
const bandOf = (name: string, { pathway: { band } }: Circulation): Band | undefined =>
  name === "pressureDrop" || name === "powerLoss" ? band?.[name] : undefined;

const downValues = (sweep: Sweep, name: string): readonly number[] =>
  sweep.curves.map(({ points }) => entryAt(points, 0).request.set[name] as number);
