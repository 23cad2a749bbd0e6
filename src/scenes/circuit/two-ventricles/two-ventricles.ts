/** A heart with two ventricles: painted once, its chambers swollen by their computed volumes, its valves moved by the computed flow. */
import { Container, Graphics } from "pixi.js";
import type { Circulation } from "../../../sim/circulation/answer/answer.ts";
import { anatomyOf } from "../../anatomy/chest-anatomy.ts";
import { type Painted, servesAt, sheet } from "../../anatomy/painted-sheet.ts";
import { OUTSIDE, partOfFullest, sectionOf, standingAt, type Ventricle } from "../../anatomy/standing.ts";
import type { Theme } from "../../theme/theme.ts";
import { chestFrame } from "../chest-plan.ts";
import { saturationOf } from "../circuit-blood.ts";
import type { Emphasis } from "../emphasis.ts";
import { PIECES, type PieceName, paintingOf } from "./heart-pieces.ts";
import { PIVOT } from "./heart-plan.ts";
import { outlinesOf } from "./lit-outlines.ts";
import { drawValves } from "./valve-drawing.ts";
import { openingsAt } from "./valve-openings.ts";

interface Moved {
  readonly circulation: Circulation;
  /** s of blood time */
  readonly time: number;
  readonly still: boolean;
  /** heart and lungs fill the picture */
  readonly close?: boolean;
  /** mm by which the diaphragm's hole for the lower vein stands lower against the heart */
  readonly down: number;
}

/** Containers in mm of the chest, y up. */
export interface TwoVentricles {
  /** behind liver and diaphragm */
  readonly deep: Container;
  /** beneath the blood that runs behind the heart */
  readonly rear: Container;
  /** over the vessels that open into the heart; their blood's marks lie over it, and the valves over those */
  readonly chambers: Container;
  readonly valves: Container;
  /** @param density device pixels a millimetre */
  draw(moved: Moved, density: number, theme: Theme, emphasis: Emphasis): void;
  release(): void;
}

/** Parts of an atrium's change by which its width and its height follow: the veins that enter it hold it. */
const HELD = { right: [0.25, 0.06], left: [0.5, 0.5] } as const;

const REAR: readonly PieceName[] = ["liverVeins", "rear", "leftAtrium"];

export function twoVentricles(): TwoVentricles {
  const [deep, rear, chambers, valves] = [new Container(), new Container(), new Container(), new Container()];
  const [atrioventricular, semilunar, light] = [new Graphics(), new Graphics(), new Graphics()];
  const sheets = Object.fromEntries(PIECES.map((name) => [name, sheet()])) as Record<PieceName, Painted>;
  for (const name of PIECES.filter((each) => each !== "inside"))
    (name === "descending" ? deep : REAR.includes(name) ? rear : chambers).addChild(sheets[name].view);
  chambers.addChild(light);
  // Rings and papillary muscles belong to the ventricles, which swell; the semilunar valves to the vessels.
  valves.addChild(sheets.inside.view, atrioventricular, semilunar);
  atrioventricular.pivot.set(...PIVOT.ventricle);
  atrioventricular.position.set(...PIVOT.ventricle);
  let painted = "";
  let fine = 0;
  let opened = "";

  const paint = ({ circulation, close = false }: Moved, density: number, theme: Theme): void => {
    const mixed = saturationOf(circulation, "pulmonaryArtery");
    const key = `${theme.name} ${close} ${Object.values(circulation.saturations).map(Math.round)} ${Math.round(mixed)}`;
    if (key === painted && servesAt(fine, density)) return;
    painted = key;
    fine = density;
    opened = "";
    const painting = paintingOf(
      anatomyOf(chestFrame("two-ventricle", close)),
      { ...circulation.saturations, mixed },
      close,
      theme,
    );
    for (const name of PIECES) {
      const { bounds, pivot, paint } = painting[name];
      sheets[name].paint(bounds, density, pivot, paint);
    }
  };

  const swell = ({ circulation, time, still, down }: Moved): void => {
    // They are drawn at their fullest.
    const size = (volume: string) => (still ? 1 : partOfFullest(circulation, volume, time));
    const section = (name: Ventricle) => (still ? 1 : sectionOf(circulation, name, time));
    const [left, right] = [section("ventricle"), section("rightVentricle")];
    const outside = 1 + OUTSIDE * ((left + right) / 2 - 1);
    for (const [name, scale] of [
      ["leftCavity", left],
      ["rightCavity", right],
      ["leftBed", outside],
      ["rightBed", outside],
      ["conus", outside],
      ["muscle", outside],
      ["inside", outside],
    ] as const)
      sheets[name].view.scale.set(scale);
    atrioventricular.scale.set(outside);
    for (const [name, volume, held] of [
      ["leftAtrium", "atrium", HELD.left],
      ["rightAtrium", "rightAtrium", HELD.right],
    ] as const) {
      const [across, along] = held.map((part) => 1 + part * (size(volume) - 1));
      sheets[name].view.scale.set(across, along);
    }
    sheets.hiatus.view.y = -down;
  };

  return {
    deep,
    rear,
    chambers,
    valves,
    draw(moved, density, theme, { lit, dim }) {
      const { circulation, time, still, close = false } = moved;
      const shown = circulation.request.stage === "two-ventricle";
      for (const part of [deep, rear, chambers, valves]) part.visible = shown;
      if (!shown) return;
      paint(moved, density, theme);
      swell(moved);
      const openings = openingsAt(circulation, time, still, standingAt(circulation, time, still));
      const key = Object.values(openings).join();
      if (key !== opened) {
        opened = key;
        drawValves({ atrioventricular, semilunar }, openings, theme);
      }
      light.clear();
      for (const outline of outlinesOf(lit, close))
        light.poly(outline.flat()).stroke({ color: theme.colour.accent, width: 2, join: "round" });
      const alpha = lit.size > 0 ? 1 - dim * 0.8 : 1;
      for (const name of PIECES) if (!REAR.includes(name)) sheets[name].view.alpha = alpha;
      atrioventricular.alpha = semilunar.alpha = alpha;
    },
    release() {
      for (const name of PIECES) sheets[name].release();
    },
  };
}
