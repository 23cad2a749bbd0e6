/** The figures of a lesson: added from a file, seen, taken out. */
import { useSignal } from "@preact/signals";
import { t } from "../../../i18n/index.ts";
import { FIGURE_LIMITS, sourceOf, totalBytes } from "../../../lesson/own/own-figures.ts";
import { FilePicker } from "../../shared/own/file-picker.tsx";
import { useDesk } from "./desk.ts";
import { takeFigure } from "./take-figure.ts";

const kB = (bytes: number): number => Math.round(bytes / 1000);

export function FigureList() {
  const { figures, setFigures } = useDesk();
  const refused = useSignal("");
  const take = async (file: File | undefined) => {
    if (!file) return;
    const taken = await takeFigure(file, figures);
    refused.value = taken.ok
      ? ""
      : t("author.form.fault", { found: taken.fault.found, allowed: taken.fault.allowed });
    if (taken.ok) setFigures([...figures, taken.figure]);
  };
  return (
    <fieldset class="form-group">
      <legend>{t("author.form.figures")}</legend>
      <p class="quiet-text">
        {t("author.form.figures.what", {
          each: kB(FIGURE_LIMITS.bytes),
          total: kB(FIGURE_LIMITS.total),
          now: kB(totalBytes(figures)),
        })}
      </p>
      <ul class="plain-list form-figures">
        {figures.map((figure) => (
          <li key={figure.name}>
            <img src={sourceOf(figure)} alt="" />
            <span>
              {t("author.form.figures.size", { name: figure.name, size: kB(totalBytes([figure])) })}
            </span>
            <button
              type="button"
              aria-label={t("author.form.takeOut", { what: figure.name })}
              onClick={() => setFigures(figures.filter((each) => each !== figure))}
            >
              {t("author.form.remove")}
            </button>
          </li>
        ))}
      </ul>
      <div class="actions">
        <FilePicker
          label={t("author.form.addFigure")}
          accept=".svg,.png,.jpg,.jpeg,image/svg+xml,image/png,image/jpeg"
          onPick={(file) => void take(file)}
        />
      </div>
      <p class="field-fault" role="status">
        {refused.value}
      </p>
    </fieldset>
  );
}
