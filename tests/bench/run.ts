/**
 * `npm run bench`: every part, or those named: `npm run bench -- live --rounds 5 --works evening,burst`,
 * `npm run bench -- arithmetic`. The soak lasts half an hour and runs only when it is named. Exit 1 when a target is missed.
 */
import { parseArgs } from "node:util";
import { benchBundled } from "./bundled.ts";
import { benchFloor } from "./floor.ts";
import { benchFrames } from "./frames.ts";
import { benchHost } from "./host.ts";
import { benchLine } from "./line.ts";
import { benchLive } from "./live/live.ts";
import { benchSoak } from "./live/soak.ts";
import { benchLogStores } from "./log-stores.ts";
import { benchMetrics } from "./metrics.ts";
import { benchPages } from "./pages.ts";
import { benchScreen } from "./screen.ts";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    rounds: { type: "string", default: "3" },
    // Long enough to include the checks that run every half minute while people write.
    seconds: { type: "string", default: "30" },
    works: { type: "string", default: "" },
    plans: { type: "string", default: "200" },
    pages: { type: "string", default: "5" },
    studios: { type: "string", default: "1,10,30" },
    minutes: { type: "string", default: "30" },
  },
});

const live = (works: readonly string[]) =>
  benchLive({
    rounds: Number(values.rounds),
    seconds: Number(values.seconds),
    plans: Number(values.plans),
    pages: Number(values.pages),
    works,
  });

/** Each prints what it measured and says whether its targets were met. */
const PARTS: Readonly<Record<string, () => Promise<boolean>>> = {
  arithmetic: () => benchBundled("arithmetic"),
  check: () => benchBundled("check"),
  cues: () => benchBundled("cues"),
  find: () => benchBundled("find"),
  floor: benchFloor,
  frames: benchFrames,
  host: () => benchHost(values.studios.split(",").map(Number)),
  line: benchLine,
  "log-stores": benchLogStores,
  metrics: benchMetrics,
  live: () => live(values.works.split(",").filter(Boolean)),
  month: async () => {
    const arithmetic = await benchBundled("month");
    return (await live(["month-screen"])) && arithmetic;
  },
  pages: () => benchPages({ rounds: Number(values.rounds) }),
  screen: benchScreen,
  soak: () => benchSoak(Number(values.minutes)),
};

const names = positionals.length > 0 ? positionals : Object.keys(PARTS).filter((name) => name !== "soak");
let met = true;
for (const name of names) {
  const part = Object.hasOwn(PARTS, name) ? PARTS[name] : undefined;
  if (!part) throw new Error(`There is no part "${name}"; there are: ${Object.keys(PARTS).join(", ")}`);
  console.log(`\n== ${name}`);
  if (!(await part())) met = false;
}
process.exit(met ? 0 : 1);
