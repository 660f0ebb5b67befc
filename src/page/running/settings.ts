import { type Html, html } from '../shell/html.js';
import { optionsTable } from './document.js';

/** An environment variable, as the configuration describes it. */
export interface Setting {
  readonly name: string;
  /** Its default; empty: none. */
  readonly defaultText: string;
  readonly does: string;
}

/** Starting the service, and its settings. */
export const settingsSection = (settings: readonly Setting[]): Html => html`
<section id="start"><h2>Start</h2>
<p>The service needs Node.js 20.19 or later, or a container. Nothing is compiled, and all packages come from npm.</p>
<pre>npm ci &amp;&amp; npm run build &amp;&amp; npm start</pre>
<pre>docker build -t germination-forecaster .
docker run --rm -p 8080:8080 -v garden:/data -e API_KEYS=me:a-long-secret germination-forecaster</pre>
<p>It stops cleanly on SIGTERM or Ctrl-C.</p>
</section>

<section id="settings"><h2>Settings</h2>
<p>Variables of the environment. The service names every one that it cannot use, and then does not start. An empty one counts as left out.</p>
${optionsTable(
  ['Variable', 'Default', 'What it does'],
  settings.map(({ name, defaultText, does }) => [
    html`<code>${name}</code>`,
    defaultText === '' ? '' : html`<code>${defaultText.split(/(?<=[,/])/).map((part) => html`${part}<wbr>`)}</code>`,
    does,
  ]),
  ['Default'],
)}
<p>Without keys the service refuses to listen beyond this machine, unless <code>ALLOW_OPEN=1</code>. The service asks no weather source until a place names one; <code>SOURCES=off</code> keeps it from asking any, <code>SOURCES=presets</code> from asking addresses of callers’ own. <code>ALLOW_PRIVATE_SOURCES=1</code> lets a weather station of your own network be a source; whoever holds a key can then reach what this machine can reach. <code>ALLOW_PRIVATE_WEBHOOKS=1</code> does the same for messages, and allows http.</p>
</section>`;
