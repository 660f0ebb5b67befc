import { coded, optionsTable } from '../running/document.js';
import { type Html, html } from '../shell/html.js';

const FORECAST = `curl -s 'http://127.0.0.1:8080/v1/forecasts?crop=lettuce&sowing=2027-08-03&medium=soil&latitude=44&timeZone=Etc/GMT%2B2' \\
  -H 'content-type: text/csv' --data-binary @fixtures/demo/north-bed-august.csv`;

const CHECK = `curl -s 'http://127.0.0.1:8080/v1/readings/check?medium=soil&timeZone=Etc/GMT%2B2' \\
  -H 'content-type: text/csv' --data-binary @fixtures/demo/north-bed-august.csv`;

/** Query parameters that settle what a file leaves open. */
export const fileSettlements: readonly (readonly [parameters: string, settles: string])[] = [
  ['`medium`, `probeDepthCm`', 'soil or air, and how deep; chooses among several columns'],
  ['`column`, `timeColumn`', 'which column, by number or name, or which sensor in a file of many'],
  ['`unit`', '`C`, `F` or `K`'],
  ['`dateOrder`', '`dmy`, `mdy` or `ymd`'],
  ['`timeZone`, `clock`', 'the place’s zone; `local` (changed in spring and autumn), `standard` or `utc`'],
  ['`decimalMark`', '`.` or `,` where commas also part the cells'],
];

/** Sending a logger's file unchanged. */
export const files: Html = html`
<section id="files"><h2>Files</h2>
<p>Send a logger’s file as it is, with the question in the query:</p>
<pre>${FORECAST}</pre>
<p>A file may have 256 MB and come from a logger, a home station, a database, a national network or a probe of your own: any usual encoding, delimiter, decimal mark, header, unit and way to write a date.</p>
<p>The service asks what the file does not prove. The refusal has a list of <code>choices</code>; each says which query parameter to send back, and what it would mean:</p>
${optionsTable(
  ['Parameter', 'Settles'],
  fileSettlements.map(([parameters, settles]) => [coded(parameters), coded(settles)]),
)}
<p>Check a file before you rely on it. The answer shows every choice the service made, each value that it dropped or doubts with its line and the reason, the gaps, and the days. Nothing is kept:</p>
<pre>${CHECK}</pre>
</section>`;
