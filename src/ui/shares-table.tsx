/** Where the blood of each vein goes, with the band of each share. */

import { formatNumber, shareOf, t } from "../i18n/index.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import { BandText } from "./readout.tsx";

const FROM = ["ivc", "svc"] as const;
const INTO = ["left", "right"] as const;

export const SharesTable = ({ shares }: { readonly shares: NonNullable<Circulation["shares"]> }) => (
  <table class="shares">
    <caption>{t("numbers.shares")}</caption>
    <thead>
      <tr>
        <th scope="col">{t("numbers.from")}</th>
        {INTO.map((lung) => (
          <th scope="col" key={lung}>
            {t(`opening.${lung}`)}
          </th>
        ))}
      </tr>
    </thead>
    <tbody>
      {FROM.map((vein) => (
        <tr key={vein}>
          <th scope="row">{t(`opening.${vein}`)}</th>
          {INTO.map((lung) => {
            const { value, band } = shareOf(shares[vein], lung);
            return (
              <td key={lung}>
                <bdi>{`${formatNumber(value, 0)}\u202f%`}</bdi> <BandText band={band} digits={0} />
              </td>
            );
          })}
        </tr>
      ))}
    </tbody>
  </table>
);
