import type { PlainDate } from '../../basics/calendar.js';
import type { Note } from '../../basics/errors.js';
import type { SowingSpan, SowingWindows } from '../windows/sowing-windows.js';
import type { SowingWay } from '../windows/ways.js';

/** A crop's year of sowing: what advice for a week needs of its windows, a hundredth of their size. */
export interface CropSeason {
  readonly crop: string;
  readonly spans: readonly SowingSpan[];
  readonly ways: readonly SowingWay[];
  readonly bestDate: PlainDate | null;
  readonly years: SowingWindows['years'];
  readonly assumptions: readonly Note[];
  readonly warnings: readonly Note[];
}

/** The season of one crop, from its windows. */
export const cropSeason = ({
  crop: { id },
  spans,
  ways,
  best,
  years,
  assumptions,
  warnings,
}: SowingWindows): CropSeason => ({
  crop: id,
  spans,
  ways,
  bestDate: best?.date ?? null,
  years,
  assumptions,
  warnings,
});

/** The notes of several seasons, each once: an assumption or warning that crops share is told of the first of them. */
export function cropNotes(seasons: readonly CropSeason[]): {
  assumptions: Note[];
  warnings: Note[];
} {
  return {
    assumptions: onceEach(seasons.flatMap(({ assumptions }) => assumptions)),
    warnings: onceEach(seasons.flatMap(({ warnings }) => warnings)),
  };
}

function onceEach(notes: readonly Note[]): Note[] {
  const told = new Map<string, Note>();
  for (const note of notes) if (!told.has(note.code)) told.set(note.code, note);
  return [...told.values()];
}
