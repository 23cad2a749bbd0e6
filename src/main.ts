/** Reads the address and opens the mode asked for. The only file with side effects at import. */
import "./ui/styles/index.css";
import { effect, signal } from "@preact/signals";
import { startChain } from "./chain/page-chain.ts";
import { direction, language, setLanguage, t } from "./i18n/index.ts";
import { mountLinkNote, tellDropped } from "./modes/shared/link-note.tsx";
import { mountLiveRegions } from "./modes/shared/live-regions.tsx";
import type { Context, Mode } from "./modes/shared/mode.ts";
import { keepOffline } from "./modes/shared/offline.ts";
import { type ModeName, readPlace, writePlace } from "./modes/shared/place.ts";
import { keptTheme, largerWords } from "./modes/shared/preferences.ts";
import { createSession } from "./modes/shared/session.ts";
import { createStageLoop, themeNamed } from "./modes/shared/stage-loop.ts";
import { cssTokens } from "./scenes/theme/theme.ts";
import { readAddress } from "./state/address.ts";

const MODES: Readonly<Partial<Record<ModeName, () => Promise<{ readonly mode: Mode }>>>> = {
  home: () => import("./modes/home/index.tsx"),
  bench: () => import("./modes/bench/index.tsx"),
  study: () => import("./modes/study/index.tsx"),
  author: () => import("./modes/author/index.tsx"),
  lecture: () => import("./modes/lecture/index.tsx"),
  kiosk: () => import("./modes/kiosk/index.tsx"),
};

const { place: first, dropped } = readPlace(location.search);
const address = readAddress(first.state || "1");
tellDropped(first, [...dropped, ...address.dropped]);

const reducedMotion = signal(matchMedia("(prefers-reduced-motion: reduce)").matches);
const session = createSession(startChain(address.state, { reducedMotion: () => reducedMotion.value }));
const stageHost = document.createElement("div");
stageHost.id = "stage";
stageHost.hidden = true;
document.body.prepend(stageHost);
const context: Context = {
  session,
  stage: createStageLoop(stageHost, session.chain, keptTheme, first.more.draw),
  place: signal(first),
  theme: keptTheme,
  reducedMotion,
};

const page = document.documentElement;
effect(() => {
  setLanguage(context.place.value.language || navigator.language);
  page.lang = language();
  page.dir = direction();
  const { mode } = context.place.value;
  document.title = t("home.page", { page: t(mode === "home" ? "home.title" : `home.${mode}`) });
});
effect(() => {
  page.dataset.theme = keptTheme.value;
  for (const [token, value] of Object.entries(cssTokens(themeNamed(keptTheme.value))))
    page.style.setProperty(token, value);
});
effect(() => {
  page.classList.toggle("larger-words", largerWords.value);
});

mountLiveRegions(session);
mountLinkNote();
void keepOffline();

// A mode lives until another one is asked for; all else of the place is read by the mode itself.
const host = document.getElementById("page")!;
let shown: ModeName | null = null;
let leave = () => {};
effect(() => {
  const { mode: name } = context.place.value;
  if (name === shown) return;
  shown = name;
  void (MODES[name] ?? MODES.home!)().then(({ mode }) => {
    if (shown !== name) return;
    leave();
    leave = mode.mount(host, context);
  });
});

// Links within the page move without reloading it; the browser's back and forward buttons work.
addEventListener("click", (event) => {
  const link = event.target instanceof Element ? event.target.closest("a") : null;
  const query = link?.getAttribute("href");
  if (
    !query?.startsWith("?") ||
    link?.target ||
    event.defaultPrevented ||
    event.ctrlKey ||
    event.metaKey ||
    event.shiftKey
  )
    return;
  event.preventDefault();
  history.pushState(null, "", query);
  arrive();
  scrollTo(0, 0);
});
addEventListener("popstate", arrive);

/** Takes the address bar's word for where we are, and for the scene if it tells one. */
function arrive(): void {
  const { place, dropped } = readPlace(location.search);
  const read = place.state && place.state !== context.place.peek().state ? readAddress(place.state) : null;
  tellDropped(place, [...dropped, ...(read?.dropped ?? [])]);
  if (read) session.show(read.state);
  context.place.value = place;
}
effect(() => {
  const query = writePlace(context.place.value);
  if (query !== location.search) history.replaceState(null, "", query === "?" ? location.pathname : query);
});
