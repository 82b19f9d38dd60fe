import { defineConfig } from 'vitest/config';

const [major = 0] = process.versions.node.split('.').map(Number);
// Nearly all code runs for a moment here: what the engine spends on making it fast is more than that brings. So it waits some 15 times
// as long before it does; Node 20 counts bytes of what ran, later ones count calls.
const OPTIMIZES_LATE = [
  '--always-sparkplug',
  major < 22 ? '--interrupt-budget=1000000' : '--invocation-count-for-turbofan=45000',
];

// The tests that start no browser and no process: all that aren't called `*.browser.test.ts` or `*.process.test.ts`.
export default defineConfig({
  test: {
    name: 'quick',
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/**/*.{browser,process}.test.ts', 'tests/outside/**'],
    setupFiles: ['tests/quick/start-nothing.ts'],
    // The sources are loaded once a worker, not once a file: a test leaves nothing behind that another could see.
    isolate: false,
    // Plans and documents are made and dropped by the thousand: with more room for the young, little of it is collected twice.
    execArgv: ['--max-semi-space-size=64', ...OPTIMIZES_LATE],
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
