/** Maximum number of each kind that an owner may store; thermometers and devices count by bed. */
export const quotaNames = [
  'places',
  'beds',
  'sowings',
  'lots',
  'plans',
  'subscriptions',
  'thermometers',
  'devices',
  'megabytes',
] as const;
export type QuotaName = (typeof quotaNames)[number];

export type Quotas = Readonly<Record<QuotaName, number>>;

export const DEFAULT_QUOTAS: Quotas = {
  places: 50,
  beds: 500,
  sowings: 20_000,
  lots: 2000,
  plans: 500,
  subscriptions: 20,
  thermometers: 20,
  devices: 20,
  megabytes: 1024,
};

/** Use of each quota by an owner; for thermometers, of the bed that has most. */
export type Usage = Readonly<Record<QuotaName, number>>;

/** No more of a kind may be kept. Nothing was changed. */
export class QuotaError extends Error {
  override readonly name = 'QuotaError';
  constructor(
    readonly quota: QuotaName,
    readonly limit: number,
    readonly used: number,
  ) {
    super(`${used} of ${limit} ${quota} are used`);
  }
}
