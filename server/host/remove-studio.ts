/** Takes a studio off a host. Nothing is deleted: its folder is put aside. */
import { existsSync, readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { renameWhole } from "#db/file/whole-file.ts";
import { isInUse } from "#db/file/writer-lock.ts";
import {
  databaseIn,
  folderOf,
  type HostFolder,
  makeInside,
  movedFile,
  type PlacedStudio,
  studioIn,
  whileAlone,
} from "./host-folder.ts";
import { HostRefused } from "./host-refused.ts";
import { publishMap } from "./hosts-map.ts";
import { OWN_FOLDERS, refuseName } from "./studio-names.ts";

export interface StudioRemoved {
  /** Where its folder is now; the last one where it was removed before; null for one that had moved away. */
  readonly aside: string | null;
  readonly proxy: string | null;
}

/** Throws HostRefused with one sentence; nothing is changed then. */
export async function removeStudio(host: HostFolder, name: string, at: Date): Promise<StudioRemoved> {
  refuseName(name);
  return whileAlone(host, async () => {
    const studio = studioIn(folderOf(host, name), name);
    const left = movedFile(host, name);
    if (!studio && existsSync(left)) {
      rmSync(left);
      return { aside: null, proxy: await publishMap(host) };
    }
    const aside = studio ? putAside(host, studio, at) : lastAside(host, name);
    if (aside === undefined) throw new HostRefused(`There is no studio ${name} in ${host.root}.`);
    return { aside, proxy: await publishMap(host) };
  });
}

/** Throws HostRefused while the studio runs. */
export function putAside(host: HostFolder, { name, folder }: PlacedStudio, at: Date): string {
  if (isInUse(databaseIn(folder)))
    throw new HostRefused(`The studio ${name} is running. Stop it first: systemctl disable --now springline@${name}`);
  const stamp = at.toISOString().slice(0, 19).replaceAll(":", "");
  const base = join(makeInside(host, "setAside"), `${name}-${stamp}Z`);
  let aside = base;
  for (let n = 2; existsSync(aside); n++) aside = `${base}-${n}`;
  renameWhole(folder, aside);
  return aside;
}

function lastAside({ root }: HostFolder, name: string): string | undefined {
  const folder = join(root, OWN_FOLDERS.setAside);
  if (!existsSync(folder)) return undefined;
  const isIts = (one: string) =>
    one.startsWith(`${name}-`) && /^\d{4}-\d\d-\d\dT\d{6}Z/.test(one.slice(name.length + 1));
  const last = readdirSync(folder).filter(isIts).sort().at(-1);
  return last && join(folder, last);
}
