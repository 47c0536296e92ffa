import { useRef, useState, type ChangeEvent } from 'react';
import classes from './file-field.module.css';
import { Warning } from './note.js';
import { texts } from './texts.js';

interface FileFieldProps {
  readonly label: string;
  readonly accept: string;
  /** What does not happen with a file that cannot be read: "Not checked". */
  readonly notDone: string;
  /** Told what stands in the chosen file once it is read; null as soon as that is no longer what is chosen. */
  readonly onText: (text: string | null) => void;
}

/** The browser's own field for a file of text, in our measures. */
export function FileField({ label, accept, notDone, onText }: FileFieldProps) {
  const [isUnreadable, setUnreadable] = useState(false);
  const chosen = useRef<File>(undefined);
  const choose = (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.currentTarget.files ?? [];
    chosen.current = file;
    setUnreadable(false);
    onText(null);
    // A long file that was chosen before may be read after a short one.
    const ifChosen = (then: () => void) => chosen.current === file && then();
    file?.text().then(
      (text) => ifChosen(() => onText(text)),
      () => ifChosen(() => setUnreadable(true)),
    );
  };
  return (
    <>
      <label className={classes.file}>
        <span>{label}</span>
        <input type="file" accept={accept} onChange={choose} />
      </label>
      {isUnreadable && (
        <Warning word={`${notDone}.`} urgent>
          {texts.unreadable}
        </Warning>
      )}
    </>
  );
}
