/** A flood of searches: the newest are answered, those behind them are refused unread; other people notice nothing of it. */
import { expect, test } from "vitest";
import { arrives, refuseOvertaken } from "#server/find/few-at-once.ts";

const asks = (id: string) => {
  const asked = {
    actor: { kind: "person", id, roles: [] } as const,
    request: new Request("http://localhost/api/find"),
  };
  arrives(asked);
  return asked;
};

test("of sixty at once the newest five are answered", () => {
  const all = Array.from({ length: 60 }, () => asks("jonas"));
  const answered = all.map((asked) => refuseOvertaken(asked) === undefined);
  expect(answered).toEqual([...Array(55).fill(false), ...Array(5).fill(true)]);
  expect(refuseOvertaken(all[0] ?? asks("jonas"))).toMatchObject({ error: { status: 429, code: "overtaken" } });
});

test("one after the other, each is answered, whatever others ask", () => {
  for (let n = 0; n < 20; n++) {
    asks("somebody else");
    expect(refuseOvertaken(asks("marta"))).toBeUndefined();
  }
});
