/** One parameter over its range as small shapes at one scale, each with its number; a press takes that value. */
import { useMemo } from "preact/hooks";
import type { SweepCurve } from "../../chain/running-sweep.ts";
import { shapeOf } from "../../chain/shown-before.ts";
import { type Band, digitsOfStep, formatQuantity, t } from "../../i18n/index.ts";
import { sameShape, svgOutline } from "../../scenes/layers/outline.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { PathwayGeometry } from "../../sim/geometry/geometry.ts";
import type { NumberParameter } from "../../sim/parameters/parameter.ts";

export interface SmallMultiplesProps {
  readonly curve: SweepCurve;
  readonly parameter: NumberParameter;
  /** what is set now, in the parameter's unit */
  readonly here: number;
  /** The number under each shape. */
  readonly figure: (circulation: Circulation) => { readonly value: number; readonly band?: Band | undefined };
  readonly unit: string;
  readonly digits: number;
  readonly onChoose: (value: number) => void;
}

interface Drawn {
  readonly at: number;
  readonly circulation: Circulation;
  readonly geometry: PathwayGeometry;
  readonly path: string;
}

/** mm around the shapes */
const MARGIN = 3;

export function SmallMultiples(props: SmallMultiplesProps) {
  const { curve, parameter, here, figure, unit, digits, onChoose } = props;
  const solved = curve.points.filter(({ circulation }) => circulation).length;
  const shapes = useMemo(() => drawnOf(curve), [curve.name, solved, parameter.name]);
  const [first, ...others] = shapes;
  // A parameter that moves no wall has nothing to show here.
  if (!first || others.every(({ geometry }) => sameShape(geometry, first.geometry))) return null;
  const box = boxOf(shapes.map(({ geometry }) => geometry));
  return (
    <ol class="multiples" aria-label={t("traces.vary.shapes")}>
      {shapes.map(({ at, circulation, path }) => {
        const { value, band } = figure(circulation);
        return (
          <li key={at}>
            <button type="button" aria-pressed={at === here} onClick={() => onChoose(at)}>
              <svg viewBox={box} aria-hidden="true">
                <path d={path} />
              </svg>
              <b>{formatQuantity(at, parameter.unit, digitsOfStep(parameter.step))}</b>
              <span>{formatQuantity(value, unit, digits, band)}</span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}

const drawnOf = ({ points }: SweepCurve): readonly Drawn[] =>
  points.flatMap(({ at, circulation }) => {
    const geometry = circulation && shapeOf(circulation);
    return circulation && geometry ? [{ at, circulation, geometry, path: svgOutline(geometry) }] : [];
  });

/** One box for all, so that sizes can be compared. */
function boxOf(shapes: readonly PathwayGeometry[]): string {
  const side = (i: 0 | 1 | 2 | 3, pick: (...values: number[]) => number) =>
    pick(...shapes.map(({ bounds }) => bounds[i]));
  const [left, bottom] = [side(0, Math.min) - MARGIN, side(1, Math.min) - MARGIN];
  const [right, top] = [side(2, Math.max) + MARGIN, side(3, Math.max) + MARGIN];
  return `${left} ${-top} ${right - left} ${top - bottom}`;
}
