/** Gives the work of a thread a lower priority than the thread that serves people. */
import { readlinkSync } from "node:fs";
import { setPriority } from "node:os";
import { basename } from "node:path";

/** Niceness: on a busy machine, typed text is relayed first. */
const NICENESS = 10;

/** Affects the calling thread only. Works on Linux, where a link names the thread; elsewhere nothing changes. */
export function lowerPriority(): void {
  try {
    setPriority(Number(basename(readlinkSync("/proc/thread-self"))), NICENESS);
  } catch {
    // Only the priority cannot be lowered; the work itself is not affected.
  }
}
