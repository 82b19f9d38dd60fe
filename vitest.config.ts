import { defineConfig } from 'vitest/config';

// All tests that need no Debian program, as two projects: those that start nothing, and those that start something.
export default defineConfig({
  test: { projects: ['vitest.quick.config.ts', 'vitest.started.config.ts'] },
});
