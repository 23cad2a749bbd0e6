import { present } from "../sim/checked/present.ts";

const SIGNS: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** Text escaped for HTML, XML and SVG, also within quotation marks. */
export const inMarkup = (text: string): string => text.replace(/[&<>"]/g, (sign) => present(SIGNS[sign]));
