import type { CropRecord } from '../crop-record.js';
import { asparagus } from './asparagus.js';
import { beet } from './beet.js';
import { bunchingOnion } from './bunching-onion.js';
import { cabbage } from './cabbage.js';
import { carrot } from './carrot.js';
import { cauliflower } from './cauliflower.js';
import { celery } from './celery.js';
import { cucumber } from './cucumber.js';
import { eggplant } from './eggplant.js';
import { headLettuce } from './head-lettuce.js';
import { lettuce } from './lettuce.js';
import { limaBean } from './lima-bean.js';
import { muskmelon } from './muskmelon.js';
import { okra } from './okra.js';
import { onion } from './onion.js';
import { parsley } from './parsley.js';
import { parsnip } from './parsnip.js';
import { pea } from './pea.js';
import { pepper } from './pepper.js';
import { radish } from './radish.js';
import { snapBean } from './snap-bean.js';
import { spinach } from './spinach.js';
import { sweetCorn } from './sweet-corn.js';
import { tomato } from './tomato.js';
import { turnip } from './turnip.js';
import { watermelon } from './watermelon.js';

/** Every crop, in the order of `GET /v1/crops`. */
export const allCrops: readonly CropRecord[] = [
  asparagus,
  limaBean,
  snapBean,
  beet,
  cabbage,
  carrot,
  cauliflower,
  celery,
  sweetCorn,
  cucumber,
  eggplant,
  lettuce,
  headLettuce,
  muskmelon,
  okra,
  onion,
  bunchingOnion,
  parsley,
  parsnip,
  pea,
  pepper,
  radish,
  spinach,
  tomato,
  turnip,
  watermelon,
];
