/** Panes beside the first: other pathways, or the same with its fenestration open or closed; differences in words. */

import { t } from "../../i18n/index.ts";
import { namesIn } from "../../scenes/drawing/apart.ts";
import { PATHWAY_STAGES } from "../../sim/parameters/request.ts";
import { setBeside, setView } from "../../state/edit.ts";
import { type Beside, canSwipe, paneRequests, type SceneState, swipeOf } from "../../state/scene-state.ts";
import { Switch } from "../../ui/choice.tsx";
import { differences } from "../../ui/difference.ts";
import { Panel } from "../../ui/panel.tsx";
import type { Session } from "../shared/session.ts";

interface Option {
  readonly name: string;
  readonly pane: Beside;
}

/** mm: the usual size of the hole (common practice, no source) */
const USUAL_FENESTRATION = 4;

/** %: where the divider stands at first */
const HALF = 50;

function optionsFor({ request }: SceneState): readonly Option[] {
  const open = Number(request.set.fenestrationDiameter ?? 0) > 0;
  return [
    ...PATHWAY_STAGES.filter((stage) => stage !== request.stage).map((stage) => ({
      name: t(`stage.${stage}`),
      pane: { stage },
    })),
    {
      name: t(open ? "compare.closed" : "compare.open"),
      pane: { set: { fenestrationDiameter: open ? 0 : USUAL_FENESTRATION } },
    },
  ];
}

const same = (a: Beside, b: Beside): boolean => JSON.stringify(a) === JSON.stringify(b);

export const Compare = ({
  session,
  onClose,
}: {
  readonly session: Session;
  readonly onClose: () => void;
}) => (
  <Panel title={t("bench.compare")} onClose={onClose}>
    <CompareControls session={session} />
  </Panel>
);

export function CompareControls({ session }: { readonly session: Session }) {
  const state = session.scene.value;
  const options = optionsFor(state);
  const names = namesIn(paneRequests(state), t);
  const toggle = (pane: Beside, on: boolean) => {
    const rest = state.beside.filter((each) => !same(each, pane));
    session.edit("beside", setBeside(on ? [...rest, pane].slice(-2) : rest));
    session.settle();
  };
  const swipe = (on: boolean) => {
    session.edit("swipe", setView({ swipe: on ? HALF : null }));
    session.settle();
  };
  return (
    <>
      <p>{t("compare.title")}</p>
      <fieldset class="choice">
        <legend>{t("compare.with")}</legend>
        {options.map(({ name, pane }) => (
          <Switch
            key={name}
            label={name}
            on={state.beside.some((each) => same(each, pane))}
            onChange={(on) => toggle(pane, on)}
          />
        ))}
      </fieldset>
      <p class="quiet-text">{t("compare.limit")}</p>
      {canSwipe(state) && <Switch label={t("compare.swipe")} on={swipeOf(state) !== null} onChange={swipe} />}
      <div class="reading" data-differences>
        {differences(session.chain.circulations.value, names).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </>
  );
}
