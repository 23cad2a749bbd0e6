/** The stage's themes by name, in the language of the moment. */
import { t } from "../../../i18n/index.ts";
import { darkTheme, lightTheme, paperTheme, type Theme } from "../../../scenes/theme/theme.ts";

export type ThemeName = "dark" | "light" | "paper";
const THEMES = { dark: darkTheme, light: lightTheme, paper: paperTheme } as const;
export const themeNamed = (name: ThemeName): Theme => THEMES[name](t);
