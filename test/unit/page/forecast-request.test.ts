import { describe, expect, test } from 'vitest';
import { linkTo, type PageQuestion, questionFrom } from '../../../src/page/form/question.js';
import { numberIn } from '../../../src/page/form/typed-numbers.js';
import { forecastRequest } from '../../../src/page/sowing/forecast-request.js';
import { english } from './readers.js';

const asked = (query: string): PageQuestion => questionFrom(new URLSearchParams(query), { beds: [{ id: 'north' }] });
const requestOf = (query: string) => {
  const made = forecastRequest(asked(query), null, english);
  if ('problem' in made) throw new Error(made.problem.detail);
  return made.request;
};

describe('numbers as people type them', () => {
  test.each([
    ['12.5', 12.5],
    [' 12,5 ', 12.5],
    ['−3', -3],
    ['', null],
    ['warm', Number.NaN],
    ['1,000.5', Number.NaN],
  ])('“%s” is %s', (text, value) => {
    expect(numberIn(text)).toBe(value);
  });
});

test('a kept bed is asked by its link, without what was not said', () => {
  expect(requestOf('bed=north&crop=carrot&sowing=2027-05-03&seeds=200')).toEqual({
    method: 'GET',
    path: '/v1/beds/north/forecast?crop=carrot&sowing=2027-05-03&seeds=200&hourly=true',
  });
});

test('a comma is a decimal mark in a link too, and none in a number of things', () => {
  const { path } = requestOf('bed=north&crop=carrot&sowing=2027-05-03&depthCm=2,5&seeds=1,000');
  expect(path).toContain('depthCm=2.5&seeds=1%2C000');
});

test('days typed in become a series of dates on end, and an empty one is left out', () => {
  const { json } = requestOf(
    'bed=north&source=days&crop=carrot&sowing=2027-05-03&unit=F&probeDepthCm=5&firstDay=2027-04-30&min=50&max=60&min=&max=&min=51,5&max=61',
  );
  expect(json).toMatchObject({
    where: { bed: 'north' },
    temperatures: [
      {
        medium: 'soil',
        probeDepthCm: 5,
        unit: 'F',
        daily: [
          { date: '2027-04-30', min: 50, max: 60 },
          { date: '2027-05-02', min: 51.5, max: 61 },
        ],
      },
    ],
  });
});

test('a day that is no number is named, with what was typed', () => {
  const made = forecastRequest(asked('source=days&firstDay=2027-04-30&min=9&max=warm'), null, english);
  expect(made).toMatchObject({
    problem: { detail: expect.stringContaining('highest temperature of day 1 is “warm”') },
  });
});

test('a bed that is described goes along with its place', () => {
  const { json } = requestOf(
    'bed=&source=days&latitude=44&longitude=-30&timeZone=Etc/GMT%2B2&kind=indoors&roomC=18&sowing=2027-05-03&firstDay=2027-05-03&min=17&max=19',
  );
  expect(json).toMatchObject({
    where: {
      place: { latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' },
      bed: { kind: 'indoors', roomC: 18, cover: 'bare', moisture: 'moist' },
    },
  });
});

test('days typed while °F are read are °F, and stay so in the link when °C are read', () => {
  const typed = asked('bed=north&source=days&degrees=F&firstDay=2027-03-01&min=30&max=44');
  const made = forecastRequest(typed, null, english);
  expect(made).toMatchObject({ request: { json: { temperatures: [{ unit: 'F' }] } } });
  const link = linkTo({ ...typed, degrees: 'C' });
  expect(asked(link.slice(2)).unit).toBe('F');
});

describe('days that cannot be', () => {
  test.each([
    ['firstDay=2027-03-01&min=40&max=10', 'On day 1 the lowest, 40, is above the highest, 10'],
    ['firstDay=&min=9&max=10', 'which day the first'],
    ['firstDay=2027-03-01&min=&max=', 'No temperature is entered'],
  ])('%s is refused in words', (query, words) => {
    expect(forecastRequest(asked(`source=days&${query}`), null, english)).toMatchObject({
      problem: { detail: expect.stringContaining(words) },
    });
  });
});

test('what is no number goes as it was typed, so that the refusal can name it', () => {
  const { json } = requestOf('bed=&source=days&latitude=north&firstDay=2027-03-01&min=9&max=10');
  expect(json).toMatchObject({ where: { place: { latitude: 'north' } } });
});
