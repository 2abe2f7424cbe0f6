/** What a page makes of the server's answers: a value, or a sentence with what it was about; it never throws. */
import { afterEach, describe, expect, test, vi } from "vitest";
import * as z from "zod/mini";
import { send } from "#app/_parts/send.ts";

const answers = (make: () => Response | Promise<Response>) => {
  const asked = vi.fn(async (_url: string, _init: RequestInit) => make());
  vi.stubGlobal("fetch", asked);
  return asked;
};
const reads = z.object({ id: z.string() });

afterEach(() => vi.unstubAllGlobals());

describe("send", () => {
  test("gives the answer, checked", async () => {
    const asked = answers(() => Response.json({ id: "a" }));
    expect(await send("POST", "/api/plans", { title: "Row" }, { reads })).toEqual({ ok: true, value: { id: "a" } });
    expect(asked.mock.calls[0]?.[1]).toMatchObject({ method: "POST", body: '{"title":"Row"}', cache: "no-store" });
  });

  test("a body that is JSON already goes as it is, with a key that is given twice", async () => {
    const asked = answers(() => new Response());
    await send("POST", "/api/plans/import", new Blob(['{"a":1,"a":2}']));
    expect(await new Response(asked.mock.calls[0]?.[1].body).text()).toBe('{"a":1,"a":2}');
  });

  test("an empty answer is a value", async () => {
    answers(() => new Response(null, { status: 204 }));
    expect(await send("DELETE", "/api/plans/a")).toEqual({ ok: true, value: null });
  });

  test("a refusal keeps its code, its sentence and what belongs to it", async () => {
    const error = { code: "move-changed", message: "Mara was faster.", details: { updatedAt: 5 } };
    answers(() => Response.json({ error }, { status: 409 }));
    expect(await send("PUT", "/api/library/a", {})).toEqual({ ok: false, status: 409, ...error });
  });

  test.each([
    ["an answer of another shape", () => Response.json({ name: "a" }), "unreadable", 200],
    ["a page instead of an answer", () => new Response("<h1>Hotel</h1>"), "no-answer", 0],
    ["a proxy's error", () => new Response("<h1>Bad gateway</h1>", { status: 502 }), "unknown", 502],
    ["no network", () => Promise.reject(new TypeError("Failed to fetch")), "no-answer", 0],
  ])("%s becomes a sentence", async (_, make, code, status) => {
    answers(make);
    const sent = await send("GET", "/api/plans/a", undefined, { reads });
    expect(sent).toMatchObject({ ok: false, code, status });
    expect(sent).toHaveProperty("message", expect.stringMatching(/try again/i));
  });
});
