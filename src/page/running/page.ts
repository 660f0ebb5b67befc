import { html } from '../shell/html.js';
import { care } from './care.js';
import { type Document, documentPage } from './document.js';
import { type Setting, settingsSection } from './settings.js';
import { sizes } from './sizes.js';
import { watching } from './watching.js';

const introduction = html`For whoever keeps the service going for others. It is one process and one database. <a href="/docs/guide">/docs/guide</a> says how to call it, <a href="/docs">/docs</a> describes every route.`;

/** The page for operators of the service. */
export const runningPage = (settings: readonly Setting[]): Document =>
  documentPage(
    'Run the service',
    introduction,
    [
      ['start', 'Start'],
      ['settings', 'Settings'],
      ['backup', 'Back up'],
      ['secrets', 'Secrets'],
      ['proxy', 'Proxy'],
      ['keys', 'Keys'],
      ['upgrade', 'New versions'],
      ['sizes', 'Sizes'],
      ['limits', 'Limits'],
      ['metrics', 'Watch it'],
      ['refusals', '503'],
    ],
    [settingsSection(settings), care, sizes, watching],
  );
