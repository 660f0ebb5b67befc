import { dateScale, dateWords, dayOf } from './dates.js';
import { degreesSpan } from './degrees.js';
import { type DrawnForecast, daysOf, type ForecastSetting, spellsOf } from './drawn-forecast.js';
import { emergencePanel } from './emergence-panel.js';
import { forecastInWords, gist, spellInWords, titleOf } from './forecast-words.js';
import type { Frame } from './frame.js';
import { inRows, type Label, lettering, paragraph, TYPE } from './lettering.js';
import { type PictureOptions, picture, sheetOf } from './picture.js';
import { element } from './svg.js';
import { partsStrip, temperature } from './temperature-course.js';
import { paint } from './theme.js';

/** The forecast in one picture: temperature at the seed, emergence and its dates, spells, today and the count. */
export function forecastPlot(forecast: DrawnForecast, setting: ForecastSetting, options: PictureOptions): string {
  const sheet = sheetOf(options);
  const words = dateWords(sheet.locale);
  const firstDay = dayOf(forecast.sowing.date);
  const days = daysOf(forecast);
  const lastDay = Math.max(
    firstDay + 1,
    dayOf(forecast.stand.by) + 1,
    ...(days.length > 0 ? [days.at(-1)!.day + 1] : []),
  );
  const x = dateScale(firstDay, lastDay, sheet.axisX, sheet.right);
  const frame = { sheet, words, x };

  const head = heading(forecast, setting, frame);
  const labels = marginLabels(forecast, setting, frame, head.toY + 6);
  const panelTop = labels.toY + 6;
  const panelBottom = panelTop + (sheet.isWide ? 190 : 150);
  const parts = partsStrip(days, frame, panelBottom);
  const upTop = parts.toY + 14;
  const up = emergencePanel(forecast, days, frame, upTop);

  const marks = verticalMarks(forecast, setting, frame, labels.toY + 2, up.axisY);
  // Draw text after the lines that run through it.
  const drawn = [
    temperature(forecast, setting, days, frame, panelTop, panelBottom),
    up.surface,
    marks,
    head.drawn,
    parts.drawn,
    labels.drawn,
    up.letters,
  ].join('');
  const said = {
    title: titleOf(forecast, setting, { ...sheet, words }),
    description: forecastInWords(forecast, setting, { ...sheet, words }),
  };
  return picture(sheet, up.toY + 10, { ...said, hatches: ['hot', 'cold', 'modelled', 'expected'] }, drawn);
}

function heading(forecast: DrawnForecast, setting: ForecastSetting, { sheet, words }: Frame) {
  const box = { x: sheet.left, width: sheet.right - sheet.left };
  const told = { ...sheet, words };
  const { goodC } = setting;
  const title = paragraph({ ...box, y: 14 }, titleOf(forecast, setting, told), { size: TYPE.title, bold: true });
  const said = paragraph({ ...box, y: title.toY }, gist(forecast, setting.today ?? null, told), { colour: 'quiet' });
  const known = forecast.daily.length > 0;
  const caption = paragraph(
    { ...box, y: said.toY + 8 },
    sheet.say(
      known
        ? {
            code: 'picture.at-seed',
            params: {
              depthCm: forecast.sowing.depthCm,
              ...(goodC ? degreesSpan(goodC.from, goodC.to, sheet.unit) : { from: null, to: null }),
            },
          }
        : { code: 'picture.no-temperature', params: {} },
    ),
    { size: TYPE.small },
  );
  return { drawn: title.drawn + said.drawn + caption.drawn, toY: caption.toY };
}

/** The days labelled above the picture, with positions. */
function namedDays({ sowing, stand }: DrawnForecast, { today }: ForecastSetting, { x, words, sheet }: Frame) {
  const [from, to] = x.domain() as [number, number];
  const text = (day: 'sown' | 'today' | 'count', date: string): string =>
    sheet.say({ code: 'picture.day', params: { day, on: words.short(date) } });
  const named = [
    { day: dayOf(sowing.date), text: text('sown', sowing.date), isToday: false },
    ...(today ? [{ day: dayOf(today), text: text('today', today), isToday: true }] : []),
    { day: dayOf(stand.by), text: text('count', stand.by), isToday: false },
  ];
  return named
    .filter(({ day }) => day >= from && day < to)
    .map((one, i) => ({ ...one, x: i === 0 ? x(one.day) : Math.min(sheet.right, x(one.day + 0.5)) }));
}

function marginLabels(forecast: DrawnForecast, setting: ForecastSetting, frame: Frame, y: number) {
  const { sheet, x, words } = frame;
  const spells: Label[] = spellsOf(forecast).map((spell) => ({
    x: (x(dayOf(spell.from)) + x(dayOf(spell.to) + 1)) / 2,
    text: spellInWords(spell, { ...sheet, words }),
  }));
  const placed = inRows([...namedDays(forecast, setting, frame), ...spells], { from: sheet.left, to: sheet.right });
  const rowPx = 17;
  const rows = 1 + placed.reduce((most, { row }) => Math.max(most, row), 0);
  const drawn = placed
    .map(({ middle, row, text }) =>
      lettering(middle, y + (rows - row) * rowPx - 4, text, { size: TYPE.small, anchor: 'middle' }),
    )
    .join('');
  return { drawn, toY: y + rows * rowPx };
}

/** Vertical lines for the sowing, today and the count. */
const verticalMarks = (
  forecast: DrawnForecast,
  setting: ForecastSetting,
  frame: Frame,
  fromY: number,
  toY: number,
): string =>
  namedDays(forecast, setting, frame)
    .map(({ x, isToday }) =>
      element('path', {
        d: `M${x.toFixed(1)},${fromY.toFixed(1)} V${toY.toFixed(1)}`,
        ...paint({ stroke: isToday ? 'ink' : 'quiet' }),
        'stroke-width': isToday ? 1.75 : 1,
        'stroke-dasharray': isToday ? undefined : '2 3',
      }),
    )
    .join('');
