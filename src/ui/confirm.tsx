/** Asks before something is lost for good; Esc and the first button keep it. */
import { Dialog } from "./dialog.tsx";

export interface ConfirmProps {
  readonly title: string;
  readonly what: string;
  readonly no: string;
  readonly yes: string;
  readonly onNo: () => void;
  readonly onYes: () => void;
}

export const Confirm = ({ title, what, no, yes, onNo, onYes }: ConfirmProps) => (
  <Dialog title={title} urgent ownButtons onClose={onNo}>
    <p>{what}</p>
    <div class="actions">
      <button type="button" onClick={onNo}>
        {no}
      </button>
      <button type="button" onClick={onYes}>
        {yes}
      </button>
    </div>
  </Dialog>
);
