import { FILE_LIMIT_BYTES } from '../../contract/request/file-limit.js';
import type { PageQuestion } from '../form/question.js';
import type { ApiRequest, ProblemBody } from '../shell/api.js';
import { pathWith } from '../shell/api.js';
import { bedNamed, type Inventory, placeOf } from '../shell/inventory.js';
import type { FileGiven } from '../shell/view.js';
import type { PageReader } from '../shell/words.js';
import { fileQuery } from './forecast-request.js';

/** The request for the service's report on a file, by the clock of the bed's place. */
export function checkRequest(question: PageQuestion, shelf: Inventory, file: FileGiven): ApiRequest {
  const place = placeOf(shelf, bedNamed(shelf, question.bed));
  const timeZone = place?.timeZone ?? question.timeZone;
  return {
    method: 'POST',
    path: pathWith('/v1/readings/check', { ...fileQuery(question), timeZone }),
    file: file.body,
  };
}

export const tooLarge = (bytes: number, reader: PageReader): ProblemBody => ({
  status: 413,
  code: 'too-large',
  title: '',
  detail: reader.say('page.file.too-large', {
    size: sizeText(bytes, reader),
    most: sizeText(FILE_LIMIT_BYTES, reader),
  }),
});

export function sizeText(bytes: number, { say }: Pick<PageReader, 'say'>): string {
  const mega = bytes / 1024 / 1024;
  if (mega < 1) return say('page.file.kb', { size: Math.max(1, Math.round(bytes / 1024)) });
  return say('page.file.mb', { size: mega < 10 ? Math.round(mega * 10) / 10 : Math.round(mega) });
}
