import { availableParallelism } from 'node:os';
import type { ViteUserConfig } from 'vitest/config';
import { LongestFirst } from './longest-first.ts';

const APART = 'tests/screens/**/*.apart.test.{ts,tsx}';

/** What is tested where: sums and store in node, components in a stand-in page, the built app in a real browser. */
export const tests = {
  coverage: { provider: 'v8', include: ['src/engine/**'] },
  sequence: { sequencer: LongestFirst },
  // Left to itself it leaves one processor free, and on a machine with two runs one file after the other.
  maxWorkers: Math.max(2, availableParallelism() - 1),
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
        isolate: false,
        testTimeout: 60_000,
      },
    },
    {
      extends: true,
      test: {
        name: 'screens',
        environment: 'happy-dom',
        include: ['tests/screens/**/*.test.{ts,tsx}'],
        exclude: [APART],
        isolate: false,
        setupFiles: ['tests/screens/patient.ts'],
        testTimeout: 60_000,
      },
    },
    // Those that put a module in the place of one of ours, or listen to the whole window: neither may reach another file.
    {
      extends: true,
      test: {
        name: 'apart',
        environment: 'happy-dom',
        include: [APART],
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
        // The walk by keys alone through a brake is long, and each of its screens is walked by Tab in every run.
        exclude: [
          'tests/browser/engines/**',
          ...(process.env['LONG'] === undefined ? ['tests/browser/brake-side-keys.test.ts'] : []),
        ],
        testTimeout: 120_000,
        hookTimeout: 120_000,
        expect: { poll: { timeout: 30_000 } },
        // Nearly half of the time they wait for a browser.
        maxWorkers: 4,
      },
    },
    ...(['chromium', 'firefox', 'webkit'] as const).map((name) => ({
      extends: true as const,
      test: {
        name,
        environment: 'node' as const,
        include: ['tests/browser/engines/**/*.test.ts'],
        // Of the screens those where most is drawn; the others, and all of them in other colors and units and in
        // trouble, are walked in the long trial: a whole run has 20 minutes.
        exclude:
          process.env['LONG'] === undefined
            ? [
                '**/screens-of-{first-use,lathe,sun,millimetres,trouble,jobs,assembly,fit-up,cuts,shop}.test.ts',
              ]
            : [],
        env: { ENGINE: name },
        globalSetup: name === 'webkit' ? ['tests/browser/hands/screen-for-webkit.ts'] : [],
        testTimeout: 120_000,
        hookTimeout: 120_000,
        expect: { poll: { timeout: 30_000 } },
        maxWorkers: 4,
      },
    })),
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
