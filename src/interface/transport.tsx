/** What moves the scene: pause and go, a dye pulse, and how fast the blood is shown. */
import { formatNumber, t } from "../words/index.ts";

export interface TransportProps {
  readonly moving: boolean;
  /** blood seconds in one second, as achieved */
  readonly pace: number;
  readonly onTogglePause: () => void;
  /** Left out where dye makes no sense. */
  readonly onDye?: () => void;
}

export const Transport = ({ moving, pace, onTogglePause, onDye }: TransportProps) => (
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
    <span class="pace">
      {moving ? t("transport.pace", { pace: formatNumber(pace, 1) }) : t("transport.still")}
    </span>
  </div>
);
