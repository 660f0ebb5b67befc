import module from 'node:module';
import v8 from 'node:v8';

// Growth of the heap over what is in use before a full collection [%]. V8 by default lets it grow to four times that,
// which costs some 60 MB here and saves no noticeable time.
const HEAP_GROWING_PERCENT = 50;
v8.setFlagsFromString(`--heap-growing-percent=${HEAP_GROWING_PERCENT}`);
// Bytecode that a function runs before V8 optimises it [bytes]: four times the default until the service listens, as a quarter of the
// start's processor time went into optimising code that hardly ran afterwards. Later versions count calls instead and know no such flag.
const BUDGET_AT_START_BYTES = 264_000;
const DEFAULT_BUDGET_BYTES = 67_584;
const LAST_V8_WITH_BUDGET = 11;
const setBudget = (bytes: number): void => {
  if (Number.parseInt(process.versions.v8, 10) <= LAST_V8_WITH_BUDGET)
    v8.setFlagsFromString(`--interrupt-budget=${bytes}`);
};
setBudget(BUDGET_AT_START_BYTES);
// From Node 22.8 on, compiled code is cached beside the built files, so that the next start need not compile it again.
// A folder that is not writable disables the cache. The service is imported after this line so that its code is cached.
const { enableCompileCache } = module as { enableCompileCache?: (folder: string) => unknown };
enableCompileCache?.(new URL('./compile-cache', import.meta.url).pathname);
await import('./main.js');
setBudget(DEFAULT_BUDGET_BYTES);
