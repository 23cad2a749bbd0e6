/** The scene as words and tables: the reading, the loss ledger, and where the blood goes. */
import { tabulatedLoss } from "../../chain/tabulated.ts";
import { EnergyTable } from "../../interface/energy-table.tsx";
import { figuresOf } from "../../interface/figures.ts";
import { LedgerTable } from "../../interface/ledger-table.tsx";
import { Panel } from "../../interface/panel.tsx";
import { Readouts } from "../../interface/readout.tsx";
import { SharesTable } from "../../interface/shares-table.tsx";
import { TracesSection } from "../../interface/traces/index.ts";
import { setView } from "../../state/edit.ts";
import { t } from "../../words/index.ts";
import type { Context } from "../setting.ts";
import { sceneReading } from "../shell/scene-reading.ts";
import { themeNamed } from "../shell/stage-loop.ts";
import { TestClosure } from "./test-closure.tsx";
import { Vary } from "./vary.tsx";

export interface NumbersProps {
  readonly context: Context;
  readonly onRead: () => void;
  readonly onClose: () => void;
}

export function Numbers({ context, onRead, onClose }: NumbersProps) {
  const { session, stage } = context;
  const circulation = session.chain.circulations.value[0] ?? null;
  const readings = session.chain.readings.value[0] ?? null;
  return (
    <Panel title={t("bench.numbers")} onClose={onClose}>
      <div class="phone-only">
        <Readouts figures={figuresOf(circulation, readings, tabulatedLoss(circulation))} />
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
      <TestClosure context={context} />
      {readings?.settled && <SharesTable readings={readings} />}
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
