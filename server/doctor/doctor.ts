/** All checks of the doctor, in the order in which an owner can act on them. Changes nothing. */
import { existsSync, readFileSync } from "node:fs";
import { isInUse } from "#db/file/writer-lock.ts";
import { type DataLocation, readDataLocationAnyway } from "#server/base/env.ts";
import { installationId } from "#server/http/installation-id.ts";
import { backupFinding } from "./backups.ts";
import { type Diagnosis, wrong } from "./finding.ts";
import { clockFinding, databaseFinding, diskFinding, rightsFinding } from "./machine.ts";
import { mailFinding } from "./mail.ts";
import { liveFinding, proxyFinding, reach } from "./reach.ts";
import { recordFinding } from "./record.ts";
import { accessLogFinding, buildFinding, metricsFinding, serviceFinding } from "./service.ts";

/** Runs the checks with the settings in `vars`, by default the environment. Throws EnvError when they are unusable. */
export async function examine(vars?: Record<string, string | undefined>): Promise<Diagnosis[]> {
  const { place, given, malformed } = readDataLocationAnyway(vars);
  const running = isInUse(place.databaseFile);
  return [
    ...(malformed ? [noAddress(given)] : await ways(place, { given, running })),
    ...machine(place),
    await metricsFinding(place, running),
    accessLogFinding(place),
    serviceFinding(),
  ];
}

/** A malformed address is reported, and the other checks still run. */
const noAddress = (given = ""): Diagnosis =>
  wrong(
    "public address",
    `SPRINGLINE_URL is "${given}", which is not an address.`,
    "Set it to an address such as https://plans.example.org",
  );

interface Asked {
  readonly given: string | undefined;
  readonly running: boolean;
}

async function ways(place: DataLocation, { given, running }: Asked): Promise<Diagnosis[]> {
  const { origin, originGiven, host } = place;
  const reached = await reach({ origin, originGiven, given, host, id: idOf(place), running });
  return [
    reached.setting,
    reached.address,
    await liveFinding(origin, reached),
    await proxyFinding(origin, reached),
    await clockFinding(origin, reached.asked),
    buildFinding(place, reached.asked),
  ];
}

/** Permissions first: to read a database SQLite creates two files beside it, with the permissions of the database. */
const machine = (place: DataLocation): Diagnosis[] => [
  rightsFinding(place),
  databaseFinding(place),
  recordFinding(place),
  diskFinding(place),
  mailFinding(place),
  backupFinding(place),
];

/** Undefined before the first start, and when this account may not read the secret. */
function idOf({ givenSecret, secretFile }: DataLocation): string | undefined {
  if (givenSecret !== undefined) return installationId(givenSecret);
  if (!existsSync(secretFile)) return undefined;
  return installationId(readFileSync(secretFile, "utf8").trim());
}
