/** Their roots fork or their stems run to seed when they are moved: common practice, no source. */
const staysPut: ReadonlySet<string> = new Set(['carrot', 'parsnip', 'radish', 'turnip']);

/** Does a crop, by its id, bear to be raised in trays and planted out? Of a grower's own rows it is taken to. */
export const bearsMoving = (crop: string): boolean => !staysPut.has(crop);
