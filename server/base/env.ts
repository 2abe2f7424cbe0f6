/**
 * Everything the process takes from its surroundings, read once and checked. The only place that looks at the
 * environment; a wrong value is one clear sentence, never a stack trace.
 */
import { randomBytes } from "node:crypto";
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import * as z from "zod";

/** `demo` runs the invented studio from its own folder; `live` is the real thing; `dev` is `live` while working on it. */
export type Mode = "live" | "dev" | "demo";

export interface Env {
  readonly mode: Mode;
  /** Folder of the database, the secret and nothing else. */
  readonly dataDir: string;
  readonly databaseFile: string;
  readonly host: string;
  readonly port: number;
  /** The public origin, e.g. "http://localhost:4310": cookies, links and the Origin check all use this one. */
  readonly origin: string;
  /** At least 32 characters; seals the signing key and signs the session cookies. */
  readonly secret: string;
  /** True when a proxy of ours sets X-Forwarded-For; otherwise such headers are dropped. */
  readonly trustProxy: boolean;
  readonly logLevel: string;
  /** Next's output folder. */
  readonly distDir: string;
}

/** A surrounding that the program refuses to run in; `message` is for the person who started it. */
export class EnvError extends Error {}

/** Public on purpose: with it anybody could forge a session, so it opens nothing but the demo. */
export const DEMO_SECRET = "demo-secret-of-the-invented-studio-opens-nothing-real";
const SECRET_LENGTH = 32;
const DATABASE = "springline.sqlite";

const surroundings = z.object({
  SPRINGLINE_DATA: z.string().min(1).optional(),
  SPRINGLINE_DIST: z.string().min(1).default(".next"),
  SPRINGLINE_LOG: z.enum(["fatal", "error", "warn", "info", "debug", "trace", "silent"]).default("info"),
  SPRINGLINE_SECRET: z.string().min(1).optional(),
  SPRINGLINE_TRUST_PROXY: z.enum(["0", "1", "true", "false", ""]).default("0"),
  SPRINGLINE_URL: z.url({ protocol: /^https?$/ }).optional(),
  PORT: z.coerce.number().int().min(0).max(65535).default(4310),
  HOST: z.string().min(1).default("127.0.0.1"),
});

/**
 * Reads the surroundings for `mode`. Makes the data folder, and in live and dev a secret file of its own when none is
 * given. Throws EnvError with one sentence.
 */
export function readEnv(mode: Mode, vars: Record<string, string | undefined> = process.env): Env {
  const v = parseSurroundings(vars);
  const dataDir = resolve(v.SPRINGLINE_DATA ?? (mode === "demo" ? "data-demo" : "data"));
  const secret = mode === "demo" ? DEMO_SECRET : chooseSecret(v.SPRINGLINE_SECRET, dataDir);
  makeFolder(dataDir);
  return {
    mode,
    dataDir,
    databaseFile: join(dataDir, DATABASE),
    host: mode === "demo" ? "127.0.0.1" : v.HOST,
    port: v.PORT,
    origin: originOf(v),
    secret,
    trustProxy: v.SPRINGLINE_TRUST_PROXY === "1" || v.SPRINGLINE_TRUST_PROXY === "true",
    logLevel: v.SPRINGLINE_LOG,
    distDir: v.SPRINGLINE_DIST,
  };
}

/** Where a studio's data are, for the commands at the keyboard. Nothing is made and nothing need be there. */
export interface DataLocation {
  readonly dataDir: string;
  readonly databaseFile: string;
  readonly secretFile: string;
  /** SPRINGLINE_SECRET, when it is set: it counts before the file. */
  readonly givenSecret: string | undefined;
  readonly origin: string;
  /** Whether SPRINGLINE_URL said it. */
  readonly originGiven: boolean;
  /** Where the server listens. */
  readonly host: string;
}

/** Throws EnvError with one sentence. */
export function readDataLocation(vars: Record<string, string | undefined> = process.env): DataLocation {
  const v = parseSurroundings(vars);
  const dataDir = resolve(v.SPRINGLINE_DATA ?? "data");
  return {
    dataDir,
    databaseFile: join(dataDir, DATABASE),
    secretFile: join(dataDir, "secret"),
    givenSecret: v.SPRINGLINE_SECRET,
    origin: originOf(v),
    originGiven: v.SPRINGLINE_URL !== undefined,
    host: v.HOST,
  };
}

/** For whoever looks for what is wrong: an address that is none is given back beside the rest. Throws EnvError as above. */
export function readDataLocationAnyway(vars: Record<string, string | undefined> = process.env): {
  readonly place: DataLocation;
  /** SPRINGLINE_URL as it was typed. */
  readonly given: string | undefined;
  readonly malformed: boolean;
} {
  const given = vars.SPRINGLINE_URL;
  const malformed = given !== undefined && !surroundings.shape.SPRINGLINE_URL.safeParse(given).success;
  return { place: readDataLocation(malformed ? { ...vars, SPRINGLINE_URL: undefined } : vars), given, malformed };
}

function parseSurroundings(vars: Record<string, string | undefined>): z.infer<typeof surroundings> {
  const parsed = surroundings.safeParse(vars);
  if (parsed.success) return parsed.data;
  const issue = parsed.error.issues[0];
  throw new EnvError(`The setting ${issue?.path.join(".")} cannot be used: ${issue?.message}.`);
}

const originOf = (v: z.infer<typeof surroundings>): string =>
  new URL(v.SPRINGLINE_URL ?? `http://localhost:${v.PORT}`).origin;

/** Before Next is asked for anything: nothing about this studio leaves the machine. */
export function turnTelemetryOff(): void {
  process.env.NEXT_TELEMETRY_DISABLED = "1";
}

function chooseSecret(given: string | undefined, dataDir: string): string {
  const secret = given ?? keptSecret(dataDir);
  if (secret === DEMO_SECRET) {
    throw new EnvError(
      "The demo's secret is public: it may not guard a real studio. Set SPRINGLINE_SECRET to your own.",
    );
  }
  if (secret.length < SECRET_LENGTH) {
    throw new EnvError(`The secret is too short: it needs at least ${SECRET_LENGTH} characters (SPRINGLINE_SECRET).`);
  }
  return secret;
}

/** The secret in the data folder, made on the first start; only the account that runs the server may read it. */
function keptSecret(dataDir: string): string {
  makeFolder(dataDir);
  const file = join(dataDir, "secret");
  try {
    writeFileSync(file, randomBytes(32).toString("base64url"), { mode: 0o600, flag: "wx" });
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === "EEXIST")) throw error;
  }
  // It may have been copied here by hand.
  chmodSync(file, 0o600);
  return readFileSync(file, "utf8").trim();
}

function makeFolder(dir: string): void {
  try {
    mkdirSync(dir, { recursive: true, mode: 0o700 });
  } catch (cause) {
    throw new EnvError(`The data folder ${dir} cannot be made: ${cause instanceof Error ? cause.message : cause}.`);
  }
}
