import { defineConfig } from 'vitest/config';

// Tests that need a Debian program (ngspice, qpdf, poppler, LibreOffice); tests/outside/install.sh installs them.
export default defineConfig({
  test: { include: ['tests/outside/**/*.test.ts'], testTimeout: 300_000, hookTimeout: 300_000 },
});
