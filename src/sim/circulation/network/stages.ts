/** Which elements are joined in each stage. The only thing in which the five stages differ. */
import type { Stage } from "../../parameters/request.ts";

/** How a stage is joined up. */
export interface Connections {
  /** Where each great vein empties. "junction" is the joint of pathway and pulmonary arteries (with two ventricles: the main pulmonary artery). */
  readonly svcInto: "junction" | "rightAtrium";
  readonly ivcInto: "junction" | "atrium" | "rightAtrium";
  /** A right atrium and a right ventricle between veins and junction. */
  readonly rightHeart: boolean;
  /** Fraction (0 to 1) of an atrium's wall that the junction is made of: it gives way as that part of a relaxed atrium does. */
  readonly junctionWall: number;
  /** Whether that wall contracts with the atrium. */
  readonly junctionContracts: boolean;
}

export const CONNECTIONS: Readonly<Record<Stage, Connections>> = {
  "two-ventricle": {
    svcInto: "rightAtrium",
    ivcInto: "rightAtrium",
    rightHeart: true,
    junctionWall: 0.25,
    junctionContracts: false,
  },
  glenn: {
    svcInto: "junction",
    ivcInto: "atrium",
    rightHeart: false,
    junctionWall: 0.05,
    junctionContracts: false,
  },
  atriopulmonary: {
    svcInto: "junction",
    ivcInto: "junction",
    rightHeart: false,
    junctionWall: 1,
    junctionContracts: true,
  },
  "lateral-tunnel": {
    svcInto: "junction",
    ivcInto: "junction",
    rightHeart: false,
    junctionWall: 0.2,
    junctionContracts: false,
  },
  extracardiac: {
    svcInto: "junction",
    ivcInto: "junction",
    rightHeart: false,
    junctionWall: 0.05,
    junctionContracts: false,
  },
};
