/** Runs `stop-server.ts` in a process of its own, to be stopped and started again. */
import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import { bundleServer, ROOT } from "./bundle-server.ts";
import { eventually } from "./eventually.ts";

export interface StopServers {
  start(file: string, port: number): Promise<ChildProcess>;
  /** Ends what still runs. */
  end(): void;
}

/** `folder`: of the bundle, under `dist-tests`, one a test file. */
export async function stopServers(folder: string): Promise<StopServers> {
  const out = join(ROOT, "dist-tests", folder);
  await bundleServer({ "stop-server": "tests/support/stop-server.ts" }, out);
  const children: ChildProcess[] = [];
  return {
    async start(file, port) {
      const args = [join(out, "stop-server.js"), file, String(port)];
      const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ["ignore", "pipe", "pipe"] });
      children.push(child);
      let said = "";
      const note = (chunk: Buffer) => {
        said += chunk.toString();
      };
      child.stdout.on("data", note);
      child.stderr.on("data", note);
      await eventually(`the server starts: ${said}`, () => /port (\d+)/.test(said), 60_000);
      return child;
    },
    end() {
      for (const child of children) child.kill("SIGKILL");
    },
  };
}

/** Sends SIGTERM. `ms`: until the process had ended. */
export function stopped(child: ChildProcess): Promise<{ code: number | null; ms: number }> {
  const from = performance.now();
  return new Promise((resolve) => {
    child.once("exit", (code) => resolve({ code, ms: performance.now() - from }));
    child.kill("SIGTERM");
  });
}
