/** The page of course packages, fetched when it is asked for. */
import { useEffect } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import { useFetchedPart } from "../../shared/offline/fetched-part.ts";
import type { StudyProps } from "../study-props.ts";

const load = async () => (await import("./package-page.tsx")).PackagePage;

export function PackageDoor(props: StudyProps) {
  const [part, ask] = useFetchedPart(load);
  useEffect(() => void ask(), []);
  const Page = part.value;
  if (Page) return <Page {...props} />;
  return (
    <p class="study-loading" role="status">
      {t(Page === false ? "part.missed" : "study.opening")}
    </p>
  );
}
