/** The fence beside a studio's data, for the commands of a host. */
import { type Fence, readFence, unreadableFence } from "#db/file/fence.ts";
import { HostRefused } from "./host-refused.ts";

/** Undefined where none stands. Throws HostRefused where it cannot be read. */
export function fenceAt(databaseFile: string): Fence | undefined {
  try {
    return readFence(databaseFile);
  } catch {
    throw new HostRefused(unreadableFence(databaseFile));
  }
}
