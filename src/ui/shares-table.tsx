/** Where the blood of each vein goes, as measured in the flow field. */

import { formatNumber, t } from "../i18n/index.ts";
import type { FieldReadings } from "../sim/flow-field/flow-field.ts";

const FROM = ["ivc", "svc"] as const;

export function SharesTable({ readings }: { readonly readings: FieldReadings }) {
  const into = [...new Set(FROM.flatMap((name) => Object.keys(readings.shares[name] ?? {})))];
  return (
    <table>
      <caption>{t("numbers.shares")}</caption>
      <thead>
        <tr>
          <th scope="col">{t("numbers.from")}</th>
          {into.map((name) => (
            <th scope="col" key={name}>
              {t(`opening.${name}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {FROM.filter((name) => readings.shares[name]).map((name) => (
          <tr key={name}>
            <th scope="row">{t(`opening.${name}`)}</th>
            {into.map((outlet) => (
              <td key={outlet}>{`${formatNumber(100 * (readings.shares[name]![outlet] ?? 0), 0)}\u202f%`}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
