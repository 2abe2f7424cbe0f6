/** Files that are either as they were or as they should be, whatever ends the machine meanwhile. */
import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";

/** `mode`: who may read it; the account alone unless told otherwise. What a cut-off write left is not written into. */
export function writeWhole(file: string, text: string, mode = 0o600): void {
  rmSync(`${file}.new`, { force: true });
  writeFileSync(`${file}.new`, text, { mode, flag: "wx", flush: true });
  renameSync(`${file}.new`, file);
  syncNames(dirname(file));
}

/** Renames on the disk when it returns. Both names are on one disk. */
export function renameWhole(from: string, to: string): void {
  renameSync(from, to);
  syncNames(dirname(to));
  if (dirname(from) !== dirname(to)) syncNames(dirname(from));
}

export function syncNames(folder: string): void {
  const handle = openSync(folder, "r");
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
