/** A course package made on the page: chosen here, put together here, saved as one ZIP. */

import { type Signal, useSignal } from "@preact/signals";
import { t } from "../../../i18n/index.ts";
import { COMPLETED_WHEN } from "../../../lesson/library/lesson-course.ts";
import { ownFiles } from "../../../lesson/own/own-source.ts";
import { countFiles, packageFiles, STANDARDS } from "../../../lms/package/course-package.ts";
import { zipOf } from "../../../lms/package/zip.ts";
import { PASS_SHARE } from "../../../lms/record-adapter.ts";
import { messageOf } from "../../../sim/checked/message-of.ts";
import { Choice, Switch } from "../../../ui/choice.tsx";
import { NumberField } from "../../../ui/number-field.tsx";
import { saveFile } from "../../../ui/take-away/save-file.ts";
import { writePlace } from "../../shared/address/place.ts";
import { LanguageChoice } from "../../shared/bar/language-choice.tsx";
import { VersionChoice } from "../../shared/bar/version-choice.tsx";
import type { StudyProps } from "../study-props.ts";
import { type CourseChoice, packageName, planOf, usualTitle } from "./course-plan.ts";
import { LessonOrder } from "./lesson-order.tsx";
import { servedKit } from "./served-kit.ts";
import "./package.css";

/** characters */
const LONGEST_TITLE = 200;

const FIRST: Omit<CourseChoice, "lessons"> = {
  title: "",
  textVersion: "plain",
  standard: "scorm12",
  apart: false,
  passMark: PASS_SHARE,
  completedWhen: "finished",
};

export function PackagePage({ context, library }: Pick<StudyProps, "context" | "library">) {
  const choice = useSignal<CourseChoice>({ ...FIRST, lessons: library.lessons.map(({ id }) => id) });
  const said = useSignal("");
  const making = useSignal(false);
  const change = (part: Partial<CourseChoice>) => {
    choice.value = { ...choice.value, ...part };
    said.value = "";
  };
  const make = async () => {
    making.value = true;
    said.value = await makePackage(choice.peek(), library, said).catch((reason: unknown) =>
      t("take.failed", { reason: messageOf(reason) }),
    );
    making.value = false;
  };
  const { lessons, title } = choice.value;
  return (
    <main class="package-page">
      <p class="actions">
        <a class="button" href={writePlace({ ...context.place.value, more: {} })}>
          {t("study.lessons")}
        </a>
      </p>
      <h1>{t("study.package")}</h1>
      <p>{t("study.package.lead")}</p>
      <LanguageChoice address={context.address} />
      <label class="record-name">
        {t("study.package.title")}
        <input
          type="text"
          maxLength={LONGEST_TITLE}
          placeholder={usualTitle(library.lessons.filter(({ id }) => lessons.includes(id)))}
          value={title}
          onInput={(event) => change({ title: event.currentTarget.value })}
        />
      </label>
      <LessonOrder
        lessons={library.lessons}
        chosen={lessons}
        onChoose={(chosen) => change({ lessons: chosen })}
      />
      <Rules choice={choice} onChange={change} />
      <div class="actions">
        <button
          type="button"
          class="main"
          aria-disabled={lessons.length === 0 || making.value || undefined}
          onClick={() => lessons.length > 0 && !making.value && void make()}
        >
          {t("study.package.make")}
        </button>
      </div>
      <p role="status">{lessons.length === 0 ? t("study.package.empty") : said.value}</p>
    </main>
  );
}

interface RulesProps {
  readonly choice: Signal<CourseChoice>;
  readonly onChange: (part: Partial<CourseChoice>) => void;
}

function Rules({ choice, onChange }: RulesProps) {
  const { standard, apart, passMark, completedWhen, textVersion } = choice.value;
  return (
    <>
      <Choice
        label={t("study.package.standard")}
        value={standard}
        words={STANDARDS}
        nameOf={(name) => t(`study.package.${name}`)}
        onChoose={(name) => onChange({ standard: name })}
      />
      <p class="quiet-text">{t(`study.package.${standard}.for`)}</p>
      <Switch label={t("study.package.apart")} on={apart} onChange={(on) => onChange({ apart: on })} />
      <VersionChoice version={textVersion} onChoose={(name) => onChange({ textVersion: name })} />
      <Choice
        label={t("study.package.completed")}
        value={completedWhen}
        words={COMPLETED_WHEN}
        nameOf={(when) => t(`study.package.${when}`)}
        onChoose={(when) => onChange({ completedWhen: when })}
      />
      <Switch
        label={t("study.package.judged")}
        on={passMark !== null}
        onChange={(on) => onChange({ passMark: on ? PASS_SHARE : null })}
      />
      {passMark !== null && (
        <p class="package-mark">
          {t("study.package.mark")}{" "}
          <NumberField
            label={t("study.package.mark")}
            value={100 * passMark}
            min={0}
            max={100}
            digits={0}
            unit="%"
            onChange={(percent) => onChange({ passMark: percent / 100 })}
          />
        </p>
      )}
    </>
  );
}

/** @returns what to say of it */
async function makePackage(
  choice: CourseChoice,
  library: StudyProps["library"],
  said: Signal<string>,
): Promise<string> {
  const kit = await servedKit((url) => fetch(url));
  if (!kit) return t("study.package.unserved");
  const plan = planOf(choice, library, (await ownFiles()).files);
  const count = countFiles(plan, kit);
  const chunks = await zipOf(packageFiles(plan, kit), (done) => {
    said.value = t("study.package.progress", { done, count });
  });
  const zip = new Blob(chunks as BlobPart[], { type: "application/zip" });
  const name = packageName(plan, new Date().toISOString());
  saveFile(name, zip);
  return t("study.package.saved", { name, size: Math.round(zip.size / 1000) });
}
