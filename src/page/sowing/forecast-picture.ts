import type { ForecastAnswer } from '../../contract/forecast.js';
import { dayOf } from '../../plot/dates.js';
import type { DrawnHours, ForecastSetting } from '../../plot/drawn-forecast.js';
import { forecastPlot } from '../../plot/forecast-plot.js';
import type { Html } from '../shell/html.js';
import { bedNamed, cropNamed, todayAt } from '../shell/inventory.js';
import { pictureFor, pictures, TO_KEEP } from '../shell/pictures.js';
import type { AskedQuestion } from '../shell/view.js';

type About = Pick<AskedQuestion, 'question' | 'shelf' | 'reader'>;

/** The forecast rendered for the page, under an id that no other picture there has. */
export function forecastPictures(
  forecast: ForecastAnswer,
  asked: About & Pick<AskedQuestion, 'widths'>,
  id = 'forecast',
): Html {
  const setting = settingOf(forecast, asked);
  return pictures(id, asked, (options) => forecastPlot(forecast, setting, options));
}

/** The forecast rendered for download. */
export const forecastToKeep = (forecast: ForecastAnswer, asked: About): string =>
  forecastPlot(forecast, settingOf(forecast, asked), { ...TO_KEEP, ...pictureFor(asked.reader) });

function settingOf(forecast: ForecastAnswer, { question, shelf }: About): ForecastSetting {
  const crop = cropNamed(shelf, forecast.crop);
  return {
    crop: forecast.crop,
    bedName: bedNamed(shelf, question.bed)?.name ?? null,
    goodC: crop?.soil ? { from: crop.soil.optimumFromC, to: crop.soil.optimumToC } : null,
    hours: forecast.hourly ? hoursOf(forecast.hourly.readings, forecast.sowing.date) : null,
    today: todayAt(shelf, question.bed, question.timeZone),
  };
}

/** Hourly temperatures by the local clock, in days since midnight of the sowing date. */
function hoursOf(readings: NonNullable<ForecastAnswer['hourly']>['readings'], sowingDate: string): DrawnHours {
  const firstDay = dayOf(sowingDate);
  const atDay = readings.map(
    ({ at }) => dayOf(at) - firstDay + Number(at.slice(11, 13)) / 24 + Number(at.slice(14, 16)) / 1440,
  );
  return {
    atDay,
    tempC: readings.map(({ value }) => value),
    basis: readings.map(({ basis }) => basis ?? 'measured'),
  };
}
