import { type Html, html } from '../shell/html.js';

const FORECAST = `curl -s http://127.0.0.1:8080/v1/forecasts -H 'content-type: application/json' -d '{
  "crop": "lettuce",
  "where": { "place": { "latitude": 44, "longitude": -30, "timeZone": "Etc/GMT+2" } },
  "sowing": { "date": "2027-05-03", "time": "18:00", "seeds": 200 },
  "temperatures": [{ "medium": "soil", "unit": "C", "daily": [
    { "date": "2027-05-01", "min": 9.8, "max": 17.1 },
    { "date": "2027-05-02", "min": 10.6, "max": 17.4 },
    { "date": "2027-05-03", "min": 11.2, "max": 16.9 }
  ] }]
}'`;

const SOIL = `curl -s http://127.0.0.1:8080/v1/soil-temperatures -H 'content-type: application/json' -d '{
  "where": {
    "place": { "latitude": 44, "longitude": -30, "timeZone": "Etc/GMT+2" },
    "bed": { "kind": "raised-bed", "moisture": "moist", "shadePercent": 20 }
  },
  "depthCm": 1.3,
  "temperatures": [
    { "medium": "air", "daily": [
      { "date": "2027-05-01", "min": 7.7, "max": 18.3 }, { "date": "2027-05-02", "min": 8.1, "max": 16.9 } ] },
    { "medium": "air", "origin": "forecast", "daily": [ { "date": "2027-05-03", "min": 9, "max": 20 } ] },
    { "medium": "soil", "probeDepthCm": 10, "daily": [ { "date": "2027-05-01", "min": 10.9, "max": 14.1 } ] }
  ]
}'`;

/** Questions about data sent with the request. */
export const asking: Html = html`
<section id="ask"><h2>Ask</h2>
<p>Three questions take the same body: what will this sowing do, how warm is the soil, when should I sow.</p>
<h3>What will this sowing do?</h3>
<p>Three days of a probe at seed depth, and lettuce sown on 3 May:</p>
<pre>${FORECAST}</pre>
<p>The answer has dates for the first tenth, for half and for nine tenths (<code>first</code>, <code>half</code>, <code>most</code>) of the seedlings that come up by the day of the count, each with its range; how many come up; spells of heat and cold, what they cost, and what helps. With <code>?hourly=true</code> it has the temperature at the seed by the hour too, as a series that you can send back. <code>GET /v1/crops</code> lists the crops and their ids.</p>
<h3>How warm is the soil?</h3>
<p>Most growers have no probe at the seed. A weather record’s lowest and highest of each day do instead: send them from two months before the sowing on, with next week’s forecast beside them. A probe at another depth does too. The two together teach the model about this bed:</p>
<pre>${SOIL}</pre>
<ul>
<li>Each day of the answer says what it rests on (<code>basis</code>) and how sure its mean is: four times in five the truth lies within <code>plusMinus</code>.</li>
<li>The same <code>temperatures</code> go into <code>/v1/forecasts</code>. So does the answer’s own <code>series</code>, with the same <code>where</code>.</li>
<li>A bed <code>indoors</code> needs a place with its time zone and the <code>roomC</code>, and no temperatures.</li>
<li>An answer by the day spans up to thirty years, by the hour 800 days. A depth may be 30 cm, in a pot 15 and in a tray 5.</li>
<li>The service fills gaps of up to 14 days, and says so.</li>
</ul>
<h3>When should I sow?</h3>
<p><code>/v1/sowing-windows</code> needs three past years of air or more, or the place’s normals. Each date is good, fair or poor: <code>spans</code> says until when and why, <code>best</code> is null where no date is good or fair, and <code>harvest</code> says when it is picked. A date is good where, in most years, enough comes up and a harvest is had before frost, heat or short days end the crop. <code>judge=emergence</code> asks of the coming up alone; <code>dates=false</code> leaves the dates out one by one, which are most of the answer. <code>ways</code> tells how it can be grown, the better way first: sown in place, or <code>indoors</code> in trays. Of a crop that is planted out, such as tomato, it names when to sow the tray, harden off and plant out, by three past years of air or more, and a harvest counted from planting out. Where the first date is not good in place, <code>instead</code> says what to do: wait, or start in trays. Where none of the dates is good and the soil is too hot or too cold for the seed, it also says which of them water, shade or black film would make good. Keep a bed, and the question is a <a href="#keep">link</a>.</p>
</section>`;
