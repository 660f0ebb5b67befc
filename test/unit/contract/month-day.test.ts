import { expect, test } from 'vitest';
import { monthDaySchema } from '../../../src/contract/climate.js';

test.each(['05-20', '01-01', '12-31', '02-29'])('%s is a day of some year', (text) => {
  expect(monthDaySchema.parse(text)).toBe(text);
});

test.each(['02-30', '13-01', '00-10', '5-20', '20 May', '2027-05-20', '', 520, null])('%j is none', (value) => {
  expect(monthDaySchema.safeParse(value).error?.issues[0]?.message).toBe('field.month-day');
});
