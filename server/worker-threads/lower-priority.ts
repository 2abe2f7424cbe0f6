/** Lets a thread's work wait for whoever serves people. */
import { readlinkSync } from "node:fs";
import { setPriority } from "node:os";
import { basename } from "node:path";

/** Niceness: on a busy machine letters go first. */
const BEHIND_LETTERS = 10;

/** The calling thread alone. Linux names it by a link; elsewhere it stays as it is and takes its share. */
export function lowerPriority(): void {
  try {
    setPriority(Number(basename(readlinkSync("/proc/thread-self"))), BEHIND_LETTERS);
  } catch {
    // Nothing is wrong: only a kindness is not to be had.
  }
}
