import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['e2e/**/*.e2e.ts'],
    environment: 'node',
    testTimeout: 240_000,
    hookTimeout: 120_000,
    // One browser and one server at a time: two cores.
    fileParallelism: false,
  },
})
