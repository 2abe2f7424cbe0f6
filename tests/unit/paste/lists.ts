/** One invented class as five coaches would have it: a message, a spreadsheet, two files, a table in notes. */

/** What every one of them must become. */
export const SAME_CLASS = [
  "# Trunk",
  "plank-pike both 60 light2",
  "plank-hold both 45 light1+middle1",
  "# Arms",
  "row-kneeling both 60 light1+middle1",
  "chest-press-kneeling both 50 middle1",
  "pause 30 Water",
  "# Sides",
  "side-plank-forearm left 40 light1 | side-plank-forearm right 40 light1",
  "trunk-rotation-kneeling right 55 light1",
  "trunk-rotation-kneeling left 55 light1",
];

export const MESSAGE = `TRUNK:
- Plank to pike  60 s  2 light
- Plank hold 45s, 1 light + 1 middle
ARMS:
- kneeling rows 1 min 1L + 1M
- chest press, kneeling – 50 sec – one middle
Water 30s
SIDES:
- Side plank on forearm each side 40s light x1
- Kneeling trunk rotation (R) 55" 1 light
- Kneeling trunk rotation (L) 55" 1 light
`;

/** Cells as a spreadsheet copies them. */
export const CELLS = [
  "Move\tTime (s)\tSprings\tSide",
  "Trunk:\t\t\t",
  "Plank to pike\t60\t2 light\t",
  "Plank hold\t45\tlight, middle\tboth",
  "Arms:\t\t\t",
  "Kneeling row\t60\t1 light 1 middle\t",
  "Kneeling chest press\t50\tmiddle\t",
  "Water\t30\t\t",
  "Sides:\t\t\t",
  "Side plank on the forearm\t40\t1 light\tL/R",
  "Kneeling trunk rotation\t55\t1 light\tr",
  "Kneeling trunk rotation\t55\t1 light\tl",
].join("\r\n");

/** A file with commas, a column for each spring, minutes and seconds, a column of blocks. */
export const COMMAS = `Section,#,Exercise,Duration,light,middle,Side
Trunk,1,Plank to pike,1:00,2,,
Trunk,2,Plank hold,0:45,1,1,
Arms,3,"Kneeling row",1:00,1,1,
Arms,4,Chest press kneeling,0:50,0,1,
Arms,5,Water,0:30,,,
Sides,6,Side plank on the forearm,0:40,1,,each
Sides,7,Kneeling trunk rotation,0:55,1,,right
Sides,8,Kneeling trunk rotation,0:55,1,,left
`;

/** A file as it is saved where a comma is the decimal sign. */
export const SEMICOLONS = `"Movement";"Minutes";"Spring setting";"Which side"
"Trunk:";;;
"Plank to pike";1;"2 x light";
"Plank hold";0,75;"1 light & 1 middle";
"Arms:";;;
"Kneeling row";1,0;"1 light / 1 middle";
"Kneeling chest press";0:50;"1 middle";
"Water";0,5;;
"Sides:";;;
"Side plank on the forearm";0:40;"1 light";"each side"
"Kneeling trunk rotation";0:55;"1 light";"right"
"Kneeling trunk rotation";0:55;"1 light";"left"
`;

export const BARS = `| Exercise | Work | Load | L/R |
| :--- | ---: | --- | --- |
| **Trunk** | | | |
| Plank to pike | 60s | 2 light | |
| Plank hold | 45s | 1 light, 1 middle | |
| **Arms** | | | |
| Kneeling row | 60s | 1 light, 1 middle | |
| Kneeling chest press | 50s | 1 middle | |
| Water | 30s | | |
| **Sides** | | | |
| Side plank on the forearm | 40s | 1 light | L/R |
| Kneeling trunk rotation | 55s | 1 light | R |
| Kneeling trunk rotation | 55s | 1 light | L |
`;
