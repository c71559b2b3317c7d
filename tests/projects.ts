import type { ViteUserConfig } from 'vitest/config';
import { LongestFirst } from './longest-first.ts';

/** What is tested where: sums and store in node, components in a stand-in page, the built app in a real browser. */
export const tests = {
  coverage: { provider: 'v8', include: ['src/engine/**'] },
  sequence: { sequencer: LongestFirst },
  projects: [
    {
      extends: true,
      test: {
        name: 'engine',
        environment: 'node',
        include: ['tests/engine/**/*.test.ts', 'tests/*.test.ts'],
        isolate: false,
        // Never a measure of speed: only so that a busy machine is not taken for a wrong sum.
        testTimeout: 60_000,
      },
    },
    {
      extends: true,
      test: {
        name: 'store',
        environment: 'node',
        include: ['tests/store/**/*.test.ts'],
        testTimeout: 60_000,
      },
    },
    {
      extends: true,
      test: {
        name: 'screens',
        environment: 'happy-dom',
        include: ['tests/screens/**/*.test.{ts,tsx}'],
        setupFiles: ['tests/screens/patient.ts'],
        testTimeout: 60_000,
      },
    },
    {
      extends: true,
      test: {
        name: 'browser',
        environment: 'node',
        include: ['tests/browser/**/*.test.ts'],
        testTimeout: 120_000,
        hookTimeout: 120_000,
        expect: { poll: { timeout: 30_000 } },
        maxWorkers: 2,
      },
    },
    // Not a test: draws the README's pictures from the built app. Run by name only (npm run screenshots).
    {
      extends: true,
      test: {
        name: 'screenshots',
        environment: 'node',
        include: ['tests/browser/screenshots.ts'],
        testTimeout: 300_000,
      },
    },
  ],
} satisfies ViteUserConfig['test'];
