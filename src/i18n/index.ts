/** All words of the page by key (ICU MessageFormat), and numbers as the language in force writes them. */
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
