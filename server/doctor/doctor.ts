/** All checks of the doctor, in the order in which an owner can do something about them. Changes nothing. */
import { existsSync, readFileSync } from "node:fs";
import { isInUse } from "#db/repos/lock-repo.ts";
import { EnvError, type Place, readPlace } from "#server/env.ts";
import { installationId } from "#server/http/installation-id.ts";
import { type Finding, wrong } from "./finding.ts";
import { clockFinding, databaseFinding, diskFinding, rightsFinding } from "./machine.ts";
import { liveFinding, proxyFinding, reach } from "./reach.ts";

type Vars = Record<string, string | undefined>;

/** Never throws but for settings (EnvError) that leave nothing to look at. */
export async function examine(vars: Vars): Promise<Finding[]> {
  const { place, malformed } = placeOf(vars);
  return [...(malformed ? [malformed] : await ways(place, vars.SPRINGLINE_URL)), ...machine(place)];
}

async function ways(place: Place, given: string | undefined): Promise<Finding[]> {
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
const machine = (place: Place): Finding[] => [rightsFinding(place), databaseFinding(place), diskFinding(place)];

/** A malformed address is a finding, and no reason to look at nothing else. */
function placeOf(vars: Vars): { place: Place; malformed?: Finding } {
  try {
    return { place: readPlace(vars) };
  } catch (error) {
    if (!(error instanceof EnvError) || vars.SPRINGLINE_URL === undefined) throw error;
    const place = readPlace({ ...vars, SPRINGLINE_URL: undefined });
    const found = `SPRINGLINE_URL is "${vars.SPRINGLINE_URL}", which is no address.`;
    return { place, malformed: wrong("public address", found, "Write it as https://plans.example.org") };
  }
}

/** Undefined where there has been no start yet, or where this account may not read the secret. */
function idOf({ givenSecret, secretFile }: Place): string | undefined {
  if (givenSecret !== undefined) return installationId(givenSecret);
  if (!existsSync(secretFile)) return undefined;
  return installationId(readFileSync(secretFile, "utf8").trim());
}
