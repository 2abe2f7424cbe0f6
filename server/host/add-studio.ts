/** Makes a place for a studio on a host. Its database is made when it starts for the first time. */
import { lstatSync, mkdirSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { renameWhole, syncNames, writeWhole } from "#db/file/whole-file.ts";
import {
  ENV_FILE,
  folderOf,
  type HostFolder,
  incomingStudios,
  movedStudios,
  type PlacedStudio,
  studioIn,
  studiosOf,
  UNFINISHED,
  whileAlone,
} from "./host-folder.ts";
import { HostRefused } from "./host-refused.ts";
import { publishMap } from "./hosts-map.ts";
import { freePortOf } from "./ports.ts";
import { type StudioEnv, studioEnvText } from "./studio-env.ts";
import { readStudioAddress, refuseName } from "./studio-names.ts";

export interface StudioAdded {
  readonly studio: PlacedStudio;
  /** It was there already, with the same address. */
  readonly before: boolean;
  /** What the proxy still needs, as a sentence. */
  readonly proxy: string | null;
}

/** Throws HostRefused with one sentence; nothing is changed then. */
export async function addStudio(host: HostFolder, name: string, url: string): Promise<StudioAdded> {
  refuseName(name);
  const { origin, hostName } = readStudioAddress(url);
  return whileAlone(host, async () => {
    const there = studioIn(folderOf(host, name), name);
    if (there && there.env.origin !== origin)
      throw new HostRefused(
        `There is a studio ${name} already, at ${there.env.origin}. Choose another name, or change SPRINGLINE_URL in ${there.folder}/${ENV_FILE}.`,
      );
    refuseTaken(host, name, hostName);
    const studio = there ?? (await made(host, name, origin));
    return { studio, before: there !== undefined, proxy: await publishMap(host) };
  });
}

/** Throws HostRefused when another studio has the host name, is on its way here with it, or has left a way to it. */
export function refuseTaken(host: HostFolder, name: string, hostName: string): void {
  const isIt = ({ env, name: other }: PlacedStudio) =>
    other !== name && readStudioAddress(env.origin).hostName === hostName;
  const other = [...studiosOf(host), ...incomingStudios(host)].find(isIt);
  if (other) throw new HostRefused(`${hostName} is the address of the studio ${other.name}. Choose another host name.`);
  const left = movedStudios(host).find((moved) => moved.hostName === hostName && moved.name !== name);
  if (left)
    throw new HostRefused(
      `${hostName} leads to the studio ${left.name}, which has moved to ${left.to}. Choose another host name, or end that with: npm run -s studio -- remove ${left.name}`,
    );
}

async function made(host: HostFolder, name: string, origin: string): Promise<PlacedStudio> {
  if (movedStudios(host).some((moved) => moved.name === name))
    throw new HostRefused(
      `The studio ${name} has moved away from here. Choose another name, or forget it first: npm run -s studio -- remove ${name}`,
    );
  const { address, folder: own = host.root } = host.settings;
  const dataDir = join(own, name, "data");
  const env: StudioEnv = { origin, dataDir, host: address, port: await freePortOf(host) };
  const unfinished = join(host.root, `${UNFINISHED}${name}`);
  const folder = folderOf(host, name);
  refuseStray(folder);
  mkdirSync(unfinished, { mode: 0o700 });
  mkdirSync(join(unfinished, "data"), { mode: 0o700 });
  writeWhole(join(unfinished, ENV_FILE), studioEnvText(name, env));
  syncNames(unfinished);
  renameWhole(unfinished, folder);
  return { name, folder, env };
}

/** Throws HostRefused when something lies there that is no studio; an empty folder is taken. */
export function refuseStray(folder: string): void {
  const there = lstatSync(folder, { throwIfNoEntry: false });
  if (!there) return;
  if (there.isDirectory() && readdirSync(folder).length === 0) return;
  const what = there.isDirectory() ? `a folder with other things in it, and no ${ENV_FILE}` : "not a folder";
  throw new HostRefused(`${folder} is ${what}, so no studio can be made there. Move it away, or choose another name.`);
}
