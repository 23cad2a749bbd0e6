/** Two quantities changed against each other: a figure in each cell, coloured on a published uniform map. The table is its own text. */

import { formatNumber, t, unitSymbol } from "../../i18n/index.ts";
import { type MapName, mapColour } from "../../scenes/theme/maps.ts";
import { inkOn, placesOf } from "./map-cells.ts";
import "./traces.css";
import { entryAt, present } from "../../sim/checked/present.ts";

export interface ParameterMapProps {
  /** in words, unit of the cells included */
  readonly title: string;
  readonly across: {
    readonly name: string;
    readonly unit: string;
    readonly values: readonly number[];
    readonly digits: number;
  };
  readonly down: {
    readonly name: string;
    readonly unit: string;
    readonly values: readonly number[];
    readonly digits: number;
  };
  /** [down][across]; null while unanswered or without an answer */
  readonly cells: readonly (readonly (number | null)[])[];
  readonly digits: number;
  readonly map: MapName;
  /** the cell of the scene's own state */
  readonly here?: { readonly across: number; readonly down: number };
  /** CSS px of the smallest words */
  readonly type: number;
}

/** Units are given once, in the corner, so that the heads of rows and columns stay narrow. */
const withUnit = ({ name, unit }: { readonly name: string; readonly unit: string }): string =>
  unitSymbol(unit) ? `${name}, ${unitSymbol(unit)}` : name;

export function ParameterMap({ title, across, down, cells, digits, map, here, type }: ParameterMapProps) {
  const places = placesOf(cells);
  return (
    <figure class="parameter-map" style={{ fontSize: `${type}px` }}>
      <table>
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">{t("traces.downAcross", { down: withUnit(down), across: withUnit(across) })}</th>
            {across.values.map((value) => (
              <th scope="col" key={value}>
                {formatNumber(value, across.digits)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {down.values.map((value, i) => (
            <tr key={value}>
              <th scope="row">{formatNumber(value, down.digits)}</th>
              {across.values.map((column, k) => {
                const place = places[i]?.[k] ?? null;
                if (place === null) return <td key={column}>{t("traces.none")}</td>;
                const colour = mapColour(map, place);
                const isHere = here !== undefined && here.across === k && here.down === i;
                return (
                  <td
                    key={column}
                    data-here={isHere ? "" : undefined}
                    style={{
                      background: `rgb(${colour.map((part) => Math.round(255 * part)).join(" ")})`,
                      color: inkOn(colour),
                    }}
                  >
                    {formatNumber(present(entryAt(cells, i)[k]), digits)}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </figure>
  );
}
