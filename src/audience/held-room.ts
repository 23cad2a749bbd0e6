/** One room while its server runs: who is in it and what each is told. It knows no sockets; whoever is here was let in. */
import { ENDED, type Ending } from "./ended.ts";
import type { Journal } from "./journal.ts";
import type { Counts, FromPhone, FromStage } from "./line-messages.ts";
import {
  emptyRoom,
  enter,
  isCounted,
  isLostCounted,
  MAX_PHONES,
  ownAnswer,
  type RoomEntry,
  tallyOf,
} from "./room.ts";
import { askedOf, toText, wordsOf } from "./written-once.ts";

/** One connection. */
export interface Caller {
  readonly address: string;
  /** A message as JSON. */
  send(text: string): void;
  end(code: Ending): void;
}

export interface HeldRoom {
  /** Whether this phone was let in before. */
  knows(token: string): boolean;
  join(phone: Caller, token: string, language: string): void;
  hold(stage: Caller, address: string): void;
  hearPhone(phone: Caller, message: FromPhone): void;
  hearStage(message: FromStage): void;
  leave(caller: Caller): void;
}

interface Phone {
  readonly token: string;
  readonly language: string;
}

export interface HeldRoomOptions {
  readonly journal: Journal;
  /** Calls soon, once for many answers. */
  readonly soon: (call: () => void) => void;
  readonly onEnd: () => void;
}

/** Resolves when what was said earlier is heard. */
export async function holdRoom({ journal, soon, onEnd }: HeldRoomOptions): Promise<HeldRoom> {
  let room = emptyRoom();
  const phones = new Map<Caller, Phone>();
  const stages = new Set<Caller>();
  const asked = askedOf(() => room);
  const counts = (question: string): Counts => ({ kind: "counts", question, ...tallyOf(room, question) });
  const tellStages = () => {
    const hall = toText({
      kind: "hall",
      phones: phones.size + journal.elsewhere(phones.size),
      lost: room.lost.size,
    });
    const answers = room.question && toText(counts(room.question.key));
    for (const stage of stages) {
      stage.send(hall);
      if (answers) stage.send(answers);
    }
  };
  const ownText = (token: string, key: string) =>
    toText({ kind: "own", question: key, own: ownAnswer(room, key, token) });
  const lostText = (token: string) => toText({ kind: "lost", on: room.lost.has(token) });
  const tellAsked = (phone: Caller, { token, language }: Phone) => {
    phone.send(asked.in(language));
    const key = room.question?.key;
    if (key !== undefined && ownAnswer(room, key, token) !== null) phone.send(ownText(token, key));
  };
  const words = wordsOf(() => room);
  const tellToken = (token: string, text: string) => {
    for (const [caller, phone] of phones) if (phone.token === token) caller.send(text);
  };
  const tell = (entry: RoomEntry) => {
    if (entry.kind === "words") words.forget();
    else if (entry.kind === "ask") {
      asked.forget();
      for (const [caller, phone] of phones) tellAsked(caller, phone);
    } else if (entry.kind === "clear") {
      for (const [caller, { token }] of phones) caller.send(ownText(token, entry.question));
    } else if (entry.kind === "answer") tellToken(entry.token, ownText(entry.token, entry.question));
    else if (entry.kind === "lost") tellToken(entry.token, lostText(entry.token));
    soon(tellStages);
  };
  const end = () => {
    for (const [caller, { language }] of phones) {
      caller.send(words.in(language));
      caller.end(ENDED.over);
    }
    for (const stage of stages) stage.end(ENDED.over);
    onEnd();
  };
  await journal.follow(
    (entry) => {
      if (entry.kind === "end") end();
      room = enter(room, entry);
      tell(entry);
    },
    () => soon(tellStages),
  );
  return {
    knows: (token) => room.tokens.has(token),
    join(phone, token, language) {
      if (!room.tokens.has(token)) {
        if (room.tokens.size >= MAX_PHONES) return phone.end(ENDED.full);
        journal.add({ kind: "join", token });
      }
      phones.set(phone, { token, language });
      tellAsked(phone, { token, language });
      if (room.lost.has(token)) phone.send(lostText(token));
      soon(tellStages);
    },
    hold(stage, address) {
      stages.add(stage);
      stage.send(toText({ kind: "held", address }));
      for (const key of room.answers.keys()) stage.send(toText(counts(key)));
      soon(tellStages);
    },
    hearPhone(caller, message) {
      const phone = phones.get(caller);
      if (!phone) return caller.end(ENDED.refused);
      if (message.kind === "join") {
        // Again from inside: the same phone in another language.
        if (message.token !== phone.token) return caller.end(ENDED.refused);
        phones.set(caller, { ...phone, language: message.language });
        return tellAsked(caller, { ...phone, language: message.language });
      }
      if (message.kind === "words") return caller.send(words.in(phone.language));
      const { token } = phone;
      // What cannot count is not kept either; the phone is told how things stand.
      if (message.kind === "lost") {
        if (isLostCounted(room, token, message.on)) journal.add({ ...message, token });
        else caller.send(lostText(token));
      } else if (isCounted(room, message.question, token, message.answer)) journal.add({ ...message, token });
      else tellAsked(caller, phone);
    },
    hearStage(message) {
      if (message.kind !== "hold") journal.add(message);
    },
    leave(caller) {
      if (stages.delete(caller) || phones.delete(caller)) soon(tellStages);
    },
  };
}
