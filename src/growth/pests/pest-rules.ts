import { cabbageMaggot } from './cabbage-maggot.js';
import { carrotRustFly } from './carrot-rust-fly.js';
import { carrotWeevil } from './carrot-weevil.js';
import { onionMaggot } from './onion-maggot.js';
import { seedcornMaggot } from './seedcorn-maggot.js';

/** Aphids are left out: no sum of enough weight was found for garden crops in general. */
export const pestRules = [seedcornMaggot, onionMaggot, cabbageMaggot, carrotRustFly, carrotWeevil] as const;
export type PestId = (typeof pestRules)[number]['id'];

/** Pests that live on a crop of the handbook. */
export const pestsOf = (crop: string) => pestRules.filter(({ crops }) => crops.includes(crop));
