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
export { LOSS_DIGITS, type Lung, shareOf, writeDrop, writeLoss, writeShare } from "./pathway-quantity.ts";
export { PSEUDO_LANGUAGES } from "./pseudo.ts";
export {
  type Band,
  digitsOfStep,
  formatBand,
  formatNumber,
  formatQuantity,
  parseNumber,
  type Quantity,
  speakQuantity,
  unitSymbol,
} from "./quantity.ts";
