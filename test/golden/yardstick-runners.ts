import type { Runners } from './out.js';

export const yardstickRunners: Runners = {};
