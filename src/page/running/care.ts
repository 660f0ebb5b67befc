import { type Html, html } from '../shell/html.js';

/** Keeping a garden safe: backups, a proxy in front, keys, new versions. */
export const care: Html = html`
<section id="backup"><h2>Back up, and try the copy</h2>
<p>All that growers keep is in one database. For SQLite that is the file in <code>DATABASE_URL</code>, with helpers beside it: the log <code>-wal</code> and what readers share, <code>-shm</code>, while the service runs; and <code>-reserve</code>, 4 MB of room for deleting on a full disk. No copy needs them. The service makes the file for its own user alone (mode 0600), and tightens a laxer one. Keep the key of the <a href="#secrets">secrets</a> too.</p>
<ul>
<li><b>The service is stopped.</b> After a clean stop (SIGTERM, Ctrl-C, <code>docker stop</code>) the file alone is whole. Copy it.</li>
<li><b>The service runs.</b> Never copy the file itself: the newest changes may not be in it yet. Make a whole copy with the command below.</li>
<li><b>PostgreSQL.</b> Use its own tools, as for any other database.</li>
</ul>
<pre>npm run backup -- /backups/garden-2027-08-03.db          <i># SQLite, while it runs</i>
pg_dump --format=custom --file=garden.dump "$DATABASE_URL"   <i># PostgreSQL, while it runs</i></pre>
<p>The command reads <code>DATABASE_URL</code> as the service does, and overwrites nothing. Back up every night, keep several copies, and keep one on another machine.</p>
<h3>Restore</h3>
<ol>
<li>Stop the service.</li>
<li>Put the copy where <code>DATABASE_URL</code> points. Delete <code>-wal</code> and <code>-shm</code> of the old file. PostgreSQL: <code>pg_restore --clean --if-exists --dbname="$DATABASE_URL" garden.dump</code>.</li>
<li>Put the key back, start the service, and ask <code>/readyz</code>. It answers <code>ready</code>.</li>
</ol>
<h3>Try it before you need it</h3>
<p>Start a second service on a copy of the copy, and look at a bed you know. A trial does what every service does: it fetches weather and sends waiting messages. Run it where it cannot reach the internet.</p>
<pre>cp /backups/garden-2027-08-03.db /tmp/try.db
cp /data/germination-forecaster.db.key /tmp/try.db.key   <i># not with SECRETS_KEY</i>
PORT=8081 DATABASE_URL=sqlite:/tmp/try.db npm start</pre>
</section>

<section id="secrets"><h2>Secrets</h2>
<p>The database holds webhook secrets and calendar addresses encrypted, so a copy of it tells nobody either of them. Messages that wait, readings and all else are not encrypted.</p>
<ul>
<li><b><code>SECRETS_KEY</code> is set.</b> It is the key: 32 characters or more, such as <code>openssl rand -base64 32</code> prints.</li>
<li><b>SQLite without it.</b> The first start makes a key file beside the database, <code>germination-forecaster.db.key</code>, that only the service’s user can read.</li>
<li><b>PostgreSQL without it.</b> Both are kept plain, and the log warns of it. Once a key is set, the next start encrypts what there is.</li>
</ul>
<p>Back the key up, but apart from the database: a copy without the key opens no webhook or calendar, and the service does not start on it. A copy with the key tells everything. The service does not start with another key either, and a key cannot be changed for another.</p>
<p>If the key is lost for good, start once with <code>FORGET_SECRETS=1</code>: it gives up what was encrypted, and keeps all else. Then ask each bed for a new calendar address with <code>POST /v1/beds/{id}/calendar-token</code>, and delete each subscription and put it again.</p>
</section>

<section id="proxy"><h2>Behind a proxy</h2>
<p>The service speaks plain HTTP. Let a proxy do TLS, and let only the proxy reach the port.</p>
<dl>
<dt><code>PUBLIC_URL=https://garden.example</code></dt><dd>Links in calendars and messages begin with it.</dd>
<dt><code>TRUST_PROXY=loopback</code></dt><dd>Limits and logs see the caller’s address. Without it all callers of the proxy share one allowance of requests and connections. Name the proxy’s network, never everybody’s: callers could then claim any address.</dd>
<dt><code>ALLOWED_HOSTS=garden.example</code></dt><dd>A service without keys answers under that name too, beside <code>localhost</code>, <code>127.0.0.1</code> and <code>[::1]</code>. Other names get 421, so a page of another site cannot read the service by giving its own name this machine’s address.</dd>
</dl>
<p>What the proxy must do:</p>
<ul>
<li><b>Pass the Host header on.</b> The page’s forms are refused with 403 <code>foreign-origin</code> without it.</li>
<li><b>Set one header of the caller’s address,</b> <code>Forwarded</code> or <code>X-Forwarded-For</code>, and remove the other. Where the two disagree, the service believes neither.</li>
<li><b>Let 256 MB through</b>, the largest file. Many proxies stop at 1 MB. Do not collect a file before passing it on.</li>
<li><b>Wait at least 60 seconds</b> for an answer. A year of minute readings can take several seconds.</li>
<li><b>Close idle connections first.</b> The service keeps them for 72 seconds; let the proxy keep them for 60.</li>
</ul>
<pre><i># nginx</i>
upstream garden { server 127.0.0.1:8080; keepalive 16; keepalive_timeout 60s; }
server {
  listen 443 ssl;
  server_name garden.example;
  ssl_certificate /etc/ssl/garden.pem;
  ssl_certificate_key /etc/ssl/garden.key;
  client_max_body_size 256m;
  location / {
    proxy_pass http://garden;
    proxy_http_version 1.1;
    proxy_set_header Connection "";
    proxy_set_header Host $http_host;
    proxy_set_header X-Forwarded-For $remote_addr;
    proxy_set_header X-Forwarded-Proto $scheme;
    proxy_set_header Forwarded "";
    proxy_request_buffering off;
    proxy_read_timeout 60s;
  }
}</pre>
<pre><i># Caddy: TLS, Host and X-Forwarded-* come by themselves</i>
garden.example {
  reverse_proxy 127.0.0.1:8080 {
    header_up -Forwarded
    transport http {
      keepalive 60s
    }
  }
}</pre>
</section>

<section id="keys"><h2>Keys and sessions</h2>
<p><code>API_KEYS=ann:first-key,ben:another-key</code> gives each owner a key. Owners see and change only what is theirs. What was kept before there were keys belongs to the owner <code>gardener</code>. Make keys long and random: <code>openssl rand -base64 32</code>. Callers send <code>Authorization: Bearer a-key</code>. A key in an address is refused with 400: change a key that was sent so.</p>
<h3>Change a key without a gap</h3>
<ol>
<li>Add the new key beside the old one: <code>API_KEYS=ann:old-key,ann:new-key</code>. Both open Ann’s garden. Restart.</li>
<li>Give Ann’s tools the new key.</li>
<li>Take the old key out, and restart. All sessions of the old key end with it.</li>
</ol>
<h3>Sessions</h3>
<p>The page asks a browser for the key once. <code>POST /session</code> with <code>{ "key": "…" }</code>, or a form with that field, sets a cookie that stands for the key for 180 days. No script can read the cookie, and the key cannot be told from it. The database keeps only a digest of it. Cookies from before sessions were kept open nothing any more: give the key once again.</p>
<ul>
<li><code>GET /v1/sessions</code> lists an owner’s sessions, and when each was last used.</li>
<li><code>DELETE /v1/sessions/{id}</code> ends one at once, on all instances: use it when a telephone is lost. <code>DELETE /session</code> ends the browser’s own. A copy of the cookie is out with it.</li>
<li>An owner has up to 50 sessions. One more ends the oldest.</li>
</ul>
<p>Changes that a browser asks for without the key itself are taken only from pages of this service. Others get 403, on a service without keys too.</p>
</section>

<section id="upgrade"><h2>New versions</h2>
<ol>
<li>Back up.</li>
<li>Stop the old version. Stop all of them where several run over one database.</li>
<li>Start one of the new version. It brings the database up to date before it listens.</li>
<li>Ask <code>/readyz</code>, then start the others.</li>
</ol>
<p>The database only moves forward. To go back, restore the backup, with the version it was made by. Several that start at once wait for one another, so no harm is done.</p>
<h3>PostgreSQL behind a pooler</h3>
<p>A connection sets time-outs of its own. A pooler such as PgBouncer has to let <code>statement_timeout</code>, <code>lock_timeout</code> and <code>idle_in_transaction_session_timeout</code> pass; <code>ignore_startup_parameters</code> leaves them out.</p>
<h3>Several over one database</h3>
<p>Use PostgreSQL. Instances keep nothing of their own but caches, share the limits, and share the work on sources and messages. Send each owner to the same instance (by a hash of the <code>Authorization</code> header and cookie) and the caches serve better; any instance answers alike. <code>WORKERS</code> sets how many threads of an instance work out long answers.</p>
</section>`;
