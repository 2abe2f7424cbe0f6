/** All checks of the doctor, in the order in which an owner can act on them. Changes nothing. */
import { isInUse } from "#db/file/writer-lock.ts";
import { type DataLocation, readDataLocationAnyway } from "#server/base/env.ts";
import { installationId } from "#server/http/installation-id.ts";
import { backupFinding } from "./backups.ts";
import { type Diagnosis, right, wrong } from "./finding.ts";
import { type StudioKind, studioKind } from "./kind.ts";
import { clockFinding, databaseFinding, diskFinding, rightsFinding } from "./machine.ts";
import { mailFinding } from "./mail.ts";
import { liveFinding, proxyFinding, reach } from "./reach.ts";
import { recordFinding } from "./record.ts";
import { accessLogFinding, buildFinding, metricsFinding, serviceFinding } from "./service.ts";

/** Runs the checks with the settings in `vars`, by default the environment. Throws EnvError when they are unusable. */
export async function examine(vars?: Record<string, string | undefined>): Promise<Diagnosis[]> {
  const { place, given, malformed } = readDataLocationAnyway(vars);
  const running = isInUse(place.databaseFile);
  // First: to read a database SQLite creates two files beside it, with the permissions of the database.
  const rights = rightsFinding(place);
  const kind = studioKind(place);
  return [
    ...(malformed ? [noAddress(given)] : await ways(place, { given, running, kind })),
    kind.finding,
    rights,
    ...machine(place, kind),
    await metricsFinding(place, running),
    accessLogFinding(place),
    kind.demo ? DEMO_SERVICE : serviceFinding(),
  ];
}

/** A malformed address is reported, and the other checks still run. */
const noAddress = (given = ""): Diagnosis =>
  wrong(
    "public address",
    `SPRINGLINE_URL is "${given}", which is not an address.`,
    "Set it to an address such as https://plans.example.org",
  );

/** Nobody makes a service of it. */
const DEMO_SERVICE = right("service", "npm run demo is started and stopped by hand.");

interface Asked {
  readonly given: string | undefined;
  readonly running: boolean;
  readonly kind: StudioKind;
}

async function ways(place: DataLocation, { given, running, kind }: Asked): Promise<Diagnosis[]> {
  const { origin, originGiven, host } = place;
  const reached = await reach({
    origin,
    originGiven,
    given,
    host,
    id: kind.secret && installationId(kind.secret),
    running,
  });
  return [
    reached.setting,
    reached.address,
    await liveFinding(origin, reached),
    await proxyFinding(origin, reached),
    await clockFinding(origin, reached.asked),
    buildFinding(place, reached),
  ];
}

const machine = (place: DataLocation, { demo }: StudioKind): Diagnosis[] => [
  databaseFinding(place),
  recordFinding(place),
  diskFinding(place),
  mailFinding(place),
  backupFinding(place, demo ? "demo" : "live"),
];
