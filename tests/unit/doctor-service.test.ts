/** The doctor on how the server is run: the service, the metrics, the build, the access log. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import type { AddressReply } from "#server/doctor/ask.ts";
import { accessLogFinding, buildFinding, metricsFinding, serviceFinding } from "#server/doctor/service.ts";
import { createMeters } from "#server/metrics/meters.ts";
import { serveMetrics } from "#server/metrics/serve-metrics.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "springline-service-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));
const RUN = join(import.meta.dirname, "../../server/run");

test("our own unit file is right; one that kills too soon, or starts nothing again, is told", () => {
  for (const name of ["springline.service", "springline@.service"])
    expect(serviceFinding(join(RUN, name))).toMatchObject({
      is: "right",
      found: expect.stringContaining("within 30 s"),
    });
  const file = join(folder, "unit");
  expect(serviceFinding(file).is).toBe("unsure");
  for (const [text, is, words] of [
    ["TimeoutStopSec=10\nRestart=on-failure", "wrong", "10 s after"],
    ["TimeoutStopSec=20s\nRestart=always", "wrong", "up to 20 s"],
    ["TimeoutStopSec=1min\nRestart=no", "wrong", "does not start the server again"],
    ["Restart=always", "right", "within 90 s"],
  ] as const) {
    writeFileSync(file, text);
    expect(serviceFinding(file)).toMatchObject({ is, found: expect.stringContaining(words) });
  }
});

test("the build that runs is compared with the one that was built", () => {
  const answers = (build: string | null, isHere = true) => ({
    isHere,
    asked: { kind: "answer", build } as AddressReply,
  });
  expect(buildFinding({ distDir: folder }, answers("a")).is).toBe("unsure");
  writeFileSync(join(folder, "BUILD_ID"), "a\n");
  expect(buildFinding({ distDir: folder }, answers("a")).is).toBe("right");
  expect(buildFinding({ distDir: folder }, answers("older"))).toMatchObject({
    is: "wrong",
    todo: expect.stringContaining("Restart the server"),
  });
  expect(buildFinding({ distDir: folder }, answers(null)).is).toBe("unsure");
  // Another server's build says nothing about this one's.
  expect(buildFinding({ distDir: folder }, answers("older", false)).is).toBe("unsure");
});

test("metrics: off, served here, served to others, or not there", async () => {
  expect((await metricsFinding({ metrics: null }, true)).found).toContain("off");
  const { registry } = createMeters({ version: "0", build: "x" });
  const log = { error: () => undefined } as never;
  const { port, close } = await serveMetrics({ host: "0.0.0.0", port: 0 }, { registry, log });
  expect((await metricsFinding({ metrics: { host: "127.0.0.1", port } }, true)).found).toContain(
    "on this machine only",
  );
  const open = await metricsFinding({ metrics: { host: "0.0.0.0", port } }, true);
  expect(open).toMatchObject({ is: "unsure", found: expect.stringContaining("firewall") });
  close();
  expect((await metricsFinding({ metrics: { host: "127.0.0.1", port } }, true)).is).toBe("wrong");
  expect((await metricsFinding({ metrics: { host: "127.0.0.1", port } }, false)).is).toBe("unsure");
  const other = createServer((_request, response) => response.end("something else"));
  await new Promise<void>((done) => other.listen(0, "127.0.0.1", done));
  const elsewhere = { host: "127.0.0.1", port: (other.address() as AddressInfo).port };
  expect((await metricsFinding({ metrics: elsewhere }, true)).found).toContain("status 200");
  other.close();
});

test("the access log is told as it is set", () => {
  expect(accessLogFinding({ accessLog: true }).found).toContain("journald");
  expect(accessLogFinding({ accessLog: false }).found).toContain("SPRINGLINE_ACCESS_LOG=1");
});
