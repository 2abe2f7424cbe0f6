/** README.txt of an export: what each file is, in plain words, for somebody who has never seen the program. */
import { CAUTION_NOTICE } from "#lib/cautions/expected.ts";
import { TABLES } from "./tables.ts";

/** Long because: one text, from top to bottom. */
const OPENING = (studio: string) => `${studio || "A studio"}: everything that Springline keeps of it, as files

SAFETY. ${CAUTION_NOTICE}

These files are yours to read with other programs. Springline itself reads them back into an empty studio:

    npm run -s import -- FOLDER      (or the zip file)

They hold names and e-mail addresses of people. Keep them where only those may read who should.
What is not in here: passwords, sessions, links that let somebody in, and the private key that signs.


FILES TO READ

manifest.json       each file with its length in bytes and its SHA-256; the moment; the end of the record
plans/              each plan as a plan file (JSON), as the plan's own page saves it
months/             each month as a month file (JSON); "edition" files are months as they were signed off
editions/           signed plans: edition-1.plan.json is what was signed, edition-1.card.json its cue card with
                    the signature; editions.json lists them; public-keys.json has the keys to check them with
threads/            comments on plans as W3C Web Annotations (JSON-LD)
library/            the moves
rooms/              each room: machines, springs, set-up timings, scale readings
people.json         people and their roles, also who has left
settings.json       name, town, standards, policy, rubric, the month's settings
rules.json          each rule with its level and source, and what the studio set otherwise
reading/            rounds of reading, proposals, accepted findings, marks, stock remarks
class-logs/         classes and their steps as tables for a spreadsheet (CSV); class-logs.jsonl is each log whole
record.txt          the record, one row a line
tables/             everything once more, row by row: what an import reads


HOW TO CHECK A SIGNED EDITION, WITHOUT SPRINGLINE

A card file holds "card", "sha256", "keyId" and "signature". Write "card" as canonical JSON (RFC 8785). Its SHA-256 is
"sha256". The signature is Ed25519 (RFC 8032) over those same bytes, base64url, by the key "keyId" of public-keys.json.
The SHA-256 of the file edition-N.plan.json is "card.edition.hash", and the plan inside the card is that plan.
A month's edition file has the SHA-256 that tables/month_edition.jsonl names; months are not signed with the key.


HOW TO CHECK THE RECORD

Each line of tables/record.jsonl is a row. Its "hash" is the SHA-256 of the canonical JSON of {seq, at, actorId, subject,
kind, bodyJson, previousHash} with the values of the row; "previous_hash" is the hash of the row before, 64 zeros at first.
A row whose body_json is {"erased":true} named somebody whose account was deleted. A later row of the kind person-deleted
lists it with the SHA-256 of the canonical JSON of the row as it stands: {seq, at, actorId, subject, kind, bodyJson,
previousHash, hash}.


TABLES

One JSON object a line, in the order in which the rows were written. Times are milliseconds since 1970, UTC. Names that end
in _json hold JSON as text, byte for byte as it was stored. Bytes are base64: doc_snapshot and doc_update hold updates of
Yjs (version 1); a document is its newest snapshot and every update after it.

`;

export function readmeText(studio: string): string {
  const lines = Object.entries(TABLES).flatMap(([name, table]) =>
    "columns" in table ? [`${name.padEnd(20)}${table.holds}${left(table.stay)}`] : [],
  );
  const stays = Object.entries(TABLES).flatMap(([name, table]) =>
    "stays" in table ? [`${name.padEnd(20)}${table.stays}`] : [],
  );
  return `${OPENING(studio)}${lines.join("\n")}\n\nTables that do not travel:\n\n${stays.join("\n")}\n`;
}

const left = (stay: Readonly<Record<string, string>> | undefined): string =>
  stay === undefined ? "" : ` (without ${Object.keys(stay).join(", ")})`;
