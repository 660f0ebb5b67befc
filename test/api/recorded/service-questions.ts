import { get, post, type Question } from './question.js';

const SVG = { headers: { accept: 'image/svg+xml' }, as: 'as a picture' };

/** What is the same in every garden, and what is looked at only by its kind: pictures and pages. */
export const serviceQuestions: readonly Question[] = [
  get('/v1/crops'),
  get('/v1/crops?after=lettuce&limit=5'),
  get('/v1/crops/lettuce?precision=full'),
  get('/v1/crops/bunching-onion'),
  get('/v1/crops/lettuce', SVG),
  get('/v1/beds/north/forecast?crop=lettuce&sowing=2027-08-04', SVG),
  get('/v1/beds/north/sowing-windows?crop=lettuce', SVG),
  get('/v1/places/quillmere/sowing-windows?crop=lettuce&from=2027-08-03&to=2027-10-31', SVG),
  ...['/healthz', '/readyz', '/metrics', '/problems/not-found', '/docs', '/docs/running'].map((url) => get(url)),
];

const FORM = '--north\r\ncontent-disposition: form-data; name="crop"\r\n\r\nlettuce\r\n--north--\r\n';

/** The page, and the question that it sends as a form. */
export const pageQuestions: readonly Question[] = [
  get('/'),
  get('/?leaf=when&crop=lettuce'),
  post('/', FORM, { headers: { 'content-type': 'multipart/form-data; boundary=north' } }),
];
