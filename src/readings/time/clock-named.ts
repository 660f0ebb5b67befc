import { findZone, fixedZone, type Zone } from '../../basics/calendar.js';

/** The clock that a file names, apart from its stamps. */
export interface NamedClock {
  /** The zone or the offset that it names; null where it names none. */
  readonly zone: Zone | null;
  readonly isUtc: boolean;
  readonly isStandard: boolean;
}

const OFFSET =
  /\b(?:UTC|GMT)\s*([+\-\u2212])\s*(\d{1,2})(?::?(\d{2}))?(?!\d)|[([]\s*([+\-\u2212])(\d{2}):?(\d{2})\s*[)\]]/i;
const IANA =
  /\b(?:Africa|America|Antarctica|Asia|Atlantic|Australia|Europe|Indian|Pacific|Etc)\/[A-Za-z0-9_+\-/]*[A-Za-z0-9]/;
const STANDARD =
  /\b(?:[PMCELHAN]|AK|AE|AC|AW|NZ|J|K)ST\b|\b(?:CET|MEZ|EET|WET)\b|standard time|normalzeit|winterzeit|heure (?:d['’]hiver|normale)|hora est[áa]ndar|normaltid|ora solare|wintertijd/i;
const SPEAKS_OF_TIME =
  /time|date|hour|tijd|\buur|zeit|datum|heure|hora|\bora\b|fecha|stamp|zone|\btid|aika|czas|[čc]as|clock|tz\b/i;

/** The clock named by the time columns, else by the lines above the table. */
export function clockNamed(names: string, preamble: readonly string[]): NamedClock {
  const said = clockIn(names);
  if (said) return said;
  for (const line of preamble) {
    const found = SPEAKS_OF_TIME.test(line) ? clockIn(line) : null;
    if (found) return found;
  }
  return { zone: null, isUtc: false, isStandard: false };
}

function clockIn(text: string): NamedClock | null {
  const isStandard = STANDARD.test(text);
  const name = IANA.exec(text)?.[0];
  const zone = name === undefined ? undefined : findZone(name);
  if (zone) return { zone, isUtc: false, isStandard };
  const offset = OFFSET.exec(text);
  if (offset) {
    const [sign, hours, minutes] = offset[1] ? offset.slice(1, 4) : offset.slice(4, 7);
    const total = (sign === '+' ? 1 : -1) * (60 * Number(hours) + Number(minutes ?? 0));
    if (Math.abs(total) <= 14 * 60) return { zone: fixedZone(total), isUtc: total === 0, isStandard: false };
  }
  if (/(?:^|[^a-z])(?:UTC?|GMT|Zulu|Weltzeit)(?:$|[^a-z])/i.test(text))
    return { zone: fixedZone(0), isUtc: true, isStandard: false };
  return isStandard ? { zone: null, isUtc: false, isStandard } : null;
}
