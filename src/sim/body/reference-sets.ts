/**
 * The three reference bodies: one parameter set each, in mmHg, mL and s.
 * Composites inside published ranges (physiology values, section 4; its column "basis" names each range):
 * end-systolic and end-diastolic elastance of single ventricles: Int J Cardiol 2013;168:5385 and Saiki, JAHA 2016;
 * venous compliance 1.6-2 mL/mmHg/kg: Rothe 1983; the remainder textbook ranges (docs/constants-from-memory.md).
 * Filling curves and vessels are stated in place, that is at the chest's and belly's mean resting pressure.
 */
export interface ReferenceSet {
  /** m2 */
  readonly bsa: number;
  /** 1/min */
  readonly heartRate: number;
  /** mmHg/mL, mL, mmHg, 1/mL */
  readonly ventricleElastance: number;
  readonly ventricleUnstressed: number;
  readonly ventriclePassivePressure: number;
  readonly ventriclePassiveRate: number;
  readonly rightVentricleElastance: number;
  readonly rightVentricleUnstressed: number;
  readonly rightVentriclePassivePressure: number;
  readonly rightVentriclePassiveRate: number;
  readonly atriumElastanceRelaxed: number;
  readonly atriumElastanceContracted: number;
  readonly atriumUnstressed: number;
  /** mL/mmHg */
  readonly arteryCompliance: number;
  readonly upperVeinCompliance: number;
  readonly splanchnicCompliance: number;
  readonly legVeinCompliance: number;
  readonly ivcCompliance: number;
  readonly pulmonaryArteryCompliance: number;
  readonly pulmonaryVeinCompliance: number;
  /** mL */
  readonly arteryUnstressed: number;
  readonly upperVeinUnstressed: number;
  readonly splanchnicUnstressed: number;
  readonly legVeinUnstressed: number;
  readonly ivcUnstressed: number;
  readonly pulmonaryArteryUnstressed: number;
  readonly pulmonaryVeinUnstressed: number;
  /** mL, of a person living with the circulation that the set describes */
  readonly bloodVolume: number;
  /** mmHg.s/mL */
  readonly upperResistance: number;
  readonly splanchnicResistance: number;
  readonly legResistance: number;
  readonly hepaticResistance: number;
  readonly legVeinResistance: number;
  readonly pulmonaryVeinResistance: number;
  readonly atrioventricularValveResistance: number;
  readonly semilunarValveResistance: number;
  /** mmHg.s2/mL2 */
  readonly atrioventricularValveQuadratic: number;
  readonly semilunarValveQuadratic: number;
  /** mmHg.s2/mL */
  readonly aortaInertance: number;
  /** mmHg: what the reflex defends and what fixes the size of the collaterals */
  readonly arterialMean: number;
  /** mmHg */
  readonly atrialPressure: number;
  /** L/min/m2 */
  readonly outputIndex: number;
}

/** 5 years, one ventricle. */
export const CHILD: ReferenceSet = {
  bsa: 0.72,
  heartRate: 95,
  ventricleElastance: 3.9,
  ventricleUnstressed: 4,
  ventriclePassivePressure: 0.9,
  ventriclePassiveRate: 0.05,
  rightVentricleElastance: 1.46,
  rightVentricleUnstressed: 5.4,
  rightVentriclePassivePressure: 0.5,
  rightVentriclePassiveRate: 0.0488,
  atriumElastanceRelaxed: 0.35,
  atriumElastanceContracted: 0.8,
  atriumUnstressed: 3,
  arteryCompliance: 0.42,
  upperVeinCompliance: 6,
  splanchnicCompliance: 14,
  legVeinCompliance: 6,
  ivcCompliance: 3,
  pulmonaryArteryCompliance: 1.6,
  pulmonaryVeinCompliance: 3,
  arteryUnstressed: 75,
  upperVeinUnstressed: 190,
  splanchnicUnstressed: 340,
  legVeinUnstressed: 160,
  ivcUnstressed: 35,
  pulmonaryArteryUnstressed: 25,
  pulmonaryVeinUnstressed: 85,
  bloodVolume: 1430,
  upperResistance: 3.34,
  splanchnicResistance: 4.29,
  legResistance: 7.58,
  hepaticResistance: 0.09,
  legVeinResistance: 0.16,
  pulmonaryVeinResistance: 0.012,
  atrioventricularValveResistance: 0.006,
  semilunarValveResistance: 0.012,
  atrioventricularValveQuadratic: 3e-5,
  semilunarValveQuadratic: 1.2e-4,
  aortaInertance: 0.001,
  arterialMean: 70,
  atrialPressure: 7,
  outputIndex: 3.16,
};

/** 20 years, one ventricle. */
export const ADULT: ReferenceSet = {
  bsa: 1.72,
  heartRate: 76,
  ventricleElastance: 1.65,
  ventricleUnstressed: 10,
  ventriclePassivePressure: 0.9,
  ventriclePassiveRate: 0.0186,
  rightVentricleElastance: 0.56,
  rightVentricleUnstressed: 14.7,
  rightVentriclePassivePressure: 0.5,
  rightVentriclePassiveRate: 0.018,
  atriumElastanceRelaxed: 0.15,
  atriumElastanceContracted: 0.33,
  atriumUnstressed: 10,
  arteryCompliance: 1,
  upperVeinCompliance: 18,
  splanchnicCompliance: 46,
  legVeinCompliance: 20,
  ivcCompliance: 8,
  pulmonaryArteryCompliance: 3.8,
  pulmonaryVeinCompliance: 9,
  arteryUnstressed: 260,
  upperVeinUnstressed: 560,
  splanchnicUnstressed: 1130,
  legVeinUnstressed: 600,
  ivcUnstressed: 110,
  pulmonaryArteryUnstressed: 70,
  pulmonaryVeinUnstressed: 260,
  bloodVolume: 4600,
  upperResistance: 2.36,
  splanchnicResistance: 2.52,
  legResistance: 4.15,
  hepaticResistance: 0.05,
  legVeinResistance: 0.075,
  pulmonaryVeinResistance: 0.006,
  atrioventricularValveResistance: 0.003,
  semilunarValveResistance: 0.006,
  atrioventricularValveQuadratic: 5e-6,
  semilunarValveQuadratic: 3e-5,
  aortaInertance: 0.0006,
  arterialMean: 86,
  atrialPressure: 7.6,
  outputIndex: 2.76,
};

/** Grown, two ventricles. */
export const HEALTHY: ReferenceSet = {
  bsa: 1.75,
  heartRate: 70,
  ventricleElastance: 2.4,
  ventricleUnstressed: 10,
  ventriclePassivePressure: 0.8,
  ventriclePassiveRate: 0.0193,
  rightVentricleElastance: 0.55,
  rightVentricleUnstressed: 15,
  rightVentriclePassivePressure: 0.5,
  rightVentriclePassiveRate: 0.0176,
  atriumElastanceRelaxed: 0.15,
  atriumElastanceContracted: 0.3,
  atriumUnstressed: 10,
  arteryCompliance: 1.4,
  upperVeinCompliance: 22,
  splanchnicCompliance: 58,
  legVeinCompliance: 26,
  ivcCompliance: 10,
  pulmonaryArteryCompliance: 4.3,
  pulmonaryVeinCompliance: 10,
  arteryUnstressed: 280,
  upperVeinUnstressed: 640,
  splanchnicUnstressed: 1250,
  legVeinUnstressed: 680,
  ivcUnstressed: 130,
  pulmonaryArteryUnstressed: 80,
  pulmonaryVeinUnstressed: 300,
  bloodVolume: 4450,
  upperResistance: 2.45,
  splanchnicResistance: 2.4,
  legResistance: 4.6,
  hepaticResistance: 0.04,
  legVeinResistance: 0.07,
  pulmonaryVeinResistance: 0.006,
  atrioventricularValveResistance: 0.0025,
  semilunarValveResistance: 0.004,
  atrioventricularValveQuadratic: 5e-6,
  semilunarValveQuadratic: 2e-5,
  aortaInertance: 0.0005,
  arterialMean: 93,
  atrialPressure: 7.5,
  outputIndex: 3.21,
};
