/** Controls of the scene's motion: pause and play, and a dye pulse. The scene's own legend gives the speed at which blood is shown. */
import { t } from "../i18n/index.ts";

interface Toggle {
  readonly on: boolean;
  readonly onToggle: () => void;
}

export interface TransportProps {
  readonly moving: boolean;
  readonly onTogglePause: () => void;
  /** Left out where dye makes no sense. */
  readonly onDye?: (() => void) | undefined;
  /** Left out where there is no flow to read. */
  readonly probe?: Toggle | undefined;
  /** The strip of beat and breath. */
  readonly beat?: Toggle | undefined;
}

export const Transport = ({ moving, onTogglePause, onDye, probe, beat }: TransportProps) => (
  <div class="transport">
    <button type="button" data-item="pause" onClick={onTogglePause}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <path d={moving ? "M3 2h3.5v12H3zM9.5 2H13v12H9.5z" : "M3 1.5 14 8 3 14.5z"} />
      </svg>
      <span class="transport-word">{t(moving ? "transport.pause" : "transport.play")}</span>
    </button>
    {onDye && (
      <button type="button" data-item="dye" onClick={onDye}>
        {t("transport.dye")}
      </button>
    )}
    {probe && (
      <button type="button" data-item="probe" aria-pressed={probe.on} onClick={probe.onToggle}>
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <path d="M7 0h2v6H7zM7 10h2v6H7zM0 7h6v2H0zM10 7h6v2h-6z" />
        </svg>
        <span class="transport-word">{t("transport.probe")}</span>
      </button>
    )}
    {beat && (
      <button type="button" data-item="beat" aria-expanded={beat.on} onClick={beat.onToggle}>
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <path d="M0 8.2h4L6 1.5 9.4 14l1.8-5.8H16v1.6h-3.6L9.4 16 6 5.4 5.2 9.8H0z" />
        </svg>
        <span class="transport-word">{t("transport.beat")}</span>
      </button>
    )}
    {!moving && <span class="pace">{t("transport.still")}</span>}
  </div>
);
