/** A public id of this installation: the doctor compares it with the server that answers at the public address. */
import { createHmac } from "node:crypto";

/** 32 hexadecimal digits derived from the server's secret, which they do not reveal. Other purposes need other labels. */
export const installationId = (secret: string): string =>
  createHmac("sha256", secret).update("springline installation id").digest("hex").slice(0, 32);
