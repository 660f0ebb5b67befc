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

/** Query parameters of a picture. */
export const pictureParameters: readonly QueryParameter[] = [
  {
    name: 'width',
    schema: z.int().min(MIN_WIDTH).max(MAX_WIDTH).default(800),
    description: 'Width of the picture [px], if requested.',
  },
  {
    name: 'unit',
    schema: pictureShape.unit.unwrap(),
    description: "Unit of the picture's temperatures. Default: that of `textUnit`. JSON is always in °C.",
  },
];

/** True if the answer should be a picture rather than JSON. */
export const wantsPicture = ({ headers }: FastifyRequest): boolean =>
  negotiatedType(headers.accept, ['application/json', SVG]) === SVG;

/** Distinguishes the tag of a picture from that of the same answer in JSON. */
export const formOf = (request: FastifyRequest): { readonly form?: string } =>
  wantsPicture(request) ? { form: SVG } : {};

/** The options of a picture, in its reader's words, and the rest of the query. */
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

/** A picture as an answer; its policy allows no script and no other origin. */
export const asPicture = (svg: string): Written => ({
  type: SVG,
  body: svg,
  headers: { 'content-security-policy': "default-src 'none'; style-src 'unsafe-inline'" },
});
