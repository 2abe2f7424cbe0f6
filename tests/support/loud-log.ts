/** A process that logs 5 MB and then writes to a file that it survived. Arguments: that file. */
import { writeFileSync } from "node:fs";
import { createLog } from "#server/base/log.ts";

const log = createLog("info");
let rounds = 0;
const timer = setInterval(() => {
  for (let n = 0; n < 500; n++) log.warn({ n, words: "x".repeat(500) }, "a line");
  if (++rounds < 20) return;
  clearInterval(timer);
  writeFileSync(process.argv[2] ?? "", "alive");
}, 5);
