/** Controls of the scene's motion: pause and play, and a dye pulse. The scene's own legend gives the speed at which blood is shown. */
import { t } from "../i18n/index.ts";

export interface TransportProps {
  readonly moving: boolean;
  readonly onTogglePause: () => void;
  /** Left out where dye makes no sense. */
  readonly onDye?: (() => void) | undefined;
  /** Left out where there is no flow to read. */
  readonly probe?: { readonly on: boolean; readonly onToggle: () => void } | undefined;
}

export const Transport = ({ moving, onTogglePause, onDye, probe }: TransportProps) => (
  <div class="transport">
    <button type="button" data-item="pause" onClick={onTogglePause}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <path d={moving ? "M3 2h3.5v12H3zM9.5 2H13v12H9.5z" : "M3 1.5 14 8 3 14.5z"} />
      </svg>
      {t(moving ? "transport.pause" : "transport.play")}
    </button>
    {onDye && (
      <button type="button" data-item="dye" onClick={onDye}>
        {t("transport.dye")}
      </button>
    )}
    {probe && (
      <button type="button" data-item="probe" aria-pressed={probe.on} onClick={probe.onToggle}>
        {t("transport.probe")}
      </button>
    )}
    {!moving && <span class="pace">{t("transport.still")}</span>}
  </div>
);
