/** Connects the metrics and the access log with what they hear of. Without their settings nothing is measured or written. */

import type { Env } from "#server/base/env.ts";
import type { Log } from "#server/base/log.ts";
import type { Springline } from "#server/context/springline.ts";
import { accessLines } from "#server/http/access-log.ts";
import type { HearAnswered } from "#server/http/answered.ts";
import type { Meters, SocketDoor } from "#server/metrics/meters.ts";
import type { MetricsServing } from "#server/metrics/serve-metrics.ts";
import type { SyncMeter } from "#server/sync/meter.ts";
import program from "../../package.json" with { type: "json" };

export interface Measuring {
  readonly sync: SyncMeter | undefined;
  readonly answered: HearAnswered | undefined;
  /** For the sockets of one door. */
  onClosed(door: SocketDoor): { readonly onClosed?: (code: number) => void };
  /** Opens the port for the metrics, if there is one. Throws CannotListen. */
  serve(app: Springline, screens: () => number): Promise<MetricsServing | undefined>;
}

export async function measure({ env, log }: { readonly env: Env; readonly log: Log }): Promise<Measuring> {
  const meters = env.metrics ? await createdMeters(env) : undefined;
  const hearers = [meters?.answered, env.accessLog ? accessLines(log) : undefined].filter((hear) => hear !== undefined);
  return {
    sync: meters?.sync,
    answered: hearAll(hearers),
    onClosed: (door) => (meters ? { onClosed: (code) => meters.closed(door, code) } : {}),
    async serve(app, screens) {
      if (!env.metrics || !meters) return undefined;
      const [{ addGauges }, { serveMetrics }] = await Promise.all([
        import("#server/metrics/gauges.ts"),
        import("#server/metrics/serve-metrics.ts"),
      ]);
      addGauges({ registry: meters.registry, app, screens });
      const serving = await serveMetrics(env.metrics, { registry: meters.registry, log });
      log.info({ host: env.metrics.host, port: serving.port }, "metrics are served");
      return serving;
    },
  };
}

function hearAll(hearers: readonly HearAnswered[]): HearAnswered | undefined {
  if (hearers.length === 0) return undefined;
  return (request) => {
    for (const hear of hearers) hear(request);
  };
}

/** Loaded only where somebody wants metrics: the library takes memory, and measures the event loop from then on. */
async function createdMeters(env: Env): Promise<Meters> {
  const { createMeters } = await import("#server/metrics/meters.ts");
  return createMeters({ version: program.version, build: env.build ?? "dev" });
}
