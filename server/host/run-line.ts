/** Runs an owner's line of shell, such as `systemctl stop springline@$STUDIO`, for one studio. */
import { spawn } from "node:child_process";
import { inheritedEnv } from "#server/base/env.ts";
import { asStarter } from "./as-owner.ts";

/** Resolves with null, or with what it said where it failed. `$STUDIO` and `$FOLDER` are the studio's name and folder. */
export function runLine(
  line: string,
  studio: { readonly name: string; readonly folder: string },
): Promise<string | null> {
  const env = { ...inheritedEnv(), STUDIO: studio.name, FOLDER: studio.folder };
  const child = asStarter(() => spawn("/bin/sh", ["-c", line], { env, stdio: ["ignore", "ignore", "pipe"] }));
  let said = "";
  child.stderr.on("data", (data: Buffer) => {
    said = `${said}${data.toString()}`.slice(-1000);
  });
  return new Promise((resolve) => {
    child.once("error", (error) => resolve(error.message));
    // Not "close": what it starts may keep its output open.
    child.once("exit", (code, signal) =>
      resolve(code === 0 ? null : said.trim().split("\n").at(-1) || `it ended with ${signal ?? code}`),
    );
  });
}
