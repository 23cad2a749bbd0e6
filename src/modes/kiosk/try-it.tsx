/** A few things to change by single taps, and what the model answers. */

import { digitsOfStep, formatQuantity, t } from "../../i18n/index.ts";
import type { NumberParameter } from "../../sim/parameters/parameter.ts";
import { settingOf } from "../../sim/parameters/parameters.ts";
import { setParameter } from "../../state/edit.ts";
import type { Editing } from "../../ui/editing.ts";
import { figuresOf } from "../../ui/figures.ts";
import { firstParameters } from "../../ui/parameter-groups.ts";
import { Readouts } from "../../ui/readout.tsx";
import type { Session } from "../shared/session.ts";
import { earlierFigures } from "../shared/words/earlier-figures.ts";

/** Taps from one end of a range to the other, at most. */
const TAPS = 12;
/** For students. */
const LEFT_OUT = ["pressureDrop", "powerLoss"];

export function TryIt({ editing, session }: { readonly editing: Editing; readonly session: Session }) {
  const { request } = editing.scene.value;
  const numbers = firstParameters(request.stage).filter(
    (parameter): parameter is NumberParameter => parameter.kind === "number",
  );
  const figures = figuresOf(session.chain.circulations.value[0] ?? null);
  return (
    <div class="kiosk-try">
      {numbers.map((parameter) => (
        <Stepper key={parameter.name} parameter={parameter} editing={editing} />
      ))}
      <Readouts
        figures={figures.filter(({ name }) => !LEFT_OUT.includes(name))}
        earlier={earlierFigures(session)}
      />
    </div>
  );
}

function Stepper({ parameter, editing }: { readonly parameter: NumberParameter; readonly editing: Editing }) {
  const { name, min, max, step, unit } = parameter;
  const value = Number(settingOf(editing.scene.value.request, parameter));
  const stride = Math.max(step, Math.round((max - min) / TAPS / step) * step);
  const label = t(`parameter.${name}`);
  const by = (change: number) => {
    editing.edit(name, setParameter(name, Math.min(max, Math.max(min, value + change))));
    editing.settle();
  };
  return (
    <div class="stepper">
      <span>{label}</span>
      <button type="button" aria-label={t("handle.less", { label })} onClick={() => by(-stride)}>
        −
      </button>
      <output>
        <bdi>{formatQuantity(value, unit, digitsOfStep(step))}</bdi>
      </output>
      <button type="button" aria-label={t("handle.more", { label })} onClick={() => by(stride)}>
        +
      </button>
    </div>
  );
}
