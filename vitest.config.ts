import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** The long ones begin first, those that start something; the many short ones fill what is left. */
class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isQuick = (file: TestSpecification): boolean => file.project.name === 'quick';
    return [...sorted.filter((file) => !isQuick(file)), ...sorted.filter(isQuick)];
  }
}

// All tests that need no Debian program, as two projects: those that start nothing, and those that start something.
export default defineConfig({
  test: {
    projects: ['vitest.quick.config.ts', 'vitest.started.config.ts'],
    // One more than cores: while one waits for a browser, a signal or a lock, the others compute.
    maxWorkers: availableParallelism() + 1,
    sequence: { sequencer: LongFirst },
  },
});
