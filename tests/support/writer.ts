/**
 * A process that writes, to be killed. Each commit adds one document and two rows of its log, so a copy taken at one
 * moment has twice as many rows as documents. Arguments: database file, ms between commits, count (0: until killed).
 * Prints `up` after the first; kills itself after the last, so that a `-wal` file is left.
 */
import { openDatabase } from "#db/connection.ts";

const [file = "", every = "50", most = "0"] = process.argv.slice(2);
const db = openDatabase(file);
db.raw.pragma("wal_autocheckpoint = 0");
const add = db.raw.prepare("insert into document (name, generation, created_at) values (?, 'g', 0)");
const log = db.raw.prepare("insert into doc_update (name, bytes, actor_id, at) values (?, zeroblob(2000), 'a', 0)");
let n = 0;
const commit = db.raw.transaction(() => {
  const name = `plan/${process.pid}-${n}`;
  add.run(name);
  log.run(name);
  log.run(name);
});

const timer = setInterval(() => {
  commit();
  n++;
  if (n === 1) process.stdout.write("up\n");
  if (n !== Number(most)) return;
  clearInterval(timer);
  process.kill(process.pid, "SIGKILL");
}, Number(every));
