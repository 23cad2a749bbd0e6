/** All text of the page by key (ICU MessageFormat), and numbers in the format of the current language. */
export { appendChange, changeOf, writeChange } from "./change.ts";
export {
  direction,
  fetchMessages,
  fetchModeMessages,
  hasMessage,
  inLanguage,
  LANGUAGES,
  language,
  languageFor,
  languageName,
  MESSAGES,
  nearestLanguage,
  setLanguage,
  setTechnical,
  speakPlainly,
  t,
} from "./messages.ts";
export { parseNumber } from "./parse-number.ts";
export { LOSS_DIGITS, type Lung, shareOf, writeDrop, writeLoss, writeShare } from "./pathway-quantity.ts";
export {
  type Band,
  digitsOfStep,
  formatBand,
  formatNumber,
  formatQuantity,
  type Quantity,
  speakQuantity,
  unitSymbol,
} from "./quantity.ts";
