/**
 * The counters and histograms of the process, in Prometheus' terms. Labels come from closed lists alone: no person, no plan,
 * no address ever names a series.
 */
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from "prom-client";
import { LINE_CLOSE } from "#lib/line/close.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import type { Answered } from "#server/http/answered.ts";
import type { SyncMeter } from "#server/sync/meter.ts";
import { refusalReason, routeGroup, statusClass } from "./route-group.ts";

/** Which door a socket came through. */
export type SocketDoor = "document" | "floor";

export interface Meters {
  readonly registry: Registry;
  readonly sync: SyncMeter;
  /** A request was answered, or its upgrade refused. */
  answered(request: Answered): void;
  /** A socket has closed with this code (RFC 6455, 7.4; ours from 4400 on). */
  closed(door: SocketDoor, code: number): void;
}

export interface BuildFacts {
  readonly version: string;
  /** The id of the build of the pages. */
  readonly build: string;
}

/** Seconds. From a key press nobody notices to what nobody waits for. Our own choices. */
const REQUEST_BUCKETS = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10];
const RELAY_BUCKETS = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 5];

/** Creates them in a registry of their own. Starts the measuring of the event loop's delay. */
export function createMeters(build: BuildFacts): Meters {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const info = new Gauge({
    name: "springline_build_info",
    help: "Always 1: which program runs",
    labelNames: ["version", "build", "node"],
    registers: [registry],
  });
  info.set({ ...build, node: process.version }, 1);
  return { registry, sync: syncMeter(registry), answered: requestMeter(registry), closed: socketMeter(registry) };
}

function requestMeter(registry: Registry): Meters["answered"] {
  const registers = [registry];
  const seconds = new Histogram({
    name: "springline_http_request_duration_seconds",
    help: "From the request to the end of its answer, by group of addresses and class of status",
    labelNames: ["route", "status"],
    buckets: REQUEST_BUCKETS,
    registers,
  });
  const bytes = new Counter({
    name: "springline_http_sent_bytes_total",
    help: "Bytes of answers, headers included, by group of addresses",
    labelNames: ["route"],
    registers,
  });
  const refused = new Counter({
    name: "springline_http_refused_total",
    help: "Requests that were refused, by reason",
    labelNames: ["reason"],
    registers,
  });
  return (request) => {
    const route = routeGroup(request.path);
    if (request.status !== 101) seconds.observe({ route, status: statusClass(request.status) }, request.ms / 1000);
    bytes.inc({ route }, request.bytes);
    const reason = refusalReason(request.status);
    if (reason !== undefined) refused.inc({ reason });
  };
}

function syncMeter(registry: Registry): SyncMeter {
  const registers = [registry];
  const counter = (name: string, help: string) => new Counter({ name: `springline_${name}_total`, help, registers });
  const timer = (name: string, help: string) =>
    new Histogram({ name: `springline_${name}_seconds`, help, buckets: RELAY_BUCKETS, registers });
  const [received, sent, took, rows, stored] = [
    counter("document_received_bytes", "Bytes of frames from pages with a document open"),
    counter("document_sent_bytes", "Bytes of frames to pages with a document open"),
    counter("document_messages", "Messages of pages about documents that were taken"),
    counter("document_rows", "Rows written to the log of documents"),
    counter("document_stored_bytes", "Bytes written to the log of documents"),
  ];
  const relay = timer("document_relay", "From the arrival of a change to its being sent to the others");
  const disk = timer("document_saved", "From the arrival of a change to its being on the disk");
  const refused = new Counter({
    name: "springline_document_refused_total",
    help: "Messages of pages that were refused, by reason",
    labelNames: ["reason"],
    registers,
  });
  return {
    received: (bytes) => received?.inc(bytes),
    sent: (bytes) => sent?.inc(bytes),
    took: (messages) => took?.inc(messages),
    stored(bytes) {
      rows?.inc();
      stored?.inc(bytes);
    },
    relayed: (ms) => relay.observe(ms / 1000),
    saved: (ms) => disk.observe(ms / 1000),
    refused: (cause, count) => refused.inc({ reason: slug(cause) }, count),
  };
}

function socketMeter(registry: Registry): Meters["closed"] {
  const closed = new Counter({
    name: "springline_sockets_closed_total",
    help: "Sockets that have closed, by door and reason",
    labelNames: ["door", "reason"],
    registers: [registry],
  });
  return (door, code) => closed.inc({ door, reason: closeReason(door, code) });
}

/** Codes of RFC 6455: a page that went away, and one that was lost. */
const ENDED = new Set([1000, 1001, 1005]);
const LOST = 1006;

function closeReason(door: SocketDoor, code: number): string {
  const names = Object.entries(door === "document" ? CLOSE : LINE_CLOSE);
  const ours = names.find(([, close]) => close.code === code)?.[0];
  if (ours !== undefined) return slug(ours.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`));
  if (ENDED.has(code)) return "left";
  return code === LOST ? "lost" : "other";
}

/** "a reader's change" as "a-readers-change". */
const slug = (words: string): string => words.replaceAll("'", "").replaceAll(" ", "-");
