/** How a phone joins: a code to photograph, an address and a short code to type. */
import { useMemo } from "preact/hooks";
import { encode } from "uqr";
import { t } from "../../../i18n/index.ts";
import type { HallRun } from "../hall/hall-run.ts";
import type { StageAudience } from "./stage-audience.ts";

interface InviteProps {
  readonly audience: StageAudience;
  readonly hall: HallRun;
}

/** On stage while a question is open, or when the speaker shows it. */
export function Invite({ audience, hall }: InviteProps) {
  const view = hall.asked.value;
  const asking = view && !view.resolved && hall.count.value?.phase === "open";
  const address = audience.address.value;
  if (!audience.open.value || !address || !(asking || audience.inviting.value)) return null;
  const { phones } = audience.hall.value;
  return (
    <aside class="invite" aria-label={t("lecture.hall.invite")}>
      <QrCode text={`${address}#${audience.code}`} />
      <p>
        <span class="invite-address">{address.replace(/^https?:\/\//, "")}</span>
        <strong class="invite-code">{audience.code}</strong>
        <span>{t("lecture.hall.phones", { count: phones })}</span>
      </p>
    </aside>
  );
}

/** Dark on light whatever the theme, with the quiet margin that readers need. */
function QrCode({ text }: { readonly text: string }) {
  const { size, path } = useMemo(() => {
    const { data, size: modules } = encode(text, { ecc: "M", border: 4 });
    const dark = data.flatMap((row, y) => row.flatMap((on, x) => (on ? [`M${x} ${y}h1v1h-1z`] : [])));
    return { size: modules, path: dark.join("") };
  }, [text]);
  return (
    <svg class="invite-qr" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={t("lecture.hall.qr")}>
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" shape-rendering="crispEdges" />
    </svg>
  );
}
