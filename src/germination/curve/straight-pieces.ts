import { interpolate } from '../../basics/numerics/interpolate.js';
import { type Curve, type GerminationCurve, rateAt, shareAt } from './curve.js';

/** Rate and share as straight pieces over temperature, for reading many temperatures. Shape (n) each. */
export interface StraightPieces {
  /** Where each piece begins [°C], rising; the first holds below it too, the last for ever. */
  readonly fromC: Float64Array;
  /** At the piece's beginning, and for each kelvin from there. */
  readonly rate: Float64Array;
  readonly ratePerK: Float64Array;
  readonly share: Float64Array;
  readonly sharePerK: Float64Array;
}

/**
 * A crop's curves cut at every temperature at which one of them bends, so that each piece is straight in both.
 *
 * @returns At every bend `rateAt` and `shareAt` to the bit; between them to rounding.
 */
export function straightPieces(curve: GerminationCurve): StraightPieces {
  const kept = piecesOf.get(curve) ?? cutUp(curve);
  piecesOf.set(curve, kept);
  return kept;
}

const piecesOf = new WeakMap<GerminationCurve, StraightPieces>();

function cutUp(curve: GerminationCurve): StraightPieces {
  const bends = [...new Set([...bendsOf(curve.rate), ...bendsOf(curve.share)])].sort((a, b) => a - b);
  // A level piece before the first bend; after the last all is level again.
  const fromC = Float64Array.of(bends[0]! - 1, ...bends);
  const rate = fromC.map((tempC) => rateAt(curve, tempC));
  const share = fromC.map((tempC) => shareAt(curve, tempC));
  const perK = (values: Float64Array): Float64Array =>
    values.map((value, i) => (i + 1 < fromC.length ? (values[i + 1]! - value) / (fromC[i + 1]! - fromC[i]!) : 0));
  return { fromC, rate, ratePerK: perK(rate), share, sharePerK: perK(share) };
}

/** The piece that a temperature is on, looked for from the last one: hours that follow one another are alike. */
export function pieceAt(fromC: Float64Array, tempC: number, last: number): number {
  let piece = last;
  while (piece + 1 < fromC.length && tempC >= fromC[piece + 1]!) piece++;
  while (piece > 0 && tempC < fromC[piece]!) piece--;
  return piece;
}

/** Where a curve bends: at the knots of its limbs, and where the falling one passes under the rising one. */
function bendsOf(curve: Curve): number[] {
  const { rising, falling, peakC } = curve;
  const knots = [...new Set([...rising.tempsC, ...falling.tempsC, peakC])].sort((a, b) => a - b);
  const gap = (tempC: number): number => valueOn(falling, tempC) - valueOn(rising, tempC);
  const crossings = knots.slice(1).flatMap((rightC, i) => {
    const leftC = knots[i]!;
    const [left, right] = [gap(leftC), gap(rightC)];
    return left * right < 0 ? [leftC + ((rightC - leftC) * left) / (left - right)] : [];
  });
  return [...knots, ...crossings];
}

const valueOn = ({ tempsC, values }: Curve['rising'], tempC: number): number => interpolate(tempC, tempsC, values);
