/**
 * The settings of the process, read from the environment once and checked. No other file reads the environment; a wrong
 * value is reported in one sentence, never as a stack trace.
 */
import { randomBytes } from "node:crypto";
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import * as z from "zod";
import { readBuildId } from "./build-id.ts";

/** Where the metrics are read: a port of their own. */
export interface MetricsPort {
  readonly host: string;
  readonly port: number;
}

/** `live` runs a real studio, `demo` the invented one from a folder of its own; `dev` is `live` with unbuilt pages. */
export type Mode = "live" | "dev" | "demo";

export interface Env {
  readonly mode: Mode;
  /** Holds the database, the secret and nothing else. */
  readonly dataDir: string;
  readonly databaseFile: string;
  readonly host: string;
  readonly port: number;
  /** The public origin, such as "http://localhost:4310", used for cookies, links and the Origin check. */
  readonly origin: string;
  /** At least 32 characters. It encrypts the signing key and signs the session cookies. */
  readonly secret: string;
  /** True when our own proxy sets X-Forwarded-For; otherwise such headers are dropped. */
  readonly trustProxy: boolean;
  readonly logLevel: string;
  /** Whether every request gets a line in the log. */
  readonly accessLog: boolean;
  /** Null: nothing is measured. */
  readonly metrics: MetricsPort | null;
  /** Next's output folder. */
  readonly distDir: string;
  /** The id of the build that this process serves, however its folder changes later; null for unbuilt pages. */
  readonly build: string | null;
}

/** A setting that the program cannot run with; `message` is for the person who started it. */
export class EnvError extends Error {}

/** Public on purpose. Anybody could forge a session with it, so it is only accepted for the demo. */
export const DEMO_SECRET = "demo-secret-of-the-invented-studio-opens-nothing-real";
const SECRET_LENGTH = 32;
/** Of the database in a data folder. */
export const DATABASE_NAME = "springline.sqlite";

const yesOrNo = z.enum(["0", "1", "true", "false", ""]).default("0");
const isYes = (said: string): boolean => said === "1" || said === "true";
const portNumber = z.coerce.number().int().min(0).max(65535);

const settings = z.object({
  SPRINGLINE_ACCESS_LOG: yesOrNo,
  SPRINGLINE_DATA: z.string().min(1).optional(),
  SPRINGLINE_DIST: z.string().min(1).default(".next"),
  SPRINGLINE_LOG: z.enum(["fatal", "error", "warn", "info", "debug", "trace", "silent"]).default("info"),
  SPRINGLINE_METRICS_HOST: z.string().min(1).default("127.0.0.1"),
  SPRINGLINE_METRICS_PORT: z.union([z.literal("").transform(() => undefined), portNumber]).optional(),
  SPRINGLINE_SECRET: z.string().min(1).optional(),
  SPRINGLINE_STUDIOS: z.string().min(1).default("/var/lib/springline-studios"),
  SPRINGLINE_TRUST_PROXY: yesOrNo,
  SPRINGLINE_URL: z.url({ protocol: /^https?$/ }).optional(),
  PORT: portNumber.default(4310),
  HOST: z.string().min(1).default("127.0.0.1"),
});

/**
 * Reads the settings for `mode`. Creates the data folder and, in live and dev, a secret file when no secret is given.
 * Throws EnvError with one sentence.
 */
export function readEnv(mode: Mode, vars: Record<string, string | undefined> = process.env): Env {
  const v = parseSettings(vars);
  const dataDir = resolve(v.SPRINGLINE_DATA ?? (mode === "demo" ? "data-demo" : "data"));
  const secret = mode === "demo" ? DEMO_SECRET : chooseSecret(v.SPRINGLINE_SECRET, dataDir);
  makeFolder(dataDir);
  return {
    mode,
    dataDir,
    databaseFile: join(dataDir, DATABASE_NAME),
    host: mode === "demo" ? "127.0.0.1" : v.HOST,
    port: v.PORT,
    origin: originOf(v),
    secret,
    trustProxy: isYes(v.SPRINGLINE_TRUST_PROXY),
    logLevel: v.SPRINGLINE_LOG,
    accessLog: isYes(v.SPRINGLINE_ACCESS_LOG),
    metrics: metricsOf(v),
    distDir: v.SPRINGLINE_DIST,
    build: mode === "dev" ? null : readBuildId(v.SPRINGLINE_DIST),
  };
}

/** Where a studio's data are, for the commands. Nothing is created, and nothing has to exist. */
export interface DataLocation {
  readonly dataDir: string;
  readonly databaseFile: string;
  readonly secretFile: string;
  /** SPRINGLINE_SECRET, when it is set: it takes precedence over the file. */
  readonly givenSecret: string | undefined;
  readonly origin: string;
  /** Whether it came from SPRINGLINE_URL. */
  readonly originGiven: boolean;
  /** Where the server listens. */
  readonly host: string;
  readonly metrics: MetricsPort | null;
  readonly accessLog: boolean;
  readonly distDir: string;
}

/** Throws EnvError with one sentence. */
export function readDataLocation(vars: Record<string, string | undefined> = process.env): DataLocation {
  const v = parseSettings(vars);
  const dataDir = resolve(v.SPRINGLINE_DATA ?? "data");
  return {
    dataDir,
    databaseFile: join(dataDir, DATABASE_NAME),
    secretFile: join(dataDir, "secret"),
    givenSecret: v.SPRINGLINE_SECRET,
    origin: originOf(v),
    originGiven: v.SPRINGLINE_URL !== undefined,
    host: v.HOST,
    metrics: metricsOf(v),
    accessLog: isYes(v.SPRINGLINE_ACCESS_LOG),
    distDir: v.SPRINGLINE_DIST,
  };
}

/** The folder of a host with many studios. Throws EnvError with one sentence. */
export const readStudiosFolder = (vars: Record<string, string | undefined> = process.env): string =>
  resolve(parseSettings(vars).SPRINGLINE_STUDIOS);

/** For the doctor: a malformed SPRINGLINE_URL is reported beside the rest, not thrown. Throws EnvError for anything else. */
export function readDataLocationAnyway(vars: Record<string, string | undefined> = process.env): {
  readonly place: DataLocation;
  /** SPRINGLINE_URL as it was set. */
  readonly given: string | undefined;
  readonly malformed: boolean;
} {
  const given = vars.SPRINGLINE_URL;
  const malformed = given !== undefined && !settings.shape.SPRINGLINE_URL.safeParse(given).success;
  return { place: readDataLocation(malformed ? { ...vars, SPRINGLINE_URL: undefined } : vars), given, malformed };
}

function parseSettings(vars: Record<string, string | undefined>): z.infer<typeof settings> {
  const parsed = settings.safeParse(vars);
  if (parsed.success) return parsed.data;
  const issue = parsed.error.issues[0];
  throw new EnvError(`The setting ${issue?.path.join(".")} cannot be used: ${issue?.message}.`);
}

const originOf = (v: z.infer<typeof settings>): string =>
  new URL(v.SPRINGLINE_URL ?? `http://localhost:${v.PORT}`).origin;

const metricsOf = (v: z.infer<typeof settings>): MetricsPort | null =>
  v.SPRINGLINE_METRICS_PORT === undefined ? null : { host: v.SPRINGLINE_METRICS_HOST, port: v.SPRINGLINE_METRICS_PORT };

/** For a program that is started with the settings that this one has. */
export const inheritedEnv = (): NodeJS.ProcessEnv => ({ ...process.env });

/** To be called before Next is loaded: nothing about this studio leaves the machine. */
export function turnTelemetryOff(): void {
  process.env.NEXT_TELEMETRY_DISABLED = "1";
}

/** The secret that a server with these settings runs with; made where there is none. Throws EnvError. */
export function chooseSecret(given: string | undefined, dataDir: string): string {
  const secret = given ?? keptSecret(dataDir);
  if (secret === DEMO_SECRET) {
    throw new EnvError(
      "The demo's secret is public and cannot protect a real studio. Set SPRINGLINE_SECRET to a secret of your own.",
    );
  }
  if (secret.length < SECRET_LENGTH) {
    throw new EnvError(`The secret is too short. Set SPRINGLINE_SECRET to at least ${SECRET_LENGTH} characters.`);
  }
  return secret;
}

/** The secret in the data folder, created at the first start. Only the account that runs the server can read it. */
function keptSecret(dataDir: string): string {
  makeFolder(dataDir);
  const file = join(dataDir, "secret");
  try {
    writeFileSync(file, randomBytes(32).toString("base64url"), { mode: 0o600, flag: "wx" });
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === "EEXIST")) throw error;
  }
  // It may have been copied here by hand, with other permissions.
  chmodSync(file, 0o600);
  return readFileSync(file, "utf8").trim();
}

function makeFolder(dir: string): void {
  try {
    mkdirSync(dir, { recursive: true, mode: 0o700 });
  } catch (cause) {
    throw new EnvError(`The data folder ${dir} cannot be created: ${cause instanceof Error ? cause.message : cause}.`);
  }
}
