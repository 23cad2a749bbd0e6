/** Progress of a sweep, and a button that ends it; nothing once it is complete. */
import type { RunningSweep } from "../../chain/running-sweep.ts";
import { formatQuantity, t } from "../../i18n/index.ts";

export function SweepProgress({ running }: { readonly running: RunningSweep }) {
  const { progress } = running.sweep.value;
  if (progress === 1) return null;
  const share = formatQuantity(100 * progress, "%");
  if (running.cancelled.value) return <p class="chart-progress">{t("traces.stopped", { share })}</p>;
  const words = t("traces.solving", { share });
  return (
    <p class="chart-progress">
      <progress value={progress} aria-label={words} /> {words}{" "}
      <button type="button" onClick={() => running.cancel()}>
        {t("traces.stop")}
      </button>
    </p>
  );
}
