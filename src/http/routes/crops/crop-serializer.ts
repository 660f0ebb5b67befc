import type { CropWire } from '../../../contract/crop.js';
import type { Crop } from '../../../germination/crop.js';
import type { Rounding } from '../../negotiation/rounding.js';
import type { Unworded } from '../../negotiation/worded.js';

/** Serializes a handbook crop. */
export function serializeCrop(crop: Crop, { temperature }: Rounding): Unworded<CropWire> {
  const {
    sigmaLog10: _,
    weeksInTrays: _weeks,
    pickingDays: _picking,
    growth: _growth,
    plantingOut: _plantingOut,
    isThinned: _thinned,
    isFed: _fed,
    viability: _viability,
    soil,
    frost,
    ...rest
  } = crop;
  if (soil === null || frost === null) throw new Error(`${crop.id} is no handbook crop`);
  return {
    ...rest,
    frost,
    rows: crop.rows.map((row) => ({ ...row })),
    soil: {
      minimumC: temperature(soil.minimumC),
      optimumFromC: temperature(soil.optimumFromC),
      optimumToC: temperature(soil.optimumToC),
      maximumC: temperature(soil.maximumC),
    },
    hotThresholdC: temperature(crop.hotThresholdC),
    cautions: crop.cautions.map((caution) => ({ ...caution })),
  };
}
