// Writes the invented demo cohort. Nobody in it exists: the counts by grade and technique are laid down below, the rest is
// drawn from a seeded generator. Run: node data-demo/make-cohort.mjs
import { writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { mersenne } from "pure-rand/generator/mersenne";

const seed = 20260110;
const generator = mersenne(seed);
const uniform = () => (generator.next() >>> 0) / 2 ** 32;
const whole = (low, high) => low + Math.floor(uniform() * (high - low + 1));
const pick = (values) => values[whole(0, values.length - 1)];
const shuffled = (values) => {
  const out = [...values];
  for (let i = out.length - 1; i > 0; i--) {
    const j = whole(0, i);
    [out[i], out[j]] = [out[j], out[i]];
  }
  return out;
};
const times = (n, make) => Array.from({ length: n }, make);

/** Displacement in per cent of the shaft width: grade I up to a tenth, II up to a third, III up to two thirds, IV beyond. */
const displacement = { I: [2, 9], II: [13, 31], III: [37, 64], IV: [70, 98] };

const worked = (grade, first, n) =>
  times(n, () => ({ grade, first, final: first, union: whole(0, 28), outcome: "worked" }));
const failed = (grade, first, final, reason) => ({
  grade,
  first,
  final,
  union: whole(38, 60),
  outcome: "failed",
  reason,
});
const lost = (grade, first) => ({ grade, first, final: first, outcome: "lost" });
const excluded = (grade, why) => ({ grade, first: "closed", final: "closed", outcome: "excluded", why });

const analysed = [
  ...worked("I", "closed", 9),
  ...worked("II", "closed", 14),
  failed("II", "closed", "closed", "position lost in the second week"),
  ...worked("II", "open", 1),
  ...worked("III", "closed", 10),
  failed("III", "closed", "closed with wire", "would not stay reduced"),
  ...worked("III", "open", 2),
  failed("III", "open", "open", "wire backed out"),
  failed("III", "open", "open", "healed beyond one third"),
  ...worked("IV", "closed", 2),
  failed("IV", "closed", "open", "biceps tendon in the gap"),
  failed("IV", "closed", "closed with wire", "would not stay reduced"),
  failed("IV", "closed", "closed", "position lost in the second week"),
  ...worked("IV", "open", 4),
  failed("IV", "open", "open", "healed beyond one third"),
  failed("IV", "open", "open", "wire backed out"),
];
const others = [
  lost("I", "closed"),
  lost("II", "closed"),
  lost("III", "closed"),
  lost("IV", "open"),
  ...["II", "III", "III", "IV"].map((grade) => excluded(grade, "pathological fracture")),
  ...["III", "IV", "IV"].map((grade) => excluded(grade, "open wound")),
  ...times(2, () => excluded("", "no injury radiograph")),
];

// 61 children, 64 fractures: three pairs among the analysed limbs belong to one child each.
const limbs = shuffled([...analysed, ...others]);
const inOrder = limbs.map((limb, i) => ({ ...limb, place: i }));
const candidates = inOrder.filter(({ outcome }) => outcome !== "excluded" && outcome !== "lost");
const pairs = [0, 1, 2].map((i) => [candidates[5 + 11 * i], candidates[6 + 11 * i]]);
const partner = new Map(pairs.map(([first, second]) => [second.place, first.place]));

const day = 86_400_000;
const iso = (time) => new Date(time).toISOString().slice(0, 10);
let clock = Date.UTC(2019, 0, 14);
const rows = [];
for (const limb of inOrder) {
  const twin = partner.has(limb.place) ? rows[partner.get(limb.place)] : undefined;
  clock += day * whole(9, 51);
  const injury = twin ? Date.parse(twin.injury) : clock;
  const delay = twin ? twin.delay : pick([0, 1, 1, 1, 2, 2, 3, 4, 6, 9, 15]);
  const [low, high] = displacement[limb.grade] ?? [0, 0];
  const seen = limb.outcome === "worked" || limb.outcome === "failed";
  const shift = limb.grade ? whole(low, high) : "";
  const months = seen ? whole(12, 46) : limb.outcome === "lost" ? whole(1, 4) : "";
  const other = whole(164, 180);
  const loss = limb.outcome === "failed" ? whole(12, 42) : whole(0, 14);
  const examined = seen && uniform() > 0.06;
  const read = () => (limb.grade ? Math.max(0, Math.min(100, shift + whole(-5, 5))) : "");
  rows.push({
    limb,
    twin,
    sex: twin ? twin.sex : pick(["m", "m", "f"]),
    age: twin ? twin.age : whole(22, 32) / 2,
    injury: iso(injury),
    treatment: iso(injury + delay * day),
    delay,
    side: twin ? (twin.side === "left" ? "right" : "left") : pick(["left", "right"]),
    months,
    shift,
    after: limb.outcome === "worked" ? whole(0, 22) : limb.final === limb.first ? whole(8, 30) : whole(40, 70),
    elevation: examined ? other - loss : "not done",
    other: examined ? other : "not done",
    readings: times(4, read),
    operator: pick(["A", "A", "B", "C"]),
    injury2: uniform() < 0.14 ? pick(["elbow", "forearm"]) : "none",
  });
}
for (const row of rows) if (row.twin) row.twin.bilateral = row.bilateral = true;
for (const row of rows) if (row.bilateral) row.other = row.elevation === "not done" ? "not done" : "not applicable";

const complicationOf = ({ limb }, i) => {
  if (limb.outcome === "excluded" || limb.outcome === "lost") return "";
  if (limb.final !== "closed" && i % 5 === 0) return "pin-site infection";
  if (limb.reason === "biceps tendon in the gap") return "stiffness; wound infection";
  if (limb.first === "open" && limb.outcome === "failed") return "stiffness";
  return "none";
};

const children = new Map();
const childNumber = (row) => {
  const key = row.twin ?? row;
  if (!children.has(key)) children.set(key, children.size + 1);
  return children.get(key);
};
const code = (letter, number, width) => `${letter}${String(number).padStart(width, "0")}`;
const header = [
  "ID",
  "Child",
  "Side",
  "Sex",
  "Age (years)",
  "Date of injury",
  "Date of treatment",
  "Excluded because",
  "Displacement (% of width)",
  "Grade",
  "First technique",
  "Final technique",
  "Displacement after reduction (%)",
  "Last review",
  "Follow-up (months)",
  "Displacement at union (%)",
  "Success",
  "Elevation (degrees)",
  "Elevation other side (degrees)",
  "Reason for failure",
  "Complications",
  "Operator",
  "Associated injury",
  "Delay (days)",
  "Displacement A1",
  "Displacement A2",
  "Displacement B1",
  "Displacement B2",
];
const records = rows.map((row, i) => {
  const { limb } = row;
  const seen = limb.outcome === "worked" || limb.outcome === "failed";
  return [
    code("H", i + 1, 3),
    code("C", childNumber(row), 2),
    row.side,
    row.sex,
    row.age,
    row.injury,
    row.treatment,
    limb.why ?? "none",
    row.shift,
    limb.grade,
    limb.first,
    limb.final,
    row.limb.outcome === "excluded" ? "" : row.after,
    limb.outcome === "lost" ? "lost" : seen ? "seen" : "not applicable",
    row.months,
    limb.union ?? "",
    { worked: "yes", failed: "no", lost: "lost", excluded: "" }[limb.outcome],
    seen ? row.elevation : "",
    seen ? row.other : "",
    limb.reason ?? "",
    complicationOf(row, i),
    row.operator,
    row.injury2,
    row.delay,
    ...row.readings,
  ];
});
const csv = (lines, separator) =>
  lines.map((cells) => cells.map((cell) => quoted(String(cell), separator)).join(separator)).join("\n") + "\n";
const quoted = (text, separator) =>
  text.includes(separator) || text.includes('"') ? `"${text.replaceAll('"', '""')}"` : text;
// Another folder may be named, so that a test can compare.
const folder = process.argv[2] === undefined ? new URL(".", import.meta.url) : pathToFileURL(`${process.argv[2]}/`);
const here = (name) => new URL(name, folder);
writeFileSync(here("cohort.csv"), csv([header, ...records], ","));

// The same cohort as a busy clinic keeps it: titles, two header rows, decimal commas, mixed spellings, names, a total, a note.
const first = ["Ada", "Bruno", "Cleo", "Dario", "Edda", "Falk", "Gina", "Hauke", "Ilka", "Jaro", "Kira", "Lenz"];
const last = ["Example", "Sample", "Fabel", "Nobody", "Fiction", "Madeup", "Notreal", "Nemo"];
const names = [...children.values()].map((n) => `${first[n % first.length]} ${last[n % last.length]}`);
const arabic = { I: "1", II: "2", III: "3", IV: "4", "": "" };
const dotted = (date) => date.split("-").toReversed().join(".");
const messy = records.map((cells, i) => {
  const row = rows[i];
  const number = childNumber(row);
  const grade = i % 9 === 4 ? arabic[cells[9]] : i % 13 === 6 && cells[9] ? `${cells[9].toLowerCase()}` : cells[9];
  const technique = (text) => (i % 7 === 3 ? ` ${text.toUpperCase()}` : text);
  return [
    i % 17 === 8 ? `${cells[0]} ` : cells[0],
    cells[1],
    names[number - 1],
    cells[2][0].toUpperCase(),
    cells[3],
    String(cells[4]).replace(".", ","),
    dotted(cells[5]),
    dotted(cells[6]),
    cells[7] === "none" ? "" : cells[7],
    cells[8] === "" ? "" : `${cells[8]}%`,
    grade,
    technique(cells[10]),
    technique(cells[11]),
    cells[13] === "not applicable" ? "n/a" : cells[13],
    cells[14],
    cells[15],
    cells[16] === "yes" ? ["yes", "Y", "y ", "Yes"][i % 4] : cells[16] === "no" ? ["no", "N"][i % 2] : cells[16],
    typeof cells[17] === "number" ? `${cells[17]}°` : cells[17],
    cells[19],
    cells[20] === "none" && i % 6 === 2 ? "nil" : cells[20],
    i === 20 ? "wants to go back to handball" : "",
  ];
});
const top = ["Who", "", "", "", "", "", "Dates", "", "Entry", "Injury", "", "Technique", "", "Review"];
const below = [
  "ID",
  "Child",
  "Name",
  "Side",
  "Sex",
  "Age",
  "injury",
  "treatment",
  "Excluded because",
  "Displ",
  "Grade",
  "first",
  "final",
  "Seen",
  "Months",
  "Displ at union",
  "OK?",
  "Elevation",
  "Reason for failure",
  "Compl",
  "Note",
];
const wide = (text) => [text, ...times(below.length - 1, () => "")];
writeFileSync(
  here("cohort-as-kept.csv"),
  `\uFEFF${csv([wide("Humerus list v9 (invented demo)"), wide(""), [...top, ...times(below.length - top.length, () => "")], below, ...messy, wide(""), ["Total", "", "", "", "", "", "", "", "", "", String(records.length), ...times(below.length - 11, () => "")], wide("* months counted from the injury")], ";")}`.replaceAll(
    "\n",
    "\r\n",
  ),
);
