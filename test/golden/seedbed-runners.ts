import { dampingDepthCm, lagH, swingAtDepthK } from '../../src/seedbed/damping.js';
import { type DayExtremes, dayCurve, soilDayShape } from '../../src/seedbed/day-curve.js';
import { dayLengthH } from '../../src/seedbed/day-length.js';
import { diffusivityFromLag, diffusivityFromSwings } from '../../src/seedbed/diffusivity-from-two-probes.js';
import { probeUpdate } from '../../src/seedbed/probe-update.js';
import { residualsWithRain, residualVarianceK2 } from '../../src/seedbed/residual-model.js';
import { seasonalDrift } from '../../src/seedbed/seasonal-drift.js';
import type { Runners } from './out.js';

interface Wave {
  readonly diffusivityM2s: number;
  readonly periodH: number;
}

export const seedbedRunners: Runners = {
  'seedbed/day-length': ({ latitudeDeg, dayOfYear }: { latitudeDeg: number; dayOfYear: number }) =>
    dayLengthH(latitudeDeg, dayOfYear),
  'seedbed/day-curve': ({ hour, depthCm, ...day }: DayExtremes & { hour: number; depthCm: number }) => {
    const next = { ...day, sunriseH: day.sunriseH + 24, sunsetH: day.sunsetH + 24 };
    return dayCurve(hour, day, next, soilDayShape(depthCm));
  },
  'seedbed/seasonal-drift': (given: {
    fromC: number;
    risingC: number;
    knownDays: number;
    nextDay: number;
    latitudeDeg: number;
    onDays: readonly number[];
  }) => {
    const known = Array.from({ length: given.knownDays }, (_, day) => given.fromC + given.risingC * day);
    const drift = seasonalDrift(known, given.nextDay, given.latitudeDeg, Math.max(...given.onDays) + 1);
    return given.onDays.map((day) => drift[day]!);
  },
  'seedbed/damping dampingDepthCm': ({ diffusivityM2s, periodH }: Wave) => dampingDepthCm(diffusivityM2s, periodH),
  'seedbed/damping swingAtDepthK': (given: Wave & { swingK: number; fromCm: number; toCm: number }) =>
    swingAtDepthK(given.swingK, given.fromCm, given.toCm, given.diffusivityM2s, given.periodH),
  'seedbed/damping lagH': (given: Wave & { fromCm: number; toCm: number }) =>
    lagH(given.fromCm, given.toCm, given.diffusivityM2s, given.periodH),
  'seedbed/damping: the whole wave': (
    given: Wave & { meanC: number; swingK: number; depthCm: number; hour: number },
  ) => {
    const { diffusivityM2s, periodH } = given;
    const sinceRise = given.hour - lagH(0, given.depthCm, diffusivityM2s, periodH);
    const swingK = swingAtDepthK(given.swingK, 0, given.depthCm, diffusivityM2s, periodH);
    return given.meanC + swingK * Math.sin((2 * Math.PI * sinceRise) / periodH);
  },
  'seedbed/diffusivity-from-two-probes: by swing': (given: { upperK: number; lowerK: number; apartCm: number }) =>
    diffusivityFromSwings(given.upperK, given.lowerK, given.apartCm),
  'seedbed/diffusivity-from-two-probes: by lag': (given: { lagH: number; apartCm: number }) =>
    diffusivityFromLag(given.lagH, given.apartCm),
  'seedbed/probe-update': (given: {
    scale: number;
    residualsK: readonly number[];
    sunThen: number;
    days: readonly number[];
    sun: readonly number[];
  }) => {
    const model = { ...residualsWithRain(0), scale: given.scale };
    const { residualsK, days, sun } = given;
    const known = { days: [...residualsK.keys()], sun: residualsK.map(() => given.sunThen), residualsK };
    const { correctionK, sdK } = probeUpdate(model, known, { days, sun });
    const sdWithoutProbeK = Math.sqrt(residualVarianceK2(model, given.sunThen));
    return { correctionK: [...correctionK], sdK: [...sdK], sdWithoutProbeK };
  },
};
