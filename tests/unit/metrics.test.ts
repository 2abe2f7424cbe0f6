/** The closed list of groups that requests count to. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { routeGroup, statusClass } from "#server/metrics/route-group.ts";

const API = join(import.meta.dirname, "../../app/api");

test("every subject under /api has a group, and there is no group without one", () => {
  const subjects = readdirSync(API, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  expect(subjects.map(({ name }) => routeGroup(`/api/${name}/x`))).toEqual(subjects.map(({ name }) => `api/${name}`));
  expect(routeGroup("/api/constructor")).toBe("api/other");
});

test("pages, parts, the floor and sockets are told apart", () => {
  expect(
    ["/", "/plans/x", "/_next/static/a.js", "/floor", "/floor/line", "/sync/plan/x", "/api"].map(routeGroup),
  ).toEqual(["page", "page", "parts", "floor", "socket", "socket", "api/other"]);
  expect([200, 404, 503, 0].map(statusClass)).toEqual(["2xx", "4xx", "5xx", "none"]);
});
