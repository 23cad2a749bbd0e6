/** A kiosk runs for days without being opened anew: it asks for a newer version itself, and takes it while nobody is there. */

/** ms */
const LOOK = 3_600_000;
const TRY = 10_000;

export interface NewerOptions {
  /** Whether the start shows and nobody has touched it for a while. */
  readonly isQuiet: () => boolean;
  readonly look: () => Promise<unknown>;
  /** null while none lies ready */
  readonly take: () => (() => Promise<boolean>) | null;
}

/** Until the returned function is called. */
export function takeNewer({ isQuiet, look, take }: NewerOptions): () => void {
  const looking = setInterval(() => void look(), LOOK);
  const trying = setInterval(() => {
    if (isQuiet()) void take()?.();
  }, TRY);
  return () => {
    clearInterval(looking);
    clearInterval(trying);
  };
}
