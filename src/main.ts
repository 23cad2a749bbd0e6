/** Reads the address and opens the setting asked for. The only file with side effects at import. */
import "./styles/index.css";
import { effect, signal } from "@preact/signals";
import { startChain } from "./chain/page.ts";
import { cssTokens } from "./scenes/theme/theme.ts";
import { keptTheme, largerWords } from "./settings/preferences.ts";
import { createSession } from "./settings/session.ts";
import type { Context, Setting } from "./settings/setting.ts";
import { mountLinkNote, tellDropped } from "./settings/shell/link-note.tsx";
import { mountLiveRegions } from "./settings/shell/live-regions.tsx";
import { keepOffline } from "./settings/shell/offline.ts";
import { createStageLoop, themeNamed } from "./settings/shell/stage-loop.ts";
import { readPlace, type SettingName, writePlace } from "./settings/where.ts";
import { readAddress } from "./state/address.ts";
import { direction, language, setLanguage, t } from "./words/index.ts";

const SETTINGS: Readonly<Partial<Record<SettingName, () => Promise<{ readonly setting: Setting }>>>> = {
  home: () => import("./settings/home/index.tsx"),
  bench: () => import("./settings/bench/index.tsx"),
  study: () => import("./settings/study/index.tsx"),
  author: () => import("./settings/author/index.tsx"),
  lecture: () => import("./settings/lecture/index.tsx"),
  kiosk: () => import("./settings/kiosk/index.tsx"),
};

const { place: first, dropped } = readPlace(location.search);
const address = readAddress(first.state || "1");
tellDropped(first, [...dropped, ...address.dropped]);

const stillness = signal(matchMedia("(prefers-reduced-motion: reduce)").matches);
const session = createSession(startChain(address.state, { reducedMotion: () => stillness.value }));
const stageHost = document.createElement("div");
stageHost.id = "stage";
stageHost.hidden = true;
document.body.prepend(stageHost);
const context: Context = {
  session,
  stage: createStageLoop(stageHost, session.chain, keptTheme, first.more.draw),
  place: signal(first),
  theme: keptTheme,
  stillness,
};

const page = document.documentElement;
effect(() => {
  setLanguage(context.place.value.language || navigator.language);
  page.lang = language();
  page.dir = direction();
  const { setting } = context.place.value;
  document.title = t("home.page", { page: t(setting === "home" ? "home.title" : `home.${setting}`) });
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

// A setting lives until another one is asked for; all else of the place is read by the setting itself.
const host = document.getElementById("page")!;
let shown: SettingName | null = null;
let leave = () => {};
effect(() => {
  const { setting: name } = context.place.value;
  if (name === shown) return;
  shown = name;
  void (SETTINGS[name] ?? SETTINGS.home!)().then(({ setting }) => {
    if (shown !== name) return;
    leave();
    leave = setting.mount(host, context);
  });
});

// Links within the page move without loading it anew; the browser's own back and forward work.
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
  const told = place.state && place.state !== context.place.peek().state ? readAddress(place.state) : null;
  tellDropped(place, [...dropped, ...(told?.dropped ?? [])]);
  if (told) session.show(told.state);
  context.place.value = place;
}
effect(() => {
  const query = writePlace(context.place.value);
  if (query !== location.search) history.replaceState(null, "", query === "?" ? location.pathname : query);
});
