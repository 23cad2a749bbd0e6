/** The page of course packages, fetched when it is asked for. */
import { useSignal } from "@preact/signals";
import type { FunctionComponent } from "preact";
import { useEffect } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import type { StudyProps } from "../study-props.ts";

export function PackageDoor(props: StudyProps) {
  const page = useSignal<FunctionComponent<StudyProps> | null>(null);
  useEffect(() => {
    void import("./package-page.tsx").then((module) => {
      page.value = module.PackagePage;
    });
  }, [page]);
  const Page = page.value;
  return Page ? <Page {...props} /> : <p class="study-loading">{t("study.opening")}</p>;
}
