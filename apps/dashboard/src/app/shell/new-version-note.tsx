import { PlainButton } from '../../shared/ui/plain-button.js';
import { useNewVersion } from '../start/new-version.js';
import { texts } from './texts.js';
import classes from './shell.module.css';

/** Offers a newer version of the pages; whoever is filling in a form goes on, and changes over later. */
export function NewVersionNote() {
  const change = useNewVersion();
  if (change === null) return null;
  return (
    <div className={`${classes.news} ll-screen-only`} role="status">
      {texts.newVersion}
      <PlainButton variant="default" onClick={change}>
        {texts.useNewVersion}
      </PlainButton>
    </div>
  );
}
