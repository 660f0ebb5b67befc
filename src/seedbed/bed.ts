export const bedKinds = ['open-ground', 'raised-bed', 'pot', 'tray', 'indoors'] as const;
export const covers = ['bare', 'grass', 'mulch', 'black-film', 'clear-film', 'fleece'] as const;
export const moistures = ['rain', 'moist', 'wet', 'dry'] as const;

export type BedKind = (typeof bedKinds)[number];
export type Cover = (typeof covers)[number];
/** `rain`: as the weather leaves it; `moist` and `wet`: watered to stay so; `dry`: dry at the surface. */
export type Moisture = (typeof moistures)[number];

/** The properties of a bed and its cover that decide how warm it gets. */
export interface BedMake {
  readonly kind: BedKind;
  readonly cover: Cover;
  readonly moisture: Moisture;
  readonly shadePercent: number;
}

/** A container: its soil's depth [cm] and, where its sides meet the air, its radius [cm]. */
export interface Container {
  readonly depthCm: number;
  readonly radiusCm: number | null;
}

/** A three-litre pot; a tray of cells, whose sides stand against one another. */
const CONTAINERS: Partial<Record<BedKind, Container>> = {
  pot: { depthCm: 15, radiusCm: 8 },
  tray: { depthCm: 5, radiusCm: null },
};

/** The container of a bed; null for a bed that is open to the ground below. */
export const containerOf = (kind: BedKind): Container | null => CONTAINERS[kind] ?? null;
