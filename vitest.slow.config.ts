// The long runs (`npm run test:slow`): thousands of kills, whole fuzz counts. Each has a short form in `npm test`.
import { defineConfig } from "vitest/config";

/** Long enough for the longest of them; a hang still ends [ms]. */
const oneHour = 3_600_000;

export default defineConfig({
  test: { include: ["{src,test}/**/*.slow.test.ts"], testTimeout: oneHour, hookTimeout: oneHour },
});
