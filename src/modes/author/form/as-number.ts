import { parseNumber } from "../../../i18n/index.ts";

/** What is typed as a number is one; anything else stays for the checker to refuse. */
export const asNumber = (text: string): number | string => parseNumber(text) ?? text;
