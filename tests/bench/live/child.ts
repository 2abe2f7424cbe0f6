/** What a measured server tells the measuring process: its address and its costs. */
import type { Server } from "node:http";

export interface Ready {
  readonly port: number;
  readonly cookies: readonly string[];
}
export interface Cost {
  /** Bytes. */
  readonly rss: number;
  /** Bytes in use, in the heap and outside, after garbage collection. */
  readonly used: number;
  /** Microseconds of processor time since the process began. */
  readonly cpu: number;
}

/** Answers "cost", and "used" with the memory in use, which takes time as it collects garbage first. */
export type CostQuestion = "cost" | "used";

export function answerParent(http: Server, told: { cookies: readonly string[] }): void {
  process.on("message", (question: CostQuestion) => {
    const { user, system } = process.cpuUsage();
    if (question === "used") globalThis.gc?.();
    const { rss, heapUsed, external } = process.memoryUsage();
    process.send?.({ rss, used: heapUsed + external, cpu: user + system } satisfies Cost);
  });
  process.on("disconnect", () => process.exit(0));
  http.listen(0, "127.0.0.1", () => {
    const address = http.address();
    if (address && typeof address === "object") process.send?.({ port: address.port, cookies: told.cookies });
  });
}
