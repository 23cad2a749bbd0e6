/** Which adult after completion is shown, and what that stands for. */
import { formatQuantity, t } from "../../i18n/index.ts";
import { numberSetting } from "../../sim/parameters/parameters.ts";
import { PERSONS, type PersonName, personOf, setPerson } from "../../state/person.ts";
import { Choice } from "../../ui/choice.tsx";
import type { Session } from "../shared/session.ts";

export function Person({ session }: { readonly session: Session }) {
  const { request } = session.scene.value;
  const person = personOf(request);
  const atrium = formatQuantity(numberSetting(request, "heldAtrialPressure"), "mmHg", 1);
  return (
    <div>
      <Choice<PersonName | "">
        label={t("control.person")}
        value={person ?? ""}
        words={PERSONS}
        nameOf={(name) => t(`person.${name}`)}
        onChoose={(name) => {
          if (name === "") return;
          session.edit("person", setPerson(name));
          session.settle();
        }}
      />
      <p class="quiet-text">{person ? t(`person.${person}.meaning`, { atrium }) : t("person.none")}</p>
    </div>
  );
}
