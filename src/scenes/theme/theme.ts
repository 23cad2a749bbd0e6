/** All that a drawing may look up: colours, type, motion, and the words of the page's language. */
import { DARK, LIGHT, type Palette } from "./colour.ts";
import { FAMILY } from "./type.ts";

/** A message by key, filled in, in the page's language. Numbers in `values` are formatted by the message. */
export type Say = (key: string, values?: Readonly<Record<string, string | number>>) => string;

export interface Theme {
  readonly name: "dark" | "light";
  readonly colour: Palette;
  readonly family: string;
  readonly say: Say;
}

export const darkTheme = (say: Say): Theme => ({ name: "dark", colour: DARK, family: FAMILY, say });
/** High contrast on a light ground: for washed-out projectors and bright rooms. */
export const lightTheme = (say: Say): Theme => ({ name: "light", colour: LIGHT, family: FAMILY, say });
/** The same on the paper's own white: a printed page spends no ink on its ground. */
export const paperTheme = (say: Say): Theme => ({
  ...lightTheme(say),
  colour: { ...LIGHT, stage: "#ffffff", stageDeep: "#ffffff" },
});

/** The same tokens for the style sheet: custom property -> value. */
export function cssTokens(theme: Theme): Record<string, string> {
  const tokens: Record<string, string> = { "--family": `"${theme.family}", sans-serif` };
  for (const [name, colour] of Object.entries(theme.colour)) {
    if (typeof colour === "string") tokens[`--${kebab(name)}`] = colour;
  }
  theme.colour.origin.forEach((colour, index) => {
    tokens[`--origin-${["upper", "liver", "legs"][index]}`] = colour;
  });
  return tokens;
}

const kebab = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
