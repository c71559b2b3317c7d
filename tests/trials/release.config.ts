import { resolve } from 'node:path';
import { defineConfig, type Plugin } from 'vite';
import app from '../../vite.config.ts';

/** Builds a later release: today's app with steps of the database that today's doesn't have, named in LATER_STEPS. */
function withLaterSteps(names: readonly string[]): Plugin {
  const from = resolve(import.meta.dirname, 'later-steps.ts');
  let added = false;
  return {
    name: 'with-later-steps',
    enforce: 'pre',
    transform(code, id) {
      if (!id.endsWith('/src/store/opening/steps/all-steps.ts')) return undefined;
      const today = code.replace('export const allSteps', 'const stepsOfToday');
      if (today === code) throw new Error('all-steps.ts no longer exports allSteps');
      added = true;
      return [
        `import { laterSteps } from ${JSON.stringify(from)};`,
        today,
        `export const allSteps = [...stepsOfToday, ...laterSteps(${JSON.stringify(names)})];`,
      ].join('\n');
    },
    // A release without its steps would be today's, and what tries it would wait for what never comes.
    buildEnd(error) {
      if (!error && !added) throw new Error('all-steps.ts was not found: where did it move?');
    },
  };
}

const names = (process.env['LATER_STEPS'] ?? '').split(',').filter(Boolean);

export default defineConfig({ ...app, plugins: [withLaterSteps(names), ...(app.plugins ?? [])] });
