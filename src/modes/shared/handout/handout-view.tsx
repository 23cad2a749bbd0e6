/** The page for families made from the present scene: its picture with a caption, its numbers, what was set. */

import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { digitsOfStep, formatQuantity, speakPlainly, t } from "../../../i18n/index.ts";
import { settingOf } from "../../../sim/parameters/parameters.ts";
import type { CirculationRequest } from "../../../sim/parameters/request.ts";
import { figuresOf } from "../../../ui/figures.ts";
import { bodyName } from "../../../ui/parameter-form.tsx";
import { firstParameters } from "../../../ui/parameter-groups.ts";
import { ruleName } from "../../../ui/rule-name.ts";
import { Handout, settingInWords } from "../../../ui/take-away/handout.tsx";
import type { Context } from "../mode.ts";
import { sceneReading } from "../words/scene-reading.ts";
import "./handout.css";

/** px: sharp at 170 mm on paper, where `floor` is about 8 points */
const PICTURE = { width: 1700, height: 560, floor: 27 } as const;

interface HandoutViewProps {
  readonly context: Context;
  /** A data address to show at once, where there is no time to draw one for paper. */
  readonly picture?: string;
  /** Called once, when the picture stands or cannot be drawn. @param title of the page */
  readonly onReady?: (title: string) => void;
  readonly onClose: () => void;
}

export function HandoutView({ context, picture, onReady, onClose }: HandoutViewProps) {
  const { session, stage } = context;
  const { request } = session.scene.value;
  const image = useSignal(picture ?? "");
  const title = t("handout.title", { stage: t(`stage.${request.stage}`) });
  // A family takes it home.
  useEffect(speakPlainly, []);
  useEffect(() => {
    if (picture !== undefined) return;
    const ready = () => requestAnimationFrame(() => onReady?.(title));
    stage.snapshot(PICTURE.width, PICTURE.height, { theme: "paper", floor: PICTURE.floor }).then(
      (canvas) => {
        image.value = canvas.toDataURL("image/png");
        if (!onReady) return;
        const drawn = new Image();
        drawn.src = image.value;
        drawn.decode().then(ready, ready);
      },
      // Where nothing can be drawn the caption stands for the picture.
      ready,
    );
  }, []);
  const caption = sceneReading(context, { still: true }).join(" ");
  const figures = figuresOf(session.chain.circulations.value[0] ?? null).flatMap(
    ({ name, value, unit, digits, band }) =>
      value === null ? [] : [[t(`figure.${name}`), formatQuantity(value, unit, digits, band)] as const],
  );
  return (
    <Handout title={title} onClose={onClose}>
      <figure>
        {image.value && <img src={image} alt={caption} />}
        <figcaption>{caption}</figcaption>
      </figure>
      <div class="sheet-columns">
        <Rows title={t("handout.numbers")} rows={figures} />
        <Rows title={t("handout.settings")} rows={settingsOf(request)} />
      </div>
    </Handout>
  );
}

type Row = readonly [name: string, value: string];

const settingsOf = (request: CirculationRequest): readonly Row[] => [
  [t("control.case"), t(`case.${bodyName(request.body)}`)],
  [t("control.age"), formatQuantity(request.body.ageYears, "years")],
  [t("control.volumeRule"), ruleName(request.stage, request.volumeRule)],
  ...firstParameters(request.stage).map((parameter): Row => {
    const [unit, digits] =
      parameter.kind === "number" ? [parameter.unit, digitsOfStep(parameter.step)] : ["", 0];
    return [
      t(`parameter.${parameter.name}`),
      settingInWords(parameter.name, settingOf(request, parameter), unit, digits),
    ];
  }),
];

const Rows = ({ title, rows }: { readonly title: string; readonly rows: readonly Row[] }) => (
  <table>
    <caption>{title}</caption>
    <tbody>
      {rows.map(([name, value]) => (
        <tr key={name}>
          <th scope="row">{name}</th>
          <td>
            <bdi>{value}</bdi>
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);
