/** Numbers next to the scene: large, steady, each with its unit and origin. */
import { formatNumber, t, unitSymbol } from "../i18n/index.ts";
import type { Figure } from "./figures.ts";

/** Figures of one name are shown together: the handbook's value large, the field's estimate small below it. */
export function Readouts({ figures }: { readonly figures: readonly Figure[] }) {
  const names = [...new Set(figures.map(({ name }) => name))];
  return (
    <dl class="readouts">
      {names.map((name) => {
        const [first, ...further] = figures.filter((figure) => figure.name === name);
        return (
          <div class="readout" key={name}>
            <dt>{t(`figure.${name}`)}</dt>
            <dd class="readout-first">
              <Value figure={first!} />
              {further.length > 0 && <Source figure={first!} />}
            </dd>
            {first!.note && <dd class="readout-note">{t(first!.note)}</dd>}
            {further.map((figure) => (
              <dd class="readout-further" key={figure.source}>
                <Value figure={figure} />
                <Source figure={figure} />
                {figure.note && <p class="readout-note">{t(figure.note)}</p>}
              </dd>
            ))}
          </div>
        );
      })}
    </dl>
  );
}

function Value({ figure }: { readonly figure: Figure }) {
  const { name, source, value, digits, unit } = figure;
  return (
    <bdi class="value" data-figure={`${name}.${source}`} data-value={value ?? ""}>
      {value === null ? t("figure.waiting") : formatNumber(value, digits)}
      <span class="unit">{`\u202f${unitSymbol(unit)}`}</span>
    </bdi>
  );
}

const Source = ({ figure }: { readonly figure: Figure }) => (
  <span class="source">{t(`figure.source.${figure.source}`)}</span>
);
