/** The fenestration shut on trial, as in the catheter room: the same blood, before and after. */
import { useSignal } from "@preact/signals";
import { formatQuantity, t } from "../../i18n/index.ts";
import { present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { occluded } from "../../sim/parameters/request.ts";
import type { Context } from "../shared/mode.ts";

const ROWS = [
  {
    name: "pathwayPressure",
    unit: "mmHg",
    digits: 1,
    read: ({ pressures }: Circulation) => pressures.pathway,
  },
  {
    name: "hepaticVeinPressure",
    unit: "mmHg",
    digits: 1,
    read: ({ pressures }: Circulation) => pressures.hepaticVein,
  },
  { name: "atriumPressure", unit: "mmHg", digits: 1, read: ({ pressures }: Circulation) => pressures.atrium },
  { name: "output", unit: "L/min", digits: 2, read: ({ flows }: Circulation) => flows.systemic },
  {
    name: "arterialSaturation",
    unit: "%",
    digits: 1,
    read: ({ saturations }: Circulation) => saturations.arterial,
  },
] as const;

interface Trial {
  readonly open: Circulation;
  readonly closed: Circulation;
}

export function TestOcclusionPanel({ context }: { readonly context: Context }) {
  const { chain } = context.session;
  const trial = useSignal<Trial | null>(null);
  const open = chain.circulations.value[0];
  if (!open || open.flows.fenestration === 0) return null;
  const close = async () => {
    // A solver that fails on it is reported by the chain.
    const closed = await chain
      .answer(occluded(open.request, present(open.extras.bloodVolume)))
      .catch(() => null);
    if (closed?.run.converged) trial.value = { open, closed };
  };
  return (
    <section class="test-occlusion">
      <h3>{t("occlusion.title")}</h3>
      <p>{t("occlusion.what")}</p>
      <div class="actions">
        <button type="button" onClick={close}>
          {t("occlusion.close")}
        </button>
      </div>
      {trial.value && trial.value.open === open && <Table {...trial.value} />}
    </section>
  );
}

const Table = ({ open, closed }: Trial) => (
  <table>
    <caption>{t("occlusion.caption")}</caption>
    <thead>
      <tr>
        <th scope="col">{t("energy.what")}</th>
        <th scope="col">{t("occlusion.open")}</th>
        <th scope="col">{t("occlusion.closed")}</th>
      </tr>
    </thead>
    <tbody>
      {ROWS.map(({ name, unit, digits, read }) => (
        <tr key={name}>
          <th scope="row">{t(`figure.${name}`)}</th>
          {[open, closed].map((state, i) => (
            <td key={i === 0 ? "open" : "closed"}>
              <bdi>{formatQuantity(read(state), unit, digits)}</bdi>
            </td>
          ))}
        </tr>
      ))}
    </tbody>
  </table>
);
