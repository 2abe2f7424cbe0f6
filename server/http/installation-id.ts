/** A name for this installation that everybody may know: the doctor compares it with what answers at the public address. */
import { createHmac } from "node:crypto";

/** 32 hexadecimal digits out of the server's secret, which cannot be told from them. Another purpose needs another label. */
export const installationId = (secret: string): string =>
  createHmac("sha256", secret).update("springline installation id").digest("hex").slice(0, 32);
