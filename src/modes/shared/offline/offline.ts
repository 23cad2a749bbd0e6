/** The newer version of the kit that lies ready, if one does. */
import { signal } from "@preact/signals";

/**
 * Set when a newer version lies ready: calling it reloads the page with that version. Gives false, and nothing happens,
 * while other windows are open: the pieces that they have yet to load go with the version before.
 */
export const newerVersion = signal<(() => Promise<boolean>) | null>(null);
