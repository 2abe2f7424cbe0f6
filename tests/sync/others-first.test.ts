/** After a power cut that took words which were relayed: who holds a colleague's waits for them, says so, and loses nothing. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { PlanSession } from "#app/_session/session.ts";
import { saveWords } from "#lib/client/doc-session/save-state.ts";
import { planParts } from "#lib/doc/layout.ts";
import type { DocName } from "#lib/protocol/messages.ts";
import { type Page, planProps, reaches } from "../support/doc-pages.ts";
import { eventually } from "../support/eventually.ts";
import { startSyncServer, type TestServer } from "../support/sync-server.ts";
import { type TestEdge, testEdge } from "../support/test-edge.ts";

let server: TestServer;
let name: DocName;
const ends: (() => void)[] = [];
beforeEach(async () => {
  server = await startSyncServer();
  name = server.addPlan("p");
});
afterEach(async () => {
  for (const end of ends.splice(0)) end();
  await server.stop();
});

interface Kept {
  readonly kept?: TestEdge["kept"];
}
function open(user: string, { kept }: Kept = {}): Page<PlanSession> {
  const edge = testEdge({ origin: server.url, cookie: server.host.signIn(user), ...(kept ? { kept } : {}) });
  const session = new PlanSession(planProps(user, server.rooms.generation(name) ?? ""), edge);
  ends.push(() => session.end());
  return { edge, session };
}
const title = ({ session }: { readonly session: PlanSession }) => planParts(session.doc).title.toString();
const onServer = () => server.rooms.withDoc(name, (doc) => planParts(doc).title.toString());
const write = ({ session }: { readonly session: PlanSession }, words: string) =>
  session.act(({ doc }) => planParts(doc).title.insert(planParts(doc).title.length, words));
const says = ({ session }: Page<PlanSession>) => saveWords(session.getSnapshot());

/** The power goes, and takes what was written since; sign-ins are what they were. */
async function cutPower(since: number): Promise<void> {
  const { temp } = server;
  const { sessions } = server.host;
  const port = Number(new URL(server.url.replace("ws", "http")).port);
  await server.halt();
  const db = temp.open();
  db.raw.prepare("delete from doc_snapshot where at >= ?").run(0);
  db.raw.prepare("delete from doc_update where seq > ?").run(since);
  db.close();
  server = await startSyncServer({ temp, port });
  for (const [id, session] of sessions) server.host.sessions.set(id, session);
}
const lastRow = () => Number(server.db.raw.prepare("select max(seq) from doc_update").pluck().get());

test("words that depend on a colleague's lost ones: the page says so, keeps trying, and saves them once the colleague is back", async () => {
  const [ines, marta] = [open("ines"), open("marta")];
  await Promise.all([reaches(ines, "saved"), reaches(marta, "saved")]);
  const before = lastRow();
  write(ines, " by Ines");
  await reaches(ines, "saved");
  await reaches(marta, "saved");
  expect(title(marta)).toBe("Pull and press by Ines");
  write(marta, ", and Marta");
  await reaches(marta, "saved");
  // Ines closes her tablet; the power goes.
  const { kept } = ines.edge;
  ines.session.end();
  await cutPower(before);
  expect(onServer()).toBe("Pull and press");

  await reaches(marta, "others-first", 15_000);
  expect(says(marta)).toBe(
    "the server has lost a colleague's words that yours depend on: yours are saved once that colleague has this open again; kept on this device",
  );
  // It stays so through the attempts that follow, and writing goes on.
  write(marta, " again");
  const seen = new Set<string>();
  const off = marta.session.subscribe(() => seen.add(marta.session.saveState));
  const { refused } = server.rooms.health();
  await eventually("it has tried again, twice", () => server.rooms.health().refused >= refused + 2, 10_000);
  off();
  expect([...seen]).toEqual(["others-first"]);
  expect(onServer()).toBe("Pull and press");

  const back = open("ines", { kept });
  await reaches(back, "saved");
  await reaches(marta, "saved", 15_000);
  const all = "Pull and press by Ines, and Marta again";
  expect([onServer(), title(marta), title(back)]).toEqual([all, all, all]);
});

test("two open pages whose lost words depend on each other: both bring their own, and everything is there again", async () => {
  const [ines, marta] = [open("ines"), open("marta")];
  await Promise.all([reaches(ines, "saved"), reaches(marta, "saved")]);
  const before = lastRow();
  for (const [page, other, words] of [
    [ines, marta, " one"],
    [marta, ines, " two"],
    [ines, marta, " three"],
    [marta, ines, " four"],
  ] as const) {
    write(page, words);
    await eventually("the other has it", () => title(other) === title(page));
  }
  await Promise.all([reaches(ines, "saved"), reaches(marta, "saved")]);
  await cutPower(before);
  expect(onServer()).toBe("Pull and press");
  // In the same second, while both find their way back.
  write(ines, " (Ines)");
  write(marta, " (Marta)");
  const all = ["one", "two", "three", "four", "(Ines)", "(Marta)"];
  await eventually("all is on the server", () => all.every((words) => onServer().includes(words)), 20_000);
  await Promise.all([reaches(ines, "saved", 15_000), reaches(marta, "saved", 15_000)]);
  await eventually("all agree", () => title(ines) === onServer() && title(marta) === onServer());
  expect(onServer()).toMatch(/^Pull and press one two three four /);
});
