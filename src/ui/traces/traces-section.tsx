/** The circulation's curves behind a disclosure; the charting library is fetched when it is first opened. */
import { useState } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Palette } from "../../scenes/theme/colour.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { TRACE_KINDS } from "./series.ts";
import { LoopChart, TraceChart } from "./traces.tsx";

export interface TracesSectionProps {
  readonly circulation: Circulation;
  readonly palette: Palette;
  /** CSS px of the smallest words: 24 in a lecture or kiosk */
  readonly type: number;
  /** s of the picture's running clock; the markers follow its phase */
  readonly moment?: () => number;
}

export function TracesSection({ circulation, palette, type, moment }: TracesSectionProps) {
  const [open, setOpen] = useState(false);
  const drawn = { circulation, palette, type, height: Math.round(type * 13) };
  return (
    <details class="traces" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{t("traces.section")}</summary>
      {open && (
        <div class="traces-charts">
          {TRACE_KINDS.map((kind) => (
            <TraceChart key={kind} kind={kind} {...drawn} {...(moment ? { moment } : {})} />
          ))}
          <LoopChart {...drawn} />
        </div>
      )}
    </details>
  );
}
