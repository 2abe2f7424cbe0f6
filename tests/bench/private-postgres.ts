/** A PostgreSQL of this bench's own, in a folder on the disk that is measured; it is ended and removed afterwards. */
import { spawnSync } from "node:child_process";
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { join } from "node:path";

const DEBIAN = "/usr/lib/postgresql";

export interface PrivatePostgres {
  /** Where its unix socket is. */
  readonly socketDir: string;
  readonly port: number;
  readonly user: string;
  readonly version: string;
  stop(): void;
}

/** Undefined where there is no PostgreSQL on this machine. `parent`: a folder on the disk that is measured. */
export function startPostgres(parent: string, port: number): PrivatePostgres | undefined {
  const bin = binFolder();
  if (bin === undefined) return undefined;
  const folder = mkdtempSync(join(parent, "springline-pg-"));
  // It refuses to run as the superuser.
  const asOther = process.getuid?.() === 0;
  if (asOther) chownSync(folder, idOf("-u"), idOf("-g"));
  const call = (line: string): string => {
    const [command, args] = asOther ? ["su", ["postgres", "-s", "/bin/sh", "-c", line]] : ["/bin/sh", ["-c", line]];
    const { status, stdout, stderr } = spawnSync(command, args, { cwd: "/", encoding: "utf8" });
    if (status !== 0) throw new Error(`${line}: ${stderr}${stdout}`);
    return stdout.trim();
  };
  const data = join(folder, "data");
  call(`${bin}/initdb -D ${data} -U bench --auth=trust --no-instructions >/dev/null`);
  const options = `-c listen_addresses=127.0.0.1 -c port=${port} -c unix_socket_directories=${folder} -c synchronous_commit=on`;
  call(`${bin}/pg_ctl -D ${data} -w -l ${folder}/log -o "${options}" start >/dev/null`);
  return {
    ...{ socketDir: folder, port, user: "bench" },
    version: call(`${bin}/postgres --version`),
    stop() {
      call(`${bin}/pg_ctl -D ${data} -m immediate stop >/dev/null`);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function binFolder(): string | undefined {
  const versions = existsSync(DEBIAN) ? readdirSync(DEBIAN).sort((a, b) => Number(b) - Number(a)) : [];
  return versions.map((version) => join(DEBIAN, version, "bin")).find((bin) => existsSync(join(bin, "initdb")));
}

const idOf = (which: string): number => Number(spawnSync("id", [which, "postgres"], { encoding: "utf8" }).stdout);
