import { type Html, html } from '../shell/html.js';

const CHANGE = `curl -s -X PATCH http://127.0.0.1:8080/v1/beds/north -H 'content-type: application/json' -d '{
  "shadePercent": 10
}'`;

/** Rules that hold for every route. */
export const overHttp: Html = html`
<section id="http"><h2>Over HTTP</h2>
<h3>Keys</h3>
<p>A service with keys wants <code>Authorization: Bearer a-key</code>. A browser gives the key once: <code>POST /session</code> sets a cookie that stands for it. <a href="/docs/running#keys">Keys and sessions</a> has the rest.</p>
<h3>Numbers, words and notes</h3>
<p>Numbers are rounded for people; <code>?precision=full</code> leaves them alone. Every answer says what it assumed (<code>assumptions</code>) and what to heed (<code>warnings</code>). Each note has a <code>code</code> and <code>params</code> beside its <code>text</code>: never parse a text. <code>Accept-Language</code> or <code>?lang=de</code> chooses its language, <code>?textUnit=F</code> its units, and <code>GET /v1/messages</code> has all the sentences.</p>
<h3>Ask again cheaply</h3>
<p>Send the <code>ETag</code> of an answer back as <code>If-None-Match</code>; 304 means that nothing has changed. The service works an answer out once. As long as what it rests on is unchanged, it gives the same answer again, and <code>issuedAt</code> says since when. Answers come packed to whoever accepts <code>br</code> or <code>gzip</code>.</p>
<h3>Change safely</h3>
<p>Everything kept has a <code>revision</code>. Send it back as <code>If-Match: "12"</code> with a PUT, PATCH or DELETE, and with a POST of air or readings: if somebody has changed the thing since, the answer is 412, and nothing has happened. An <code>ETag</code> that a GET or a change gave does as well. <code>If-None-Match: *</code> keeps a PUT from replacing what is there.</p>
<pre>${CHANGE}</pre>
<ul>
<li><code>?as=kept</code> on a GET answers what a PUT takes and no more, with the revision as its <code>ETag</code>. You can edit and put other answers as well: the service leaves out what cannot be changed.</li>
<li>Adding readings or air does not change the revision of the bed or place itself.</li>
<li><code>If-Match</code> guards the beginning of a long upload: once that is kept, the rest follows.</li>
</ul>
<h3>Refusals</h3>
<p>A refusal is a problem (RFC 9457) that says what is wrong and what to send instead. Its <code>type</code> is an address, <code>/problems/{code}</code>, that explains it. A caller over a limit gets 429, and <code>Retry-After</code> says when to go on. <code>RateLimit-Policy</code> names the limits, and <code>RateLimit</code> says what is left of the nearest. A <a href="/docs/running#refusals">503</a> is never your fault and has changed nothing: send the request again after <code>Retry-After</code>. <a href="/docs/running#limits">Limits and quotas</a> has the figures.</p>
<p>Every answer has a <code>Request-Id</code>. The service sends an <code>X-Request-Id</code> of yours back, and logs it together with <code>traceparent</code>.</p>
</section>`;
