import { type Bedding, DEFAULT_DEPTH_CM, defaultBed } from '../../answers/question.js';
import type { PlainDate } from '../../basics/calendar.js';
import { notUnderstood } from '../../basics/errors.js';
import { fieldFact } from '../../basics/field-facts.js';
import type { Normals } from '../../climate/normals.js';
import type { Crop } from '../../germination/crop.js';
import { chosenCrop, isSameCrop } from '../../germination/crop-choice.js';
import type { ReadSeries } from '../../readings/read-series.js';
import type { BedInputs as KeptBed } from '../bed/bed-inputs.js';
import type { PlanFields, SowingFields, SowingMethod } from '../store/season-store.js';

/** What a grower wants of a bed, and what is known of it. */
export interface PlanQuestion extends Bedding {
  readonly crop: Crop;
  readonly harvest: PlanFields['harvest'];
  readonly today: PlainDate;
  /** What was sown of the crop in the bed by today. */
  readonly sown: readonly { readonly date: PlainDate; readonly method: SowingMethod }[];
  readonly series: readonly ReadSeries[];
  readonly normals: Normals | null;
  readonly typicalAir?: ReadSeries | null | undefined;
}

/**
 * The question of a plan in a kept bed.
 *
 * @param sowings What was sown in the bed; those of other crops are passed over.
 * @throws {RequestError} `unknown-crop`; `not-understood` where the bed is indoors.
 */
export function planQuestionOf(
  { bed, crop: choice, harvest }: PlanFields,
  kept: KeptBed,
  today: PlainDate,
  sowings: readonly SowingFields[],
): PlanQuestion {
  const crop = chosenCrop(choice);
  if (kept.bedMake?.kind === 'indoors') {
    throw notUnderstood([
      {
        path: ['bed'],
        detail: fieldFact('field.bed-indoors', { bed }),
      },
    ]);
  }
  return {
    crop,
    harvest,
    today,
    sown: sowings
      .filter((one) => isSameCrop(one.crop, choice) && one.date <= today)
      .map(({ date, method }) => ({ date, method })),
    site: kept.site,
    bed: kept.bedMake ?? defaultBed,
    depthCm: crop.sowingDepthCm ?? DEFAULT_DEPTH_CM,
    series: kept.series,
    normals: kept.normals,
    typicalAir: kept.typicalAir,
  };
}
