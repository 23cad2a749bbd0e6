/** Numbers beside the scene: large, calm, each with its unit and, where the model leaves a range open, its band. */
import { type Band, formatBand, formatNumber, t, unitSymbol } from "../i18n/index.ts";
import type { Figure } from "./figures.ts";

export const Readouts = ({ figures }: { readonly figures: readonly Figure[] }) => (
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
        {note && <dd class="readout-note">{t(note)}</dd>}
      </div>
    ))}
  </dl>
);

export const BandText = ({ band, digits }: { readonly band: Band; readonly digits: number }) => (
  <bdi class="band">{formatBand(band, digits)}</bdi>
);
