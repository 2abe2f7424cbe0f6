/** Which columns a table's headings name, in the words of several languages. */
import { CSV_COLUMNS, type CsvColumn } from "./csv-out.ts";

/** What a column may hold: those that are written, and two that only tables from elsewhere have. */
export type ReadColumn = CsvColumn | "end" | "people";

/** English, German, French, Spanish and Portuguese, in small letters without accents, divided by commas. */
const HEADINGS: Readonly<Record<ReadColumn, string>> = {
  date: "date,day,datum,tag,jour,fecha,dia,data",
  start:
    "start,time,begins,begin,from,start time,uhrzeit,zeit,beginn,von,anfang,heure,debut,heure de debut,horaire,hora,inicio,hora de inicio,horario,comienzo,desde",
  end: "end,ends,until,to,end time,ende,bis,fin,heure de fin,jusqu'a,hasta,hora de fin,fim,hora de fim,termino,ate",
  minutes: "minutes,min,length,duration,minuten,dauer,duree,minutos,duracion,duracao",
  room: "room,raum,saal,salle,sala",
  coach:
    "coach,trainer,trainerin,instructor,teacher,kursleiter,kursleiterin,kursleitung,leitung,entraineur,entraineuse,professeur,entrenador,entrenadora,instructora,monitor,monitora,profesor,profesora,treinador,treinadora,instrutor,instrutora",
  theme: "theme,class,kurs,thema,stunde,cours,clase,tema,aula",
  plan: "plan,plano",
  regulars: "regulars,group,groups,gruppe,groupe,grupo",
  people: "people,participants,teilnehmer,teilnehmende,personen,personnes,personas,participantes,pessoas",
  note: "note,notes,remarks,notiz,notizen,bemerkung,bemerkungen,remarque,remarques,nota,notas,observaciones,observacoes",
};

const COLUMN_OF: ReadonlyMap<string, ReadColumn> = new Map(
  Object.entries(HEADINGS).flatMap(([column, words]) =>
    words.split(",").map((word) => [word, column as ReadColumn] as const),
  ),
);

const plainHeading = (heading: string): string =>
  heading
    .normalize("NFD")
    .replaceAll(/\p{Mn}|\([^)]*\)|[:.*]/gu, "")
    .replaceAll("’", "'")
    .trim()
    .toLowerCase();

export interface ColumnsRead {
  /** By place; undefined for one that is not understood, or that another names before it. */
  readonly columns: readonly (ReadColumn | undefined)[];
  /** The headings that are not understood, as they are written. */
  readonly strange: readonly string[];
}

export function columnsIn(head: readonly string[]): ColumnsRead {
  const found = head.map((heading) => COLUMN_OF.get(plainHeading(heading)));
  const columns = found.map((column, i) => (found.indexOf(column) === i ? column : undefined));
  return { columns, strange: head.map((heading) => heading.trim()).filter((name, i) => name !== "" && !columns[i]) };
}

/** Which headings there may be, for whoever wrote others. */
export const UNDERSTOOD = `Understood are ${[...CSV_COLUMNS, "end", "people"].join(", ")}, also in German, French, Spanish and Portuguese.`;
