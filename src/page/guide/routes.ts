import { optionsTable } from '../running/document.js';
import { type Html, html } from '../shell/html.js';

/** The parts of the OpenAPI document read here. */
export interface OpenApi {
  readonly paths: Readonly<Record<string, Readonly<Record<string, { readonly summary: string }>>>>;
}

/** Addresses served beside the routes of the OpenAPI document. */
const pages: readonly (readonly [path: string, what: string])[] = [
  ['/', 'The page for growers'],
  ['/docs', 'Every route and field, to read and to try'],
  ['/docs/guide', 'This page'],
  ['/docs/running', 'How to run the service for others'],
  ['/openapi.json', 'The contract, for machines'],
];

/** A line for each operation, in the order of the document. */
export function routesSection({ paths }: OpenApi): Html {
  const operations = Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, { summary }]) => [`${method.toUpperCase()} ${path}`, summary] as const),
  );
  return html`
<section id="routes"><h2>All routes</h2>
${optionsTable(
  ['Route', 'What it does'],
  [...operations, ...pages.map(([path, what]) => [`GET ${path}`, what] as const)].map(([route, what]) => [
    html`<code>${route}</code>`,
    what,
  ]),
)}
</section>`;
}
