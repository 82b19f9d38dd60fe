import { defineConfig } from 'vitest/config';

/** The tables that mutation is held against: electrical formulas, published values, rules. */
export default defineConfig({
  test: {
    include: ['tests/{electrical,published,rules}/**/*.test.ts'],
    // The loop over all rules imports every table anew, for each mutant: the tables themselves are here already.
    exclude: ['tests/rules/{rulebook,rulebook-page,rule-ids}.test.ts', 'tests/**/*.process.test.ts'],
    // The first run of all tables is timed by nobody; a mutant that goes on for ever is ended by what runs it.
    testTimeout: 300_000,
  },
});
