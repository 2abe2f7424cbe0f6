/** A self-signed certificate for localhost, made anew: X.509 version 3 (RFC 5280), P-256 with SHA-256. */
import { generateKeyPairSync, sign } from "node:crypto";

const der = (tag: number, ...parts: Uint8Array[]): Buffer => {
  const body = Buffer.concat(parts);
  const bytes: number[] = [];
  for (let rest = body.length; rest > 0; rest >>= 8) bytes.unshift(rest & 0xff);
  const length = body.length < 128 ? [body.length] : [0x80 | bytes.length, ...bytes];
  return Buffer.concat([Buffer.from([tag, ...length]), body]);
};
const sequence = (...parts: Uint8Array[]) => der(0x30, ...parts);
const oid = (...bytes: number[]) => der(0x06, Buffer.from(bytes));
const integer = (n: number) => der(0x02, Buffer.from([n]));
const time = (at: Date) => der(0x17, Buffer.from(`${at.toISOString().replace(/[-:T]/g, "").slice(2, 14)}Z`, "ascii"));

const ECDSA_SHA256 = sequence(oid(0x2a, 0x86, 0x48, 0xce, 0x3d, 0x04, 0x03, 0x02));
const COMMON_NAME = oid(0x55, 0x04, 0x03);
const ALT_NAME = oid(0x55, 0x1d, 0x11);
const BASIC = oid(0x55, 0x1d, 0x13);
const DAY_MS = 86_400_000;

export interface SelfSigned {
  /** PEM, as is `cert`. */
  readonly key: string;
  readonly cert: string;
}

/** Valid for `name` and 127.0.0.1, from yesterday until tomorrow. */
export function selfSigned(name = "localhost"): SelfSigned {
  const { privateKey, publicKey } = generateKeyPairSync("ec", { namedCurve: "P-256" });
  const who = sequence(der(0x31, sequence(COMMON_NAME, der(0x0c, Buffer.from(name)))));
  const alt = sequence(der(0x82, Buffer.from(name)), der(0x87, Buffer.from([127, 0, 0, 1])));
  const authority = sequence(der(0x01, Buffer.from([0xff])));
  const extensions = sequence(
    sequence(BASIC, der(0x01, Buffer.from([0xff])), der(0x04, authority)),
    sequence(ALT_NAME, der(0x04, alt)),
  );
  const body = sequence(
    der(0xa0, integer(2)),
    integer(1),
    ECDSA_SHA256,
    who,
    sequence(time(new Date(Date.now() - DAY_MS)), time(new Date(Date.now() + DAY_MS))),
    who,
    publicKey.export({ type: "spki", format: "der" }),
    der(0xa3, extensions),
  );
  const signature = der(0x03, Buffer.from([0]), sign("sha256", body, privateKey));
  const pem = sequence(body, ECDSA_SHA256, signature).toString("base64").replace(/.{64}/g, "$&\n");
  return {
    key: privateKey.export({ type: "pkcs8", format: "pem" }).toString(),
    cert: `-----BEGIN CERTIFICATE-----\n${pem}\n-----END CERTIFICATE-----\n`,
  };
}
