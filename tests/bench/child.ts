/** What a measured server tells the process that measures it: where it is, and what it costs. */
import type { Server } from "node:http";

export interface Ready {
  readonly port: number;
  readonly cookies: readonly string[];
}
export interface Cost {
  /** Bytes. */
  readonly rss: number;
  /** Microseconds of processor since the process began. */
  readonly cpu: number;
}

export function answerParent(http: Server, told: { cookies: readonly string[] }): void {
  process.on("message", () => {
    const { user, system } = process.cpuUsage();
    process.send?.({ rss: process.memoryUsage().rss, cpu: user + system } satisfies Cost);
  });
  process.on("disconnect", () => process.exit(0));
  http.listen(0, "127.0.0.1", () => {
    const address = http.address();
    if (address && typeof address === "object") process.send?.({ port: address.port, cookies: told.cookies });
  });
}
