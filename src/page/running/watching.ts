import { type Html, html } from '../shell/html.js';
import { coded } from './document.js';

interface Alarm {
  readonly says: string;
  /** A rule in the syntax of Prometheus. */
  readonly alarm: string;
  readonly does: string;
}

const alarms: readonly Alarm[] = [
  {
    says: 'Nothing can be saved.',
    alarm: 'forecaster_database_writes_failing == 1',
    does: 'Look at the disk and the log. Reading goes on.',
  },
  {
    says: 'The disk gets full.',
    alarm: 'forecaster_disk_free_bytes < 1e9',
    does: 'Make room, or move to a larger disk. Deleting works even when it is full.',
  },
  {
    says: 'The log of the database is not carried into its file.',
    alarm: 'forecaster_database_wal_bytes > 256e6',
    does: 'Another program may hold the file open. Close it.',
  },
  {
    says: 'Growers wait for a worker.',
    alarm: 'histogram_quantile(0.99, rate(forecaster_work_wait_seconds_bucket[10m])) > 2',
    does: 'Give it more cores, or a second instance.',
  },
  {
    says: 'Requests are refused: `busy` is ours, `too-many-requests` and `quota-full` are a caller’s.',
    alarm: 'rate(http_refusals_total{code=~"busy|storage-.*|internal"}[5m]) > 0.1',
    does: 'See what each 503 means, below. Never expected: `internal`. Its instance is in the log.',
  },
  {
    says: 'The thread that answers is held up.',
    alarm: 'nodejs_eventloop_lag_p99_seconds > 0.2',
    does: 'One process is full. Start another, or find out who sends large files.',
  },
  {
    says: 'Memory of the process.',
    alarm: 'process_resident_memory_bytes > 500e6',
    does: 'Look at `forecaster_cache_bytes` and `http_open_connections`.',
  },
  {
    says: 'Weather is fetched late.',
    alarm: 'forecaster_source_overdue_seconds > 3600',
    does: 'See whether the machine reaches the internet. `forecaster_sources_failed_total` counts failures.',
  },
  {
    says: 'Subscriptions are switched off: their receivers took nothing for three days.',
    alarm: 'increase(forecaster_deliveries_total{outcome="switched-off"}[1d]) > 0',
    does: 'Tell their owners. A `PUT` switches them on again, and nothing is lost.',
  },
];

/** Each 503, or the answer in its place. */
const refusals: readonly (readonly [code: string, means: string, does: string])[] = [
  [
    'busy',
    'The whole service has more work than it takes, or a question waited too long.',
    'Callers try again after `Retry-After`. If it lasts, add cores or an instance.',
  ],
  ['stopping', 'The service was told to stop, and takes on nothing more.', 'Start it again, or ask another instance.'],
  [
    'storage-unavailable',
    'The database does not answer, or another program holds it.',
    'Start the database server. For SQLite, close what holds the file.',
  ],
  ['storage-full', 'The disk is full. Reading and deleting go on.', 'Make room. Nothing was half saved.'],
  [
    'storage-damaged',
    'The file is damaged, gone, or was replaced while the service ran. There is no `Retry-After`: waiting mends nothing.',
    'Stop, restore the last backup, start.',
  ],
];

/** Monitoring from outside, when to wake somebody, and what refusals mean. */
export const watching: Html = html`
<section id="limits"><h2>Limits and quotas</h2>
<ul>
<li><code>RATE_LIMIT</code> (600): requests a minute of an owner, or without keys of an address. Requests that need no key count against the address too. More get 429, and <code>Retry-After</code> says when to go on.</li>
<li><code>MAX_CONNECTIONS</code> (2000): connections open at once, and <code>MAX_CONNECTIONS_PER_ADDRESS</code> (250) from one address. One more is closed. A proxy in <code>TRUST_PROXY</code> counts only in the first.</li>
<li><code>WORK_LIMIT</code> (240): answers a minute that are worked out from years of weather. Answers from the cache cost none. The service works on at most eight of them for one caller at a time.</li>
<li>An answer that is not there after ten seconds (a plan 20, soil 30) is refused with 503 <code>busy</code> and <code>Retry-After</code>. Owners take turns, so nobody waits for another’s queue.</li>
<li><code>QUOTAS</code>: how much an owner may keep, such as <code>QUOTAS=beds:500,megabytes:1024</code>. Thermometers and devices count by bed. A reading counts as 16 bytes, a day of air as 34. More is 409 <code>quota-full</code>. <code>GET /v1/usage</code> shows an owner what is used. Deleting always works.</li>
<li>JSON may have 4 MB, a file 256 MB.</li>
<li>A connection has one request answered at a time. The service closes it where headers take longer than a minute, a body stands still for a minute (408), or nobody reads an answer for a minute.</li>
</ul>
</section>

<section id="metrics"><h2>Watch it</h2>
<p><code>/healthz</code> says that the process lives. <code>/readyz</code> says that it can answer and save: let the proxy ask it. <code>/metrics</code> is for Prometheus; where keys are set it wants one, of an owner made for it: <code>API_KEYS=…,prometheus:a-key</code>.</p>
<pre>scrape_configs:
  - job_name: garden
    static_configs: [{ targets: ["127.0.0.1:8080"] }]
    authorization: { credentials: a-key }</pre>
<h3>Be woken by</h3>
<div class="cards">${alarms.map(
  ({ says, alarm, does }) => html`<div><p><b>${coded(says)}</b> ${coded(does)}</p><pre>${alarm}</pre></div>`,
)}</div>
<p>Of caches <code>forecaster_cache_hits_total</code>, <code>forecaster_cache_misses_total</code> and <code>forecaster_cache_bytes</code> say how well they serve. <code>forecaster_work_waiting</code>, <code>forecaster_work_running</code> and <code>forecaster_work_threads</code> tell of the worker pool, <code>forecaster_messages_waiting</code> of messages that wait. A metric that is not known now is left out.</p>
<h3>The log</h3>
<p>The log has one line of JSON for each request, on standard output. The service writes it within a tenth of a second after it has answered, or the caller has gone. The line has the <code>Request-Id</code> of the answer, the caller’s <code>X-Request-Id</code> and <code>traceparent</code>. A problem’s <code>instance</code> is the same id. <code>LOG_LEVEL=debug</code> logs more.</p>
</section>

<section id="refusals"><h2>What each 503 means</h2>
<p>A 503 is never the caller’s fault, and has changed nothing: the request may be sent again as it was.</p>
<dl>
${refusals.map(([code, means, does]) => html`<dt><code>${code}</code></dt><dd>${coded(means)} ${coded(does)}</dd>`)}
</dl>
</section>`;
