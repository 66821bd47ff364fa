import demoText from "../../data-demo/readings.csv?raw";
import { readSheet } from "../../src/cases/read-sheet.js";
import { element } from "../../src/notebook/element.js";
import { fileDrop } from "../../src/notebook/file-drop.js";
import { startNotebook } from "../../src/notebook/notebook.js";
import { pageShell } from "../../src/notebook/page-shell.js";
import { questionSection, type QuestionSection } from "../../src/notebook/question-section.js";
import { readingsDialog, type ReadingsCard } from "../../src/notebook/readings-dialog.js";
import { caution } from "../../src/report/caution.js";
import { plainText } from "../../src/report/text.js";
import { notebookLinks } from "../notebook-links.js";
import { agreement, type Page } from "./agreement.js";
import { agreementControls } from "./controls.js";
import { workApart } from "./work-apart.js";

const shell = pageShell(notebookLinks("agreement"), caution);
const demo = await readSheet(new TextEncoder().encode(demoText), "readings.csv");
const notebook = startNotebook(agreement(demo, workApart(), true));
const controls = agreementControls(notebook);

let columns: readonly string[] = [];
let cards: ReadonlyMap<string, ReadingsCard> = new Map();
const dialog = readingsDialog(
  () => columns,
  (id) => cards.get(id),
);
const error = element("div", { role: "alert" });
const notes = element("div");
const reading = element("details", { class: "aside reading" }, element("summary", {}, "How the file was read"), notes);
const questions = element("div");
// Until the first answer the foot stays below the first screen: nothing jumps.
questions.style.minHeight = "100vh";
const drop = fileDrop({
  label:
    "Drop a file of readings anywhere on this page: a row a radiograph, a column a reader. It stays on this computer.",
  accept: ".csv,.tsv,.txt,.xlsx,.ods",
  taken: take,
});
shell.main.append(element("div", { class: "sheet" }, drop, error, reading), questions);
document.body.append(dialog.node);

const shown = new Map<string, QuestionSection>();
notebook.observe("page", { fulfilled: show, rejected: fail });

async function take(file: File): Promise<void> {
  try {
    const sheet = await readSheet(new Uint8Array(await file.arrayBuffer()), file.name);
    notebook.set("invented", false);
    notebook.set("pair", null);
    notebook.set("prevalence", null);
    notebook.set("planKappa", null);
    notebook.set("sheet", sheet);
    shell.say(`Readings read: ${file.name}`);
    error.replaceChildren();
  } catch (reason) {
    fail((reason as Error).message);
  }
}

function fail(message: string): void {
  error.replaceChildren(element("p", { class: "error" }, message));
}

function show(page: Page): void {
  const { readings, graded, measured } = page.found;
  columns = readings.columns.map(({ name }) => name);
  cards = new Map(
    readings.radiographs.map(({ id }, row) => [
      id,
      {
        readings: graded.readings[row]!.map((grade, column) => {
          if (grade === null) return "missing";
          const name = graded.grades[grade]!;
          return measured ? `${readings.readings[row]![column]!} (${name})` : name;
        }),
      },
    ]),
  );
  error.replaceChildren();
  questions.style.minHeight = "";
  notes.replaceChildren(element("ul", {}, ...graded.notes.map((note) => element("li", {}, note))));
  showHead(page);
  const ids = new Set(page.sections.map(({ id }) => id));
  for (const [id, section] of shown) section.node.hidden = !ids.has(id);
  for (const section of page.sections)
    sectionOf(section.id, section.question).show(section, picturesOf(page, section.id));
  controls.show(page);
  shell.tell(page.sections[0]!.answer.map(plainText).join(" "));
}

function picturesOf({ pictures }: Page, id: string) {
  return pictures.filter((picture) => picture.section === id);
}

function sectionOf(id: string, question: string): QuestionSection {
  const held = shown.get(id);
  if (held) return held;
  const said = async (work: () => void | Promise<void>, message: string): Promise<void> => {
    try {
      await work();
      shell.say(message);
    } catch (reason) {
      shell.say(`Not done: ${(reason as Error).message}`);
    }
  };
  const tipOf = (radiograph: string): string | undefined => {
    const card = cards.get(radiograph);
    return card && [radiograph, ...card.readings.map((text, k) => `${columns[k]!} ${text}`)].join(" · ");
  };
  const section = questionSection(id, question, {
    open: dialog.open,
    tipOf,
    said,
    controls: controls.of(id),
    ...(id === "paper" ? { tablesOpen: true } : {}),
  });
  shown.set(id, section);
  questions.append(section.node);
  return section;
}

function showHead({ found }: Page): void {
  const { readings, grades, choices } = found;
  const pair = grades.pairs.find(({ raters }) => raters[0] === choices.pair[0] && raters[1] === choices.pair[1])!;
  const { agreement: same } = pair;
  const raters = new Set(readings.columns.map(({ rater }) => rater)).size;
  shell.showHead({
    over: same.estimate === null ? "0" : String(same.agreeing),
    under: String(pair.crossTable.n),
    title:
      readings.file === "readings.csv" ? "Grading agreement: invented readings" : `Grading agreement: ${readings.file}`,
    line: `${readings.radiographs.length} radiographs, ${raters} observers, ${readings.columns.length} readings each at most · stays on this computer`,
  });
}
