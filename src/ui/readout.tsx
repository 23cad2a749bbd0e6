/** Numbers beside the scene: large, calm, each with its unit and, where the model leaves a range open, its band. */
import { type Band, changeOf, formatBand, formatNumber, t, unitSymbol, writeChange } from "../i18n/index.ts";
import type { Figure } from "./figures.ts";

export interface ReadoutsProps {
  readonly figures: readonly Figure[];
  /** The same before the last change: what it did stands beside each number. */
  readonly earlier?: readonly Figure[] | null;
}

export const Readouts = ({ figures, earlier = null }: ReadoutsProps) => (
  <dl class="readouts">
    {figures.map(({ name, value, unit, digits, band, note }) => (
      <div class="readout" key={name}>
        <dt>{t(`figure.${name}`)}</dt>
        <dd class="readout-first">
          <bdi class="value" data-figure={name} data-value={value ?? ""}>
            {value === null ? t("figure.waiting") : formatNumber(value, digits)}
            <span class="unit">{`\u202f${unitSymbol(unit)}`}</span>
          </bdi>
          {band && <BandText band={band} digits={digits} />}
        </dd>
        <ChangeText
          from={earlier?.find((figure) => figure.name === name)?.value}
          now={value}
          {...{ unit, digits }}
        />
        {note && <dd class="readout-note">{t(note)}</dd>}
      </div>
    ))}
  </dl>
);

export interface ChangeTextProps extends Pick<Figure, "unit" | "digits"> {
  readonly from: number | null | undefined;
  readonly now: number | null;
}

/** Nothing while one of the two is not known. */
export function ChangeText({ from, now, unit, digits }: ChangeTextProps) {
  const change = changeOf(from, now, digits);
  return (
    change && (
      <dd class="readout-change" data-change={change.by}>
        <bdi>{writeChange(change, unit, digits)}</bdi>
      </dd>
    )
  );
}

export const BandText = ({ band, digits }: { readonly band: Band; readonly digits: number }) => (
  <bdi class="band">{formatBand(band, digits)}</bdi>
);
