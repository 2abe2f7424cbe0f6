/** Names and addresses that a studio on a host may have, its settings file, and the map that follows from the folders. */
import { expect, test } from "vitest";
import { HostRefused } from "#server/host/host-refused.ts";
import { readStudioEnv, studioEnvText } from "#server/host/studio-env.ts";
import { readStudioAddress, refuseName } from "#server/host/studio-names.ts";

test("a name is a folder and an instance of a unit: nothing that either would escape", () => {
  for (const good of ["harbour", "harbour-hall", "a1", "x".repeat(40)]) expect(() => refuseName(good)).not.toThrow();
  for (const bad of ["", "a", "Harbour", "1st", "a_b", "a.b", "../x", "a/b", "-a", "a-", "x".repeat(41), "é", "a b"])
    expect(() => refuseName(bad)).toThrow(HostRefused);
  for (const own of ["incoming", "moved", "set-aside"]) expect(() => refuseName(own)).toThrow("a folder of the host");
});

test("an address is https and a host name alone, in small letters", () => {
  expect(readStudioAddress("https://Harbour.Example.org/")).toEqual({
    origin: "https://harbour.example.org",
    hostName: "harbour.example.org",
  });
  expect(readStudioAddress("https://plans.example.org:8443")).toMatchObject({ hostName: "plans.example.org" });
  // RFC 5891: a name of other letters is carried as an A-label.
  expect(readStudioAddress("https://bücher.example").hostName).toBe("xn--bcher-kva.example");
  for (const [bad, why] of [
    ["plans.example.org", "no address"],
    ["http://plans.example.org", "by https"],
    ["https://plans.example.org/studio", "host name of its own"],
    ["https://plans.example.org/?a=1", "host name of its own"],
    ["https://a:b@plans.example.org", "a user"],
    ["https://192.0.2.1", "no host name"],
    ["https://[2001:db8::1]", "no host name"],
    ["https://under_score.example.org", "no host name"],
    [`https://${"a".repeat(64)}.example.org`, "no host name"],
  ] as const)
    expect(() => readStudioAddress(bad), bad).toThrow(why);
});

const ENV = { origin: "https://a.example.org", dataDir: "/s/a/data", host: "127.0.0.1", port: 4400 };

test("the settings file is read back as written, and what an owner added stays when it changes", () => {
  const text = studioEnvText("a", ENV);
  expect(readStudioEnv(text)).toEqual(ENV);
  const edited = `${text}SPRINGLINE_LOG=warn\n`.replace("TRUST_PROXY=1", "TRUST_PROXY=0");
  const there = { ...ENV, dataDir: "/t/a/data", port: 5001 };
  const moved = studioEnvText("a", there, edited);
  expect(readStudioEnv(moved)).toEqual(there);
  expect(moved).toContain("SPRINGLINE_LOG=warn\n");
  expect(moved).toContain("SPRINGLINE_TRUST_PROXY=0\n");
  expect(moved.split("\n")).toHaveLength(edited.split("\n").length);
  for (const line of ["PORT=x", "SPRINGLINE_URL=no address", "PORT=70000"]) {
    const [key = ""] = line.split("=");
    expect(readStudioEnv(text.replace(new RegExp(`^${key}=.*$`, "m"), line))).toBeUndefined();
  }
});
