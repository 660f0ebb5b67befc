import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { MAX_WIDTH, MIN_WIDTH, type PictureOptions } from '../../plot/picture.js';
import type { Reader } from '../../words/reader.js';
import { sayer } from '../../words/say.js';
import type { QueryParameter } from '../openapi/route.js';
import { read } from '../question/read.js';
import { negotiatedType } from './content-negotiation.js';
import type { Written } from './written.js';

export const SVG = 'image/svg+xml';

const pictureShape = {
  width: z.coerce.number().int().min(MIN_WIDTH).max(MAX_WIDTH).optional(),
  unit: z.enum(['C', 'F']).optional(),
};

/** What a query may say of the picture. */
export const pictureParameters: readonly QueryParameter[] = [
  {
    name: 'width',
    schema: z.int().min(MIN_WIDTH).max(MAX_WIDTH).default(800),
    description: 'How wide the picture is [px], where one is asked for.',
  },
  {
    name: 'unit',
    schema: pictureShape.unit.unwrap(),
    description: 'The degrees that the picture is drawn in; left out: those of `textUnit`. JSON is always in °C.',
  },
];

/** Is the answer to be a picture rather than JSON? */
export const wantsPicture = ({ headers }: FastifyRequest): boolean =>
  negotiatedType(headers.accept, ['application/json', SVG]) === SVG;

/** What sets the tag of a picture apart from that of the same answer in JSON. */
export const formOf = (request: FastifyRequest): { readonly form?: string } =>
  wantsPicture(request) ? { form: SVG } : {};

/** How a picture is wanted, in the words of its reader, and the rest of the query. */
export function pictureOf(
  { width, unit, ...query }: Record<string, unknown>,
  reader: Reader,
): {
  options: PictureOptions;
  query: Record<string, unknown>;
} {
  const asked = read(z.object(pictureShape), { width, unit }, ([name]) => ({ parameter: String(name) }));
  const textUnit = asked.unit ?? reader.textUnit;
  return {
    options: {
      ...(asked.width === undefined ? {} : { width: asked.width }),
      unit: textUnit,
      locale: reader.locale,
      say: sayer({ ...reader, textUnit }),
    },
    query,
  };
}

/** A picture as an answer: it runs nothing, and asks for nothing from elsewhere. */
export const asPicture = (svg: string): Written => ({
  type: SVG,
  body: svg,
  headers: { 'content-security-policy': "default-src 'none'; style-src 'unsafe-inline'" },
});
