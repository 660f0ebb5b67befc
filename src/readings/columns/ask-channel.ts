import type { Choice, RequestError } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import type { Medium } from '../../basics/series.js';
import { fileChoice, lures } from '../readings-facts.js';
import { askColumn } from './ask-column.js';
import type { Channel } from './channel.js';

/** Asks which of several channels is meant, each with what it seems to be. */
export function askChannel(detail: Fact, channels: readonly Channel[], wanted: Medium | null): RequestError {
  const choices = channels.slice(0, 40).map((channel): Choice => {
    const { label, column, name, min, max, meaning } = channel;
    const { medium, depthCm, unit, lure } = meaning;
    const hasValues = max >= min;
    return fileChoice(label ?? String(column + 1), 'choose-column.choice', {
      label,
      column: column + 1,
      name: name || null,
      lure: lure === null ? 'nothing' : lures[lure],
      medium: medium ?? 'unknown',
      depthCm: medium === 'air' ? null : depthCm,
      unit: unit.unit ?? 'unknown',
      isAgainst: wanted !== null && medium !== null && medium !== wanted ? 'yes' : 'no',
      min: hasValues ? min : null,
      max: hasValues ? max : null,
    });
  });
  return askColumn('column', detail, choices);
}
