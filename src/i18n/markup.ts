const SIGNS: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** Text as it stands in HTML, XML and SVG, also between quotation marks. */
export const inMarkup = (text: string): string => text.replace(/[&<>"]/g, (sign) => SIGNS[sign]!);
