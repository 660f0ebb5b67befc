import module from 'node:module';
import v8 from 'node:v8';

// The heap grows by so many hundredths of what is in use before it is collected in full; V8 lets it grow to four times that,
// which costs some 60 MB here and saves too little time to be seen [%].
const HEAP_GROWING_PERCENT = 50;
v8.setFlagsFromString(`--heap-growing-percent=${HEAP_GROWING_PERCENT}`);
// From Node 22.8 on, compiled code is kept beside the built files: the next start need not compile it again. Where that
// folder cannot be written, nothing is kept. Code loaded before this line is not kept, so the service is loaded after it.
const { enableCompileCache } = module as { enableCompileCache?: (folder: string) => unknown };
enableCompileCache?.(new URL('./compile-cache', import.meta.url).pathname);
await import('./main.js');
