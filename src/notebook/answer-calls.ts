import { callNamed, type AnswerMessage, type CallMessage, type Calls } from "./calls.js";

/** Where the calls come from: the worker's own scope. */
export interface CallPort {
  readonly postMessage: (message: AnswerMessage) => void;
  readonly addEventListener: (type: "message", heard: (event: MessageEvent<CallMessage>) => void) => void;
}

/** Answers the calls that reach a worker; an error crosses as its message. */
export function answerCalls<W extends Calls<W>>(port: CallPort, work: W): void {
  const answer = async ({ number, name, given }: CallMessage): Promise<void> => {
    try {
      const done = await callNamed(work, name)(given, (told) => port.postMessage({ number, told }));
      port.postMessage({ number, done });
    } catch (error) {
      port.postMessage({ number, failed: error instanceof Error ? error.message : String(error) });
    }
  };
  port.addEventListener("message", ({ data }) => void answer(data));
  port.postMessage({ ready: true });
}
