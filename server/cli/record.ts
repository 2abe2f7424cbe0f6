/** `npm run -s record -- verify [--head SEQ:HASH]`: proves the studio's record, whether or not the server is running. */
import { openDatabase } from "#db/connection.ts";
import { headText, parseHead, type RecordHead } from "#lib/record/chain.ts";
import { readDataLocation } from "#server/base/env.ts";
import { proveRecord } from "#server/record/prove-record.ts";
import { CommandRefused, runCommand } from "./run.ts";

const USAGE = "record verify [--head SEQ:HASH]";

await runCommand((words) => {
  const printed = askedHead(words);
  const db = openDatabase(readDataLocation().databaseFile, { readOnly: true });
  try {
    // One transaction, so that everything is read in the same state.
    const proof = db.raw.transaction(() => proveRecord(db, printed)).deferred();
    if (!proof.holds) throw new CommandRefused(`The record does not hold. ${proof.fault.say}`);
    const { head } = proof;
    const rows = `${head.seq.toLocaleString("en-GB")} ${head.seq === 1 ? "row" : "rows"}`;
    process.stdout.write(`The record holds: ${rows}, head ${headText(head)}\n`);
  } finally {
    db.close();
  }
});

function askedHead(words: readonly string[]): RecordHead | undefined {
  const [verb, option, ...rest] = words;
  if (verb !== "verify") throw new CommandRefused(`Use: ${USAGE}`);
  if (option === undefined) return undefined;
  if (option !== "--head" || rest.length === 0) throw new CommandRefused(`Use: ${USAGE}`);
  const head = parseHead(rest.join(""));
  if (!head)
    throw new CommandRefused(`"${rest.join(" ")}" is not a head: give the number, a colon and the hash as printed.`);
  return head;
}
