import { williamsDepthShare } from './williams-depth-share.js';

/** What stays the same from day to day. */
export interface WilliamsGround {
  readonly depthMm: number;
  readonly dampingDepthMm: number;
  /** The year's mean of the air [°C]. */
  readonly yearC: number;
  /** How much of yesterday stays: 0.5 in the paper, 0.8 in later use [1]. */
  readonly lag: number;
}

/**
 * Today's mean soil temperature from yesterday's and today's surface, by Williams and others.
 *
 * @param soilC    Yesterday's mean at the depth [°C].
 * @param surfaceC Today's at the surface [°C].
 * @param ground   Depths [mm], the year's mean [°C], the lag [1].
 * @returns Today's mean at the depth [°C].
 * @throws never.
 *
 * Formula: T' = L T + (1 - L) (F (Tyear - Tsurface) + Tsurface); F as `williamsDepthShare`
 * Source: as `williamsDepthShare`.
 * @example williamsStepC(12, 18, { depthMm: 50, dampingDepthMm: 1500, yearC: 10, lag: 0.8 }) // => 13.075
 */
export function williamsStepC(soilC: number, surfaceC: number, ground: WilliamsGround): number {
  const share = williamsDepthShare(ground.depthMm, ground.dampingDepthMm);
  return ground.lag * soilC + (1 - ground.lag) * (share * (ground.yearC - surfaceC) + surfaceC);
}
