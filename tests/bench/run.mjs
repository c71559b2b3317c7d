import { runnerImport } from 'vite';

// Node 20 does not run TypeScript by itself; vite's runner does, with nothing built.
const { module } = await runnerImport(`${import.meta.dirname}/bench.ts`);
await module.bench(process.argv.slice(2));
process.exit(0);
