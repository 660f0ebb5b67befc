import { climateAssumptionFacts, climateRefusalFacts, climateWarningFacts } from '../answers/climate/climate-facts.js';
import { forecastAssumptionFacts, forecastWarningFacts, learnedFacts } from '../answers/forecast/forecast-facts.js';
import { remedyFacts } from '../answers/forecast/remedies/remedy-facts.js';
import { safetyFacts } from '../answers/forecast/safety-facts.js';
import { answerRefusalFacts } from '../answers/refusal-facts.js';
import { soilAssumptionFacts, soilWarningFacts } from '../answers/soil/soil-facts.js';
import { aheadFacts, weekFacts } from '../answers/week/week-facts.js';
import {
  bestDateFacts,
  dateVerdictFacts,
  frostFacts,
  frostWarningFacts,
  insteadFacts,
  reasonFacts,
  windowFacts,
} from '../answers/windows/window-facts.js';
import { errorFacts } from '../basics/errors.js';
import { type FactKinds, type ParamKind, saidFacts } from '../basics/fact.js';
import { fieldFacts } from '../basics/field-facts.js';
import { problemFacts, problemPageFacts } from '../contract/request/problem-facts.js';
import { keptNoteFacts, keptRefusalFacts, requestRefusalFacts } from '../contract/request/refusal-facts.js';
import { newsFacts } from '../garden/alerts/news-facts.js';
import { bedFacts } from '../garden/bed/bed-facts.js';
import { eventFacts } from '../garden/calendar/event-facts.js';
import { lotFacts, seedsFacts } from '../garden/lots/lot-facts.js';
import { adviceFacts, gapFacts, planAssumptionFacts, planWarningFacts } from '../garden/plan/plan-facts.js';
import { gardenRefusalFacts } from '../garden/refusal-facts.js';
import { sowingWarningFacts, taskFacts, verdictFacts } from '../garden/sowing/sowing-facts.js';
import { checkFacts, triageFacts } from '../garden/sowing/triage-facts.js';
import { askFacts } from '../garden/sowing/work-port.js';
import { deliveryFacts, sourceFacts } from '../garden/store/connection-facts.js';
import { presetFacts } from '../garden/store/source-presets.js';
import { cautionFacts } from '../germination/caution-facts.js';
import { cropRefusalFacts } from '../germination/crop-choice.js';
import { riskFacts, riskNoteFacts } from '../growth/pests/pest-facts.js';
import { localityFacts, localityRefusalFacts } from '../localities/locality-facts.js';
import { pictureFacts } from '../plot/picture-facts.js';
import { fileQuestionFacts, readingsRefusalFacts, rowFacts, seriesWarningFacts } from '../readings/readings-facts.js';

/** The facts that the rooms declare. A code declared by several is one message, with the parameters of all of them. */
const declared = [
  forecastAssumptionFacts,
  forecastWarningFacts,
  remedyFacts,
  soilAssumptionFacts,
  soilWarningFacts,
  windowFacts,
  bestDateFacts,
  reasonFacts,
  insteadFacts,
  dateVerdictFacts,
  weekFacts,
  aheadFacts,
  frostFacts,
  frostWarningFacts,
  riskFacts,
  riskNoteFacts,
  safetyFacts,
  cautionFacts,
  pictureFacts,
  errorFacts,
  askFacts,
  seriesWarningFacts,
  rowFacts,
  readingsRefusalFacts,
  fileQuestionFacts,
  fieldFacts,
  answerRefusalFacts,
  cropRefusalFacts,
  gardenRefusalFacts,
  requestRefusalFacts,
  keptRefusalFacts,
  learnedFacts,
  saidFacts,
  bedFacts,
  lotFacts,
  seedsFacts,
  verdictFacts,
  taskFacts,
  sowingWarningFacts,
  gapFacts,
  adviceFacts,
  planAssumptionFacts,
  planWarningFacts,
  eventFacts,
  sourceFacts,
  deliveryFacts,
  newsFacts,
  keptNoteFacts,
  problemFacts,
  problemPageFacts,
  triageFacts,
  checkFacts,
  presetFacts,
  climateAssumptionFacts,
  climateWarningFacts,
  climateRefusalFacts,
  localityFacts,
  localityRefusalFacts,
] as const satisfies readonly FactKinds[];

type KeysOf<T> = T extends unknown ? keyof T & string : never;
export type FactCode = KeysOf<(typeof declared)[number]>;

/** The messages of one language: ICU patterns by code, and names of crops by `crop.<id>`. */
export type Catalogue = Readonly<Record<FactCode | `crop.${string}`, string>>;

/** The parameter kinds of every fact. */
export const factKinds = merged(declared) as Readonly<Record<FactCode, Readonly<Record<string, ParamKind>>>>;

function merged(all: readonly FactKinds[]): FactKinds {
  const kinds: Record<string, Record<string, ParamKind>> = {};
  for (const one of all) {
    for (const [code, params] of Object.entries(one)) {
      kinds[code] ??= {};
      for (const [name, kind] of Object.entries(params)) {
        const known = kinds[code][name];
        kinds[code][name] = Array.isArray(known) && Array.isArray(kind) ? [...new Set([...known, ...kind])] : kind;
      }
    }
  }
  return kinds;
}
