import type { BedMake } from '../../src/seedbed/bed.js';
import { conduct, hourlyMeans } from '../../src/seedbed/conduction/conduct.js';
import { dampingDepthCm, diurnalAmplitudeAtDepthK, lagH } from '../../src/seedbed/conduction/damping.js';
import { diffusivityFromAmplitudes, diffusivityFromLag } from '../../src/seedbed/probe/diffusivity-from-two-probes.js';
import { probeUpdate } from '../../src/seedbed/probe/probe-update.js';
import { type DayExtremes, dayCurve, soilDayShape } from '../../src/seedbed/sun/day-curve.js';
import { dayLengthH } from '../../src/seedbed/sun/day-length.js';
import { extraterrestrialMJ, sunlitH, sunshineMJ } from '../../src/seedbed/sun/sun.js';
import { continentalityOf, logAridityOf } from '../../src/seedbed/surface/climate-numbers.js';
import { DEEP_CM, diffusivityOf, gradedDepthsCm, nodeAt } from '../../src/seedbed/surface/ground.js';
import { referenceEvaporationMm, saturationKPa } from '../../src/seedbed/surface/reference-evaporation.js';
import { residualsWithRain, residualVarianceK2 } from '../../src/seedbed/surface/residual-model.js';
import { seasonalPersistence } from '../../src/seedbed/surface/seasonal-persistence.js';
import { snowCover, snowIndex, throughSnow, underSnowC } from '../../src/seedbed/surface/snow.js';
import { solAirC, surfaceOf } from '../../src/seedbed/surface/surface.js';
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
    const drift = seasonalPersistence(known, given.nextDay, given.latitudeDeg, Math.max(...given.onDays) + 1);
    return given.onDays.map((day) => drift[day]!);
  },
  'seedbed/damping dampingDepthCm': ({ diffusivityM2s, periodH }: Wave) => dampingDepthCm(diffusivityM2s, periodH),
  'seedbed/damping swingAtDepthK': (given: Wave & { swingK: number; fromCm: number; toCm: number }) =>
    diurnalAmplitudeAtDepthK(given.swingK, given.fromCm, given.toCm, given.diffusivityM2s, given.periodH),
  'seedbed/damping lagH': (given: Wave & { fromCm: number; toCm: number }) =>
    lagH(given.fromCm, given.toCm, given.diffusivityM2s, given.periodH),
  'seedbed/damping: the whole wave': (
    given: Wave & { meanC: number; swingK: number; depthCm: number; hour: number },
  ) => {
    const { diffusivityM2s, periodH } = given;
    const sinceRise = given.hour - lagH(0, given.depthCm, diffusivityM2s, periodH);
    const swingK = diurnalAmplitudeAtDepthK(given.swingK, 0, given.depthCm, diffusivityM2s, periodH);
    return given.meanC + swingK * Math.sin((2 * Math.PI * sinceRise) / periodH);
  },
  'seedbed/diffusivity-from-two-probes: by swing': (given: { upperK: number; lowerK: number; apartCm: number }) =>
    diffusivityFromAmplitudes(given.upperK, given.lowerK, given.apartCm),
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

  'seedbed/sun extraterrestrialMJ': ({ latitudeDeg, dayOfYear }: AtDay) => extraterrestrialMJ(latitudeDeg, dayOfYear),
  'seedbed/sun sunlitH': ({ latitudeDeg, dayOfYear }: AtDay) => sunlitH(latitudeDeg, dayOfYear),
  'seedbed/sun sunshineMJ': (given: { rangeK: number; extraterrestrialMJ: number }) =>
    sunshineMJ(given.rangeK, given.extraterrestrialMJ),
  'seedbed/reference-evaporation saturationKPa': ({ fromC, toC }: { fromC: number; toC: number }) =>
    saturationKPa(toC) - saturationKPa(fromC),
  'seedbed/reference-evaporation': (given: { minC: number; maxC: number; extraterrestrialMJ: number }) =>
    referenceEvaporationMm(given.minC, given.maxC, given.extraterrestrialMJ),
  'seedbed/climate-numbers humidityOf': ({ aridityIndex }: { aridityIndex: number }) => logAridityOf(aridityIndex),
  'seedbed/surface conductance under grass': ({ humidity }: { humidity: number }) =>
    surfaceOf(grass, { ...averagePlace, logAridity: humidity }).conductance,
  'seedbed/surface solAirC under grass': (given: {
    minC: number;
    maxC: number;
    extraterrestrialMJ: number;
    amplitudeK: number;
    aridityIndex: number | null;
    vapourKPa: number;
    rangeSeasonK: number;
  }) => {
    const surface = surfaceOf(grass, {
      continentality: continentalityOf(given.amplitudeK),
      vapourKPa: given.vapourKPa - 1.2,
      rangeSeason: (given.rangeSeasonK - 1.5) / 10,
      logAridity: given.aridityIndex === null ? null : logAridityOf(given.aridityIndex),
    });
    return solAirC(surface, (given.minC + given.maxC) / 2, given.maxC - given.minC, given.extraterrestrialMJ);
  },
  'seedbed/surface: sol-air temperature': (given: {
    airC: number;
    constantK: number;
    perWm2: number;
    sunWm2: number;
  }) => {
    const sunK = () => given.perWm2 * given.sunWm2;
    return solAirC({ ...surfaceOf(grass, null), constantK: given.constantK, perRangeK: 0, sunK }, given.airC, 10, 30);
  },
  'seedbed/snow snowIndex': ({ meanC, last }: { meanC: readonly number[]; last: number }) => {
    const indices: number[] = [];
    for (const mean of meanC) indices.push(snowIndex(indices.at(-1) ?? 0, mean));
    return indices.slice(-last);
  },
  'seedbed/snow: sol-air temperature and conductance under snow': (given: {
    solAirC: number;
    meanC: number;
    snow: number;
    conductance: number;
  }) => {
    const cover = snowCover(given.snow);
    return {
      solAirC: underSnowC(given.solAirC, given.meanC, cover),
      conductance: throughSnow(given.conductance, given.snow),
      cover,
    };
  },
  'seedbed/conduct: after a jump': (given: {
    fromC: number;
    solAirC: readonly (readonly [tempC: number, days: number])[];
    conductance: number;
    depthsCm: readonly number[];
    days: readonly number[];
  }) => {
    const ground = { ...loam, depthsCm: gradedDepthsCm(given.depthsCm, DEEP_CM) };
    const tempC = given.solAirC.flatMap(([temp, days]) => new Array<number>(24 * days).fill(temp));
    const top = { conductance: tempC.map(() => given.conductance), tempC };
    const profileC = new Float64Array(ground.depthsCm.length).fill(given.fromC);
    const edges = conduct(
      ground,
      profileC,
      { top },
      given.depthsCm.map((depth) => nodeAt(ground, depth)),
    );
    return given.days.map((day) => edges.map((one) => meanOfDay(hourlyMeans(one), day - 1)));
  },
  'seedbed/conduct: through the year': (given: {
    meanC: number;
    swingK: number;
    peakDay: number;
    aridityIndex: number;
    bottomCm: number;
    days: readonly number[];
  }) => {
    const ground = { ...loam, depthsCm: gradedDepthsCm([5, 10], given.bottomCm) };
    const { conductance } = surfaceOf(grass, { ...averagePlace, logAridity: logAridityOf(given.aridityIndex) });
    const nodes = [nodeAt(ground, 5), nodeAt(ground, 10)];
    const tempC = Float64Array.from(
      { length: 2 * (Math.max(...given.days) + 1) },
      (_, step) => given.meanC + given.swingK * Math.cos((2 * Math.PI * (Math.floor(step / 2) - given.peakDay)) / 365),
    );
    const top = { conductance: tempC.map(() => conductance), tempC };
    const profileC = new Float64Array(ground.depthsCm.length).fill(given.meanC);
    const told = conduct(ground, profileC, { top }, nodes, { freezes: false, stepH: 12 });
    return given.days.map((day) => told.map((edges) => (edges[2 * day]! + edges[2 * day + 1]!) / 2));
  },
  'seedbed/conduct: gain of a daily wave': (given: {
    conductance: number;
    conductivity: number;
    heatCapacity: number;
    depthCm: number;
  }) => {
    const ground = { ...given, depthsCm: gradedDepthsCm([given.depthCm], DEEP_CM) };
    const tempC = Float64Array.from({ length: 24 * 30 }, (_, hour) => Math.sin((2 * Math.PI * (hour + 0.5)) / 24));
    const top = { conductance: tempC.map(() => given.conductance), tempC };
    const profileC = new Float64Array(ground.depthsCm.length);
    const [edges] = conduct(ground, profileC, { top }, [nodeAt(ground, given.depthCm)], { freezes: false });
    let [cosine, sine] = [0, 0];
    for (let hour = 0; hour < 24; hour++) {
      cosine += (edges!.at(hour - 25)! * Math.cos((2 * Math.PI * hour) / 24)) / 12;
      sine += (edges!.at(hour - 25)! * Math.sin((2 * Math.PI * hour) / 24)) / 12;
    }
    return Math.hypot(cosine, sine);
  },
  'seedbed/conduct: one step below a known surface': ({ fromC, toC }: { fromC: number; toC: number }) => {
    const ground = { conductivity: 1, heatCapacity: 2e6, depthsCm: Float64Array.of(0, 5, 10, 15) };
    const profileC = new Float64Array(4).fill(fromC);
    // A bottom that is held: nothing passes it as well as this.
    const bottom = { conductance: [1e9], tempC: [fromC] };
    conduct(ground, profileC, { top: { edgesC: [fromC, toC] }, bottom }, []);
    const meshNumber = (diffusivityOf(ground) * 3600) / 0.05 ** 2;
    return { meshNumber, nodesC: [profileC[1]!, profileC[2]!] };
  },
};

interface AtDay {
  readonly latitudeDeg: number;
  readonly dayOfYear: number;
}

const grass: BedMake = { kind: 'open-ground', cover: 'grass', moisture: 'rain', shadePercent: 0 };
const averagePlace = { continentality: 0, vapourKPa: 0, rangeSeason: 0, humidity: null };
const loam = { conductivity: 1, heatCapacity: 2.5e6 };

const meanOfDay = (hourlyC: Float64Array, day: number): number =>
  hourlyC.subarray(24 * day, 24 * day + 24).reduce((sum, tempC) => sum + tempC, 0) / 24;
