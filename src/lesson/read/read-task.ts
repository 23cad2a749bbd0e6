/** A task block -> WrittenTask; its keys are the same in a translation. */
import * as v from "valibot";
import { words } from "../format/question-schema.ts";
import { readRecord } from "../format/yaml-record.ts";
import type { WrittenTask } from "../lesson.ts";
import type { Extract } from "./lesson-sections.ts";
import { type Refuse, readInline } from "./read-prose.ts";

export const taskSchema = v.strictObject({
  ask: words,
  answer: v.pipe(v.array(words), v.minLength(1), v.maxLength(6)),
});

export function readTask(block: Extract | undefined, refuse: Refuse): WrittenTask | null {
  const read = block && readRecord(block.text, block.line, taskSchema, refuse);
  if (!read) return null;
  return {
    ask: readInline(read.value.ask, read.lineOf("ask"), refuse),
    answer: read.value.answer.map((line) => readInline(line, read.lineOf("answer"), refuse)),
    line: block.line,
  };
}
