import { callNamed, type AnswerMessage, type CallMessage, type Calls } from "./calls.js";

type Given<F> = F extends (given: infer G, ...rest: never) => unknown ? G : never;
type Told<F> = F extends (given: never, tell: (part: infer T) => void) => unknown ? T : never;
type Done<F> = F extends (...all: never) => Promise<infer D> ? D : never;

/** Work that runs beside the page. */
export interface Apart<W> {
  /** Calls one of its functions; rejects with the message of its error, or when the work was ended. */
  readonly call: <K extends keyof W & string>(
    name: K,
    given: Given<W[K]>,
    told?: (part: Told<W[K]>) => void,
  ) => Promise<Done<W[K]>>;
  /** Stops it at once, whatever it is doing. */
  readonly end: () => void;
}

/** Message of the calls that were not answered when the work was ended. */
export const ended = "the work was ended";

interface Waiting {
  readonly message: CallMessage;
  readonly told: (part: unknown) => void;
  readonly done: (value: unknown) => void;
  readonly failed: (error: Error) => void;
}

/**
 * Starts functions in a worker, so that long work does not hold the page up. Where workers are refused they run on the
 * page itself.
 * @param start makes the worker, which answers with `answerCalls`
 * @param here the same functions, loaded when there is no worker
 */
export function callApart<W extends Calls<W>>(start: () => Worker, here: () => Promise<W>): Apart<W> {
  const waiting = new Map<number, Waiting>();
  let calls = 0;
  let ready = false;
  let work: Promise<W> | undefined;
  const failAll = (message: string): void => {
    for (const { failed } of waiting.values()) failed(new Error(message));
    waiting.clear();
  };
  const onPage = async ({ message: { number, name, given }, told, done, failed }: Waiting): Promise<void> => {
    try {
      done(await callNamed(await work!, name)(given, told));
    } catch (error) {
      failed(error as Error);
    }
    waiting.delete(number);
  };
  /** A worker that never said that it runs was refused. */
  const moveHere = (): void => {
    work = here();
    for (const one of waiting.values()) void onPage(one);
  };
  const heard = ({ data }: MessageEvent<AnswerMessage>): void => {
    if ("ready" in data) {
      ready = true;
      return;
    }
    const one = waiting.get(data.number);
    if (one === undefined) return;
    if ("told" in data) {
      one.told(data.told);
      return;
    }
    waiting.delete(data.number);
    if ("done" in data) one.done(data.done);
    else one.failed(new Error(data.failed));
  };
  let worker: Worker | undefined;
  try {
    worker = start();
    worker.addEventListener("message", heard);
    worker.addEventListener("error", (event) => {
      event.preventDefault();
      if (ready) failAll("the work beside the page stopped, perhaps for want of memory");
      else if (work === undefined) moveHere();
    });
  } catch {
    moveHere();
  }
  return {
    call: (name, given, told = () => {}) =>
      new Promise((done, failed) => {
        const message: CallMessage = { number: ++calls, name, given };
        const one = { message, told: told as Waiting["told"], done: done as Waiting["done"], failed };
        waiting.set(message.number, one);
        if (work !== undefined) void onPage(one);
        else worker!.postMessage(message);
      }),
    end() {
      worker?.terminate();
      failAll(ended);
    },
  };
}
