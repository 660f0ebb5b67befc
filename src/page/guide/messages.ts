import { coded, optionsTable } from '../running/document.js';
import { type Html, html } from '../shell/html.js';

const SUBSCRIPTION = `curl -s -X PUT http://127.0.0.1:8080/v1/subscriptions/shed -H 'content-type: application/json' -d '{
  "url": "https://shed.example/alerts", "events": ["hot-spell", "emergence-shift", "window-open", "frost", "sow-again"],
  "beds": ["north"], "crops": ["lettuce"]
}'`;

/** The types of messages, and when each is sent. */
export const events: readonly (readonly [type: string, when: string])[] = [
  [
    'hot-spell',
    'heat that is measured or forecast lies ahead of a sowing, has moved by two days or more since the last message, or gets severe',
  ],
  ['emergence-shift', 'the date of half of a sowing has moved by two days or more since the last message'],
  [
    'window-open',
    'a window to sow one of the `crops` opens, or is open at the first look; the crops have to be named. While frost is forecast that would kill what is sown, it waits',
  ],
  [
    'frost',
    'a coming night is forecast at 0 °C or less over tender seedlings, at -2 °C over half-hardy ones, that are up or may be by then, or are planted out',
  ],
  ['sow-again', 'a row that stays bare is worth sowing again, as its `triage` says; once for each sowing'],
];

/** Messages to the caller's address. */
export const messages: Html = html`
<section id="messages"><h2>Messages</h2>
<p>A subscription has the service post what is new to an address of yours, as JSON: <code>{ "type", "timestamp", "data": { "bed", "sowing", "crop", …, "text" } }</code>.</p>
<pre>${SUBSCRIPTION}</pre>
${optionsTable(
  ['Type', 'Sent when'],
  events.map(([type, when]) => [html`<code>${type}</code>`, coded(when)]),
)}
<ul>
<li><b>Signed</b> as <a href="https://www.standardwebhooks.com">Standard Webhooks</a> 1.0.0 says, so any of its libraries verifies a message. The secret stands only in the answer that creates the subscription: delete it and put it again for another. The demo stamps messages with its own day, which a verifier that looks at the time refuses.</li>
<li><b>In order, and at least once</b>, always under the same <code>webhook-id</code>. Only an answer of 2xx takes a message. The service sends one that is not taken again after 5 seconds, then ever later, ten times over three days. Then it switches the subscription off; an answer of 410 does so at once. <code>GET</code> says since when and why; <code>PUT</code> switches it on again.</li>
<li><b>Nothing that waits is lost</b>, up to a thousand messages. Beyond that the service adds none until there is room, and then tells what holds at that time.</li>
<li><b>Addresses are https and public</b>, as those of sources are. <code>ALLOW_PRIVATE_WEBHOOKS=1</code> allows private ones, and http.</li>
<li><b>At most every quarter of an hour</b> the service looks at the garden, where something in it or the date has changed.</li>
</ul>
<p>A message is a forecast. Look at the bed before you act on it.</p>
<p>A calendar goes another way: each bed has a <code>calendarUrl</code> to subscribe to, with what to do in the bed and when. The address holds a secret; <code>POST /v1/beds/{id}/calendar-token</code> gives the bed another.</p>
</section>`;
