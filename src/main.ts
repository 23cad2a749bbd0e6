/** Reads the address and opens the mode asked for. The only file with side effects at import. */
import "./ui/styles/type-faces.css";
import "./ui/styles/index.css";
import { computed, effect, signal } from "@preact/signals";
import { startChain } from "./chain/page-chain.ts";
import {
  direction,
  fetchMessages,
  fetchModeMessages,
  LANGUAGES,
  language,
  nearestLanguage,
  setLanguage,
  setTechnical,
  t,
} from "./i18n/index.ts";
import { setOwnSource } from "./lesson/own/own-source.ts";
import { openAddress } from "./modes/shared/address/address-sync.ts";
import type { ModeName } from "./modes/shared/address/place.ts";
import type { Context, Mode } from "./modes/shared/mode.ts";
import { refuseDrops } from "./modes/shared/own/take-drops.ts";
import {
  mountPageNotes,
  tellDropped,
  tellMissedLanguage,
  tellMissedPart,
} from "./modes/shared/page-notes.tsx";
import { keptTheme, keptVersion, largerWords } from "./modes/shared/preferences.ts";
import { createSession } from "./modes/shared/session.ts";
import { createStageLoop } from "./modes/shared/stage/stage-loop.ts";
import { themeNamed } from "./modes/shared/stage/themes.ts";
import { mountLiveRegions } from "./modes/shared/words/live-regions.tsx";
import { cssTokens } from "./scenes/theme/theme.ts";
import { present } from "./sim/checked/present.ts";
import { START } from "./state/scene-state.ts";

/** ms */
const FIRST_VIEW = 4000;

type Load = () => Promise<{ readonly mode: Mode }>;

/** The mode once its English has come too. */
const withWords =
  (load: Load): Load =>
  async () => {
    const [loaded] = await Promise.all([load(), fetchModeMessages()]);
    return loaded;
  };

const home: Load = () => import("./modes/home/index.tsx");
const MODES: Readonly<Partial<Record<ModeName, Load>>> = {
  // An address can put another scene beside its words.
  home: () => (session.scene.value.scene === START.scene ? home() : withWords(home)()),
  bench: withWords(() => import("./modes/bench/index.tsx")),
  study: withWords(() => import("./modes/study/index.tsx")),
  author: withWords(() => import("./modes/author/index.tsx")),
  lecture: withWords(() => import("./modes/lecture/index.tsx")),
  kiosk: withWords(async () => {
    // It greets in every language at once; one that does not come is greeted in English.
    const greetings = Promise.allSettled(LANGUAGES.map(fetchMessages));
    const { mode } = await import("./modes/kiosk/index.tsx");
    await greetings;
    return { mode };
  }),
};

const address = openAddress(tellDropped);
const { place } = address;

const reducedMotion = signal(matchMedia("(prefers-reduced-motion: reduce)").matches);
const session = createSession(startChain(address.opening, { reducedMotion: () => reducedMotion.value }));
// The drawing's code runs while the words are laid out; what does not load shows when it is asked for.
void import("./scenes/stage.ts").catch(() => {});
const stageHost = document.createElement("div");
stageHost.id = "stage";
stageHost.hidden = true;
document.body.prepend(stageHost);
const context: Context = {
  session,
  stage: createStageLoop(stageHost, session, keptTheme, place.peek().more.draw),
  address,
  place,
  theme: keptTheme,
  reducedMotion,
};

const page = document.documentElement;
const wanted = computed(() => nearestLanguage(place.value.language || navigator.language));
/** Resolved once the page has a language: no text is shown before. */
let spoken = Promise.resolve();
effect(() => {
  const tag = wanted.value;
  const tell = (missed: string) => {
    if (tag === wanted.peek()) tellMissedLanguage(missed);
  };
  spoken = setLanguage(tag).then(
    () => tell(""),
    () => tell(tag),
  );
});
void spoken.then(() => {
  effect(() => {
    page.lang = language();
    page.dir = direction();
    const { mode } = place.value;
    document.title = t("home.page", { page: t(mode === "home" ? "home.title" : `home.${mode}`) });
  });
  mountLiveRegions(session);
  mountPageNotes();
});
effect(() => {
  // The bench is for those who know the clinical names; a learner chooses the version of the text.
  const { mode } = place.value;
  setTechnical(
    mode === "bench" || mode === "author" || (mode === "study" && keptVersion.value === "technical"),
  );
});
effect(() => {
  page.dataset.theme = keptTheme.value;
  for (const [token, value] of Object.entries(cssTokens(themeNamed(keptTheme.value))))
    page.style.setProperty(token, value);
});
effect(() => {
  page.classList.toggle("larger-words", largerWords.value);
});

setOwnSource(() =>
  import("./modes/shared/own/own-lessons.ts").then(({ ownLessonFiles }) => ownLessonFiles()),
);
// All that is kept is fetched once a first visit's picture no longer needs the line and the processor.
setTimeout(
  () => {
    import("./modes/shared/offline/keep-offline.ts").then(
      ({ keepOffline }) => keepOffline(),
      () => {},
    );
  },
  navigator.serviceWorker?.controller ? 0 : FIRST_VIEW,
);
refuseDrops();

// A mode lives until another one is asked for; all else of the place is read by the mode itself.
const host = present(document.getElementById("page"));
let shown: ModeName | null = null;
let leave = () => {};
effect(() => {
  const { mode: name } = place.value;
  if (name === shown) return;
  shown = name;
  void Promise.all([(MODES[name] ?? present(MODES.home))(), spoken]).then(
    ([{ mode }]) => {
      if (shown !== name) return;
      leave();
      leave = mode.mount(host, context);
    },
    () => {
      tellMissedPart();
      // Whoever asks once more is to get it.
      if (shown === name) shown = null;
    },
  );
});

address.listen(session);
