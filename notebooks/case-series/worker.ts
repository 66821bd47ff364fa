// Before the runtime.
import "../../src/notebook/worker-frames.js";
import { answerCalls } from "../../src/notebook/answer-calls.js";
import { sheetWork } from "./sheet-work.js";

answerCalls(self, sheetWork());
