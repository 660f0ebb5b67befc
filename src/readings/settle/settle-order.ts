import { dateAt, fixedZone } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import { fileChoice, fileQuestion } from '../readings-facts.js';
import type { FileHints, RowsRead } from '../text/rows-read.js';
import { type DateOrder, decideDateOrder, possibleOrders } from '../time/date-order.js';

const FIRST_ROWS = 20_000;

/** Which of day, month and year comes first: said, proved by the whole column, or asked. */
export function* settleOrder(read: RowsRead, hints: FileHints): Generator<void, DateOrder | null> {
  const { form } = read.time;
  if (form.kind.startsWith('epoch')) return null;
  const store = read.stores.reduce((longest, one) => (one.count > longest.count ? one : longest));
  if (hints.dateOrder && possibleOrders(form).includes(hints.dateOrder)) return hints.dateOrder;
  if (read.areInstants) return possibleOrders(form)[0]!;
  if (store.count === 0) return possibleOrders(form)[0]!;
  // A year in front is followed by the month, unless the first rows disprove it.
  const looked = form.year === 'first' ? Math.min(store.count, FIRST_ROWS) : store.count;
  const decided = yield* decideDateOrder(store.stamps(), form, looked);
  if ('order' in decided) return decided.order;
  const detail = fileQuestion('choose-date-order.unproved');
  const ways = decided.choices.map(({ order }) => `dateOrder=${order}`).join(', ');
  const utc = fixedZone(0);
  throw new RequestError(
    'choose-date-order',
    [detail, fileQuestion('choose-date-order.send', { ways })],
    [
      {
        parameter: 'dateOrder',
        detail,
        choices: decided.choices.map(({ order, fromMs, toMs }) =>
          fileChoice(order, 'choose-date-order.choice', {
            dateOrder: order,
            from: dateAt(fromMs, utc),
            to: dateAt(toMs, utc),
          }),
        ),
      },
    ],
  );
}
