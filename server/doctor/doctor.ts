/** All checks of the doctor, in the order in which an owner can do something about them. Changes nothing. */
import { existsSync, readFileSync } from "node:fs";
import { isInUse } from "#db/file/writer-lock.ts";
import { type DataLocation, readDataLocationAnyway } from "#server/base/env.ts";
import { installationId } from "#server/http/installation-id.ts";
import { type Diagnosis, wrong } from "./finding.ts";
import { clockFinding, databaseFinding, diskFinding, rightsFinding } from "./machine.ts";
import { liveFinding, proxyFinding, reach } from "./reach.ts";

/** Looks with the settings in `vars`, by default the process's own. Throws EnvError where they leave nothing to look at. */
export async function examine(vars?: Record<string, string | undefined>): Promise<Diagnosis[]> {
  const { place, given, malformed } = readDataLocationAnyway(vars);
  return [...(malformed ? [noAddress(given)] : await ways(place, given)), ...machine(place)];
}

/** A malformed address is a finding, and no reason to look at nothing else. */
const noAddress = (given = ""): Diagnosis =>
  wrong(
    "public address",
    `SPRINGLINE_URL is "${given}", which is no address.`,
    "Write it as https://plans.example.org",
  );

async function ways(place: DataLocation, given: string | undefined): Promise<Diagnosis[]> {
  const { origin, originGiven, host } = place;
  const running = isInUse(place.databaseFile);
  const reached = await reach({ origin, originGiven, given, host, id: idOf(place), running });
  return [
    reached.setting,
    reached.address,
    await liveFinding(origin, reached),
    await proxyFinding(origin, reached),
    await clockFinding(origin, reached.asked),
  ];
}

/** Rights first: to read a database SQLite puts two side files beside it, with the rights of the file itself. */
const machine = (place: DataLocation): Diagnosis[] => [
  rightsFinding(place),
  databaseFinding(place),
  diskFinding(place),
];

/** Undefined where there has been no start yet, or where this account may not read the secret. */
function idOf({ givenSecret, secretFile }: DataLocation): string | undefined {
  if (givenSecret !== undefined) return installationId(givenSecret);
  if (!existsSync(secretFile)) return undefined;
  return installationId(readFileSync(secretFile, "utf8").trim());
}
