import { callApart, type Apart } from "../../src/notebook/call-apart.js";
import type { Watcher } from "../../src/notebook/notebook.js";
import { unset, type Settings } from "./settings.js";
import type { News, OpenedSheet, SheetFile, SheetWork, Shown } from "./sheet-work.js";
// oxlint-disable-next-line import/default -- the builder makes the export of a worker
import SheetWorker from "./worker.js?worker&inline";

/** Watches a part; while a long work goes on it is told of the share that is done, where that is known. */
export interface PartWatcher<T> extends Omit<Watcher<T>, "pending"> {
  readonly pending?: (share?: number) => void;
}

/** The sheet on the page. Each sheet has a worker of its own, so that one that is being read can be given up. */
export interface SheetDesk {
  /** What is set for the sheet on the page. */
  readonly settings: () => Settings;
  /** Its file. */
  readonly file: () => string;
  readonly set: (changes: Partial<Settings>) => void;
  readonly observe: <K extends keyof Shown>(part: K, watcher: PartWatcher<Shown[K]>) => void;
  /**
   * Reads a file; the sheet on the page stays until that is done, and stays when it fails.
   * @param follows it may be a new version of the sheet on the page, whose settings it then keeps
   * @returns null when it was given up meanwhile
   */
  readonly open: (
    sheet: SheetFile,
    settings: Settings,
    more?: { readonly follows?: boolean; readonly told?: (share: number) => void },
  ) => Promise<OpenedSheet | null>;
  /** Gives up the reading that goes on. */
  readonly giveUp: () => void;
  /** Asks something of the sheet on the page. */
  readonly call: Apart<SheetWork>["call"];
}

const start = (): Apart<SheetWork> =>
  callApart<SheetWork>(
    () => new SheetWorker(),
    async () => (await import("./sheet-work.js")).sheetWork(),
  );

export function sheetDesk(): SheetDesk {
  type Watchers = { readonly [K in keyof Shown]: PartWatcher<Shown[K]>[] };
  const watchers: Watchers = { reading: [], plan: [], page: [] };
  let shown: { readonly work: Apart<SheetWork>; readonly sheet: SheetFile } | undefined;
  let opening: Apart<SheetWork> | undefined;
  let settings = unset;
  const hear = (news: News): void => {
    for (const watcher of watchers[news.part] as PartWatcher<unknown>[])
      if (news.state === "pending") watcher.pending?.(news.share);
      else if (news.state === "fulfilled") watcher.fulfilled(news.value);
      else watcher.rejected(news.message);
  };
  /** @returns when the page shows how the sheet was read */
  const watch = (work: Apart<SheetWork>): Promise<void> =>
    new Promise((seen) => {
      const heard = (news: News): void => {
        if (shown?.work === work) hear(news);
        if (news.part === "reading" && news.state !== "pending") seen();
      };
      work
        .call("watch", null, heard)
        .catch(({ message }: Error) => heard({ part: "reading", state: "rejected", message }));
    });
  return {
    settings: () => settings,
    file: () => shown!.sheet.file.replace(/^.*[\\/]/, ""),
    set(changes) {
      settings = { ...settings, ...changes };
      // A sheet that was replaced meanwhile has nothing to set.
      shown?.work.call("set", changes).catch(() => {});
    },
    observe(part, watcher) {
      (watchers[part] as PartWatcher<never>[]).push(watcher);
    },
    async open(sheet, asked, { follows = false, told = () => {} } = {}) {
      opening?.end();
      const work = start();
      opening = work;
      const earlier = follows && shown ? { ...shown.sheet, settings } : null;
      try {
        const opened = await work.call("open", { ...sheet, settings: asked, earlier }, told);
        shown?.work.end();
        shown = { work, sheet };
        // The level is the page's and may have moved during the reading.
        const { level } = settings;
        settings = { ...opened.settings, level };
        await work.call("set", { level });
        await watch(work);
        return opened;
      } catch (error) {
        if (opening !== work) return null;
        work.end();
        throw error;
      } finally {
        if (opening === work) opening = undefined;
      }
    },
    giveUp() {
      opening?.end();
      opening = undefined;
    },
    call: (name, given, told) => shown!.work.call(name, given, told),
  };
}
