/** Keeps the served kit for use without a network; a newer version waits until it is asked for. */
import { newerVersion } from "./offline.ts";

let kept: ServiceWorkerRegistration | null = null;

/** Only a built and served page has something to keep; elsewhere nothing happens. */
export async function keepOffline(): Promise<void> {
  if (!import.meta.env.PROD || !/^https?:$/.test(location.protocol) || !("serviceWorker" in navigator))
    return;
  // Kept: a page that has been left has no such property any more, and may still hear of a change.
  const { serviceWorker } = navigator;
  const registration = await serviceWorker.register("./sw.js").catch(() => null);
  // Refused, as in a private window: the page needs its network, and works.
  if (!registration) return;
  kept = registration;
  // Held by each window until it closes.
  navigator.locks
    ?.request(registration.scope, { mode: "shared" }, () => new Promise(() => {}))
    .catch(() => {});
  const offer = () => {
    // The first version has nothing to replace.
    if (registration.waiting && serviceWorker.controller) newerVersion.value = () => take(registration);
  };
  offer();
  registration.addEventListener("updatefound", () => {
    const { installing } = registration;
    installing?.addEventListener("statechange", () => {
      if (installing.state === "installed") offer();
    });
  });
}

/** Browsers look for a newer version when a page is opened; one that stays open for days has to ask. */
export const lookForNewer = async (): Promise<unknown> => kept?.update().catch(() => {});

async function take(registration: ServiceWorkerRegistration): Promise<boolean> {
  const windows = await navigator.locks?.query().catch(() => null);
  const open = windows?.held?.filter(({ name }) => name === registration.scope) ?? [];
  if (open.length > 1) return false;
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  registration.waiting?.postMessage({ type: "SKIP_WAITING" });
  return true;
}
