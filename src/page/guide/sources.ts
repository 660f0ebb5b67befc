import { coded, optionsTable } from '../running/document.js';
import { type Html, html } from '../shell/html.js';

/** The formats of sources, the fields read of each, and what it gives. */
export const formats: readonly (readonly [format: string, reads: string, gives: string])[] = [
  [
    'station-day-file',
    'a climate station’s file: U.S. CRN (daily01, hourly02), GHCN-Daily by station or `.dly`, also packed with gzip; any file that `/v1/readings/check` takes for air without asking',
    'measured days',
  ],
  [
    'daily-archive-json',
    'daily values of a point as NASA POWER answers them: `T2M_MAX`, `T2M_MIN`, `T2M` by `YYYYMMDD`',
    'measured days',
  ],
  [
    'forecast-grid-json',
    'layers with ISO 8601 intervals as in the raw grid of the U.S. National Weather Service: `temperature`, `maxTemperature`, `minTemperature`',
    'coming days that are covered whole',
  ],
  [
    'observations-api',
    'Observations of one Datastream of an OGC SensorThings API 1.1, up to 200 pages',
    'measured days that are covered',
  ],
  [
    'daily-columns-json',
    'columns of days as Open-Meteo answers them: `daily.time`, `temperature_2m_max`, `temperature_2m_min`, with `daily_units`',
    'days that are over join the air, the others are coming days',
  ],
  [
    'timeseries-geojson',
    'instants of a point as in MET Norway’s Locationforecast 2.0: `properties.timeseries`, with the extremes of `next_6_hours`',
    'coming days that are covered whole',
  ],
];

/** A url with all of its placeholders. */
const ADDRESS =
  'https://archive.example/daily/point?parameters=T2M,T2M_MAX,T2M_MIN&latitude={latitude}&longitude={longitude}&start={fromCompact}&end={toCompact}&format=JSON';

const PRESET = `curl -s -X PATCH http://127.0.0.1:8080/v1/places/quillmere -H 'content-type: application/json' -d '{
  "source": [{ "preset": "nasa-power" }, { "preset": "open-meteo-forecast" }]
}'`;

const SOURCE = `curl -s -X PATCH http://127.0.0.1:8080/v1/places/quillmere -H 'content-type: application/json' -d '{
  "source": { "format": "daily-archive-json", "everyHours": 24,
    "url": "${ADDRESS}" }
}'`;

/** Weather that the service fetches itself. */
export const sources: Html = html`
<section id="sources"><h2>Weather from outside</h2>
<p>A kept place may have a <code>source</code>, or a list of up to four, such as an archive and a forecast. The service asks each every <code>everyHours</code> hours in the background. No question waits for it. Measured days join the place’s air; forecast days replace its coming days. Nothing is asked until a place names a source.</p>
<p>Public sources go by a name: <code>GET /v1/source-presets</code> lists what each gives, its terms, credit and host. <code>met-norway</code> and <code>us-nws</code> need the operator’s <code>SOURCES_CONTACT</code>.</p>
<pre>${PRESET}</pre>
<p>The place’s <code>sources</code> tell how each stands, and why one failed. <code>POST /v1/places/{id}/air/refresh</code> asks them now: 202, or with <code>Prefer: wait=20</code> 200 once they have answered. Answers that rest on a public source have its credit in <code>attributions</code>: show it beside them.</p>
<p>For an address of your own, say its format:</p>
<pre>${SOURCE}</pre>
${optionsTable(
  ['Format', 'What is read', 'Gives'],
  formats.map(([format, reads, gives]) => [html`<code>${format}</code>`, coded(reads), gives]),
  ['Gives'],
)}
<p>Nobody has tried any of these services live. Each reader follows the published description, and is tested against a local server that speaks it and, where one was found, against a published answer (CRN, the forecast grid).</p>
<p>The <code>url</code> may hold <code>{latitude}</code>, <code>{longitude}</code>, and the dates to ask for: <code>{from}</code> and <code>{to}</code> (<code>2027-05-01</code>), <code>{fromCompact}</code> and <code>{toCompact}</code> (<code>20270501</code>). <code>{timeZone}</code> is the place’s zone. <code>{to}</code> is today at the place. <code>{from}</code> lies 30 years before it at first (60 days for observations), later 60 days (7) before the last good answer.</p>
<ul>
<li><b>A source fails.</b> The service tries again after five minutes, then ever later, up to the usual hours. It leaves a source alone that asks for it. Meanwhile the last good answer stays in use.</li>
<li><b>You change it.</b> Another <code>url</code> or <code>format</code> begins anew. Days already fetched stay until you replace or delete them.</li>
<li><b>Addresses must be public.</b> A literal address that is not is refused with <code>private-address</code> when it is put. The service refuses a name that leads to its own machine, to a private network, to link-local or otherwise special ranges, at every redirect too, and connects to the address that it looked at. A url holds no password.</li>
<li><b>Sizes.</b> An answer may have 32 MB, 8 MB of JSON.</li>
</ul>
</section>`;
