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

interface IconButtonProps {
  readonly name: string;
  /** path in a square of 16 */
  readonly icon: string;
  readonly word: string;
  readonly onClick: () => void;
  readonly "aria-pressed"?: boolean;
  readonly "aria-expanded"?: boolean;
}

const IconButton = ({ name, icon, word, onClick, ...state }: IconButtonProps) => (
  <button type="button" data-item={name} onClick={onClick} {...state}>
    <svg viewBox="0 0 16 16" aria-hidden="true">
      <path d={icon} />
    </svg>
    <span class="transport-word">{word}</span>
  </button>
);

const ICONS = {
  pause: "M3 2h3.5v12H3zM9.5 2H13v12H9.5z",
  play: "M3 1.5 14 8 3 14.5z",
  probe: "M7 0h2v6H7zM7 10h2v6H7zM0 7h6v2H0zM10 7h6v2h-6z",
  beat: "M0 8.2h4L6 1.5 9.4 14l1.8-5.8H16v1.6h-3.6L9.4 16 6 5.4 5.2 9.8H0z",
} as const;

export function Transport({ moving, onTogglePause, onDye, probe, beat }: TransportProps) {
  const turn = moving ? "pause" : "play";
  return (
    <div class="transport">
      <IconButton name="pause" icon={ICONS[turn]} word={t(`transport.${turn}`)} onClick={onTogglePause} />
      {onDye && (
        <button type="button" data-item="dye" onClick={onDye}>
          {t("transport.dye")}
        </button>
      )}
      {probe && (
        <IconButton
          name="probe"
          icon={ICONS.probe}
          word={t("transport.probe")}
          aria-pressed={probe.on}
          onClick={probe.onToggle}
        />
      )}
      {beat && (
        <IconButton
          name="beat"
          icon={ICONS.beat}
          word={t("transport.beat")}
          aria-expanded={beat.on}
          onClick={beat.onToggle}
        />
      )}
      {!moving && <span class="pace">{t("transport.still")}</span>}
    </div>
  );
}
