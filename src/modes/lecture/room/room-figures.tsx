/** Two numbers for the back row; of several states one for each, in the order in which the scene shows them. */
import { formatNumber, t, unitSymbol } from "../../../i18n/index.ts";
import type { SceneName } from "../../../state/scene-state.ts";
import { BandText, ChangeText } from "../../../ui/readout.tsx";
import type { LargeFigure } from "../../shared/lesson/figures-that-matter.ts";

/** Their pictures are of one state: the others are curves. */
const WITH_CURVES: readonly SceneName[] = ["growth", "exercise"];

export interface RoomFiguresProps {
  readonly scene: SceneName;
  readonly figures: readonly LargeFigure[];
  /** The same before the last change. */
  readonly earlier: readonly LargeFigure[] | null;
}

export const RoomFigures = ({ scene, figures, earlier }: RoomFiguresProps) => (
  <dl class="readouts">
    {figures.map(({ name, values, bands, unit, digits, note }) => {
      const label = t(`figure.${name}`);
      const order = WITH_CURVES.includes(scene) ? "figure.byCurve" : "figure.sideBySide";
      const was = earlier?.find((figure) => figure.name === name)?.values;
      return (
        <div class="readout" key={name}>
          <dt>{values.length > 1 ? t(order, { name: label }) : label}</dt>
          <dd class="readout-first">
            {values.map((value, pane) => (
              <span class="figure" key={pane}>
                <bdi class="value" data-figure={name} data-value={value ?? ""}>
                  {value === null ? t("figure.waiting") : formatNumber(value, digits)}
                  {pane === values.length - 1 && <span class="unit">{`\u202f${unitSymbol(unit)}`}</span>}
                </bdi>
                {bands[pane] && <BandText band={bands[pane]} digits={digits} />}
              </span>
            ))}
          </dd>
          {values.map((now, pane) => (
            <ChangeText key={pane} from={was?.[pane]} {...{ now, unit, digits }} />
          ))}
          {note && <dd class="readout-note">{t(note)}</dd>}
        </div>
      );
    })}
  </dl>
);
