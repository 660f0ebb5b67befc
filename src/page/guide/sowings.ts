import { coded, optionsTable } from '../running/document.js';
import { type Html, html } from '../shell/html.js';

const SOWING = `curl -s -X PUT http://127.0.0.1:8080/v1/sowings/carrots -H 'content-type: application/json' -d '{
  "bed": "north", "crop": "carrot", "date": "2027-07-20", "seeds": 200
}'`;

const COUNT = `curl -s -X PUT http://127.0.0.1:8080/v1/sowings/carrots/counts/2027-08-02 -H 'content-type: application/json' \\
  -d '{ "seedlings": 14 }'`;

/** Fields of the answer about a sowing. */
export const sowingFields: readonly (readonly [fields: string, says: string])[] = [
  [
    '`forecast`',
    'as `/v1/forecasts` answers it; null where the bed’s temperatures do not tell, and `warnings` say why',
  ],
  [
    '`expected`',
    'by the forecast: `not-yet`, `due` from the first day of its range on, `past` once most are over in slow beds too',
  ],
  ['`observed`', 'by the last count: `none`, `some`, `enough` (as many as beds give at least); null without a count'],
  [
    '`judgement`',
    'from both: `wait`, `count-now`, `late`, `thin`, `good`, `lost`, with the odds and a sentence. Without a count the service guesses nothing. It says `lost` when 95 of 100 such rows would be',
  ],
  [
    '`learned`',
    'what counts in this bed have taught of this crop: how many times longer than the chart it takes, and which share of a laboratory’s stand it gives',
  ],
  [
    '`resowBy`',
    'the last date of the season on which a new sowing is still good, from past years; null where the season is over',
  ],
  [
    '`triage`',
    'what to do about a row that should be up: wait, sow again, fill the gaps, with what each costs in days of harvest; and what to look for where nothing came (`checkFor`). It weighs what waiting loses against what sowing again costs, so that near the end of the season less certainty is needed',
  ],
  [
    '`toDo`, `harvest`, `indoors`',
    'what to do in the next two weeks; when it may be ready; when to harden trays off and plant them out',
  ],
];

/** Sowings, their counts, and what the counts teach. */
export const sowings: Html = html`
<section id="sowings"><h2>Sow and count</h2>
<p>Keep a sowing under a name of yours. Its answer shows how it stands, from the bed’s latest readings:</p>
<pre>${SOWING}</pre>
${optionsTable(
  ['Field', 'What it says'],
  sowingFields.map(([fields, says]) => [coded(fields), coded(says)]),
)}
<p>Count what is up, also when there is nothing, in the whole row or in a stretch of it (<code>ofSeeds</code>):</p>
<pre>${COUNT}</pre>
<ul>
<li>After thinning, say how many you pulled out in all (<code>"thinned": 12</code>), or that you pulled some (<code>"thinned": true</code>). Later counts need not repeat it.</li>
<li>A count is of a day within a year of the sowing, and not of a day to come. In the demo today is 3 August 2027, and its clock starts at noon.</li>
<li>What counts teach holds for this sowing and, less each year, in another season and with another lot, for later ones of the crop in the bed. All forecasts about the bed heed it.</li>
<li><code>"method": "indoors"</code> is a sowing in trays, in a room of <code>roomC</code>.</li>
</ul>
<h3>Lots, seeds and plans</h3>
<p>A lot is the seed of one packet or harvest. Its test or its packet’s percent becomes what it is worth today. The service ages it where you give the seed’s moisture and how warm it is stored, and else says when to test it before use. <code>POST /v1/seeds-needed</code> answers how many seeds to sow for a number of plants, as surely as you want them.</p>
<p>A plan is a harvest that you want of a bed, so many a week from one date to another. Its answer says what to sow when, in the bed, in shade or in trays, and which gaps heat or frost will leave. A week counts plants that are ready; tomatoes and beans bear for weeks, so want fewer of them.</p>
</section>`;
