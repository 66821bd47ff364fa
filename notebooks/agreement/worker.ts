import { answerCalls } from "../../src/notebook/answer-calls.js";
import { gradeCalls } from "./grade-calls.js";

answerCalls(self, gradeCalls);
