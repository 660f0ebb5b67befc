import type { Ground } from '../surface/ground.js';
import { conduct, hourlyMeans } from './conduct.js';

/**
 * The daily response of the soil to a step of one kelvin in the sol-air temperature.
 *
 * @param ground      The nodes and their material.
 * @param node        The node wanted.
 * @param conductance Of the surface [W m⁻² K⁻¹].
 * @param nDays       Number of days.
 * @returns Daily means of the response, 0 to 1, rising. Shape (nDays).
 */
export function stepResponse(ground: Ground, node: number, conductance: number, nDays: number): Float64Array {
  const hours = 24 * nDays;
  const top = { conductance: new Float64Array(hours).fill(conductance), tempC: new Float64Array(hours).fill(1) };
  const [edges] = conduct(ground, new Float64Array(ground.depthsCm.length), { top }, [node], { freezes: false });
  const means = hourlyMeans(edges!);
  return Float64Array.from({ length: nDays }, (_, day) => {
    const ofDay = means.subarray(24 * day, 24 * day + 24);
    return ofDay.reduce((sum, share) => sum + share, 0) / 24;
  });
}
