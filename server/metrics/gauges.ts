/** What is looked up when somebody asks: how much is open, waits, and stands on the disk. */
import { existsSync, statSync } from "node:fs";
import { Gauge, type Registry } from "prom-client";
import { listDeviceRows } from "#db/repos/device-repo.ts";
import { countMails } from "#db/repos/mail-repo.ts";
import type { Springline } from "#server/context/springline.ts";

export interface GaugesSetup {
  readonly registry: Registry;
  readonly app: Pick<Springline, "db" | "documents" | "checks" | "log" | "now">;
  /** Screens that are on the line of a room. */
  readonly screens: () => number;
}

type Values = readonly (readonly [labels: Readonly<Record<string, string>>, value: number])[];

/** Our own choices: a device asks for its cards every few minutes while it is on. */
const SEEN_WITHIN_MS = { "10m": 600_000, "1d": 86_400_000, "7d": 7 * 86_400_000 };

/** Registers them. Each is looked up afresh at every reading; one that cannot be read is left out and logged. */
export function addGauges({ registry, app, screens }: GaugesSetup): void {
  const gauge = (name: string, help: string, label: string | null, read: () => Values) =>
    new Gauge({
      name: `springline_${name}`,
      help,
      labelNames: label === null ? [] : [label],
      registers: [registry],
      collect() {
        this.reset();
        try {
          for (const [labels, value] of read()) this.set(labels, value);
        } catch (err) {
          app.log.warn({ err, gauge: name }, "a figure for the metrics could not be read");
          this.remove();
        }
      },
    });
  const one = (name: string, help: string, read: () => number) => gauge(name, help, null, () => [[{}, read()]]);
  gauge("sockets", "Open sockets, by door", "door", () => [
    [{ door: "document" }, app.documents.health().connections],
    [{ door: "floor" }, screens()],
  ]);
  one("document_rooms", "Documents that are open", () => app.documents.health().rooms);
  one("documents_unsaved", "Documents with changes that could not be saved", () => {
    return app.documents.health().failing.length;
  });
  one("checks_waiting", "Plans that wait for a check or are being checked", () => app.checks.waiting());
  gauge("mails", "Mails that wait or could not be sent", "state", () => mailsOf(app));
  gauge("devices", "Devices of rooms, by when they were last seen", "seen", () => devicesOf(app));
  gauge("database_bytes", "Bytes of the database on the disk", "file", () => [
    [{ file: "database" }, sizeOf(app.db.file)],
    [{ file: "wal" }, sizeOf(`${app.db.file}-wal`)],
  ]);
  one("database_damaged", "1 once the database is known to be damaged", () => (app.db.damage.known === null ? 0 : 1));
}

function mailsOf({ db }: Pick<GaugesSetup["app"], "db">): Values {
  const { waiting, failed } = countMails(db);
  return [
    [{ state: "waiting" }, waiting],
    [{ state: "failed" }, failed],
  ];
}

function devicesOf({ db, now }: Pick<GaugesSetup["app"], "db" | "now">): Values {
  const at = now();
  const counts = new Map([...Object.keys(SEEN_WITHIN_MS), "longer", "never"].map((seen) => [seen, 0]));
  for (const { lastSeenAt } of listDeviceRows(db)) {
    const within = Object.entries(SEEN_WITHIN_MS).find(([, ms]) => lastSeenAt !== null && at - lastSeenAt <= ms);
    const seen = lastSeenAt === null ? "never" : (within?.[0] ?? "longer");
    counts.set(seen, (counts.get(seen) ?? 0) + 1);
  }
  return [...counts].map(([seen, count]) => [{ seen }, count]);
}

const sizeOf = (file: string): number => (existsSync(file) ? statSync(file).size : 0);
