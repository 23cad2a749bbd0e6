/** The way to the pages of the docs, which the served kit brings along and the single file, for its weight, does not. */
import { t } from "../../../i18n/index.ts";

/** Set by the build. */
declare const __SINGLE_FILE__: boolean;

/** @param apart opens beside the page, for a place where something would be lost by leaving it */
export const DocsLink = ({ apart = false }: { readonly apart?: boolean }) =>
  __SINGLE_FILE__ ? (
    <span>{t("home.docs.apart")}</span>
  ) : (
    <a href="docs/index.html" hreflang="en" target={apart ? "_blank" : undefined} rel="noopener">
      {t("home.docs")}
    </a>
  );
