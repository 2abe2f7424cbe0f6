/** `npm run -s studio -- add|list|move|remove`: the studios of a host. See "Many studios" in README.md. */
import { parseArgs } from "node:util";
import { sizeWords } from "#lib/numbers/size-words.ts";
import { agree } from "#lib/plan/format.ts";
import { readBuildId } from "#server/base/build-id.ts";
import { readDataLocation, readStudiosFolder } from "#server/base/env.ts";
import { addStudio } from "#server/host/add-studio.ts";
import { actAsOwnerOf } from "#server/host/as-owner.ts";
import { type HostFolder, openHost } from "#server/host/host-folder.ts";
import { type HostList, listStudios } from "#server/host/list-studios.ts";
import { moveStudio } from "#server/host/move-studio.ts";
import { removeStudio } from "#server/host/remove-studio.ts";
import { CommandRefused, runCommand } from "./run.ts";

const USAGE =
  "Say: studio add NAME --url https://..., studio list [--json], studio remove NAME, or studio move NAME --to FOLDER [--start-there COMMAND]";

const UNIT = "springline@$STUDIO";
const OPTIONS = {
  url: { type: "string" },
  to: { type: "string" },
  json: { type: "boolean", default: false },
  "stop-here": { type: "string", default: `systemctl disable --now ${UNIT}` },
  "start-here": { type: "string", default: `systemctl enable --now ${UNIT}` },
  "start-there": { type: "string", default: `systemctl enable --now ${UNIT}` },
} as const;

function read(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true });
  } catch (error) {
    throw new CommandRefused(`${error instanceof Error ? error.message.split("\n")[0] : error}. ${USAGE}`);
  }
}
type Said = ReturnType<typeof read>["values"];

const say = (...lines: readonly (string | null)[]): void => {
  for (const line of lines) if (line !== null) process.stdout.write(`${line}\n`);
};

await runCommand(async (words) => {
  const { values, positionals } = read(words);
  const [act, name, ...rest] = positionals;
  if (rest.length > 0 || (act !== "list" && name === undefined)) throw new CommandRefused(USAGE);
  const host = openHost(readStudiosFolder());
  actAsOwnerOf(host.root);
  if (act === "add" && name && values.url !== undefined) return add(host, name, values.url);
  if (act === "list" && name === undefined) return list(host, values.json);
  if (act === "remove" && name) return remove(host, name);
  if (act === "move" && name && values.to !== undefined) return move(host, name, { ...values, to: values.to });
  throw new CommandRefused(USAGE);
});

async function add(host: HostFolder, name: string, url: string): Promise<void> {
  const { studio, before, proxy } = await addStudio(host, name, url);
  const { origin, port } = studio.env;
  say(
    `${name} ${before ? "is there already" : "has its place"}: ${studio.folder}, port ${port}, for ${origin}.`,
    proxy,
    before ? null : `Start it: systemctl enable --now springline@${name}`,
    before
      ? null
      : `Its log then gives the code with which its first page makes the studio: journalctl -u springline@${name}`,
  );
}

async function remove(host: HostFolder, name: string): Promise<void> {
  const { aside, proxy } = await removeStudio(host, name, new Date());
  say(
    aside === null ? `The way to where ${name} has moved is taken out.` : `${name} was put aside. Its data: ${aside}`,
    proxy,
  );
  if (aside !== null)
    say(`To bring it back, move that folder to ${host.root}/${name} and add it again with the same address.`);
}

async function list(host: HostFolder, json: boolean): Promise<void> {
  const found = await listStudios(host);
  if (json) return say(JSON.stringify(found));
  if (found.studios.length === 0)
    say(`No studios yet in ${host.root}. Make one: npm run -s studio -- add NAME --url ADDRESS`);
  else table(found);
  afterList(found);
}

function table(found: HostList): void {
  const built = readBuildId(readDataLocation().distDir);
  const rows = found.studios.map((one) => [
    ...[one.name, one.url, one.at, sizeWords(one.bytes)],
    [one.answers, ...(one.answers === "not well" ? one.problems : [])].join(": "),
    one.build === null ? "-" : `${one.build}${built !== null && built !== one.build ? " (not the build here)" : ""}`,
    one.folder,
  ]);
  const lines = [["name", "address", "at", "database", "answers", "version", "folder"], ...rows];
  const widths = lines[0]?.map((_, n) => Math.max(...lines.map((row) => row[n]?.length ?? 0))) ?? [];
  for (const row of lines)
    say(
      row
        .map((cell, n) => cell.padEnd(widths[n] ?? 0))
        .join("  ")
        .trimEnd(),
    );
}

function afterList({ studios, moved, arriving, mapIsRight }: HostList): void {
  for (const { name, to, at } of moved) say(`${name} has moved to ${to}; its address leads to ${at}.`);
  for (const name of arriving) say(`${name} is on its way here; its move has not ended.`);
  const [first] = studios;
  if (!mapIsRight)
    say(
      `The proxy's map is not what the folders say: a command was cut off, or something was changed by hand. ${
        first
          ? `Put it right: npm run -s studio -- add ${first.name} --url ${first.url}`
          : "The next add puts it right."
      }`,
    );
  const wrong = studios.filter(({ answers }) => answers !== "yes").length;
  if (wrong > 0)
    say(
      `${agree(wrong, "One studio does", `${wrong} studios do`)} not answer, or not well: see the table. A new one answers once it is started.`,
    );
}

async function move(host: HostFolder, name: string, said: Said & { readonly to: string }): Promise<void> {
  const lines = {
    ...{ stopHere: said["stop-here"], startHere: said["start-here"], startThere: said["start-there"] },
  };
  const { studio, aside, proxies, stoodStillMs, difference } = await moveStudio({
    ...{ from: host, to: openHost(said.to), name, lines, at: new Date(), say },
  });
  say(`${name} is in ${studio.folder} now and answers.`);
  if (stoodStillMs !== null && difference)
    say(
      `It stood still for ${(stoodStillMs / 1000).toFixed(1)} s; ${sizeWords(difference.bytes)} had changed since the first copy.`,
    );
  say(aside === null ? null : `Its old folder, with its backups: ${aside}`, ...proxies);
}
