import type { Forecast } from '../../answers/forecast/forecast.js';
import type { SowingWindows } from '../../answers/windows/sowing-windows.js';
import { dateAt } from '../../basics/calendar.js';
import type { Say } from '../../basics/fact.js';
import { bases } from '../../basics/series.js';
import type { Crop } from '../../germination/crop.js';
import { cropInFacts } from '../../germination/custom-crop.js';
import { cropCurve } from '../../plot/crop/crop-curve.js';
import { forecastPlot } from '../../plot/forecast-plot.js';
import type { PictureOptions } from '../../plot/picture.js';
import { seasonStrip } from '../../plot/season-strip.js';
import type { Known } from '../question/question.js';

/** Renders a forecast about a stored bed. */
export function renderForecast(forecast: Forecast, known: Known, options: PictureOptions): string {
  const { crop, hours } = forecast;
  const setting = {
    crop: cropInFacts(crop),
    ...placed(known),
    goodC: crop.soil && { from: crop.soil.optimumFromC, to: crop.soil.optimumToC },
    hours: hours && { ...hours, basis: Array.from(hours.basis, (code) => bases[code]!) },
  };
  return forecastPlot(forecast, setting, options);
}

/** Renders sowing windows of a stored bed or place. */
export const renderWindows = (windows: SowingWindows, known: Known, options: PictureOptions, say: Say): string =>
  seasonStrip(
    {
      ...windows,
      best: windows.best && { date: windows.best.date, why: say(windows.best.why) },
      climate: (known.kept ?? known.locale)?.climate?.climate,
    },
    { crop: cropInFacts(windows.crop), ...placed(known) },
    options,
  );

export const renderCrop = (crop: Crop, options: PictureOptions): string => cropCurve(crop, options);

/** The name of the bed or place, and the date there. */
function placed({ kept, locale, now }: Known) {
  const site = (kept ?? locale)?.site;
  return {
    bedName: kept?.bed?.name ?? kept?.place.name ?? locale?.near ?? null,
    today: site ? dateAt(now.getTime(), site.zone) : null,
  };
}
