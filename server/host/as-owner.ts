/** Files of a host belong to the account that runs its studios, also when the superuser gives the command. */
import { statSync } from "node:fs";

/** From here on files are made as the owner of `root`, where the superuser runs this; nothing changes for anybody else. */
export function actAsOwnerOf(root: string): void {
  const { seteuid, setegid } = process;
  if (process.geteuid?.() !== 0 || !seteuid || !setegid) return;
  const { uid, gid } = statSync(root);
  if (uid === 0) return;
  setegid(gid);
  seteuid(uid);
}

/** With the rights of who gave the command: to start and stop services, and to reach the proxy's socket. `work` is synchronous. */
export function asStarter<T>(work: () => T): T {
  const { seteuid, setegid } = process;
  const [uid, gid] = [process.geteuid?.(), process.getegid?.()];
  if (process.getuid?.() !== 0 || uid === 0 || uid === undefined || gid === undefined || !seteuid || !setegid)
    return work();
  seteuid(0);
  setegid(0);
  try {
    return work();
  } finally {
    setegid(gid);
    seteuid(uid);
  }
}
