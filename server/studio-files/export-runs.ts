/** Exports of a running server, one at a time, each on a thread. Made by `server/main` alone. */
import { mkdtemp, readdir, rm } from "node:fs/promises";
import { join } from "node:path";
import type { StudioExports } from "#server/context/care.ts";
import type { Springline } from "#server/context/springline.ts";
import { jobInThread } from "#server/worker-threads/job-thread.ts";
import program from "../../package.json" with { type: "json" };
import type { ExportEnd, ExportJob } from "./export-job.ts";

const WORK = ".download-";

export function createExportRuns({ app }: { readonly app: Pick<Springline, "env" | "now" | "log"> }): StudioExports {
  let running = false;
  return {
    running: () => running,
    async make() {
      running = true;
      try {
        return await madeIn(app, await freshWork(app.env.dataDir));
      } catch (err) {
        app.log.error({ err }, "an export broke off");
        return { problem: "The export broke off. Try again, or ask whoever runs the server to look at its log." };
      } finally {
        running = false;
      }
    },
  };
}

async function madeIn({ env, now, log }: Pick<Springline, "env" | "now" | "log">, work: string): Promise<ExportEnd> {
  const { databaseFile, origin, secret } = env;
  const job: ExportJob = { setup: { databaseFile, origin, secret, program: program.version, at: now() }, work };
  const end = await jobInThread<ExportEnd>("export-worker", "studio-files/export-worker.ts", job).end.catch(
    async (error: unknown) => {
      await rm(work, { recursive: true, force: true });
      throw error;
    },
  );
  if ("file" in end) return end;
  log.error({ problem: end.problem }, "the studio could not be exported");
  await rm(work, { recursive: true, force: true });
  return end;
}

/** What a server left that was killed meanwhile is removed first. */
async function freshWork(dataDir: string): Promise<string> {
  for (const name of await readdir(dataDir))
    if (name.startsWith(WORK)) await rm(join(dataDir, name), { recursive: true, force: true });
  return mkdtemp(join(dataDir, WORK));
}
