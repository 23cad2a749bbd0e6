/** A what-if value: a native range that announces its value and unit, with the exact number next to it. */
import { useId } from "preact/hooks";
import { digitsOfStep, formatQuantity, speakQuantity, t } from "../i18n/index.ts";
import { NumberField } from "./number-field.tsx";

export interface SliderProps {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly unit: string;
  /** The default, marked on the track. */
  readonly usual?: number;
  /** True while the value is not the default: offers the way back. */
  readonly changed: boolean;
  readonly onChange: (value: number) => void;
  readonly onSettle: () => void;
  readonly onReset: () => void;
}

export function Slider(props: SliderProps) {
  const { label, value, min, max, step, unit, usual, changed, onChange, onSettle, onReset } = props;
  const id = useId();
  const digits = digitsOfStep(step);
  const part = (of: number) => (of - min) / (max - min);
  const page = (event: KeyboardEvent) => {
    if (event.key !== "PageUp" && event.key !== "PageDown") return;
    event.preventDefault();
    const change = 10 * step * (event.key === "PageUp" ? 1 : -1);
    onChange(Math.min(max, Math.max(min, value + change)));
  };
  return (
    <div class={changed ? "slider changed" : "slider"}>
      <label for={id}>{label}</label>
      <NumberField {...{ label, value, min, max, digits, unit, onChange, onSettle }} />
      <span class="slider-track">
        <input
          id={id}
          type="range"
          {...{ min, max, step, value }}
          style={{ "--at": `calc(0.625rem + (100% - 1.25rem) * ${part(value)})` }}
          aria-valuetext={speakQuantity(value, unit, digits)}
          onInput={(event) => onChange(event.currentTarget.valueAsNumber)}
          onChange={onSettle}
          onKeyDown={page}
        />
        {usual !== undefined && (
          <span class="slider-usual" aria-hidden="true" style={{ "--usual": part(usual) }} />
        )}
      </span>
      <span class="slider-range" aria-hidden="true">
        <span>{formatQuantity(min, unit, digits)}</span>
        <span>{formatQuantity(max, unit, digits)}</span>
      </span>
      {changed && (
        <button type="button" class="quiet" onClick={onReset} aria-label={t("slider.reset.of", { label })}>
          {t("slider.reset")}
        </button>
      )}
    </div>
  );
}
