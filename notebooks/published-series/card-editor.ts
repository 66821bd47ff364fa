import { cardUnits, definitionMatches, type CardRow, type PaperCard } from "../../src/findings/series/paper-card.js";
import { countsForPercent } from "../../src/findings/series/counts-for-percent.js";
import { choice } from "../../src/notebook/controls.js";
import { button, element } from "../../src/notebook/element.js";

/** Counts of up to so many cases are listed for a percentage that stands without its N. */
const mostCases = 60;

export interface CardEditorOptions {
  readonly changed: (card: PaperCard) => void;
  readonly removed: () => void;
}

/** One card as a form, every field by keyboard; an empty field is "not stated". */
export function cardEditor(first: PaperCard, place: number, { changed, removed }: CardEditorOptions): HTMLElement {
  let card = first;
  const update = (part: Partial<PaperCard>): void => {
    card = { ...card, ...part };
    changed(card);
  };
  const id = (field: string): string => `card-${place}-${field}`;
  const stated = (field: "definition" | "followUp" | "complications", label: string): HTMLElement =>
    textField(id(field), label, card[field] ?? "", (text) =>
      update({ [field]: text.trim() === "" ? null : text.trim() }),
    );
  const summary = element("summary", {}, card.name);
  const rows = element("tbody");
  const fillRows = (): void => rows.replaceChildren(...card.rows.map((row, i) => rowFields(row, i)));
  const setRow = (i: number, part: Partial<CardRow>): void =>
    update({ rows: card.rows.map((row, at) => (at === i ? { ...row, ...part } : row)) });
  const rowFields = (row: CardRow, i: number): HTMLElement => {
    const cell = (node: HTMLElement): HTMLElement => element("td", {}, node);
    const said = row.technique === "" ? `grade ${row.grade}` : `grade ${row.grade}, ${row.technique}`;
    const grade = input("text", row.grade, `Grade in line ${i + 1}`, (text) => setRow(i, { grade: text.trim() }));
    const technique = input("text", row.technique, `Technique in line ${i + 1}`, (text) =>
      setRow(i, { technique: text.trim() }),
    );
    technique.size = 10;
    const successes = countInput(row.successes, `Successes, ${said}`, (value) => setRow(i, { successes: value }));
    const cases = countInput(row.cases, `Cases, ${said}`, (value) => setRow(i, { cases: value }));
    const remove = button(
      "Remove",
      () => {
        update({ rows: card.rows.filter((_, at) => at !== i) });
        fillRows();
      },
      `Remove: ${said}`,
    );
    return element("tr", {}, cell(grade), cell(successes), cell(cases), cell(technique), cell(remove));
  };
  fillRows();
  const add = button("Add a line", () => {
    update({ rows: [...card.rows, { grade: "", technique: "", successes: null, cases: null }] });
    fillRows();
    rows.lastElementChild?.querySelector("input")?.focus();
  });
  const head = element(
    "tr",
    {},
    ...["Grade", "Successes", "Cases", "Technique, where told apart", ""].map((text) =>
      text === "" ? element("td") : element("th", { scope: "col" }, text),
    ),
  );
  return element(
    "details",
    { class: "card-form" },
    summary,
    textField(id("name"), "Name", card.name, (text) => {
      if (text.trim() === "") return;
      summary.textContent = text.trim();
      update({ name: text.trim() });
    }),
    choice("Counted in", cardUnits.map(option), card.unit, (unit) => update({ unit: unit as PaperCard["unit"] }), {
      id: id("unit"),
    }),
    stated("definition", "Success means"),
    choice(
      "That is",
      definitionMatches.map(option),
      card.match,
      (match) => update({ match: match as PaperCard["match"] }),
      { id: id("match") },
    ),
    stated("followUp", "Follow-up"),
    labelled(
      id("lost"),
      "Lost",
      countInput(card.lost, "", (lost) => update({ lost }), id("lost")),
    ),
    stated("complications", "Complications"),
    element(
      "table",
      {},
      element("caption", {}, "Counts by grade, a line a technique of it; empty is not stated"),
      element("thead", {}, head),
      rows,
    ),
    element("div", { class: "bar" }, add, button("Remove this series", removed, `Remove this series: ${card.name}`)),
    percentHelp(id("percent")),
  );
}

/** A percentage without its N: the counts that would print so. */
function percentHelp(id: string): HTMLElement {
  const out = element("p", { role: "status", class: "soft" });
  const field = input(
    "text",
    "",
    "",
    (text) => {
      if (text.trim() === "") return out.replaceChildren();
      try {
        const counts = countsForPercent(text.replace("%", ""), mostCases);
        const listed = counts.map(({ successes, cases }) => `${successes} of ${cases}`).join(", ");
        out.textContent =
          counts.length === 0 ? `No count of up to ${mostCases} cases prints so.` : `Prints so: ${listed}.`;
      } catch {
        out.textContent = "A percentage is a number from 0 to 100, as printed.";
      }
    },
    id,
  );
  return element("div", {}, labelled(id, "A percentage without its N, %", field), out);
}

const option = (text: string) => ({ value: text, text });

function labelled(id: string, label: string, field: HTMLElement): HTMLElement {
  return element("div", { class: "control" }, element("label", { for: id }, label), field);
}

function textField(id: string, label: string, value: string, typed: (text: string) => void): HTMLElement {
  return labelled(id, label, input("text", value, "", typed, id));
}

function input(
  type: string,
  value: string,
  spoken: string,
  typed: (text: string) => void,
  id?: string,
): HTMLInputElement {
  const node = element("input", {
    type,
    autocomplete: "off",
    ...(id === undefined ? {} : { id }),
    ...(spoken === "" ? {} : { "aria-label": spoken }),
  });
  node.value = value;
  node.addEventListener("input", () => typed(node.value));
  return node;
}

/** A whole number or nothing; what is neither is marked and changes nothing. */
function countInput(
  value: number | null,
  spoken: string,
  typed: (value: number | null) => void,
  id?: string,
): HTMLInputElement {
  const node = input(
    "text",
    value === null ? "" : String(value),
    spoken,
    (text) => {
      const wrong = !/^\s*\d{0,9}\s*$/.test(text);
      node.setAttribute("aria-invalid", String(wrong));
      if (!wrong) typed(text.trim() === "" ? null : Number(text));
    },
    id,
  );
  node.setAttribute("inputmode", "numeric");
  node.size = 6;
  return node;
}
