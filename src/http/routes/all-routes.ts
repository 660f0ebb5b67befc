import type { Quotas } from '../../garden/store/quotas.js';
import type { FindOwner } from '../auth/keys.js';
import { sessionRoutes } from '../auth/session.js';
import type { Metrics } from '../metrics/metrics.js';
import type { Route } from '../openapi/route.js';
import type { Service } from '../question/endpoint.js';
import { bedRoutes } from './beds/beds.js';
import { calendarRoutes, growingIn } from './calendar/calendar.js';
import { cropRoutes } from './crops/crops.js';
import { forecastRoutes } from './forecasts/forecasts.js';
import { localityRoutes } from './localities/localities.js';
import { lotRoutes } from './lots/lots.js';
import { seedsNeededRoutes } from './lots/seeds-needed.js';
import { frostDatesRoutes } from './places/frost-dates.js';
import { placeAirRoutes } from './places/place-air.js';
import { placeComingDaysRoutes } from './places/place-coming-days.js';
import { placeNormalsRoutes } from './places/place-normals.js';
import { type PlaceSources, placeRoutes } from './places/places.js';
import { type RefreshPlace, refreshAirRoutes } from './places/refresh-air.js';
import { sourcePresetRoutes } from './places/source-presets.js';
import { planRoutes } from './plans/plans.js';
import { bedReadingsRoutes } from './readings/bed-readings.js';
import { readingsRoutes } from './readings/readings.js';
import { messageRoutes } from './service/messages.js';
import { serviceRoutes } from './service/service.js';
import { sessionsRoutes } from './service/sessions.js';
import { usageRoutes } from './service/usage.js';
import { soilTemperatureRoutes } from './soil/soil-temperatures.js';
import { countRoutes } from './sowings/counts.js';
import { sowingRoutes } from './sowings/sowings.js';
import { subscriptionRoutes } from './subscriptions/subscriptions.js';
import { thisWeekRoutes } from './week/this-week.js';
import { sowingWindowRoutes } from './windows/sowing-windows.js';

export interface RouteOptions {
  readonly quotas: Quotas;
  readonly findOwner: FindOwner | undefined;
  readonly metrics: Metrics;
  readonly publicUrl: string;
  readonly allowPrivateWebhooks: boolean;
  readonly sources: PlaceSources & { readonly refreshPlace: RefreshPlace };
}

/** All routes of the service, in the order of the OpenAPI document. */
export function allRoutes(
  service: Service,
  { quotas, findOwner, metrics, publicUrl, allowPrivateWebhooks, sources }: RouteOptions,
): Route[] {
  const { store, clock } = service;
  return [
    ...cropRoutes(service),
    ...forecastRoutes(service),
    ...soilTemperatureRoutes(service),
    ...sowingWindowRoutes(service),
    ...thisWeekRoutes(service),
    ...readingsRoutes(clock),
    ...placeRoutes(service, sources),
    ...refreshAirRoutes(store, clock, sources.allowed, sources.refreshPlace),
    ...sourcePresetRoutes(clock, sources.allowed),
    ...placeAirRoutes(store, clock),
    ...placeNormalsRoutes(store, clock),
    ...placeComingDaysRoutes(store, clock),
    ...frostDatesRoutes(service),
    ...localityRoutes(service.localities, clock),
    ...bedRoutes(store, clock, publicUrl),
    ...bedReadingsRoutes(store, clock),
    ...calendarRoutes(service, growingIn(service)),
    ...lotRoutes(store, clock),
    ...planRoutes(service),
    ...seedsNeededRoutes(store, clock),
    ...sowingRoutes(service),
    ...countRoutes(store, clock),
    ...subscriptionRoutes(store, clock, allowPrivateWebhooks),
    ...usageRoutes(store, quotas, clock),
    ...sessionsRoutes(store, clock),
    ...sessionRoutes(store, clock, findOwner),
    ...messageRoutes,
    ...serviceRoutes(store, metrics),
  ];
}
