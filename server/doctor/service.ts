/** The doctor's checks of how the server is run: the build, the metrics, the access log, the service that stops and starts it. */
import { existsSync, readFileSync } from "node:fs";
import { readBuildId } from "#server/base/build-id.ts";
import type { DataLocation } from "#server/base/env.ts";
import { askMetrics } from "./ask.ts";
import { type Diagnosis, right, unsure, wrong } from "./finding.ts";
import type { Reached } from "./reach.ts";

const README = `See "As a service" in README.md.`;
/** Where an owner puts the unit files of `server/run`: of one studio, of many. */
const UNIT_FILES = ["/etc/systemd/system/springline.service", "/etc/systemd/system/springline@.service"];
/** The program stops within this time whatever hangs (`server/main.ts`), s. */
const STOPS_WITHIN_S = 20;
const LOOPBACK = new Set(["127.0.0.1", "localhost", "::1"]);

/** Pages tell that a newer version is there by the build that the server names; it should be the one that was built here. */
export function buildFinding(
  { distDir }: Pick<DataLocation, "distDir">,
  { asked, isHere }: Pick<Reached, "asked" | "isHere">,
): Diagnosis {
  const what = "version";
  const built = readBuildId(distDir);
  if (built === null) return unsure(what, "nothing is built here; npm start builds it.");
  if (!isHere || asked.kind !== "answer" || asked.build === null)
    return unsure(
      what,
      `${built} is built here; whether it runs can be told while the server is running and the address leads to it.`,
    );
  if (asked.build === built) return right(what, `the server runs the build that is here, ${built}.`);
  return wrong(
    what,
    `the server runs the build ${asked.build}; ${built} is built here.`,
    "Restart the server. Open pages keep their words, and offer to be reloaded.",
  );
}

export async function metricsFinding({ metrics }: Pick<DataLocation, "metrics">, running: boolean): Promise<Diagnosis> {
  const what = "metrics";
  if (metrics === null) return right(what, "off; SPRINGLINE_METRICS_PORT opens a port for a collector.");
  const at = `http://${metrics.host.includes(":") ? `[${metrics.host}]` : metrics.host}:${metrics.port}/metrics`;
  if (!running) return unsure(what, `not checked: ${at} answers while the server is running.`);
  const why = await askMetrics(at);
  if (why !== null)
    return wrong(
      what,
      `${at} does not give them (${why}).`,
      "Restart the server with the SPRINGLINE_METRICS_PORT that is set here.",
    );
  if (LOOPBACK.has(metrics.host)) return right(what, `served at ${at}, on this machine only.`);
  return unsure(
    what,
    `served at ${at}, to everybody who reaches that address: let a firewall admit the collector alone.`,
  );
}

export const accessLogFinding = ({ accessLog }: Pick<DataLocation, "accessLog">): Diagnosis =>
  right(
    "access log",
    accessLog
      ? "on: one line a request on standard output, kept and rotated by the system (journald, or logrotate for a file)."
      : "off; SPRINGLINE_ACCESS_LOG=1 writes one line a request.",
  );

/** Whether whatever stops the server waits until it has saved everything. `file`: the unit's, for tests. */
export function serviceFinding(
  file = UNIT_FILES.find((one) => existsSync(one)) ?? "/etc/systemd/system/springline.service",
): Diagnosis {
  const what = "service";
  if (!existsSync(file))
    return unsure(what, `there is no ${file}: what starts and stops the server is not known here.`);
  const unit = readFileSync(file, "utf8");
  const waits = stopSeconds(/^TimeoutStopSec=(.*)$/m.exec(unit)?.[1]);
  if (waits <= STOPS_WITHIN_S)
    return wrong(
      what,
      `systemd kills the server ${waits} s after it was told to stop, which takes up to ${STOPS_WITHIN_S} s.`,
      `Set TimeoutStopSec=30 in ${file}, then run systemctl daemon-reload. ${README}`,
    );
  if (!/^Restart=(on-failure|on-abnormal|always)$/m.test(unit))
    return wrong(
      what,
      "systemd does not start the server again after a fault.",
      `Set Restart=on-failure in ${file}. ${README}`,
    );
  return right(what, `systemd stops the server within ${waits} s and starts it again after a fault.`);
}

/** "30", "30s", "1min", "infinity"; systemd's own default is 90 s (systemd-system.conf, DefaultTimeoutStopSec). */
function stopSeconds(said: string | undefined): number {
  const [, amount, unit = "s"] = /^(\d+)\s*(s|sec|min|m)?$/.exec(said?.trim() ?? "90") ?? [];
  if (amount === undefined) return Number.POSITIVE_INFINITY;
  return Number(amount) * (unit.startsWith("m") ? 60 : 1);
}
