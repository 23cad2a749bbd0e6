/** What could not be used or computed, each with what was found and what is allowed. */

import { hasMessage, t } from "../i18n/index.ts";
import { present } from "../sim/checked/present.ts";
import type { Fault } from "../sim/faults.ts";

/** The last word of a fault's path as the page calls it, where it has a name. */
const nameOf = (path: string): string => {
  const last = present(path.split(".").at(-1));
  const key = [`parameter.${last}`, `control.${last}`, `link.part.${last}`].find(hasMessage);
  return key ? t(key) : path;
};

/** Number of faults listed one by one, and characters of what was found: a note must stay shorter than the page. */
const MAX_REPORTED = 6;
const MAX_SHOWN = 60;

const shorten = (found: string): string =>
  found.length > MAX_SHOWN ? `${found.slice(0, MAX_SHOWN)}…` : found;

/** Signs that turn the order of what is written, or are none, by their number: a stranger's words must not rearrange ours. */
export const inSight = (words: string): string =>
  words.replace(
    /[\p{Cc}\p{Bidi_Control}]/gu,
    (sign) => `[U+${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}]`,
  );

export interface FaultNoteProps {
  readonly title: string;
  readonly faults: readonly Fault[];
  /** Where the reader may put the note away. */
  readonly onClose?: () => void;
}

export const FaultNote = ({ title, faults, onClose }: FaultNoteProps) => (
  <div class="note">
    <p>{title}</p>
    {faults.slice(0, MAX_REPORTED).map(({ path, found, allowed }) => (
      <p key={path + found}>
        {t("link.dropped.one", { what: inSight(nameOf(path)), found: shorten(inSight(found)), allowed })}
      </p>
    ))}
    {faults.length > MAX_REPORTED && <p>{t("link.dropped.more", { count: faults.length - MAX_REPORTED })}</p>}
    {onClose && (
      <button type="button" onClick={onClose}>
        {t("dialog.close")}
      </button>
    )}
  </div>
);
