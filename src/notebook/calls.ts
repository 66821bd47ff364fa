/**
 * Functions that may run beside the page: each takes one value that can be copied, tells of its way, and promises one.
 * `W` names them all; the page calls them and the worker answers under the same type.
 */
export type Calls<W> = {
  readonly [K in keyof W]: (given: never, tell: never) => Promise<unknown>;
};

type AnyCall = (given: unknown, tell: (part: unknown) => void) => Promise<unknown>;

/** The function of a name; that its argument fits was checked where it was called. */
export function callNamed<W>(work: W, name: string): AnyCall {
  return work[name as keyof W] as unknown as AnyCall;
}

/** From the page to the worker. */
export interface CallMessage {
  readonly number: number;
  readonly name: string;
  readonly given: unknown;
}

/** From the worker to the page: that it runs, then for each call what it tells and how it ended. */
export type AnswerMessage =
  | { readonly ready: true }
  | { readonly number: number; readonly told: unknown }
  | { readonly number: number; readonly done: unknown }
  | { readonly number: number; readonly failed: string };
