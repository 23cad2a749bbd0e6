/** The scene as words and tables: the reading, the loss ledger, and where the blood goes. */
import { t } from "../../i18n/index.ts";
import { setView } from "../../state/edit.ts";
import { EnergyTable } from "../../ui/energy-table.tsx";
import { figuresOf } from "../../ui/figures.ts";
import { LedgerTable } from "../../ui/ledger-table.tsx";
import { Panel } from "../../ui/panel.tsx";
import { Readouts } from "../../ui/readout.tsx";
import { SharesTable } from "../../ui/shares-table.tsx";
import { TracesSection } from "../../ui/traces/index.ts";
import type { Context } from "../shared/mode.ts";
import { themeNamed } from "../shared/stage/themes.ts";
import { earlierFigures } from "../shared/words/earlier-figures.ts";
import { sceneReading } from "../shared/words/scene-reading.ts";
import { TestOcclusionPanel } from "./test-occlusion.tsx";
import { Vary } from "./vary.tsx";

export interface NumbersProps {
  readonly context: Context;
  readonly onRead: () => void;
  readonly onClose: () => void;
}

export function Numbers({ context, onRead, onClose }: NumbersProps) {
  const { session, stage } = context;
  const circulation = session.chain.circulations.value[0] ?? null;
  return (
    <Panel title={t("bench.numbers")} onClose={onClose}>
      <div class="phone-only">
        <Readouts figures={figuresOf(circulation)} earlier={earlierFigures(session)} />
      </div>
      <section class="reading">
        <h3>{t("numbers.reading")}</h3>
        {sceneReading(context).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        <div class="actions">
          <button type="button" onClick={onRead}>
            {t("numbers.read")}
          </button>
        </div>
      </section>
      {circulation && (
        <LedgerTable
          rows={circulation.pathway.ledger}
          focus={session.scene.value.view.focus}
          onFocus={(focus) => session.edit("focus", setView({ focus }))}
        />
      )}
      {circulation && <EnergyTable circulation={circulation} />}
      <TestOcclusionPanel context={context} />
      {circulation?.shares && <SharesTable shares={circulation.shares} />}
      {circulation && (
        <TracesSection
          circulation={circulation}
          palette={themeNamed(context.theme.value).colour}
          type={14}
          moment={() => stage.frame()?.time ?? 0}
        />
      )}
      <Vary context={context} />
    </Panel>
  );
}
