/** What a measured server tells the process that measures it: where it is, and what it costs. */
import type { Server } from "node:http";

export interface Ready {
  readonly port: number;
  readonly cookies: readonly string[];
}
export interface Cost {
  /** Bytes. */
  readonly rss: number;
  /** Bytes that are in use, in the heap and beside it, rubbish taken out first. */
  readonly used: number;
  /** Microseconds of processor since the process began. */
  readonly cpu: number;
}

/** Asked with "cost", or with "used" where the memory in use is wanted: taking the rubbish out costs time. */
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
