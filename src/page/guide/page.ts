import { type Document, documentPage } from '../running/document.js';
import { html } from '../shell/html.js';
import { asking } from './asking.js';
import { exactness } from './exactness.js';
import { files } from './files.js';
import { keeping } from './keeping.js';
import { messages } from './messages.js';
import { overHttp } from './over-http.js';
import { type OpenApi, routesSection } from './routes.js';
import { sources } from './sources.js';
import { sowings } from './sowings.js';

const introduction = html`For whoever calls the service from a program of their own. Every example here works as it stands against <code>npm run demo</code>, whose garden of the invented Quillmere Allotment Society keeps <code>quillmere</code> and <code>north</code> already. <a href="/docs">/docs</a> describes each field and lets you try each route; <a href="/openapi.json">/openapi.json</a> says the same to machines. <a href="/docs/running">/docs/running</a> is for whoever runs the service.`;

/** The guide for API callers, with a line for each operation of the OpenAPI document. */
export const guidePage = (document: OpenApi): Document =>
  documentPage(
    'Use the service',
    introduction,
    [
      ['ask', 'Ask'],
      ['files', 'Files'],
      ['keep', 'Keep'],
      ['sowings', 'Sow and count'],
      ['sources', 'Weather'],
      ['messages', 'Messages'],
      ['http', 'Over HTTP'],
      ['routes', 'All routes'],
      ['exactness', 'How exact'],
    ],
    [asking, files, keeping, sowings, sources, messages, overHttp, routesSection(document), exactness],
  );
