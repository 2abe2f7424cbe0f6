/**
 * Runs checks on threads. Plain `worker_threads`, since a pool library gives work to whichever thread is free, while a plan
 * has to stay with the thread that has read it. When a thread dies only its cache is lost: another takes its place and
 * reads from the disk.
 */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import type { EventLog } from "#server/base/log.ts";
import { threadFile } from "#server/worker-threads/thread-file.ts";
import type { ThreadAnswers, ThreadOrder, ThreadReply, WorkerSetup } from "./messages.ts";
import { type CheckRunner, PlaceEnded } from "./runner.ts";

/** One processor is left to the thread that serves people. */
const MOST_THREADS = 4;
const threadsFor = (processors: number): number => Math.max(1, Math.min(MOST_THREADS, processors - 1));

const program = () => threadFile("check-worker", "check/worker.ts");

/** Identifies the checking program: a hash of the built file, so that every build differs; without a build, `fresh`. */
export function programMark(fresh: string): string {
  const { file, built } = program();
  return built ? createHash("sha256").update(readFileSync(file)).digest("hex").slice(0, 32) : fresh;
}

export interface ThreadsSetup extends WorkerSetup {
  readonly log: EventLog;
  /** Default: one less than the machine has processors, at most four. */
  readonly threads?: number;
}

export interface CheckThreads extends CheckRunner {
  /** Ids of the running threads. */
  readonly threadIds: readonly number[];
  /** Ends a thread at once; another takes its place with the next order. */
  kill(place: number): Promise<void>;
}

export function createThreads({ log, databaseFile, threads }: ThreadsSetup): CheckThreads {
  const places = threads ?? threadsFor(availableParallelism());
  const running = new Map<number, Worker>();
  let stopped = false;
  const threadAt = (place: number): Worker => {
    const found = running.get(place);
    if (found) return found;
    const worker = startThread({ databaseFile });
    running.set(place, worker);
    worker.on("error", (err) => log.error({ err }, "a checking thread failed; another takes its place"));
    worker.on("exit", () => {
      if (running.get(place) === worker) running.delete(place);
    });
    return worker;
  };
  return {
    places,
    get threadIds() {
      return [...running.values()].map((worker) => worker.threadId);
    },
    run: (place, order) => (stopped ? Promise.resolve(null) : ask(threadAt(place), { kind: "check", order })),
    // Somebody waits for it: it is not queued behind the checks of other plans.
    assess: (order) => (stopped ? Promise.resolve(null) : ask(threadAt(places), { kind: "assess", order })),
    async kill(place) {
      await running.get(place)?.terminate();
    },
    async stop() {
      stopped = true;
      await Promise.all([...running.values()].map((worker) => worker.terminate()));
    },
  };
}

function startThread(workerData: WorkerSetup): Worker {
  const { file, source } = program();
  const worker = new Worker(file, { workerData: { ...workerData, source }, execArgv: [] });
  worker.unref();
  return worker;
}

function ask<K extends keyof ThreadAnswers>(
  worker: Worker,
  order: ThreadOrder & { readonly kind: K },
): Promise<ThreadAnswers[K]> {
  return new Promise((resolve, reject) => {
    const done = () => {
      worker.off("message", onReply);
      worker.off("exit", onExit);
    };
    const onReply = (reply: ThreadReply) => {
      done();
      if (reply.ok)
        resolve(reply.answer as ThreadAnswers[K]); // a thread answers in the kind it was asked
      else reject(new Error(reply.message));
    };
    const onExit = () => {
      done();
      reject(new PlaceEnded("The thread ended before it answered."));
    };
    worker.on("message", onReply);
    worker.on("exit", onExit);
    worker.postMessage(order);
  });
}
