/** Where a program of the system is, if it is. */
import { existsSync } from "node:fs";
import { join } from "node:path";

/** Debian keeps proxies where an ordinary account's path does not look. */
export const pathOf = (name: string): string | undefined =>
  [...(process.env.PATH ?? "").split(":"), "/usr/sbin", "/usr/local/sbin"]
    .map((dir) => join(dir, name))
    .find((file) => existsSync(file));
