/**
 * Loaded before a command (`--import`): kills the process right before the n-th change that it makes to the names and files of a
 * disk, as a power cut may. KILL_AT says which; what is done before it stays.
 */
import fs from "node:fs";
import { syncBuiltinESMExports } from "node:module";

const at = Number(process.env.KILL_AT ?? 0);
let done = 0;
for (const name of ["renameSync", "mkdirSync", "writeFileSync", "rmSync", "fsyncSync"]) {
  const real = fs[name];
  fs[name] = (...given) => {
    done++;
    if (done === at) process.kill(process.pid, "SIGKILL");
    return real(...given);
  };
}
syncBuiltinESMExports();
