/** Changes the map of a running HAProxy over its stats socket, so that no connection is touched. */
import { createConnection } from "node:net";
import { asStarter } from "./as-owner.ts";

const ANSWER_MS = 5_000;

/** One command, one answer. Rejects when nothing answers there. */
function ask(socketPath: string, command: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = asStarter(() => createConnection(socketPath));
    let said = "";
    socket.setEncoding("utf8");
    socket.setTimeout(ANSWER_MS, () => socket.destroy(new Error("it does not answer")));
    socket.on("data", (text: string) => {
      said += text;
    });
    socket.on("error", reject);
    socket.on("end", () => resolve(said));
    // Half closed, HAProxy would end the connection before it has answered.
    socket.on("connect", () => socket.write(`${command}\n`));
  });
}

/** The lines of `show map` are "0x55... key value". */
const readMap = (said: string): Map<string, string> =>
  new Map(
    said.split("\n").flatMap((line) => {
      const [mark = "", key, value] = line.trim().split(/\s+/);
      return /^0x/.test(mark) && key && value ? [[key, value] as const] : [];
    }),
  );

/** HAProxy takes one line of commands of up to 16 kB. */
const MOST_AT_ONCE = 100;

/**
 * Makes the running map what `wanted` says, key by key: what is right already is not touched. Resolves with what is in the way,
 * in a few words, or with null.
 */
export async function changeRunningMap(
  socketPath: string,
  mapFile: string,
  wanted: ReadonlyMap<string, string>,
): Promise<string | null> {
  try {
    const said = await ask(socketPath, `show map ${mapFile}`);
    if (/Unknown map/i.test(said)) return `the HAProxy that answers at ${socketPath} does not use ${mapFile}`;
    const has = readMap(said);
    const changes = [
      ...[...wanted].flatMap(([key, value]) => {
        if (!has.has(key)) return [`add map ${mapFile} ${key} ${value}`];
        return has.get(key) === value ? [] : [`set map ${mapFile} ${key} ${value}`];
      }),
      ...[...has.keys()].filter((key) => !wanted.has(key)).map((key) => `del map ${mapFile} ${key}`),
    ];
    for (let n = 0; n < changes.length; n += MOST_AT_ONCE) {
      const answer = (await ask(socketPath, changes.slice(n, n + MOST_AT_ONCE).join(";"))).trim();
      if (answer !== "") return `HAProxy answered: ${answer.split("\n")[0]}`;
    }
    return null;
  } catch (error) {
    return `HAProxy could not be told at ${socketPath} (${error instanceof Error ? error.message : error})`;
  }
}
