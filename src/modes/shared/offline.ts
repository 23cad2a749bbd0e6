/** Keeps the served kit for use without a network; a newer version waits until it is asked for. */
import { signal } from "@preact/signals";

/** Set when a newer version lies ready: calling it reloads the page with that version. */
export const newerVersion = signal<(() => void) | null>(null);

/** Only a built and served page has something to keep; elsewhere nothing happens. */
export async function keepOffline(): Promise<void> {
  if (!import.meta.env.PROD || !/^https?:$/.test(location.protocol) || !("serviceWorker" in navigator))
    return;
  const registration = await navigator.serviceWorker.register("./sw.js").catch(() => null);
  // Refused, as in a private window: the page needs its network, and works.
  if (!registration) return;
  const offer = (waiting: ServiceWorker | null) => {
    // The first version has nothing to replace.
    if (!waiting || !navigator.serviceWorker.controller) return;
    newerVersion.value = () => {
      navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
      waiting.postMessage({ type: "SKIP_WAITING" });
    };
  };
  offer(registration.waiting);
  registration.addEventListener("updatefound", () => {
    const { installing } = registration;
    installing?.addEventListener("statechange", () => {
      if (installing.state === "installed") offer(registration.waiting);
    });
  });
}
