/**
 * A fence is a small file beside a database that says: the studio is not here. One stands beside the old data once the studio has
 * moved, and beside the new data until it has arrived. Who wants to write is refused, so that two processes at two places never
 * both go on with the same studio.
 */
import { closeSync, constants, openSync, readFileSync, rmSync } from "node:fs";
import { dirname } from "node:path";
import { syncNames, writeWhole } from "./whole-file.ts";

export interface Fence {
  readonly state: "arriving" | "moved";
  /** Of this one move: only the copy that it made is ever opened. */
  readonly id: string;
  /** The folder that the studio has moved to, or comes from. */
  readonly place: string;
  /** ms since the epoch. */
  readonly at: number;
}

const fenceFile = (databaseFile: string): string => `${databaseFile}.fence`;

/**
 * Undefined where none stands. One that cannot be read throws: it is not known then where the studio is. So does a symbolic link,
 * wherever it leads: a fence is a file, and what is behind a link may come and go.
 */
export function readFence(databaseFile: string): Fence | undefined {
  const file = fenceFile(databaseFile);
  const text = textOf(file);
  if (text === undefined) return undefined;
  const fence = JSON.parse(text) as Partial<Fence>; // written by writeFence only; checked below
  const { state, id, place, at } = fence;
  if ((state !== "arriving" && state !== "moved") || !id || !place || at === undefined)
    throw new Error(`${file} is no fence`);
  return { state, id, place, at };
}

function textOf(file: string): string | undefined {
  let handle: number;
  try {
    // Nothing is waited for, should it be a pipe.
    handle = openSync(file, constants.O_RDONLY | constants.O_NOFOLLOW | constants.O_NONBLOCK);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "ENOENT" || code === "ENOTDIR") return undefined;
    throw error;
  }
  try {
    return readFileSync(handle, "utf8");
  } finally {
    closeSync(handle);
  }
}

/** On the disk when it returns, or not there at all. */
export const writeFence = (databaseFile: string, fence: Fence): void =>
  writeWhole(fenceFile(databaseFile), `${JSON.stringify(fence)}\n`);

export function removeFence(databaseFile: string): void {
  rmSync(fenceFile(databaseFile), { force: true });
  syncNames(dirname(fenceFile(databaseFile)));
}

/** What to tell who wants to write, and what to do; undefined where no fence stands. */
export function fenceSentence(databaseFile: string): string | undefined {
  try {
    const fence = readFence(databaseFile);
    if (!fence) return undefined;
    if (fence.state === "moved")
      return `This studio has moved to ${fence.place}, where it goes on. It is not started here again: the data here, ${databaseFile}, is older. To bring it back, move it from there.`;
    return `The studio in ${databaseFile} has not arrived here yet from ${fence.place}. Finish the move there: npm run -s studio -- move`;
  } catch {
    return unreadableFence(databaseFile);
  }
}

export const unreadableFence = (databaseFile: string): string =>
  `${fenceFile(databaseFile)} cannot be read, so it is not known whether this studio has moved. Look into that file, and remove it only when the studio runs nowhere else.`;
