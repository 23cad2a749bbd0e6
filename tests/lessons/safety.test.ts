/** What a family could act on: each warning stands where it is needed, in every language, and points to the team or the emergency number. */
import { describe, expect, test } from "vitest";
import { readLessonFiles } from "../../src/cli/lesson-files.ts";
import type { Lesson } from "../../src/lesson/lesson.ts";
import { wordsOf } from "../../src/lesson/prose.ts";
import { wordsIn } from "../../src/lesson/read/references.ts";

type ByLanguage = Readonly<Record<"en" | "de" | "es" | "fr", RegExp>>;
const languages = ["en", "de", "es", "fr"] as const;
const lessonFiles = readLessonFiles("lessons");

const lessonOf = (language: string, id: string): Lesson =>
  lessonFiles.lessons[language]!.find((lesson) => lesson.id === id)!;
const stepOf = (language: string, id: string, step: string) =>
  lessonOf(language, id).steps.find((each) => each.id === step)!;
const plain = (step: Lesson["steps"][number]): string =>
  [step.plain.prose, ...(step.question ? wordsIn(step.question) : [])]
    .map((each) => wordsOf(each))
    .join("\n");
const caution = (step: Lesson["steps"][number]): string => wordsOf(step.caution?.prose ?? []);

const SAME_DAY: ByLanguage = {
  en: /same day|today/,
  de: /selben Tag|heute/,
  es: /mismo día|hoy/,
  fr: /jour même|aujourd’hui/,
};
const EMERGENCY: ByLanguage = {
  en: /emergency (number|department)/,
  de: /Notruf|Notaufnahme/,
  es: /emergencias|urgencias/,
  fr: /numéro d’urgence|urgences/,
};
const NO_FLUIDS: ByLanguage = {
  en: /fluids (that )?do not stay down/i,
  de: /keine Flüssigkeit bei sich/,
  es: /no se retiene lo que se bebe/,
  fr: /rien de ce qui est bu n’est gardé/i,
};
const PULSE: ByLanguage = { en: /racing/, de: /rasende|Rast/, es: /pulso muy rápido/, fr: /s’emballe/ };
const SIGNS: ByLanguage = {
  en: /pale/,
  de: /Blässe/,
  es: /palidez/,
  fr: /teint pâle/,
};
const FAINTING: ByLanguage = { en: /faint/i, de: /Ohnmacht/, es: /desmayo/, fr: /évanouissement/ };
const CASTS: ByLanguage = {
  en: /rubbery casts/i,
  de: /gummiartige/,
  es: /moldes gomosos/,
  fr: /caoutchouteux/,
};
const NEWBORN: Readonly<Record<string, readonly RegExp[]>> = {
  en: [/poor feeding/, /sweating/, /fast breathing/, /more blue than usual/, /fever/, /diarrhoea/],
  de: [/schlechtem Trinken/, /Schwitzen/, /schneller Atmung/, /mehr Blau als sonst/, /Fieber/, /Durchfall/],
  es: [/come mal/, /suda/, /respira deprisa/, /más azul de lo habitual/, /fiebre/, /diarrea/],
  fr: [/boit mal/, /transpire/, /respire vite/, /plus bleu que d’habitude/, /fièvre/, /diarrhée/],
};
const ASKED_FIRST: Readonly<Record<string, readonly RegExp[]>> = {
  en: [/oestrogen/i, /painkillers/, /pregnancy/i, /dental/],
  de: [/Östrogen/, /Schmerzmittel/, /Schwangerschaft/, /Zähne/],
  es: [/estrógeno/, /analgésicos|dolor/, /embarazo/, /dental|dentista/],
  fr: [/œstrogène/, /douleur/, /grossesse/, /dentaires/],
};
const HEAD: ByLanguage = {
  en: /blow to the head/,
  de: /Schlag auf den Kopf/,
  es: /golpe en la cabeza/,
  fr: /coup sur la tête/,
};
const MUCH_BLUER: ByLanguage = {
  en: /much bluer than usual/,
  de: /viel blauer als sonst/,
  es: /mucho más azul de lo habitual/,
  fr: /beaucoup plus bleu que d’habitude/,
};

const NOT_CAUSED: ByLanguage = {
  en: /did not bring this about/,
  de: /nicht verursacht/,
  es: /no lo causaste/,
  fr: /n’en êtes pas la cause/,
};
const NEWBORN_AT_ONCE: ByLanguage = {
  en: /grey.*limp/,
  de: /grau.*schlaff/,
  es: /gris.*flojo/,
  fr: /gris.*mou/,
};
const AFTER_CATHETER: ByLanguage = {
  en: /bleeding.*fever.*limb/i,
  de: /Blutung.*Fieber.*Bein/,
  es: /sangrado.*fiebre.*pierna/,
  fr: /saignement.*fièvre.*jambe/,
};

describe.each(languages)("%s", (language) => {
  test("a racing pulse ranks above swelling and plans, and is a call today; with other signs an emergency", () => {
    const step = stepOf(language, "10-over-time", "list");
    if (step.question?.kind !== "order" || !step.question.order) throw new Error("an order by hand");
    expect(step.question.order).toEqual(["now", "today", "soon", "visit"]);
    const said = Object.fromEntries(step.question.items.map(({ id, say }) => [id, wordsOf(say)]));
    expect(said.today).toMatch(PULSE[language]);
    expect(said.now).toMatch(PULSE[language]);
    expect(wordsOf(step.question.right)).toMatch(SAME_DAY[language]);
    for (const each of [step, stepOf(language, "10-over-time", "stiff")]) {
      expect(caution(each)).toMatch(PULSE[language]);
      expect(caution(each)).toMatch(SAME_DAY[language]);
      expect(caution(each)).toMatch(SIGNS[language]);
      expect(caution(each)).toMatch(EMERGENCY[language]);
    }
  });

  test("fluids that do not stay down are a call the same day, after operations and over the years", () => {
    for (const [id, step] of [
      ["10-over-time", "dry"],
      ["08-leaks", "first"],
      ["08-leaks", "later"],
    ] as const) {
      const reported = caution(stepOf(language, id, step));
      expect(reported, `${id}#${step}`).toMatch(NO_FLUIDS[language]);
      expect(reported, `${id}#${step}`).toMatch(SAME_DAY[language]);
      expect(reported, `${id}#${step}`).toMatch(EMERGENCY[language]);
    }
  });

  test("families between the first steps learn the warning signs, whom to call and when", () => {
    const reported = caution(stepOf(language, "02-steps", "between"));
    for (const sign of [...NEWBORN[language]!, SAME_DAY[language], EMERGENCY[language]])
      expect(reported).toMatch(sign);
  });

  test("casts in the cough are a call the same day and with breathlessness an emergency", () => {
    const step = stepOf(language, "08-leaks", "later");
    for (const reported of [plain(step), caution(step)]) {
      expect(reported).toMatch(CASTS[language]);
      expect(reported).toMatch(SAME_DAY[language]);
    }
    expect(caution(step)).toMatch(EMERGENCY[language]);
  });

  test("what is asked first is in the plain version, and a blow to the head with blood thinners in its caution", () => {
    const step = stepOf(language, "10-over-time", "ask-first");
    for (const word of ASKED_FIRST[language]!) expect(plain(step)).toMatch(word);
    expect(caution(step)).toMatch(HEAD[language]);
    expect(caution(step)).toMatch(EMERGENCY[language]);
  });

  test("a child whose lips are always a little blue is no emergency: much bluer than usual is", () => {
    expect(caution(stepOf(language, "06-fenestration", "price"))).toMatch(MUCH_BLUER[language]);
  });

  test("parents read that they did not cause it, and whom to turn to with guilt", () => {
    const step = stepOf(language, "11-around-birth", "nothing");
    expect(plain(step)).toMatch(NOT_CAUSED[language]);
    expect(caution(step)).toMatch(/team|equipo|équipe/i);
  });

  test("a grey, limp newborn is an emergency; between the steps the signs are a call the same day", () => {
    for (const id of ["duct", "next"]) {
      const said = caution(stepOf(language, "11-around-birth", id));
      expect(said).toMatch(NEWBORN_AT_ONCE[language]);
      expect(said).toMatch(EMERGENCY[language]);
    }
    expect(caution(stepOf(language, "11-around-birth", "next"))).toMatch(SAME_DAY[language]);
  });

  test("after a catheter test bleeding, fever and a cold limb are a call, and what does not stop an emergency", () => {
    const said = caution(stepOf(language, "12-catheter-day", "day"));
    expect(said).toMatch(AFTER_CATHETER[language]);
    expect(said).toMatch(EMERGENCY[language]);
  });

  test("with a pacemaker a fainting is an emergency, a swollen pocket a call today", () => {
    const sentences = caution(stepOf(language, "13-one-pump", "pacing")).split(/(?<=[.]) /);
    const [call, emergency] = sentences.slice(-2);
    expect(call).toMatch(SAME_DAY[language]);
    expect(call).not.toMatch(FAINTING[language]);
    expect(emergency).toMatch(FAINTING[language]);
    expect(emergency).toMatch(EMERGENCY[language]);
  });

  test("where the atrial kick is lost, a racing pulse is a call today and with other signs an emergency", () => {
    const said = caution(stepOf(language, "13-one-pump", "kick"));
    for (const each of [PULSE, SAME_DAY, SIGNS, EMERGENCY]) expect(said).toMatch(each[language]);
  });
});
