/** What names an invitation in the record. Its id is the link, so the record holds none. */
import { createHash } from "node:crypto";

/** SHA-256, hexadecimal; of 24 random bytes, so nobody finds the id from it. */
export const invitationDigest = (id: string): string =>
  createHash("sha256").update(`springline invitation ${id}`, "utf8").digest("hex");
