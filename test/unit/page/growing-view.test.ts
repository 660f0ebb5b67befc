import type { FastifyInstance } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { growingView } from '../../../src/page/growing/growing-view.js';
import type { Send } from '../../../src/page/shell/api.js';
import { keepQuillmere, startApp } from '../../api/helper.js';
import { askedOf, sendTo } from './page-send.js';

let app: FastifyInstance;
let send: Send;

beforeAll(async () => {
  app = await startApp();
  await keepQuillmere(app);
  send = sendTo(app);
});
afterAll(() => app.close());

const shown = async (link: string, through = send): Promise<string> =>
  (await growingView.answer(await askedOf(through, link)))!.shown.markup;

describe('what is growing', () => {
  test('shows a sowing by its name, and no code of the service', async () => {
    const markup = await shown('view=growing&ofBed=');
    expect(markup).toContain('Lettuce, sown 30 July');
    expect(markup).toContain('This week');
    const text = markup.replaceAll(/<[^>]*>/g, ' ');
    expect(text).not.toMatch(/north-lettuce|count-now|not-yet|keep-moist|\d{4}-\d{2}-\d{2}/);
  });

  test('shows each id once', async () => {
    const ids = [...(await shown('view=growing&ofBed=')).matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(ids).toEqual([...new Set(ids)]);
  });

  test('gives the address of the bed’s calendar', async () => {
    const { body } = await send({ method: 'GET', path: '/v1/beds/north' });
    expect(await shown('view=growing&ofBed=north')).toContain(
      `href="${(body as { calendarUrl: string }).calendarUrl}"`,
    );
  });

  test('says of temperatures in the reader’s degrees', async () => {
    // A field may ask which degrees a number is in.
    const text = (await shown('view=growing&ofBed=&degrees=F'))
      .replaceAll(/<option [^>]*>°C<\/option>/g, ' ')
      .replaceAll(/<[^>]*>/g, ' ');
    expect(text).toContain('°F');
    expect(text).not.toContain('°C');
  });

  test('says when there is no such bed', async () => {
    expect(await shown('view=growing&ofBed=nowhere')).toContain('no such bed');
  });

  test('shows all else where it cannot be told how sowings stand', async () => {
    const broken: Send = async (request) =>
      request.path.startsWith('/v1/sowings?with=')
        ? { status: 503, body: { code: 'busy', detail: 'Too much at once.' } }
        : send(request);
    const markup = await shown('view=growing&ofBed=', broken);
    expect(markup).toContain('Too much at once.');
    expect(markup).toContain('id="count-north-lettuce"');
    expect(markup).toContain('Calendar of');
  });

  test('of a hundred sowings asks how the newest twenty stand at once, for those left out four at a time, and lists the rest', async () => {
    const NOW_AT = '2027-08-03T14:00:00Z';
    let [asking, most, asked] = [0, 0, 0];
    const { body } = await send({ method: 'GET', path: '/v1/sowings/north-lettuce' });
    const sowings = Array.from({ length: 100 }, (_, i) => ({
      ...(body as object),
      id: `row-${i}`,
      date: `2027-${i < 50 ? '06' : '07'}-${String(1 + (i % 25)).padStart(2, '0')}`,
    }));
    const many: Send = async (request) => {
      if (request.path.startsWith('/v1/sowings?with=')) {
        return { status: 200, body: { sowings: sowings.slice(90), next: 'row-99', issuedAt: NOW_AT } };
      }
      if (request.path.startsWith('/v1/sowings?')) {
        return { status: 200, body: { sowings, next: null, issuedAt: NOW_AT } };
      }
      const row = /^\/v1\/sowings\/(row-\d+)\?/.exec(request.path)?.[1];
      if (!row) return send(request);
      asked++;
      most = Math.max(most, ++asking);
      await new Promise((after) => setTimeout(after, 1));
      asking--;
      return { status: 200, body: sowings.find(({ id }) => id === row) };
    };
    const markup = await shown('view=growing&ofBed=', many);
    expect([asked, most]).toEqual([10, 4]);
    expect(markup.match(/<section class="sowing"/g)).toHaveLength(20);
    expect(markup).toContain('80 more sowings');
    expect(markup).toContain('id="sowing-row-99"');
  });

  test('gives the counts as a table that a spreadsheet reads', async () => {
    const answered = (await growingView.answer(await askedOf(send, 'view=growing&ofBed=')))!;
    expect(answered.table!().split('\r\n')).toEqual([
      'bed,crop,sown,counted,seedlings,of seeds,pulled out before',
      'North bed,Lettuce,2027-07-30,2027-08-03,14,60,',
      '',
    ]);
  });

  test('the form takes what the other leaves ask along', async () => {
    const asked = await askedOf(send, 'view=growing&ofBed=north&crop=carrot&min=&max=20&min=3&max=');
    const form = growingView.form(asked).markup;
    expect(form).toContain('name="crop" value="carrot"');
    const names = [...form.matchAll(/name="(min|max)" value="(\d*)"/g)].map(([, name, value]) => `${name} ${value}`);
    expect(names).toEqual(['min ', 'max 20', 'min 3', 'max ']);
  });
});
