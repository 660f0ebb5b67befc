import { type Html, html } from '../shell/html.js';

/** What keeps a garden safe: copies, a proxy before it, keys, new versions. */
export const care: Html = html`
<section id="backup"><h2>Back up, and try the copy</h2>
<p>All that growers keep is in one database. For SQLite that is the file in <code>DATABASE_URL</code>, with helpers beside it: <code>-wal</code> and <code>-shm</code> while the service runs, and <code>-reserve</code>, 4 MB of room for deleting on a full disk. No copy needs them. Secrets of webhooks and addresses of calendars are encrypted: keep the key too, either <code>SECRETS_KEY</code> or the file <code>.key</code> beside the database. PostgreSQL has no such file: set <code>SECRETS_KEY</code>, or both are kept plain.</p>
<ul>
<li><b>The service is stopped.</b> After a clean stop (SIGTERM, Ctrl-C, <code>docker stop</code>) the file alone is whole. Copy it.</li>
<li><b>The service runs.</b> Never copy the file itself: the newest changes may not be in it yet. Make a whole copy with the command below.</li>
<li><b>PostgreSQL.</b> Use its own tools, as for any other database.</li>
</ul>
<pre>npm run backup -- /backups/garden-2027-08-03.db          <i># SQLite, while it runs</i>
pg_dump --format=custom --file=garden.dump "$DATABASE_URL"   <i># PostgreSQL, while it runs</i></pre>
<p>Back up every night, keep several copies, and keep one on another machine. Store the key apart from them: a copy without the key opens no webhook or calendar, and the service does not start on it. If the key is lost for good, start once with <code>FORGET_SECRETS=1</code>: what it had encrypted is given up, all else stays.</p>
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

<section id="proxy"><h2>Behind a proxy</h2>
<p>The service speaks plain HTTP. Let a proxy do TLS, and let only the proxy reach the port.</p>
<dl>
<dt><code>PUBLIC_URL=https://garden.example</code></dt><dd>Links in calendars and messages begin with it.</dd>
<dt><code>TRUST_PROXY=loopback</code></dt><dd>Limits and logs see the caller’s address, not the proxy’s. Name the proxy’s network, never everybody’s: callers could then claim any address.</dd>
<dt><code>ALLOWED_HOSTS=garden.example</code></dt><dd>A service without keys answers under that name too. Other names get 421.</dd>
</dl>
<p>What the proxy must do:</p>
<ul>
<li><b>Pass the Host header on.</b> The page’s forms are refused with 403 <code>foreign-origin</code> without it.</li>
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
    proxy_request_buffering off;
    proxy_read_timeout 60s;
  }
}</pre>
<pre><i># Caddy: TLS, Host and X-Forwarded-* come by themselves</i>
garden.example {
  reverse_proxy 127.0.0.1:8080 {
    transport http {
      keepalive 60s
    }
  }
}</pre>
</section>

<section id="keys"><h2>Keys and sessions</h2>
<p><code>API_KEYS=ann:first-key,ben:another-key</code> gives each owner a key. Owners see only what is theirs. Make keys long and random: <code>openssl rand -base64 32</code>.</p>
<h3>Change a key without a gap</h3>
<ol>
<li>Add the new key beside the old one: <code>API_KEYS=ann:old-key,ann:new-key</code>. Both open Ann’s garden. Restart.</li>
<li>Give Ann’s tools the new key.</li>
<li>Take the old key out, and restart. All sessions of the old key end with it.</li>
</ol>
<p>A browser that gave a key holds a session for 180 days. <code>GET /v1/sessions</code> lists an owner’s sessions. <code>DELETE /v1/sessions/{id}</code> ends one: use it when a telephone is lost.</p>
</section>

<section id="upgrade"><h2>New versions</h2>
<ol>
<li>Back up.</li>
<li>Stop the old version. Stop all of them where several run over one database.</li>
<li>Start one of the new version. It brings the database up to date before it listens.</li>
<li>Ask <code>/readyz</code>, then start the others.</li>
</ol>
<p>The database only moves forward. To go back, restore the backup, with the version it was made by. Several that start at once wait for one another, so no harm is done.</p>
<h3>Several over one database</h3>
<p>Use PostgreSQL. Instances keep nothing of their own but caches, share the limits, and share the work on sources and messages. Send each owner to the same instance (by a hash of the <code>Authorization</code> header and cookie) and the caches serve better; any instance answers alike. <code>WORKERS</code> sets how many threads of an instance work out long answers.</p>
</section>`;
