/** The page for families made from the present scene. */
import { figuresOf } from "../../interface/figures.ts";
import { caseOf } from "../../interface/parameter-form.tsx";
import { firstParameters } from "../../interface/parameter-groups.ts";
import { Handout, settingInWords } from "../../interface/take-away/handout.tsx";
import { settingOf } from "../../state/edit.ts";
import { digitsOfStep, t } from "../../words/index.ts";
import type { Context } from "../setting.ts";
import { sceneReading } from "./scene-reading.ts";

/** px: sharp at 180 mm on paper, where `floor` is about 10 points */
const PICTURE = { width: 1600, height: 860, floor: 32 } as const;

export function HandoutView({
  context,
  onClose,
}: {
  readonly context: Context;
  readonly onClose: () => void;
}) {
  const { session, stage } = context;
  const { request } = session.scene.value;
  const settings = [
    [t("control.case"), t(`case.${caseOf(request.body.bsa)}`)],
    [t("control.volumeRule"), t(`volumeRule.${request.volumeRule}`)],
    ...firstParameters(request.stage).map((parameter) => [
      t(`parameter.${parameter.name}`),
      settingInWords(
        parameter.name,
        settingOf(request, parameter),
        parameter.kind === "number" ? parameter.unit : "",
        parameter.kind === "number" ? digitsOfStep(parameter.step) : 0,
      ),
    ]),
  ] as [string, string][];
  return (
    <Handout
      title={t("handout.title", { stage: t(`stage.${request.stage}`) })}
      caption={sceneReading(context)}
      picture={async () => {
        const canvas = await stage.snapshot(PICTURE.width, PICTURE.height, {
          theme: "light",
          floor: PICTURE.floor,
        });
        return canvas.toDataURL("image/png");
      }}
      figures={figuresOf(session.chain.circulations.value[0] ?? null, null)}
      settings={settings}
      onClose={onClose}
    />
  );
}
