/** The stage's side of the hall: it tells the phones, and the speaker's window what no hall sees. */
import { effect } from "@preact/signals";
import type { Library } from "../../../lesson/library/library.ts";
import type { HallRun } from "../hall/hall-run.ts";
import type { ScriptRun } from "../talk/script-run.ts";
import { openWindowChannel } from "../windows/window-channel.ts";
import { countsTable } from "./counts-table.ts";
import {
  type HallReport,
  type HallToSpeaker,
  type HallToStage,
  hallLineOf,
  readHallToStage,
} from "./hall-messages.ts";
import type { StageAudience } from "./stage-audience.ts";
import { tellPhones } from "./tell-phones.ts";

interface StageHall {
  readonly room: string;
  readonly hall: HallRun;
  readonly script: ScriptRun;
  readonly library: Library;
  readonly audience: StageAudience | null;
}

/** @returns ends it */
export function openStageHall({ room, hall, script, library, audience }: StageHall): () => void {
  const report = (): HallReport => ({
    kind: "hall",
    audience: audience && !audience.over.value ? reported(audience) : null,
    answered: hall.all().length > 0,
  });
  const line = openWindowChannel<HallToSpeaker, HallToStage>(hallLineOf(room), readHallToStage, (message) => {
    if (message.kind === "hello") line.post(report());
    else if (message.kind === "invite") audience?.invite(message.on);
    else if (message.kind === "end") audience?.say({ kind: "end" });
    else line.post({ kind: "table", csv: countsTable(hall.all(), library) });
  });
  const following = [
    effect(() => line.post(report())),
    audience ? tellPhones(audience, hall, script) : () => {},
  ];
  return () => {
    for (const stop of following) stop();
    line.close();
    audience?.release();
  };
}

const reported = (audience: StageAudience): HallReport["audience"] => ({
  open: audience.open.value,
  inviting: audience.inviting.value,
  code: audience.code,
  address: audience.address.value,
  ...audience.hall.value,
});
