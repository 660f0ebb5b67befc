/**
 * Measured less modelled daily means at 5 cm: r(t) = δ0 + δ1 x(t) + fast + slow + noise.
 *
 * δ0 corrects the surface's constant, δ1 its sunshine term; x(t) is the 5 cm response to (1 - c)(Q - 1), with Q the
 * day's sunshine number and c its snow cover. All variances are multiplied by `scale`.
 */
export interface ResidualModel {
  /** w: the variance of this climate over that of the average station. */
  readonly scale: number;
  /** P: variance of δ0, covariance of δ0 and δ1, variance of δ1 [K²]. */
  readonly siteK2: readonly [constant: number, both: number, sunshine: number];
  /** Weather that the model gets wrong; its correlation decays as exp(-|dt| / days). */
  readonly fastK2: number;
  readonly fastDays: number;
  /** Seasonal errors: moisture, growth of the cover. */
  readonly slowK2: number;
  readonly slowDays: number;
  /** Noise of the probe from day to day [K²]. */
  readonly noiseK2: number;
}

/**
 * Variances [K²] and decay times [d], named as in `ResidualModel`: fitted to 99 stations of the U.S. Climate Reference
 * Network.
 */
const UNDER_COVER = { fastK2: 0.75, fastDays: 2.2, slowK2: 0.7, slowDays: 80, noiseK2: 0.05 };

/**
 * Residuals of the model that uses the place's annual precipitation (T1).
 *
 * @param aridityLA LA = ln(AI + 0.1) + 0.6, AI annual precipitation over annual reference evaporation, 0 to 2.
 * @returns The residual model; w = exp(-0.35 LA), so dry places err more.
 *
 * Validity: fitted to 99 stations under natural cover, 26-49° N, daily means at 5 cm, March to October 2009-2024.
 * Source: our own study of the U.S. Climate Reference Network (fixtures/golden/probe-update.json has worked values).
 * @example residualsWithRain(0.6953).scale // => 0.784
 */
export function residualsWithRain(aridityLA: number): ResidualModel {
  return { scale: Math.exp(-0.35 * aridityLA), siteK2: [0.87, 0.28, 3.9], ...UNDER_COVER };
}

/**
 * Residuals of the model that uses temperatures alone (T0).
 *
 * @param vapourV V: the mean daily rise of saturation vapour pressure from minimum to maximum, kept within 0.4 to 2.8,
 *                less 1.2 [kPa].
 * @returns The residual model; w = 0.85 exp(0.45 V).
 *
 * Validity, Source: as `residualsWithRain`.
 * @example residualsWithoutRain(-0.3).scale // => 0.743
 */
export function residualsWithoutRain(vapourV: number): ResidualModel {
  return { scale: 0.85 * Math.exp(0.45 * vapourV), siteK2: [1.03, 0.68, 5], ...UNDER_COVER };
}

/**
 * The same for a bare bed, where the weather's errors are larger and last longer.
 *
 * Validity: one plot, Hamburg, April to October 2018; coverage of an 80 % interval 0.77 there (0.65 without this).
 * Source: our own study of that plot's hourly record.
 */
export const onBareGround = (model: ResidualModel): ResidualModel => ({ ...model, fastK2: 1.4, fastDays: 5 });

/**
 * Prior variance of a single day's measured mean about the model's.
 *
 * @param model The residuals.
 * @param x     The 5 cm response to sunshine on that day, about -1 to 1.
 * @returns Variance [K²], the probe's noise included.
 *
 * Formula: w (P00 + 2 x P01 + x² P11 + fast + slow + noise)
 * @example residualVarianceK2(residualsWithRain at w 0.784, 0.1) // => 1.933
 */
export function residualVarianceK2(model: ResidualModel, x: number): number {
  const { scale, fastK2, slowK2, noiseK2 } = model;
  return scale * (siteCovarianceK2(model, x, x) + fastK2 + slowK2 + noiseK2);
}

/**
 * Covariance of two days' residuals, without the probe's noise.
 *
 * @param model    The residuals.
 * @param daysOff  Days from one to the other, of either sign.
 * @param x        The response to sunshine on the one, x' on the other.
 * @returns Covariance [K²].
 *
 * Formula: w (P00 + (x + x') P01 + x x' P11 + fast exp(-|dt|/fastDays) + slow exp(-|dt|/slowDays))
 */
export function residualCovarianceK2(model: ResidualModel, daysOff: number, x: number, otherX: number): number {
  const apart = Math.abs(daysOff);
  const fast = model.fastK2 * Math.exp(-apart / model.fastDays);
  const slow = model.slowK2 * Math.exp(-apart / model.slowDays);
  return model.scale * (siteCovarianceK2(model, x, otherX) + fast + slow);
}

function siteCovarianceK2({ siteK2: [constant, both, sunshine] }: ResidualModel, x: number, otherX: number): number {
  return constant + (x + otherX) * both + x * otherX * sunshine;
}
