/** Tables as coaches' spreadsheets save them: coding, headings, times and names. */
import { describe, expect, test } from "vitest";
import { readMonthCsv } from "#lib/programme/csv-in.ts";
import { namesIn } from "#lib/programme/csv-names.ts";
import { tableText } from "#lib/programme/csv-text.ts";
import { minutesIn, spanIn, tableTimeIn } from "#lib/programme/csv-times.ts";
import { smallMonth } from "#tests/support/small-month.ts";

const coach = (name: string) => ({ name, roles: ["coach"] as const });
const names = namesIn(
  smallMonth({
    coaches: { m: coach("Marta Quist"), j: coach("Jonas Lund"), k: coach("Jonas Berg"), i: coach("Ines") },
    rooms: { loft: { name: "Loft", machines: 8, equipment: "long-rail" } },
    slots: [],
  }),
);
const read = (text: string) => {
  const answer = readMonthCsv(text, "2026-12", names);
  if (!answer.ok) throw new Error(answer.say.join(" "));
  return answer;
};
const refused = (text: string) => {
  const answer = readMonthCsv(text, "2026-12", names);
  return answer.ok ? "" : answer.say.join(" ");
};

describe("the file's coding", () => {
  const words = "Kurs;Rücken – 5 €";
  // The bytes of Windows-1252 and of UTF-16 are those of the WHATWG Encoding Standard's index and of RFC 2781.
  const cases: [string, readonly number[]][] = [
    ["UTF-8", [...new TextEncoder().encode(words)]],
    ["UTF-8 with its mark", [0xef, 0xbb, 0xbf, ...new TextEncoder().encode(words)]],
    ["UTF-16, low byte first", [0xff, 0xfe, ...Buffer.from(words, "utf16le")]],
    ["UTF-16, high byte first", [0xfe, 0xff, ...Buffer.from(words, "utf16le").swap16()]],
    ["Windows-1252", [...words].map((c) => ({ ü: 0xfc, "–": 0x96, "€": 0x80 })[c] ?? c.charCodeAt(0))],
  ];
  test.each(cases)("%s", (_, bytes) => expect(tableText(Uint8Array.from(bytes))).toBe(words));
  test("a spreadsheet's own file is no text", () =>
    expect(tableText(Uint8Array.from([0x50, 0x4b, 3, 4, 0, 0]))).toBeUndefined());
});

test.each([
  ["7:30", "07:30"],
  ["07:30:00", "07:30"],
  ["10am", "10:00"],
  ["7:30 pm", "19:30"],
  ["7.30 p.m.", "19:30"],
  ["12 am", "00:00"],
  ["12:15 PM", "12:15"],
  ["19.30 Uhr", "19:30"],
  ["19 Uhr", "19:00"],
  ["19h30", "19:30"],
  ["19 h", "19:00"],
  ["1930", "19:30"],
  ["930", "09:30"],
  ["10", undefined],
  ["13pm", undefined],
  ["24:00", undefined],
  ["soon", undefined],
])("the time %s", (typed, time) => expect(tableTimeIn(typed)).toBe(time));

test("a span and lengths", () => {
  expect(spanIn("18:00 – 19:15")).toEqual({ start: "18:00", end: "19:15" });
  expect(spanIn("18:00")).toEqual({ start: "18:00", end: undefined });
  expect(["45", "45 min", "1h15", "1:15", "0", "x"].map(minutesIn)).toEqual([45, 45, 75, 75, 0, undefined]);
});

describe("headings and lines", () => {
  test.each([
    ["German", "Datum;Uhrzeit;Ende;Kurs;Raum;Trainer;Teilnehmer;Bemerkung"],
    ["French", "Date;Heure de début;Fin;Cours;Salle;Entraîneur;Participants;Remarques"],
    ["Spanish", "Fecha;Hora de inicio;Hasta;Clase;Sala;Entrenadora;Personas;Notas"],
    ["Portuguese", "Data;Início;Fim;Aula;Sala;Treinadora;Pessoas;Observações"],
    ["English", "Day;Begins;End;Class;Room;Instructor;People;Notes"],
  ])("%s", (_, head) => {
    const { classes, notes } = read(`${head}\n1.12.2026;18:00;18:45;Arms;loft;MARTA;7;towels`);
    expect(notes).toEqual([]);
    expect(classes).toEqual([
      {
        date: "2026-12-01",
        start: "18:00",
        minutes: 45,
        room: "loft",
        coach: "m",
        people: 7,
        note: "towels",
        newTheme: "Arms",
      },
    ]);
  });

  test("what is not understood is said by name, with what is", () => {
    expect(refused("Wann;Start;Dauer\n1.12.2026;18:00;45")).toMatch(
      /^Line 1: no column is called date\. Not understood: “Wann”\. Understood are date, start, minutes, .*German/,
    );
    expect(refused("Date,Start\n1.12.2026,18:00")).toContain("no column is called minutes");
    expect(read("Date,Start,Min,Price\n1.12.2026,18:00,45,9").notes).toEqual([
      expect.stringMatching(/^Not taken: the columns Price\. Understood are /),
    ]);
  });

  test("an end over midnight, a span, minutes before an end; what is no length is said", () => {
    const minutes = (start: string, end: string, length = "") =>
      read(`date,start,end,minutes\n2026-12-01,${start},${end},${length}`).classes[0]?.minutes;
    expect([minutes("23:30", "00:15"), minutes("18:00-18:50", ""), minutes("18:00", "18:50", "45")]).toEqual([
      45, 50, 45,
    ]);
    expect(refused("date,start,end\n2026-12-01,18:00,06:00")).toContain("“18:00 to 06:00” is no length");
    expect(refused("date,start,end\n2026-12-01,18:00,late")).toContain("“late” is no time");
  });

  test("a line that cannot be read is named by its row, and the others are read", () => {
    const { classes, unread } = read(
      "date,start,minutes\n2026-12-01,18:00,45\n,,\n2026-12-02,soon,45\n2026-12-03,9am,60\n",
    );
    expect(classes.map(({ date }) => date)).toEqual(["2026-12-01", "2026-12-03"]);
    expect(unread).toEqual(["Line 4: “soon” is no time. Write it as 07:30."]);
  });

  test("a first name that one coach has is that coach; one that several have is nobody, and said", () => {
    const { classes, notes } = read(
      ["marta", "Jonas", "jonas berg", "Ines", "Petra"].reduce(
        (text, name) => `${text}\n2026-12-01,18:00,45,${name}`,
        "date,start,minutes,coach",
      ),
    );
    expect(classes.map((one) => one.coach)).toEqual(["m", undefined, "k", "i", undefined]);
    expect(notes).toEqual([
      "Line 3: “Jonas” could be Jonas Lund or Jonas Berg, so the class has no coach.",
      "Line 6: the studio has no coach “Petra”, so the class has none.",
    ]);
  });
});
