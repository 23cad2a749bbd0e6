/** All text of the page by key (ICU MessageFormat), and numbers in the format of the current language. */
export {
  type Arguments,
  direction,
  hasMessage,
  LANGUAGES,
  language,
  languageFor,
  languageName,
  MESSAGES,
  nearestLanguage,
  setLanguage,
  t,
} from "./messages.ts";
export { PSEUDO_LANGUAGES } from "./pseudo.ts";
export {
  digitsOfStep,
  formatNumber,
  formatQuantity,
  parseNumber,
  speakQuantity,
  unitSymbol,
} from "./quantity.ts";
