import { newVersion } from "../../src/cases/new-version.js";
import { readCases } from "../../src/cases/read-cases.js";
import { readSheet } from "../../src/cases/read-sheet.js";
import { shareSafe } from "../../src/cases/share-safe.js";
import type { Answers, CaseTable, RawSheet } from "../../src/cases/types.js";
import type { Drawing } from "../../src/charts/drawing.js";
import type { CaseCard } from "../../src/findings/types.js";
import { startNotebook, type Notebook } from "../../src/notebook/notebook.js";
import type { DraftedPlan } from "../../src/plan/draft-plan.js";
import { csvTable } from "../../src/report/csv-table.js";
import { sharedCsv } from "../../src/report/shared-csv.js";
import type { TextTable } from "../../src/report/text.js";
import { versionLines } from "../../src/report/version-lines.js";
import { caseSeries, type CaseSeries, type Page } from "./case-series.js";
import type { Edits } from "./edit-history.js";
import { logTable } from "./log-table.js";
import { cardsOf, pageView, type PageView } from "./page-view.js";
import { shareView, type ReadingView, type ShareView } from "./reading-view.js";
import type { Settings } from "./settings.js";

/** A file and what is set for it. */
export interface SheetFile {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly file: string;
}

export interface OpenSheet extends SheetFile {
  readonly settings: Settings;
  /** The sheet before it and what was set there, if this may be a new version of it. */
  readonly earlier: (SheetFile & { readonly settings: Settings }) | null;
}

/** A list of changes between two versions, its first lines. */
export interface ChangeLines {
  readonly heading: string;
  readonly lines: readonly string[];
  readonly count: number;
}

export interface OpenedSheet {
  readonly settings: Settings;
  /** What the new version changed; null for another sheet. */
  readonly changes: readonly ChangeLines[] | null;
}

/** What the page shows of a sheet and draws anew when it changes. */
export interface Shown {
  readonly reading: ReadingView;
  readonly plan: DraftedPlan;
  /** Null until confirmed. */
  readonly page: PageView | null;
}

/** What becomes of one part of what is shown; `share` is how much of a long work is done. */
export type News = {
  readonly [K in keyof Shown]: { readonly part: K } & (
    | { readonly state: "pending"; readonly share?: number }
    | { readonly state: "fulfilled"; readonly value: Shown[K] }
    | { readonly state: "rejected"; readonly message: string }
  );
}[keyof Shown];

/** A drawing, with the cases whose marks are in it. */
export interface DrawnPicture {
  readonly drawing: Drawing;
  readonly cards: readonly CaseCard[];
}

/** Everything that is done with one sheet; it may run beside the page, and what it returns is small. */
export interface SheetWork {
  /** Reads it, telling how far it is. @throws SheetError as the readers do */
  readonly open: (given: OpenSheet, tell: (share: number) => void) => Promise<OpenedSheet>;
  /** Tells what is to be shown, now and after each change; never ends. */
  readonly watch: (given: null, tell: (news: News) => void) => Promise<never>;
  readonly set: (changes: Partial<Settings>) => Promise<void>;
  /** @throws SheetError when one of them fits no question */
  readonly tryAnswers: (answers: Answers) => Promise<void>;
  /** Null when the page shows no such picture any longer. */
  readonly draw: (given: { readonly name: string; readonly width?: number }) => Promise<DrawnPicture | null>;
  /** A table of the page with all its rows. */
  readonly wholeTable: (given: { readonly section: string; readonly caption: string }) => Promise<TextTable>;
  readonly log: () => Promise<string>;
  readonly share: () => Promise<ShareView>;
  readonly sharedCsv: () => Promise<string>;
}

/** Lines of a list of changes that are drawn. */
const mostLines = 200;

export function sheetWork(): SheetWork {
  let opened: Notebook<CaseSeries> | undefined;
  let page: Page | null = null;
  let told: (news: News) => void = () => {};
  const held = (): Notebook<CaseSeries> => {
    if (opened === undefined) throw new Error("no sheet is open");
    return opened;
  };
  const value = <K extends keyof CaseSeries>(name: K): Promise<CaseSeries[K]> => held().value(name);
  return {
    async open({ bytes, file, settings, earlier }, tell) {
      const sheet = await readSheet(bytes, file);
      tell(sheetShare);
      const rest = inTurn(earlier === null ? 1 : versionReadings + 1, (share) =>
        tell(sheetShare + share * (1 - sheetShare)),
      );
      const version = earlier === null ? null : await changesSince(earlier, sheet, rest);
      const start = version === null ? settings : { ...earlier!.settings, ...version.edits, confirmed: false };
      let progress = rest;
      const notebook = startNotebook(caseSeries({ bytes, sheet }, start, (share) => progress(share)));
      opened = notebook;
      await firstTable(notebook);
      progress = (share) => told({ part: "reading", state: "pending", share });
      return { settings: start, changes: version?.changes ?? null };
    },
    watch: (_, tell) =>
      new Promise(() => {
        told = tell;
        watchParts(held(), tell, (next) => {
          page = next;
        });
      }),
    async set(changes) {
      for (const [name, to] of Object.entries(changes)) held().set(name as keyof Settings, to as never);
      return Promise.resolve();
    },
    async tryAnswers(answers) {
      const [{ sheet }, given, roles] = await Promise.all([value("source"), value("givenPlan"), value("roles")]);
      readCases(sheet, { answers, roles: { ...given?.plan.roles, ...roles } });
    },
    async draw({ name, width }) {
      const found = page?.pictures.find((picture) => picture.name === name);
      if (!found) return Promise.resolve(null);
      const drawing = found.drawing(width);
      const ids = Object.values(drawing.rows).flatMap((rows) => rows.map((row) => (row as { id?: string }).id ?? ""));
      return { drawing, cards: cardsOf(page!.findings, new Set(ids)) };
    },
    async wholeTable({ section, caption }) {
      const { sections } = (await value("page"))!;
      return sections.find(({ id }) => id === section)!.tables.find((table) => table.caption === caption)!;
    },
    log: async () => csvTable(logTable(await value("table"))),
    share: async () => shareView(await value("table")),
    sharedCsv: async () => sharedCsv(shareSafe(await value("table"))),
  };
}

/** The table as soon as it is read; watched from then on, as a cell that nobody watches is worked out anew each time. */
function firstTable(notebook: Notebook<CaseSeries>): Promise<CaseTable> {
  return new Promise((fulfilled, refused) => {
    notebook.observe("table", { fulfilled, rejected: (message) => refused(new Error(message)) });
  });
}

/** Share of the whole reading that the file itself takes, before its cells are understood. */
const sheetShare = 0.2;
/** How often `newVersion` reads a sheet. */
const versionReadings = 5;

/** Joins the progress of about so many works, told one after the other, to one that never goes back. */
function inTurn(works: number, tell: (share: number) => void): (share: number) => void {
  let [done, last] = [0, 0];
  return (share) => {
    if (share < last) done++;
    last = share;
    tell(Math.min(1, (done + share) / works));
  };
}

/** What a new version of a sheet keeps and changes; null when no case is in both. */
async function changesSince(
  { bytes, file, settings }: NonNullable<OpenSheet["earlier"]>,
  sheet: RawSheet,
  onProgress: (share: number) => void,
): Promise<{ readonly edits: Edits; readonly changes: readonly ChangeLines[] } | null> {
  const { answers, roles, givenPlan } = settings;
  const before = await readSheet(bytes, file);
  const version = newVersion(before, sheet, { answers, roles: { ...givenPlan?.plan.roles, ...roles }, onProgress });
  if (!version.related) return null;
  const changes = versionLines({ ...version.changes, moved: [] }).map(({ heading, lines }) => ({
    heading,
    lines: lines.slice(0, mostLines),
    count: lines.length,
  }));
  return { edits: { answers: version.answers, roles: version.roles }, changes };
}

/** Tells of each part of the page as it follows from the cells. */
function watchParts(
  notebook: Notebook<CaseSeries>,
  tell: (news: News) => void,
  pageShown: (page: Page | null) => void,
): void {
  const watch = <K extends keyof Shown>(part: K, view: (value: CaseSeries[K]) => Shown[K]): void => {
    notebook.observe(part, {
      pending: () => tell({ part, state: "pending" }),
      fulfilled: (value) => tell({ part, state: "fulfilled", value: view(value) } as News),
      rejected: (message) => tell({ part, state: "rejected", message }),
    });
  };
  watch("reading", (reading) => reading);
  watch("plan", (plan) => plan);
  watch("page", (page) => {
    pageShown(page);
    return page === null ? null : pageView(page);
  });
}
