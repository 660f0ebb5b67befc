import { type Html, type HtmlPart, html } from '../shell/html.js';
import { scaleFigures } from './scale-figures.js';

const { costs, assumptions, machines, measuredOn, node } = scaleFigures;

const whole = (value: number): string => Math.round(value).toLocaleString('en-GB');
const short = (value: number): string => (value >= 10 ? whole(value) : String(Number(value.toPrecision(2))));

/** The properties shown of each machine, in this order. */
const rows: readonly (readonly [name: string, of: (scale: (typeof machines)[number]['scale']) => string])[] = [
  [
    'Cores wanted in the mean hour',
    ({ coresByHour }) => short(coresByHour.reduce((a, b) => a + b) / coresByHour.length),
  ],
  ['Cores wanted in the busiest hour', ({ coresByHour }) => short(Math.max(...coresByHour))],
  ['Wait for a worker, half of looks', ({ waitP50S }) => `${short(waitP50S)} s`],
  ['Wait for a worker, 99 of 100', ({ waitP99S }) => `${short(waitP99S)} s`],
  ['Looks refused with 503', ({ refusedPercent }) => `${short(refusedPercent)} %`],
  ['News comes late by, 99 of 100', ({ lookLateP99Min }) => `${short(lookLateP99Min)} min`],
  ['Looks answered from the cache', ({ answersHitPercent }) => `${answersHitPercent} %`],
  ['Memory of an instance', ({ memoryMB }) => `${whole(memoryMB)} MB`],
  ['Disk for the gardens', ({ diskGB }) => `${short(diskGB)} GB`],
  ['Writes a second', ({ writesASecond }) => whole(writesASecond)],
  ['First wall', ({ walls }) => walls[0]!.what],
  ['It stands at so many gardens', ({ walls }) => whole(walls[0]!.gardens)],
  ['Second wall', ({ walls }) => `${walls[1]!.what}, ${whole(walls[1]!.gardens)}`],
];

const buys: Readonly<Record<string, string>> = {
  workers: 'Buy cores: workers are threads, and gardens share nothing.',
  'main threads': 'Start another instance over PostgreSQL: one thread of each answers requests.',
  'looks for webhooks':
    'Start another instance: each looks at one garden after another for its webhooks. Or ask probes for a reading every ten minutes: each reading makes the next look a new one.',
  'commits of SQLite': 'Move to PostgreSQL, or ask probes to send ten readings at once.',
};

const cost = ({ mainMs, workMs }: { mainMs: number; workMs: number }): string =>
  `${short(mainMs)} + ${short(workMs)} ms`;

const table = (
  head: readonly string[],
  body: readonly (readonly HtmlPart[])[],
  isWide = false,
): Html => html`<div class="scroll"><table class="numbers${isWide ? ' wide' : ''}"><thead><tr>${head.map((cell) => html`<th scope="col">${cell}</th>`)}</tr></thead><tbody>
${body.map(
  ([first, ...cells]) =>
    html`<tr><th scope="row">${first}</th>${cells.map((cell, i) => html`<td data-of="${head[i + 1]!}">${cell}</td>`)}</tr>
`,
)}</tbody></table></div>`;

const walls = [...new Set(machines.map(({ scale }) => scale.walls[0]!.what))];

/** How large a machine is enough, from measurements and simulations. */
export const sizes: Html = html`
<section id="sizes"><h2>How large a machine</h2>
<p>For a society of a hundred gardens any small machine is enough: one core, ${whole(Math.ceil((costs.restMB + 128) / 100) * 100)} MB of memory, and ${short((100 * costs.diskKB) / 1024)} MB of disk.</p>
<p>A garden with 15 years of weather, two beds and eight sowings takes ${whole(costs.diskKB)} kB on disk. An instance takes ${whole(costs.restMB)} MB of memory at rest, its caches up to 110 MB in all, and each thread up to 120 MB while it works. <code>WORKERS</code> sets the threads that work out long answers. On Linux without Docker, start it with <code>MALLOC_ARENA_MAX=2</code> in its environment, as the image does: it takes up to a seventh less memory.</p>
<h3>What things cost</h3>
<p>CPU time, of the thread that answers and of a worker. Measured on ${measuredOn} with Node.js ${node.slice(1)}, on a shared machine of two cores.</p>
${table(
  ['One', 'costs'],
  [
    ['look at what is growing and when to sow, the first of a day', cost(costs.firstLook)],
    ['the same look again', cost(costs.furtherLook)],
    ['look at a garden for its webhook', cost(costs.backgroundLook)],
    ['post of a probe’s readings', cost(costs.reading)],
    ['fetch of a calendar', cost(costs.calendar)],
    ['day’s answer of a weather source, once fetched', cost(costs.source)],
  ],
)}
<h3>${whole(assumptions.gardens)} gardens, simulated</h3>
<p>Each garden is opened once a day and looked at ${assumptions.furtherLooks} times more, ${assumptions.peak} times as often in the evening as on average. ${whole(100 * assumptions.webhookShare)} of 100 have a webhook, ${whole(100 * assumptions.probeShare)} of 100 a probe that sends each minute, ${whole(100 * assumptions.calendarShare)} of 100 two calendars that are fetched each hour. All have a weather source. Nobody has run so many: this is a reckoning from the costs above, not a test.</p>
${table(
  [`For ${whole(assumptions.gardens)} gardens`, ...machines.map(({ machine }) => machine.name)],
  rows.map(([name, of]) => [name, ...machines.map(({ scale }) => of(scale))]),
  true,
)}
<p>A wall is where a part would be used to 80 % in the busiest hour.</p>
<h3>What to buy next</h3>
<ul>${walls.map((wall) => html`<li><b>If the wall is ${wall}:</b> ${buys[wall]}</li>`)}</ul>
<p class="note">Not measured: what PostgreSQL itself needs, and the network between it and the service.</p>
</section>`;
