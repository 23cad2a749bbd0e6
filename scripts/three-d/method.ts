/** What the numbers were made with. A change that moves them takes a new version. */
export const METHOD = {
  version: 1,
  body: "union of the balls inscribed in the pathway's plane (z^2 < F(x, y)); straight round extensions of 1.2 diameters at the veins, 2.6 at the pulmonary arteries, 1.6 at the fenestration",
  blood: "Newtonian, 1060 kg/m3, viscosity by haemoglobin; rigid walls",
  flow: "prescribed at both veins (parabola, or one speed where told so), at the left pulmonary artery (parabola) and at the fenestration; pressure at the right pulmonary artery",
  solver: "D3Q27 cumulant lattice Boltzmann in single precision, interpolated bounce-back at the walls",
  read: "at the project's openings: total pressure weighted by the flow of each moment; power is what enters less what leaves by the lungs, blood through a fenestration counted as it entered below; drop is from the lower vein to the lungs",
  beyond:
    "estimate of what jets of narrowed pulmonary arteries lose past the openings, not counted in power and drop",
  shares:
    "tracers released as blood passes the veins' openings, counted at the lungs' and the fenestration's",
  uncertainty:
    "root of squares: standard error from batches of a flush time or more, the grid's error from cases run on several grids, and how far repeats from other starts lie apart",
  starts:
    "where tubes' streams meet near the place at which they change sides, a case was run again with the lower vein coming in first, and with the upper one; its values are the runs' mean",
  units: {
    length: "mm",
    flow: "mL/s",
    time: "s",
    power: "mW",
    drop: "mmHg",
    totalPressure: "Pa, from an arbitrary level",
  },
} as const;
