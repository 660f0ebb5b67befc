import module from 'node:module';

// From Node 22.8 on, compiled code is kept beside the built files: the next start need not compile it again. Where that
// folder cannot be written, nothing is kept. Code loaded before this line is not kept, so the service is loaded after it.
const { enableCompileCache } = module as { enableCompileCache?: (folder: string) => unknown };
enableCompileCache?.(new URL('./compile-cache', import.meta.url).pathname);
await import('./main.js');
