/**
 * `npm run bench`: every part, or those named: `npm run bench -- sync --rounds 5 --seconds 6 --writers 2,20,50`,
 * `npm run bench -- arithmetic`. Exit 1 when a target is missed.
 */
import { parseArgs } from "node:util";
import { benchBundled } from "./bundled.ts";
import { benchFloor } from "./floor.ts";
import { benchLine } from "./line.ts";
import { benchPages } from "./pages.ts";
import { benchPeak } from "./peak.ts";
import { benchScreen } from "./screen.ts";
import { benchSync } from "./sync.ts";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    rounds: { type: "string", default: "5" },
    seconds: { type: "string", default: "5" },
    writers: { type: "string", default: "2,20,50" },
    plans: { type: "string", default: "200" },
    pages: { type: "string", default: "5" },
  },
});

/** Each prints what it measured and says whether its targets were met. */
const PARTS: Readonly<Record<string, () => Promise<boolean>>> = {
  arithmetic: () => benchBundled("arithmetic"),
  cues: () => benchBundled("cues"),
  floor: benchFloor,
  line: benchLine,
  pages: () => benchPages({ rounds: Number(values.rounds) }),
  peak: () =>
    benchPeak({
      rounds: Number(values.rounds),
      // So long that the checks, which come every half minute while people write, fall into it.
      seconds: Number(values.seconds) * 6,
      plans: Number(values.plans),
      pages: Number(values.pages),
    }),
  screen: benchScreen,
  sync: () =>
    benchSync({
      rounds: Number(values.rounds),
      seconds: Number(values.seconds),
      writers: values.writers.split(",").map(Number),
    }),
};

const names = positionals.length > 0 ? positionals : Object.keys(PARTS);
let met = true;
for (const name of names) {
  const part = Object.hasOwn(PARTS, name) ? PARTS[name] : undefined;
  if (!part) throw new Error(`There is no part "${name}"; there are: ${Object.keys(PARTS).join(", ")}`);
  console.log(`\n== ${name}`);
  if (!(await part())) met = false;
}
process.exit(met ? 0 : 1);
