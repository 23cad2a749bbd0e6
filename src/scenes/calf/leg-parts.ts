/**
 * Where the tissues of a left lower leg lie, cut open and seen from its inner side, toes to the right. Two plane units a
 * millimetre of a leg with a tibia of 340 mm; lengths of the bones, and the courses of muscles and veins, as in anatomy
 * textbooks (from memory). Veins are drawn wider than life (vein.ts).
 */
import { spots } from "../drawing/curve-drawing.ts";
import { loopOf, partOf } from "./rounded.ts";

/** From behind the knee over calf, heel and sole to the toes, and over patella and shin to them. */
export const SKIN = partOf(
  "166 -30, 176 40, 184 96, 172 152, 136 212, 106 282, 94 352, 100 432, 127 522, 161 612, 186 690, 196 760, 191 820, 178 872, 174 926, 188 966, 228 986, 300 985, 372 970, 450 966, 520 978, 588 990, 640 990, 684 990, 710 980, 720 958",
  "430 -30, 446 20, 464 70, 456 130, 438 180, 427 230, 419 300, 412 400, 404 520, 397 640, 396 740, 404 796, 426 828, 470 848, 520 866, 580 890, 640 914, 684 926, 710 936, 720 958",
);
/** Deep fascia around the muscles, from behind the knee to the heel and up the shin. */
export const FASCIA = partOf(
  "200 -30, 208 40, 212 96, 200 156, 164 220, 136 288, 122 354, 128 432, 152 520, 184 608, 204 690, 208 760, 203 820, 197 868, 212 920",
  "410 -30, 424 30, 434 80, 430 140, 414 206, 409 240, 403 310, 396 400, 389 520, 382 640, 381 720, 372 780, 350 830, 300 880, 212 920",
);

/** Calf muscle with its two heads, from the condyles of the femur down to the Achilles tendon. */
export const GASTROCNEMIUS = partOf(
  "298 60, 272 80, 232 124, 196 178, 160 236, 137 298, 127 358, 132 430, 152 502, 178 572",
  "298 60, 290 90, 260 166, 234 224, 210 288, 194 352, 184 422, 177 490, 176 532, 178 572",
);
/** The near one of its heads, which springs from the back of the inner condyle and crosses the vein; it ends in the tendon, fibre by fibre. */
export const INNER_HEAD = partOf(
  "304 36, 276 48, 240 92, 202 146, 164 216, 139 290, 128 356, 132 430, 147 490, 170 570",
  "300 112, 284 122, 262 158, 238 204, 218 248, 204 296, 197 350, 194 420, 193 490, 196 570",
);
export const SOLEUS = partOf(
  "302 204, 268 216, 226 246, 184 296, 162 356, 154 426, 158 496, 172 564, 192 634, 206 690, 216 734, 224 784",
  "302 204, 290 226, 254 260, 238 306, 237 380, 237 440, 238 500, 240 560, 243 630, 240 690, 233 740, 224 784",
);
/** Tibialis posterior and its neighbours, between the vein and the bones. */
export const DEEP_FLEXORS = partOf(
  "306 184, 288 214, 272 262, 264 316, 262 380, 262 450, 263 520, 268 600, 276 670, 290 730, 303 776",
  "306 184, 326 204, 333 262, 334 350, 333 420, 331 490, 327 560, 322 630, 316 690, 308 740, 303 776",
);
/** What lies farther from us between calf muscles and bones. */
export const MUSCLE_BED = partOf(
  "296 200, 246 220, 200 266, 178 330, 168 420, 172 520, 192 610, 222 700, 262 764",
  "296 200, 320 220, 334 266, 334 330, 333 420, 328 520, 320 610, 308 700, 262 764",
);
/** Fat between the tendon, the heel's bone and the deep muscles. */
export const PAD = partOf(
  "244 640, 238 700, 232 750, 228 800, 226 846, 220 880",
  "244 640, 256 700, 264 750, 276 800, 292 846, 300 876",
);
/** Far: from the thigh to the fibula. What lies in front of the shin's outer side is hidden by the tibia. */
export const BICEPS_FEMORIS = partOf(
  "196 -30, 204 20, 224 80, 260 138, 292 182",
  "236 -30, 242 20, 256 76, 278 136, 292 182",
);
export const QUADRICEPS = partOf("380 -40, 380 -16, 384 8, 398 40", "416 -40, 414 -16, 410 10, 398 40");
/** Of the great toe. */
export const NAIL = spots("690 931, 703 935, 710 942");
/** Muscles of the sole. */
export const SOLE = partOf(
  "236 950, 290 942, 350 936, 430 930, 520 944, 592 964",
  "236 950, 290 958, 350 956, 430 950, 520 962, 592 964",
);
/** The one tendon of both calf muscles, from between them to the back of the calcaneus, on which it spreads. */
export const ACHILLES_TENDON = partOf(
  "144 452, 156 508, 178 582, 198 650, 208 714, 212 768, 209 822, 202 868, 200 900, 205 930, 214 954",
  "188 452, 192 510, 208 588, 219 656, 225 714, 228 768, 228 822, 226 862, 214 894, 208 926, 214 954",
);

export const TIBIA = loopOf(
  "346 147, 312 143, 292 146, 284 158, 287 172, 298 188, 311 212, 319 244, 326 300, 330 400, 326 520, 321 640, 314 730, 308 780, 309 812, 316 836, 330 848, 344 842, 354 828, 366 820, 380 818, 384 802, 376 730, 375 640, 382 520, 389 400, 396 300, 404 244, 411 226, 413 208, 405 190, 405 168, 408 154, 396 144, 346 147",
);
/** Behind it, seen at its head and between the muscles. */
export const FIBULA = partOf(
  "294 168, 278 180, 282 208, 296 250, 302 400, 298 560, 294 700, 290 780, 286 830, 300 862",
  "294 168, 314 182, 312 208, 320 250, 330 400, 326 560, 318 700, 316 780, 320 830, 300 862",
);
export const FEMUR = loopOf(
  "356 -60, 332 -40, 329 -6, 322 24, 306 38, 286 44, 275 60, 273 86, 284 112, 306 130, 340 136, 374 131, 398 114, 409 88, 404 58, 391 28, 385 -4, 384 -40, 356 -60",
);
/** What of both stands nearest to us: their inner condyles, and the inner malleolus. */
export const CONDYLES = [
  "296 46, 279 60, 276 86, 288 112, 312 129, 342 134, 366 124, 376 104, 368 82, 346 64, 320 50, 296 46",
  "288 158, 294 174, 312 190, 340 195, 368 188, 390 174, 397 158, 380 150, 340 152, 304 149, 288 158",
].map(loopOf);
export const MALLEOLUS = loopOf(
  "336 744, 322 770, 313 798, 312 822, 318 842, 330 856, 344 859, 354 852, 362 838, 370 818, 370 792, 362 764, 350 742, 336 744",
);
export const PATELLA = loopOf("424 30, 414 54, 416 84, 426 106, 440 80, 439 46, 424 30");
export const CALCANEUS = loopOf(
  "224 866, 244 870, 268 876, 292 872, 312 868, 334 872, 356 880, 380 884, 402 890, 409 906, 398 922, 358 928, 318 934, 286 946, 264 962, 238 966, 216 954, 206 930, 208 902, 213 880, 224 866",
);

/** Its ledge towards us, the sustentaculum, on which the talus rests. */
export const SUSTENTACULUM = loopOf(
  "316 870, 338 873, 360 875, 374 882, 364 892, 336 896, 318 890, 311 879, 316 870",
);

/** The inner arch of the foot under the malleolus: talus, navicular, cuneiform, metatarsal and the toe's two bones. */
export const ARCH = [
  "292 858, 300 842, 308 824, 330 814, 354 816, 370 828, 378 840, 392 842, 408 850, 413 866, 406 881, 390 884, 372 879, 354 878, 338 882, 324 866, 306 868, 292 858",
  "422 842, 415 845, 414 854, 419 868, 415 886, 417 900, 424 907, 432 907, 443 901, 447 892, 448 870, 445 856, 438 847, 422 842",
  "458 850, 450 852, 451 862, 451 888, 450 904, 456 912, 482 918, 492 914, 495 902, 496 884, 494 872, 486 862, 472 854, 458 850",
  "499 886, 508 878, 520 884, 540 900, 566 914, 588 919, 606 928, 612 942, 606 954, 592 957, 574 949, 550 937, 524 924, 505 920, 497 905, 499 886",
  "617 938, 626 935, 640 943, 652 946, 662 951, 663 960, 655 966, 638 962, 624 966, 616 957, 617 938",
  "668 952, 676 949, 689 954, 698 961, 689 968, 676 968, 668 964, 668 952",
].map(loopOf);
/** Menisci, between the bones of the knee. */
export const MENISCI = [
  "292 132, 289 140, 300 141, 328 138, 308 136, 292 132",
  "402 132, 406 140, 393 141, 364 138, 386 136, 402 132",
].map(loopOf);
/** The outer side of the foot, behind its arch. */
export const OUTER_FOOT = partOf(
  "380 904, 424 900, 484 916, 560 942, 600 960",
  "380 904, 388 934, 446 946, 522 958, 600 960",
);

/** Tendons and ligaments: their way and their width. */
export const TENDONS = [
  { line: spots("402 -20, 412 6, 425 38"), width: 13 },
  { line: spots("427 100, 424 150, 411 204"), width: 13 },
  { line: spots("370 640, 375 720, 381 790, 394 828, 428 854, 466 888"), width: 8 },
  { line: spots("232 954, 320 958, 430 954, 520 966, 592 968"), width: 5 },
  // Of the great toe's long flexor, under the heel bone's ledge.
  { line: spots("262 740, 268 800, 290 856, 330 896, 400 916, 470 924, 560 952, 630 968"), width: 6 },
] as const;
/** Of tibialis posterior, behind the inner malleolus to the navicular. */
export const INNER_TENDON = {
  line: spots("303 744, 300 800, 303 838, 320 864, 356 880, 392 886, 424 886"),
  width: 8,
};

/** Small saphenous vein, from the foot's outer side behind the tendon into the fat behind the muscles, up to where it joins the deep one; its half width at both ends. */
export const SMALL_SAPHENOUS = {
  line: spots(
    "286 872, 262 866, 238 856, 219 838, 208 812, 203 764, 197 692, 176 612, 143 524, 117 434, 111 352, 124 284, 154 216, 186 158, 208 108, 228 74, 246 48",
  ),
  half: [0.8, 4.6],
} as const;
/** Great saphenous vein, nearest to us under the skin of the inner side: from the great toe in front of the inner malleolus, along the tibia, and behind the knee's inner condyle to the thigh. */
export const GREAT_SAPHENOUS = {
  line: spots(
    "676 934, 640 917, 600 899, 560 884, 500 862, 440 844, 396 818, 366 780, 352 720, 348 640, 347 560, 345 470, 340 380, 330 300, 318 230, 306 160, 303 96, 310 40, 318 -30",
  ),
  half: [0.5, 5.2],
} as const;
/** Veins that run into the deep one: a perforating vein from the great saphenous, its valve at this part of its way, and those of heel and foot. */
export const TRIBUTARIES = {
  perforating: { line: spots("347 628, 326 616, 304 604, 282 592, 258 572"), half: [4, 5.4], valve: 0.36 },
  foot: [
    { line: spots("236 972, 268 958, 296 922, 312 890"), half: [0.3, 6] },
    { line: spots("560 940, 510 928, 460 920, 404 930"), half: [0.3, 5] },
  ],
} as const;
