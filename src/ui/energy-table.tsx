/** The energy budget: who puts power in, where it is spent, and by how much the two sides fail to meet. */

import { formatNumber, formatQuantity, hasMessage, t, writeLoss } from "../i18n/index.ts";
import { present } from "../sim/checked/present.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import { hasPathway, type Stage } from "../sim/parameters/request.ts";

export function EnergyTable({ circulation }: { readonly circulation: Circulation }) {
  const { energy, extras, request } = circulation;
  const rows = (powers: Readonly<Record<string, number>>) =>
    Object.entries(powers)
      .sort(([, one], [, other]) => other - one)
      .map(([name, power]) => (
        <Row key={name} name={t(energyKey(name, request.stage))} power={power} whole={energy.in} />
      ));
  return (
    <details class="energy">
      <summary>{t("energy.title")}</summary>
      <table>
        <caption>{t("energy.caption")}</caption>
        <thead>
          <tr>
            <th scope="col">{t("energy.what")}</th>
            <th scope="col">{t("energy.power")}</th>
            <th scope="col">{t("energy.share")}</th>
          </tr>
        </thead>
        <tbody>
          {rows(energy.sources)}
          <Row name={t("energy.in")} power={energy.in} whole={energy.in} sum />
        </tbody>
        <tbody>
          {rows(energy.losses)}
          <Row name={t("energy.lost")} power={energy.lost} whole={energy.in} sum />
        </tbody>
      </table>
      <p>{t("energy.residual", { share: formatNumber(energy.residualPercent, 3) })}</p>
      {hasPathway(request.stage) && (
        <p>
          {t("energy.pathway", {
            power: writeLoss(circulation.pathway),
            ofVentricle: formatQuantity(present(extras.powerShare), "%", 1),
            ofHead: formatQuantity(present(extras.headShare), "%"),
          })}
        </p>
      )}
    </details>
  );
}

/** Beside a right heart the parts of the left one are called so. */
const energyKey = (name: string, stage: Stage): string => {
  const left = `energy.left${name.charAt(0).toUpperCase()}${name.slice(1)}`;
  return stage === "two-ventricle" && hasMessage(left) ? left : `energy.${name}`;
};

interface RowProps {
  readonly name: string;
  /** mW */
  readonly power: number;
  readonly whole: number;
  readonly sum?: boolean;
}

const Row = ({ name, power, whole, sum }: RowProps) => (
  <tr class={sum ? "sum" : undefined}>
    <th scope="row">{name}</th>
    <td>
      <bdi>{formatQuantity(power, "mW", 1)}</bdi>
    </td>
    <td>
      <bdi>{formatQuantity((100 * power) / whole, "%", 1)}</bdi>
    </td>
  </tr>
);
