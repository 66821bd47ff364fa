import { doubtfulColumns, settleIdentifying } from "./ask-identifying.js";
import { joinRight, joinTables, partOfCases, rightTableId } from "./ask-tables.js";
import { restartColumn } from "./ask-repeats.js";
import type { Draft } from "./doubts.js";
import { namesInText } from "./names-in-text.js";
import { maskText } from "./mask-text.js";
import { quarantine, type Redact } from "./quarantine.js";
import type { ReadCasesOptions } from "./read-cases.js";
import { readingSteps } from "./reading-steps.js";
import { samePersons } from "./same-person.js";
import { SheetError, type SheetIssue } from "./sheet-error.js";
import {
  askSheets,
  asksForStack,
  sheetsLeft,
  numbersOver,
  sheetsId,
  siblingsOf,
  stackSheets,
  type StackedPart,
} from "./stack-sheets.js";
import { applyLineAnswers } from "./table/apply-line-answers.js";
import { assignRoles } from "./table/assign-roles.js";
import { distinctCells } from "./table/distinct-cells.js";
import { codesOf, findKeys, keyFor, keysInHeadings } from "./table/find-keys.js";
import { findTable, type FoundTable } from "./table/find-table.js";
import { guessRoles } from "./table/guess-roles.js";
import { gatherColumns } from "./gather-columns.js";
import { numbersApart } from "./checks/ask-numbers.js";
import { settleRivals } from "./checks/ask-two-columns.js";
import { headingRole, headingRoles, namesWidth } from "./table/heading-words.js";
import { identifyCases, type IdColumns } from "./table/identify-cases.js";
import { distinctNames } from "./table/name-columns.js";
import { personColumns } from "./table/person-columns.js";
import type { Answers, Question, RawSheet, Role } from "./types.js";
import { columnFacts, type Distinct } from "./values/column-facts.js";
import { latestYearNamed } from "./values/latest-year.js";
import { keySuits } from "./values/read-by-key.js";
import type { Unread } from "./values/read-columns.js";
import { codedStaff, staffCodes, staffNames } from "./values/staff.js";
import { namesBeside } from "./names-beside.js";

/** A sheet before its cells are read. */
export interface Prepared {
  readonly unread: Unread;
  readonly redact: Redact;
  readonly found: FoundTable;
  /** About sheets of the workbook that have the same heading. */
  readonly questions: readonly Question[];
  /** Answers that fit no choice. */
  readonly issues: readonly SheetIssue[];
  readonly parts?: readonly StackedPart[];
}

/**
 * Names, roles and facts of the columns, and what must not be shown.
 * @throws SheetError when the sheet has no table, or a role names an absent column
 */
export function prepareCases(given: RawSheet, options: ReadCasesOptions): Prepared {
  const answers = options.answers ?? {};
  const alone = findTable(given, {
    keepRight: Object.hasOwn(answers, rightTableId) && answers[rightTableId] === partOfCases,
  });
  const steps = readingSteps(options.onProgress);
  steps.found();
  const siblings = siblingsOf(given, alone);
  const stack = siblings.length > 0 && asksForStack(answers) ? stackSheets(given, alone, siblings) : undefined;
  const whole = stack ?? { sheet: { ...given, otherSheets: sheetsLeft(given, siblings) }, found: alone };
  const { sheet, found: first, questions: gathering, sources } = gatherColumns(joinRight(whole, answers), answers);
  refuseWithout(sheet, first);
  const positions = first.names.flatMap((name, c) => (name === "" ? [] : [c]));
  const typed = positions.map((c) => first.names[c]!);
  const cells: readonly (readonly Distinct[])[] = positions.map((c) => distinctCells(first.lines, c));
  const keys = [...findKeys(first), ...keysInHeadings(typed, first.headingRows)];
  const guessed = guessRoles(
    typed.map((name) => (sources.has(name) ? "" : name)),
    cells,
    first.lines.length,
    keys,
  ).map((role, k): Role => (sources.has(typed[k]!) ? "other" : role));
  const sheetAt = stack && positions.indexOf(alone.names.length);
  if (sheetAt !== undefined && stack!.parts.every(({ name }) => namesInText([name]).length > 0))
    guessed[sheetAt] = "operator";
  const beside = namesBeside(sheet, first);
  const chosen = options.roles ?? {};
  const doubtful = doubtfulColumns(typed, cells, { roles: guessed, rows: first.lines.length });
  const redactFor = onceByRoles((roles) => {
    const texts = roles.flatMap((role, k) =>
      role === "identifier" ? cells[k]!.map(({ text }) => text) : role === "operator" ? staffNames(cells[k]!) : [],
    );
    const inNotes = roles.flatMap((role, k) =>
      role === "note" || role === "other" ? namesInText(textsOf(cells[k]!)) : [],
    );
    const words = quarantine([...texts, ...beside, ...inNotes]);
    return (text) => words(maskText(text));
  });
  const shown = (redact: Redact): string[] => distinctNames(typed.map((name) => redactName(name, redact)));
  const careful = guessed.map((role, k): Role => (doubtful.some(({ at }) => at === k) ? "identifier" : role));
  const carefully = redactFor(careful);
  const shownNames = shown(carefully);
  const identifying = settleIdentifying(
    doubtful.filter(({ at }) => !Object.hasOwn(chosen, shownNames[at]!)),
    { names: shownNames, roles: guessed, answers },
  );
  const assigned = assignRoles(identifying.roles, shownNames, chosen, carefully(sheet.file));
  const roles = settleRivals(shown(redactFor(assigned)), assigned, answers);
  const redact = redactFor(roles);
  const names = shown(redact);
  const latest = options.today ? Number(options.today.slice(0, 4)) : latestYearNamed(cells);
  const staff = staffCodes(
    roles.flatMap((role, k) => (role === "operator" ? cells[k]! : [])),
    options.staff,
  );
  const sheetShown = (name: string): string =>
    roles[sheetAt!] === "operator" ? codedStaff(name, staff) : redact(name);
  const width = names.find((name, k) => roles[k] !== "identifier" && namesWidth(name));
  const facts = names.map((name, k) => {
    const key = keyFor(name, codesOf(cells[k]!), keys);
    const found = columnFacts(name, roles[k]!, cells[k]!, sheet, latest);
    steps.lookedAt(k + 1, names.length);
    return {
      ...found,
      ...(key && keySuits(key, roles[k]!) ? { key } : {}),
      ...(roles[k] === "operator" ? { staff } : {}),
      ...(width !== undefined && roles[k] === "measurement" ? { width } : {}),
    };
  });
  const found = applyLineAnswers(joinTables(first, answers, redact), answers, redact, sheet.struck);
  const unread = { sheet, lines: found.lines, names, roles, facts, positions, cases: [] };
  const restart = restartColumn(names, names[roles.indexOf("id")], answers);
  const restarted = restart === undefined ? undefined : { at: positions[restart]!, shown: redact };
  const numbers = stack && numbersOver(stack, positions[roles.indexOf("id")], answers);
  const asksSheets =
    stack || Object.hasOwn(answers, sheetsId)
      ? []
      : askSheets(
          given,
          siblings.map(({ sheet: one }) => one),
          redact,
        );
  const apart = numbers?.anew ? { at: alone.names.length, shown: sheetShown } : restarted;
  const named = { ...unread, cases: identified(unread, answers, apart) };
  const persons = samePersons(named, answers);
  return {
    unread: { ...named, cases: persons.cases },
    redact,
    found,
    questions: [
      ...identifying.questions,
      ...persons.questions,
      ...gathering,
      ...asksSheets,
      ...(numbers?.questions ?? []),
    ],
    issues: identifying.issues,
    ...(stack
      ? {
          parts: stack.parts.map((part) => ({
            ...part,
            name: sheetShown(part.name),
          })),
        }
      : {}),
  };
}

/** Names of operators in the order of their codes, so that another version of the sheet can go on with them; never shown. */
export function staffOrder(sheet: RawSheet, options: ReadCasesOptions): string[] {
  return prepareCases(sheet, options).unread.facts.flatMap(({ staff }) => [...(staff?.keys() ?? [])]);
}

const withholding: ReadonlySet<Role> = new Set(["identifier", "operator", "note", "other"]);

/** Roles are settled in several turns, of which most change nothing; what is withheld takes long to collect. */
function onceByRoles(redactFor: (roles: readonly Role[]) => Redact): (roles: readonly Role[]) => Redact {
  const known = new Map<string, Redact>();
  return (roles) => {
    const key = roles.map((role) => (withholding.has(role) ? role : "")).join();
    const found = known.get(key) ?? redactFor(roles);
    known.set(key, found);
    return found;
  };
}

function refuseWithout(sheet: RawSheet, { lines, names }: FoundTable): void {
  const refuse = (rule: string): never => {
    throw new SheetError(quarantine(namesInText([sheet.file]))(sheet.file), [{ rule }]);
  };
  if (lines.length === 0) refuse("holds no cases; expected a heading row and one row a case");
  if (names.length === 1 && headingRoles(names[0]!).length === 0)
    refuse("holds no cases: one column, without a heading that names a grade or outcome");
}

/** A heading keeps the words of the trade, even when somebody is called so. */
function redactName(name: string, redact: Redact): string {
  return redact(name) === name
    ? name
    : name.replace(/[\p{L}\p{N}]+/gu, (word) => (headingRole(word) ? word : redact(word)));
}

const searched = 20_000;

function textsOf(cells: readonly Distinct[]): string[] {
  return cells.slice(0, searched).map(({ text }) => text);
}

function identified(
  unread: Pick<Unread, "lines" | "roles" | "positions" | "names">,
  answers: Answers,
  sheet: IdColumns["sheet"],
): Draft["cases"] {
  const { lines, roles, positions, names } = unread;
  const at = (role: Role): number | undefined => positions[roles.indexOf(role)];
  const person = personColumns(unread);
  const columns = { id: at("id"), child: at("child"), person, side: at("side") };
  const apart = numbersApart(names[roles.indexOf("id")], answers);
  return identifyCases(lines, { ...columns, apart, ...(sheet === undefined ? {} : { sheet }) });
}
