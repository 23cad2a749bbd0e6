/** The start page: what it is, the doors into it, the lessons, the cautions; blood moving beside the words. */

import { useEffect } from "preact/hooks";
import { LANGUAGES, language, languageName, t } from "../../i18n/index.ts";
import { Cautions } from "../../ui/cautions.tsx";
import { Transport } from "../../ui/transport.tsx";
import { AT_HOME, type ModeName, type Place, writePlace } from "../shared/address/place.ts";
import { DocsLink } from "../shared/bar/docs-link.tsx";
import { isMoving, togglePlay } from "../shared/handles/play.ts";
import type { Context } from "../shared/mode.ts";
import { NewerVersion } from "../shared/offline/newer-version.tsx";
import { holdFiles } from "../shared/own/dropped-file.ts";
import { takeDrops } from "../shared/own/take-drops.ts";
import { StageView } from "../shared/stage/stage-view.tsx";
import { EraseButton } from "./erase/erase-button.tsx";
import { LessonList } from "./lesson-list.tsx";

const DOORS = ["lecture", "kiosk", "study", "bench"] as const satisfies readonly ModeName[];

export function Home({ context }: { readonly context: Context }) {
  const there = (change: Partial<Place>) =>
    writePlace({ ...AT_HOME, language: context.place.value.language, ...change });
  useEffect(
    () =>
      takeDrops((files) => {
        holdFiles(files);
        // A talk is saved as a ZIP; all else is a learner's.
        context.address.go({ mode: files.some(({ name }) => /\.zip$/i.test(name)) ? "lecture" : "study" });
      }),
    [],
  );
  return (
    <StageView context={context} floor={14}>
      <div class="home">
        <div class="home-first">
          <main class="home-words">
            <h1>{t("home.title")}</h1>
            <p>{t("home.what")}</p>
            <nav aria-label={t("home.settings")}>
              <ul class="doors">
                {DOORS.map((name) => (
                  <li key={name}>
                    <a class="door" href={there({ mode: name })}>
                      <strong>{t(`home.${name}`)}</strong>
                      <span>{t(`home.${name}.for`)}</span>
                    </a>
                  </li>
                ))}
              </ul>
            </nav>
          </main>
          <div class="clear" data-clear />
          <footer class="home-foot">
            <Transport moving={isMoving(context)} onTogglePause={() => togglePlay(context)} />
            <a href="#more">{t("home.more")}</a>
            <p class="caution-short">{t("caution.short")}</p>
          </footer>
        </div>
        <div class="home-more" id="more">
          <LessonList />
          <Cautions />
          <section class="home-further" aria-labelledby="further">
            <h2 id="further">{t("home.further")}</h2>
            <NewerVersion />
            <ul class="plain-list">
              <li>
                <a href={there({ mode: "author" })}>{t("home.author")}</a>
              </li>
              <li>
                <DocsLink />
              </li>
              <li>
                <EraseButton />
              </li>
            </ul>
            <ul class="plain-list languages" aria-label={t("look.language")}>
              {LANGUAGES.map((tag) => (
                <li key={tag} lang={tag}>
                  <a
                    href={there({ language: tag })}
                    aria-current={tag === language() ? "true" : undefined}
                    hreflang={tag}
                  >
                    {languageName(tag)}
                  </a>
                </li>
              ))}
            </ul>
          </section>
        </div>
      </div>
    </StageView>
  );
}
