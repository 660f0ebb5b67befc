import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { cruise, type ICruiseResult, type IForbiddenRuleType } from 'dependency-cruiser';
import { describe, expect, test } from 'vitest';

/** Texts by path, such as `src/basics/units.ts`. */
type Files = Readonly<Record<string, string>>;

const ROOT = new URL('../../', import.meta.url);
const PURE = '^src/(basics|readings|seedbed|climate|germination|growth|answers|garden|plot)/';

const files: Files = Object.fromEntries(
  await Promise.all(
    (await readdir(new URL('src/', ROOT), { recursive: true }))
      .filter((path) => path.endsWith('.ts'))
      .map(async (path) => [`src/${path}`, await readFile(new URL(`src/${path}`, ROOT), 'utf8')] as const),
  ),
);

/** A room that may import only some others; any room may import from itself. */
const onlyFrom = (room: string, allowed: readonly string[]): IForbiddenRuleType => ({
  name: `${room} imports of ours only ${allowed.join(', ') || 'itself'}`,
  from: { path: `^src/${room}/` },
  to: { path: '^src/', pathNot: `^src/(${[room, ...allowed].join('|')})/` },
});

/** A room at the rim: main joins it to the others, and nobody inside knows it but those that are named. */
const onlyAtTheRim = (room: string, ...knownBy: readonly string[]): IForbiddenRuleType => ({
  name: `nobody inside imports ${room}`,
  from: { path: '^src/', pathNot: `^src/(${[`${room}/`, '(main|backup)\\.ts$', ...knownBy].join('|')})` },
  to: { path: `^src/${room}/` },
});

const rules: IForbiddenRuleType[] = [
  onlyFrom('basics', []),
  ...['readings', 'seedbed', 'climate', 'germination'].map((room) => onlyFrom(room, ['basics'])),
  onlyFrom('growth', ['basics', 'germination', 'seedbed']),
  onlyFrom('answers', ['basics', 'readings', 'seedbed', 'climate', 'germination', 'growth']),
  onlyFrom('garden', ['answers', 'basics', 'climate', 'germination', 'growth', 'readings', 'seedbed']),
  onlyFrom('words', [
    'answers',
    'basics',
    'contract',
    'garden',
    'germination',
    'growth',
    'localities',
    'plot',
    'readings',
  ]),
  onlyFrom('localities', ['basics']),
  onlyFrom('plot', ['basics']),
  onlyFrom('storage', ['garden', 'basics', 'climate', 'readings']),
  onlyAtTheRim('storage', 'demo\\.ts$'),
  onlyFrom('egress', []),
  onlyFrom('sources', ['garden', 'basics', 'egress', 'readings', 'words']),
  onlyAtTheRim('sources', 'demo\\.ts$'),
  onlyFrom('outbox', ['garden', 'basics', 'egress', 'words']),
  onlyAtTheRim('outbox', 'demo\\.ts$'),
  onlyFrom('worker', ['answers', 'basics', 'garden', 'readings']),
  onlyFrom('page', ['basics', 'contract', 'plot', 'words']),
  onlyAtTheRim('page'),
  {
    name: 'what moves in the page runs in a browser as it is',
    from: { path: '^src/page/', pathNot: '^src/page/server/' },
    // Of words it knows codes, readers and values: the messages come from the service, read already.
    to: { path: '^src/page/server/|^src/words/(?!page-en|picture-text|reader|value)|^fastify|^@fastify|^luxon' },
  },
  {
    name: 'no more than the browser part knows of a document',
    from: { path: '^src/page/', pathNot: '^src/page/browser/' },
    to: { path: '^src/page/browser/' },
  },
  onlyFrom('contract', ['answers', 'basics', 'garden', 'germination', 'growth', 'readings', 'seedbed']),
  onlyFrom('http', [
    'answers',
    'basics',
    'contract',
    'garden',
    'germination',
    'growth',
    'egress',
    'localities',
    'plot',
    'readings',
    'seedbed',
    'words',
    'worker',
  ]),
  onlyAtTheRim('http', 'demo\\.ts$', 'demo/words\\.ts$'),
  {
    name: 'main alone joins the rooms',
    from: { path: '^src/', pathNot: '^src/(start|main|backup)\\.ts$' },
    to: { path: '^src/(main|config|demo|http/app|http/keys)\\.ts$', pathNot: '^src/http/keys' },
  },
  {
    name: 'only the calendar imports luxon',
    from: { path: '^src/', pathNot: '^src/basics/calendar\\.ts$' },
    to: { path: '^luxon' },
  },
  {
    name: 'plot alone draws',
    from: { path: '^src/', pathNot: '^src/plot/' },
    to: { path: '^d3-' },
  },
  {
    name: 'plot runs in a browser as it is',
    from: { path: '^src/plot/' },
    to: { path: '^src/basics/calendar\\.ts$' },
  },
  { name: 'nothing imports in circles', from: {}, to: { circular: true } },
  {
    name: 'nothing pure touches the machine, but digests its hash functions',
    from: { path: PURE, pathNot: '^src/basics/digest\\.ts$' },
    to: { dependencyTypes: ['core'] },
  },
  {
    name: 'digests need no more than hash functions',
    from: { path: '^src/basics/digest\\.ts$' },
    to: { pathNot: '^(node:)?crypto$' },
  },
  {
    name: 'nothing pure needs a package that does more than reckon, read or remember',
    from: { path: PURE },
    to: {
      pathNot: '^(src/|node:|luxon$|simple-statistics$|papaparse$|d3-scale$|d3-shape$|lru-cache$)',
      dependencyTypesNot: ['core'],
    },
  },
  {
    name: 'localities touch the machine in one module',
    from: { path: '^src/localities/', pathNot: '^src/localities/open-localities\\.ts$' },
    to: { dependencyTypes: ['core', 'npm'] },
  },
  { name: 'what is imported exists', from: {}, to: { path: '^\\.', couldNotResolve: true } },
];

/** Module specifiers of a file, of types too. */
function importsOf(text: string): string[] {
  const code = text.replaceAll(/^\s*(\/\/|\/?\*).*$/gm, '');
  return [
    ...code.matchAll(/^(?:import|export)\b[^;'"]*?\bfrom\s*['"]([^'"]+)['"]/gm),
    ...code.matchAll(/^import\s*['"]([^'"]+)['"]/gm),
    ...code.matchAll(/\b(?:import|require)\(\s*['"]([^'"]+)['"]/g),
  ].map(([, specifier]) => specifier!);
}

/** What breaks the rules, as "rule: from -> to". The modules are rebuilt from their imports alone, types included. */
async function violations(of: Files): Promise<{ broken: string[]; modules: number }> {
  const folder = await mkdtemp(join(tmpdir(), 'imports-'));
  try {
    for (const [path, text] of Object.entries(of)) {
      const file = join(folder, path.replace(/\.ts$/, '.js'));
      await mkdir(dirname(file), { recursive: true });
      await writeFile(
        file,
        importsOf(text)
          .map((specifier) => `import '${specifier}';\n`)
          .join(''),
      );
    }
    const forbidden = rules.map(asOnDisk);
    const { output } = await cruise(['src'], { baseDir: folder, validate: true, ruleSet: { forbidden } });
    const { summary, modules } = output as ICruiseResult;
    const inWords = summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`);
    return {
      broken: inWords.map((one) => one.replaceAll('.js', '.ts')),
      modules: modules.filter(({ source }) => source.startsWith('src/')).length,
    };
  } finally {
    await rm(folder, { recursive: true });
  }
}

/** A rule for the rebuilt modules, which end in .js. */
const asOnDisk = (rule: IForbiddenRuleType): IForbiddenRuleType =>
  JSON.parse(JSON.stringify({ severity: 'error', ...rule }).replaceAll('\\\\.ts$', '\\\\.js$'));

describe('who may know whom', () => {
  test('every module keeps to its room', async () => {
    const { broken, modules } = await violations(files);
    expect(broken).toEqual([]);
    expect(modules).toBe(Object.keys(files).length);
  });

  test('every import is seen', () => {
    for (const [path, text] of Object.entries(files)) {
      const said = text.match(/^(import|export) .*from '|^\} from '|^import '|\bimport\('/gm) ?? [];
      expect(importsOf(text).length, path).toBe(said.length);
    }
  });

  test('a module that does not is found, whichever rule it breaks', async () => {
    const { broken } = await violations({
      'src/main.ts': "import { buildApp } from './http/app.js';",
      'src/config.ts': 'export const port = 1;',
      'src/http/app.ts': "import { port } from '../config.js';\nimport { sun } from '../seedbed/sun.js';",
      'src/basics/units.ts': "import type { Crop } from '../germination/crop.js';\nimport { x } from './missing.js';",
      'src/readings/days.ts':
        "import { DateTime } from 'luxon';\nimport { readFileSync } from 'node:fs';\nimport { sun } from '../seedbed/sun.js';",
      'src/seedbed/sun.ts': "import { days } from '../readings/days.js';",
      'src/climate/normals.ts': "import { sun } from '../seedbed/sun.js';",
      'src/germination/crop.ts':
        "export { units } from '../basics/units.js';\nimport axios from 'axios';\nimport { normals } from '../climate/normals.js';",
      'src/garden/store.ts': "import { openStore } from '../storage/open-store.js';\n",
      'src/sources/refresh.ts': "import { openStore } from '../storage/open-store.js';",
      'src/page/shell/words.ts':
        "import { read } from '../server/read-form.js';\nimport { one } from '../browser/elements.js';\nimport { sun } from '../../seedbed/sun.js';\nimport { app } from '../../http/app.js';",
      'src/page/server/read-form.ts': 'export const read = 1;',
      'src/page/browser/elements.ts': 'export const one = 1;',
      'src/plot/dates.ts': "import { words } from '../page/shell/words.js';",
      'src/egress/agent.ts': "import { refresh } from '../sources/refresh.js';",
      'src/outbox/poll.ts': "import { sun } from '../seedbed/sun.js';",
      'src/contract/crop.ts': "import { app } from '../http/app.js';",
      'src/growth/day-units.ts': "import { normals } from '../climate/normals.js';",
      'src/worker/jobs.ts': "import { sun } from '../seedbed/sun.js';",
      'src/garden/alerts.ts': "import { look } from '../outbox/poll.js';",
      'src/plot/season-strip.ts':
        "import { addDays } from '../basics/calendar.js';\nimport { sun } from '../seedbed/sun.js';",
      'src/words/say.ts': "import { sun } from '../seedbed/sun.js';",
      'src/localities/near.ts':
        "import { readFile } from 'node:fs/promises';\nimport { sun } from '../seedbed/sun.js';",
      'src/basics/digest.ts': "import { readFileSync } from 'node:fs';",
      'src/basics/calendar.ts': "import { scaleLinear } from 'd3-scale';",
      'src/climate/frost-dates.ts': "import { refresh } from '../sources/refresh.js';",
      'src/storage/open-store.ts': "import { sun } from '../seedbed/sun.js';",
      'src/answers/forecast.ts': "import {\n  app,\n} from '../http/app.js';\n",
    });
    for (const { name } of rules) expect(broken.join('\n')).toContain(name);
    expect(broken).toContain('only the calendar imports luxon: src/readings/days.ts -> luxon');
  });
});

describe('who may look outside', () => {
  /** Lines of code, not of comments, that say something. */
  const saying = (pattern: RegExp, among: RegExp, of: Files = files): string[] =>
    Object.entries(of).flatMap(([path, text]) =>
      among.test(path)
        ? text
            .split('\n')
            .filter((line) => pattern.test(line) && !/^\s*(\/\/|\/?\*)/.test(line))
            .map((line) => `${path}: ${line.trim()}`)
        : [],
    );
  const CLOCK = /\bDate\.now\b|\bnew Date\(\s*\)|\bperformance\.now\b/;

  test('the environment is read by the two programs only, which hand it to config', () => {
    expect(saying(/\bprocess\b\s*\.?\s*\benv\b|['"]node:process['"]/, /./)).toEqual([
      "src/backup.ts: const { DATABASE_URL, INIT_CWD = '.' } = process.env;",
      'src/main.ts: const read = readConfig(process.env);',
    ]);
  });

  test('no pure room reads a clock, or leaves anything to chance', () => {
    expect(saying(CLOCK, new RegExp(PURE))).toEqual([]);
    expect(saying(/\bMath\.random\b/, /./)).toEqual([]);
  });

  test('the one clock is wound up in main, and set forward there for the demo', () => {
    // The pool measures how long its work takes, and knows no date.
    const pool = 'src/worker/worker-pool.ts';
    const elsewhere = Object.fromEntries(Object.entries(files).filter(([path]) => path !== pool));
    expect(saying(/\bDate\b/, /./, { pool: files[pool]! })).toEqual([]);
    expect(saying(CLOCK, /./, elsewhere)).toEqual([
      'src/main.ts: const aheadMs = isDemo ? demoNow.getTime() - Date.now() : 0;',
      'src/main.ts: const clock = () => new Date(Date.now() + aheadMs);',
    ]);
  });

  test('a room that read a clock would be found', () => {
    const invented = { 'src/answers/today.ts': '// new Date()\nconst now = Date.now();\nconst then = new Date(0);' };
    expect(saying(CLOCK, new RegExp(PURE), invented)).toEqual(['src/answers/today.ts: const now = Date.now();']);
  });
});
