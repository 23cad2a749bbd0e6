/**
 * Where the tissues of the lower leg lie, seen from its inner side, toes to the right: lengths as in an adult (tibia
 * about 370 mm, foot about 260 mm, common anatomy), two plane units a millimetre. The vein is drawn wider than life.
 */
import { spots } from "../drawing/curve-drawing.ts";
import { partOf } from "./rounded.ts";

/** From behind the knee over calf, heel and sole to the toes, and over patella and shin to them. */
export const SKIN = partOf(
  "172 -30, 186 50, 198 116, 176 196, 136 296, 118 390, 132 500, 168 620, 190 720, 188 800, 170 856, 148 905, 152 950, 196 978, 300 976, 420 984, 540 994, 616 996, 650 986, 664 962",
  "500 -30, 520 30, 534 80, 520 140, 500 200, 486 260, 470 400, 454 560, 440 700, 438 780, 452 826, 500 860, 574 890, 632 916, 658 936, 664 962",
);

/** Calf muscles: from femur and tibia back and down to the Achilles tendon. */
export const GASTROCNEMIUS = partOf(
  "366 92, 330 84, 290 98, 238 136, 196 206, 158 286, 140 366, 150 456, 174 536, 190 596",
  "366 92, 336 126, 292 174, 264 230, 246 300, 232 380, 220 460, 206 536, 190 596",
);
export const SOLEUS = partOf(
  "386 222, 300 236, 250 290, 226 370, 216 460, 208 540, 200 620, 210 706",
  "386 222, 336 262, 298 320, 292 400, 292 480, 284 570, 254 646, 210 706",
);
/** Between the vein and the tibia. */
export const DEEP_FLEXORS = partOf(
  "388 262, 336 286, 308 346, 308 470, 318 580, 336 680, 344 766",
  "388 262, 394 340, 388 450, 378 580, 364 690, 344 766",
);
/** Achilles tendon: from the muscles to the calcaneus. */
export const ACHILLES_TENDON = partOf(
  "186 486, 178 560, 190 640, 202 720, 200 790, 186 846, 176 898",
  "186 486, 206 560, 214 640, 222 720, 220 790, 210 846, 176 898",
);

export const TIBIA = partOf(
  "424 147, 376 146, 366 164, 380 204, 390 270, 388 400, 380 560, 370 700, 354 776, 349 812, 358 826, 388 821",
  "424 147, 472 146, 486 162, 482 188, 484 212, 464 266, 446 400, 430 560, 418 700, 422 770, 427 806, 420 824, 388 821",
);
export const CALCANEUS = partOf(
  "174 904, 188 874, 226 864, 270 874, 312 874, 344 888, 384 900, 420 906",
  "174 904, 172 930, 190 954, 230 956, 290 946, 350 940, 404 932, 420 906",
);

/** The other bones: femur, patella, talus, and the foot from its middle to the great toe. */
export const BONES = [
  partOf(
    "410 -30, 406 14, 386 50, 362 82, 366 114, 390 130, 424 126",
    "464 -30, 466 10, 478 42, 488 78, 480 112, 454 128, 424 126",
  ),
  partOf("510 34, 497 56, 496 88, 508 110", "510 34, 523 54, 524 84, 508 110"),
  partOf(
    "388 831, 360 836, 346 856, 350 874, 378 888, 430 892",
    "388 831, 416 835, 438 856, 462 864, 466 882, 430 892",
  ),
  partOf("470 868, 494 872, 522 888, 528 906, 504 918", "470 868, 466 898, 478 912, 504 918"),
  partOf("426 904, 462 908, 500 924, 522 932", "426 904, 424 930, 466 942, 522 932"),
  partOf("534 898, 562 910, 596 928, 608 944", "534 898, 530 922, 560 940, 594 954, 608 944"),
  partOf("614 944, 632 948, 646 960, 634 968", "614 944, 608 958, 618 968, 634 968"),
] as const;

/** Tendons before the knee, from thigh to patella and on to the tibia. */
export const KNEE_TENDONS = ["498 -30, 510 40", "508 106, 500 160, 484 212"].map(spots);

/** The vein's way below the ankle, and the small veins that run into it. */
export const FOOT_VEINS = [
  { line: spots("300 816, 301 846, 314 884, 346 920, 404 946, 480 958, 560 966, 616 968"), half: [30, 3] },
  { line: spots("404 946, 450 940, 510 940, 566 954"), half: [7, 2] },
  { line: spots("330 906, 312 938, 280 960, 236 966"), half: [7, 2] },
] as const;
