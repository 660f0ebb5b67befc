import type { Runners } from './out.js';

export const climateRunners: Runners = {};
