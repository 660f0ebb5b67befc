import { type Html, html } from '../shell/html.js';

const PLACE = `curl -s -X PUT http://127.0.0.1:8080/v1/places/quillmere -H 'content-type: application/json' -d '{
  "name": "Quillmere Allotment Society", "latitude": 44, "longitude": -30, "timeZone": "Etc/GMT+2", "annualRainMm": 900
}'`;

const AIR = `curl -s -X POST http://127.0.0.1:8080/v1/places/quillmere/air -H 'content-type: application/json' -d '{
  "medium": "air", "daily": [
    { "date": "2027-05-01", "min": 7.7, "max": 18.3 }, { "date": "2027-05-02", "min": 8.1, "max": 16.9 } ]
}'`;

const NORMALS = `curl -s -X PUT http://127.0.0.1:8080/v1/places/quillmere/normals -H 'content-type: application/json' -d '{
  "meanMaxC": [8, 8.5, 10.5, 13, 16.5, 20, 22.5, 23, 20, 16, 11.5, 9],
  "meanMinC": [2, 2, 3, 5, 8, 11.5, 14, 14.5, 12, 9, 5, 3]
}'`;

const COMING_DAYS = `curl -s -X PUT http://127.0.0.1:8080/v1/places/quillmere/coming-days -H 'content-type: application/json' -d '{
  "medium": "air", "origin": "forecast", "daily": [
    { "date": "2027-08-04", "min": 14, "max": 27 }, { "date": "2027-08-05", "min": 15.5, "max": 29 } ]
}'`;

const BED = `curl -s -X PUT http://127.0.0.1:8080/v1/beds/north -H 'content-type: application/json' -d '{
  "place": "quillmere", "name": "North bed", "kind": "open-ground", "moisture": "moist"
}'`;

const READINGS = `curl -s -X POST 'http://127.0.0.1:8080/v1/beds/north/readings?medium=soil' \\
  -H 'content-type: text/csv' --data-binary @fixtures/demo/north-bed-august.csv`;

const LINKS = [
  `curl -s 'http://127.0.0.1:8080/v1/beds/north/forecast?crop=lettuce&sowing=2027-08-03'`,
  `curl -s 'http://127.0.0.1:8080/v1/beds/north/soil-temperatures?from=2027-07-28&to=2027-08-10'`,
  `curl -s 'http://127.0.0.1:8080/v1/beds/north/sowing-windows?crop=lettuce'`,
];

const BACK = `curl -s 'http://127.0.0.1:8080/v1/beds/north/readings?from=2027-07-20&to=2027-08-06'`;

const PICTURE = `curl -s 'http://127.0.0.1:8080/v1/crops/lettuce?width=360&unit=F' -H 'accept: image/svg+xml'`;

/** Storing places, beds and readings under the caller's own names. */
export const keeping: Html = html`
<section id="keep"><h2>Keep</h2>
<p>Keep a place, a bed and its readings under names of your own, and send each only once. A name has 1 to 64 of <code>a-z</code>, <code>0-9</code> and <code>-</code>. The dates here are the demo’s; a service with today’s clock leaves out what lies ahead of it, so use dates of your own season there. These commands add to what the demo keeps, and change its answers a little.</p>
<p>A <code>PUT</code> replaces everything: it deletes the fields that you leave out. A <code>PATCH</code> changes the fields that it names.</p>
<h3>A place and its air</h3>
<pre>${PLACE}</pre>
<p>Add its air, by the day or as a file (<code>?unit=C</code> where the file does not say it), for as many past years as there are. A date that you send again replaces what was kept of it:</p>
<pre>${AIR}</pre>
<p>A forecast of the air replaces the one before:</p>
<pre>${COMING_DAYS}</pre>
<p>Where there are no past years, twelve months from a climate table do, from January on:</p>
<pre>${NORMALS}</pre>
<h3>A bed and its readings</h3>
<pre>${BED}</pre>
<pre>${READINGS}</pre>
<p>A bed keeps readings with their instants. Days of air belong to the place; days of soil go with each question. <code>DELETE</code> of air or readings without <code>from</code> and <code>to</code> deletes all of them.</p>
<h3>Then a question is a link</h3>
<p>The crop and the date are enough. Soil temperatures without dates run from a week before today to a week after, and sowing windows from today through the year:</p>
${LINKS.map((link) => html`<pre>${link}</pre>`)}
<p>What is kept comes back as it came, and you can send it again:</p>
<pre>${BACK}</pre>
<h3>Pictures</h3>
<p>Links to a bed’s forecast, to sowing windows and to a crop are pictures as well: SVG, with what they show said in words inside. A browser that shows one as an image asks for SVG by itself.</p>
<pre>${PICTURE}</pre>
<p>A picture is <code>width</code> pixels wide (280 to 2400; 800 if you leave it out), in °C or °F, light or dark as the reader has it, and legible on paper. A forecast’s shows the temperature at the seed by the hour, and marks what was measured, what is worked out and what is expected; what the crop likes; spells of heat and cold; what comes up and when; today; and the day of the count.</p>
<h3>Owners</h3>
<p>On a service with keys each owner sees and changes only what is that owner’s. <code>GET /v1/usage</code> shows how much you keep, and how much you may. Deleting always works.</p>
</section>`;
